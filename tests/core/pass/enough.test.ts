// A history that is left early, because its cut is over and its loads are lost, or because they are
// on as far as rides are followed, tells the same rides.

import { fileURLToPath } from 'node:url'
import {
  compile,
  equip,
  longestTolerance,
  lostAfter,
  monthSky,
  newScratch,
  pass,
  prepare,
  rideLoads,
  ridesOf,
  windowOf,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { describe, expect, it } from 'vitest'

const HORIZON = 2 * 1440

function ridesTwice(name: string, month: number, hours: number) {
  const path = fileURLToPath(new URL(`../../../data-samples/${name}.yaml`, import.meta.url))
  const loaded = loadHouse(path)
  const prepared = prepare(loaded.house, loaded.files)
  const { house, plant, rules, startKwh } = equip(prepared, {})
  const choice = { kind: 'dull', month, cutHours: hours, years: 1, winters: 10, seed: 1 } as const
  const { sky, batches } = monthSky(prepared, choice)
  const [batch] = batches.slice(12)
  const { year, from, to } = batch!
  const loads = rideLoads(prepared.demand)
  const tolerance = longestTolerance(loads)
  const furthest = HORIZON + tolerance
  const window = windowOf(prepared, sky, newScratch(prepared), year, from, to + furthest)
  const { columns } = compile(house, prepared.calendar, prepared.demand, plant, rules, window)
  const ride = (enough?: Parameters<typeof pass>[5]) =>
    ridesOf(pass(columns, rules, to - from, startKwh, furthest, enough), loads, from, HORIZON)
  const cutMinutes = hours * 60
  const enough = { cutMinutes, lostAfter: lostAfter(loads, furthest), onAfter: HORIZON }
  return { all: ride(), early: ride(enough) }
}

describe.each([
  ['croft', 1, 6],
  ['croft', 1, 24],
  ['surgery', 7, 24],
  ['surgery', 12, 24],
] as const)('%s, month %i, a cut of %i h', (name, month, hours) => {
  const { all, early } = ridesTwice(name, month, hours)

  it('for the house and for each load, to the minute', () => {
    expect(early.minutes).toEqual(all.minutes)
    expect(early.endedBy).toEqual(all.endedBy)
    for (const [which, minutes] of all.byLoad.entries()) {
      expect(early.byLoad[which], `load ${which}`).toEqual(minutes)
    }
  })
})
