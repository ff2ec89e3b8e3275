// A plain house by an oracle of its own: one tier, sun that throttles, a floor. It knows nothing of
// the rule book but the increments of the minute, written here as a person would on paper.

import { CHARGE_BANDS, checkHouse, onGrid, pass } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { islandOf, plainHouse, solar } from '../plain-house.js'

const DAYS = 6
const STARTS = 3 * 1440
const HORIZON = 3 * 1440

const house = checkHouse(plainHouse({ arrays: [solar('throttles', 0)] }))
const light = (i: number): number => {
  const hour = (i % 1440) / 60
  return hour < 8 || hour >= 16 ? 0 : [3, 0.4, 1.2, 0.1, 2, 0.7][Math.floor(i / 1440)]!
}
const island = islandOf({
  house,
  minutes: DAYS * 1440,
  critical: (i) => (i % 90 < 30 ? 0.6 : 0.3),
  ac: light,
})

/** Minutes from a start to the first with nothing to give: charge, then floor, minute by minute. */
function rideByHand(start: number, startKwh: number): number {
  const { columns, rules } = island
  const edges = CHARGE_BANDS.map(({ upTo }) => onGrid(upTo * rules.capacityKwh))
  const mostKw = CHARGE_BANDS.map(({ limit }) => onGrid((2 * limit) / 60))
  let stored = startKwh
  for (let i = start; i < start + HORIZON; i++) {
    if (!(stored > rules.loadsOffKwh)) return i - start
    // The inverter finds the island in the second minute of the cut.
    const delta = columns.delta[i > start ? 1 : 0]![0]![i]!
    const band = edges.findIndex((edge) => stored < edge)
    if (delta <= 0) stored += delta
    else if (band >= 0) stored = Math.min(edges[band]!, stored + Math.min(delta, mostKw[band]!))
  }
  return HORIZON
}

describe('every start of a plain house', () => {
  it.each([0.3, 0.62, 1])('rides as by hand, from a charge of %d', (share) => {
    const { columns, rules } = island
    const startKwh = onGrid(share * rules.capacityKwh)
    const spells = pass(columns, rules, STARTS, startKwh, HORIZON)
    const rides = new Set<number>()
    for (let start = 0; start < STARTS; start++) {
      const spell = spells.first[start]!
      const ride = spell < 0 ? HORIZON : Math.min(HORIZON, spells.from(spell) - start)
      expect(ride, `start ${start}`).toBe(rideByHand(start, startKwh))
      rides.add(ride)
    }
    expect(rides.size).toBeGreaterThan(100)
  })
})
