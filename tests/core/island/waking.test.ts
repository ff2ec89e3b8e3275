// What brings an empty stack back, and a generator that does not start or fails.

import { Event, luck } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, liveHouse, minutesOf, solar } from '../plain-house.js'

const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }
const PERSON = { minutes: 30, from: '07:00', to: '22:00' }
const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'automatic',
}
/** From a fifth of charge the house is dark after 134 minutes, at 02:14; the sun comes at 09:00. */
const scene = {
  minutes: 1440,
  critical: 0.39,
  ac: (i: number) => (i >= 540 ? 2 : 0),
  dc: 0,
}

describe('somebody who forms the island', () => {
  const house = {
    arrays: [solar('throttles', 180)],
    inverter: { ...INVERTER, wakesOn: ['person'] },
    person: PERSON,
  }

  it('comes by day once the sun is there; solar comes in and fills it to where the loads return', () => {
    const t = liveHouse(house, scene, 0.2)
    expect(minutesOf(t, Event.goesDark)).toEqual([134])
    expect(minutesOf(t, Event.somebodyWakes)).toEqual([540])
    expect(t.states[541]).toBe('loads off, holding')
    expect(t.solarUsedKw.findIndex((kw) => kw > 0)).toBe(543)
    const [back] = minutesOf(t, Event.loadsBack)
    expect(t.startStoredKwh[back!]).toBeGreaterThanOrEqual(2)
    // 0.995 kWh left, 406 minutes of 10 W and 3 of 60; then 1.94 kW up to 2 kWh.
    const left = 0.995 - (406 * 0.01 + 3 * 0.06) / 60
    expect(back).toBe(543 + Math.ceil((2 - left) / (1.94 / 60)))
  })

  it('puts it away at the end of the day where the sun was not enough, and comes again', () => {
    const weak = {
      ...scene,
      minutes: 3000,
      ac: (i: number) => (i % 1440 >= 540 && i % 1440 < 700 ? 0.2 : 0),
    }
    const t = liveHouse(house, weak, 0.2)
    expect(minutesOf(t, Event.somebodyWakes)).toEqual([540, 540 + 1440])
    expect(minutesOf(t, Event.putAway)).toEqual([700, 700 + 1440])
    expect(minutesOf(t, Event.loadsBack)).toEqual([])
    // What the night takes is the electronics' 10 W, not the 60 W of a formed island.
    expect(t.storedKwh[800]! - t.storedKwh[860]!).toBeCloseTo(0.01, 8)
  })

  it('is not called where the file does not name a person among the ways', () => {
    const t = liveHouse({ ...house, inverter: INVERTER }, scene, 0.2)
    expect(minutesOf(t, Event.somebodyWakes)).toEqual([])
    expect(t.states[1439]).toBe('off, empty')
  })

  it('cannot form an island with nothing left in the stack', () => {
    const t = liveHouse({ ...house, inverter: { ...house.inverter, loadsOffAt: 0 } }, scene, 0.2)
    expect(minutesOf(t, Event.somebodyWakes)).toEqual([])
  })
})

describe('the sun on the DC side', () => {
  it('wakes a stack, unless the file says that it does not', () => {
    const dc = { ...scene, ac: 0, dc: scene.ac }
    const wakes = liveHouse({ arrays: [DC_ARRAY] }, dc, 0.2)
    expect(minutesOf(wakes, Event.loadsBack).length).toBe(1)
    const asleep = liveHouse(
      { arrays: [DC_ARRAY], inverter: { ...INVERTER, wakesOn: [] } },
      dc,
      0.2,
    )
    expect(asleep.states[1439]).toBe('off, empty')
    expect(asleep.storedKwh[1439]).toBeLessThan(asleep.storedKwh[134]!)
  })
})

describe('a generator at an inverter that is asleep', () => {
  it('is not let in: it has to start before the battery is empty', () => {
    const inverter = { ...INVERTER, wakesOn: [] }
    const generator = { ...GENERATOR, start: 'by hand', startAt: 0.15 }
    const t = liveHouse({ inverter, generator, person: PERSON }, { ...scene, ac: 0 }, 0.2)
    expect(minutesOf(t, Event.generatorOn)).toEqual([])
    const letIn = liveHouse({ generator, person: PERSON }, { ...scene, ac: 0 }, 0.2)
    expect(minutesOf(letIn, Event.generatorOn)[0]).toBe(7 * 60 + 30 + 3)
  })
})

describe('a generator that fails', () => {
  it('does not start: out of order until the grid is back, and told', () => {
    const generator = { ...GENERATOR, startFailsShare: 1 }
    const gridUp = (i: number): boolean => i >= 900 && i < 910
    const t = liveHouse({ generator }, { ...scene, ac: 0, gridUp }, 0.3)
    const [first, second] = minutesOf(t, Event.generatorDoesNotStart)
    expect(first).toBe(minutesOf(t, Event.generatorCalled)[0]! + 3)
    // The grid fills 0.33 kWh in its ten minutes; the next cut calls it again, once.
    expect(second).toBeGreaterThan(910)
    expect(minutesOf(t, Event.generatorDoesNotStart)).toHaveLength(2)
    expect(t.generatorKw.every((kw) => kw === 0)).toBe(true)
  })

  it('stops while it runs, and the solar comes back after its wait', () => {
    const generator = { ...GENERATOR, hoursBetweenFailures: 1, leastRunMinutes: 600 }
    const arrays = [solar('throttles', 180)]
    const t = liveHouse({ generator, arrays }, { ...scene, ac: 0.2 }, 0.24)
    const [failed] = minutesOf(t, Event.generatorFails)
    expect(t.generatorKw[failed! - 1]).toBeGreaterThan(0)
    expect(t.generatorKw.slice(failed!).every((kw) => kw === 0)).toBe(true)
    expect(t.solarIn.indexOf(1, failed!)).toBe(failed! + 3)
  })

  it('belongs to the minute: whenever it began to run, it fails in the same one', () => {
    const generator = { ...GENERATOR, hoursBetweenFailures: 2, leastRunMinutes: 600 }
    const fails = (readySeconds: number): number[] =>
      minutesOf(
        liveHouse({ generator: { ...generator, readySeconds } }, { ...scene, ac: 0 }, 0.24),
        Event.generatorFails,
      )
    expect(fails(140)[0]).toBeGreaterThan(13)
    expect(fails(780)).toEqual(fails(140))
  })

  it('as often as stated: 5 % of 20 000 minutes', () => {
    let fails = 0
    for (let i = 0; i < 20000; i++) if (luck(1, 41, i) < 0.05) fails++
    // Three standard deviations of a binomial count: 3 * sqrt(20000 * 0.05 * 0.95) = 92.
    expect(Math.abs(fails - 1000)).toBeLessThan(92)
  })
})
