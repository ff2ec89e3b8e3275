// A history that is left early, because its cut is over and its loads are lost, or because they are
// on as far as rides are followed, tells the same rides; one that is left where its ride ends tells
// the same minutes.

import { fileURLToPath } from 'node:url'
import {
  compile,
  endedAfter,
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

function ridesOfThree(name: string, month: number, hours: number) {
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
  const lost = lostAfter(loads, furthest, from, to - from + furthest)
  const enough = { cutMinutes, lostAfter: lost, onAfter: HORIZON }
  const ended = endedAfter(loads, from, to - from + furthest)
  const first = { cutMinutes: 0, lostAfter: ended, onAfter: HORIZON }
  return { all: ride(), early: ride(enough), first: ride(first) }
}

describe.each([
  ['croft', 1, 6],
  ['croft', 1, 24],
  ['croft', 5, 12],
  ['surgery', 7, 24],
  ['croft', 12, 24],
] as const)('%s, month %i, a cut of %i h', (name, month, hours) => {
  const { all, early, first } = ridesOfThree(name, month, hours)

  it('for the house and for each load, to the minute', () => {
    expect(early.minutes).toEqual(all.minutes)
    expect(early.endedBy).toEqual(all.endedBy)
    for (const [which, minutes] of all.byLoad.entries()) {
      expect(early.byLoad[which], `load ${which}`).toEqual(minutes)
    }
  })

  it('to the end of a ride and no further', () => {
    expect(first.minutes).toEqual(all.minutes)
    expect(first.beyond).toEqual(all.beyond)
    expect(new Set(all.minutes).size).toBeGreaterThan(1)
  })
})
