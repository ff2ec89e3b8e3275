// What may be changed without changing the answer: the day, how a load is written down, the run.

import { checkHouse, prepare, type Trace, traceCut } from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ByHand, live, plainHouse, solar } from '../plain-house.js'
import { RANDOM_MINUTES, randomHouse } from '../random-house.js'

const DAY = 1440

/** A house lived some whole days later: all its columns move, the clock on the wall with them. */
function later(given: ByHand, days: number): ByHand {
  const shift = days * DAY
  const move = (column: ByHand['critical'] | undefined): ByHand['critical'] =>
    typeof column === 'function' ? (i) => column(Math.max(0, i - shift)) : (column ?? 0)
  const { placeC, gridUp } = given
  return {
    ...given,
    minutes: given.minutes + shift,
    critical: move(given.critical),
    comfort: (given.comfort ?? []).map(move),
    ac: [given.ac ?? 0].flat().map((column) => move(column as ByHand['critical'])),
    dc: move(given.dc),
    placeC:
      typeof placeC === 'function' ? (h) => placeC(Math.max(0, h - days * 24)) : (placeC ?? 25),
    // The days before are spent with the grid; the cut begins where it began.
    gridUp: (i) => i < shift || (gridUp?.(i - shift) ?? false),
  }
}

describe('a house shifted by whole days', () => {
  it('shifts its answer: same states, same charge to the bit', () => {
    fc.assert(
      fc.property(randomHouse, fc.integer({ min: 1, max: 3 }), ({ given }, days) => {
        // Days with the grid fill the stack, so both start full; luck is drawn by the minute.
        const house = given.house
        const set = house.generator && { ...house.generator, startFailsShare: 0 }
        // A grid that goes within its wait does not come back; the first cut begins at once.
        const sure = { ...given, house: { ...house, generator: set }, gridUp: () => false }
        const here = live(sure, 1)
        const there = live(later(sure, days), 1)
        for (let i = 0; i < RANDOM_MINUTES; i++) {
          const j = i + days * DAY
          const same =
            here.storedKwh[i] === there.storedKwh[j] && here.states[i] === there.states[j]
          if (!same) throw new Error(`minute ${i}, ${days} days later`)
        }
      }),
      { seed: 11, numRuns: 60 },
    )
  })
})

const COMPARED = ['storedKwh', 'servedCriticalKw', 'servedComfortKw', 'lossKw'] as const

/** A power is rounded to 2^-20 kW, each load on its own: over 40 hours that is some 4e-5 kWh. */
const APART = 5e-5

function expectSame(a: Trace, b: Trace): void {
  expect(a.states).toEqual(b.states)
  for (const name of COMPARED) {
    for (let i = 0; i < a.n; i++) expect(Math.abs(a[name][i]! - b[name][i]!)).toBeLessThan(APART)
  }
}

function lived(loads: readonly Record<string, unknown>[], seed = 1): Trace {
  const house = checkHouse(plainHouse({ loads, seed, arrays: [solar('trips')] }))
  const question = { startMs: Date.UTC(2025, 2, 3, 7), hours: 40, startSoc: 0.6 }
  return traceCut(prepare(house), question).trace
}

describe('an appliance split in two', () => {
  const base = { name: 'pump', tier: 'critical', w: 300 }

  it('changes nothing, critical or comfort, steady or by the clock', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 600 }),
        fc.constantFrom('critical', 'comfort'),
        fc.constantFrom(undefined, ['06:30-08:00', '17:00-22:30']),
        fc.constantFrom(0.6, 0.9, 1),
        (halfW, tier, at, powerFactor) => {
          const load = { name: 'heater', tier, powerFactor, ...(at === undefined ? {} : { at }) }
          const whole = lived([base, { ...load, w: 2 * halfW }])
          const parts = lived([base, { ...load, w: halfW }, { ...load, name: 'other', w: halfW }])
          expectSame(whole, parts)
          expectSame(whole, lived([base, { ...load, w: halfW, pieces: 2 }]))
        },
      ),
      { seed: 3, numRuns: 12 },
    )
  })
})

describe('the same seed', () => {
  const fridge = {
    ...{ name: 'fridge', tier: 'critical', w: 90 },
    cycle: { onMinutes: 14, offMinutes: 31 },
  }

  it('gives the same figures to the bit, another one does not', () => {
    const [once, again, other] = [lived([fridge]), lived([fridge]), lived([fridge], 2)]
    for (const name of [...COMPARED, 'solarAvailableKw'] as const) {
      expect([...once![name]]).toEqual([...again![name]])
    }
    expect([...once!.solarAvailableKw]).not.toEqual([...other!.solarAvailableKw])
  })
})
