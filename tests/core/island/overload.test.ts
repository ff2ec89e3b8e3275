// What inverter and stack carry: for a second, for a minute, for as long as it lasts.

import {
  checkHouse,
  compile,
  Event,
  equip,
  newScratch,
  pass,
  plainSky,
  prepare,
  rideLoads,
  ridesOf,
  traceCut,
  windowOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { liveHouse, minutesOf, plainHouse } from '../plain-house.js'

const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }
const STACK = {
  module: { usableKwh: 10, chargeKw: 2, dischargeKw: 20 },
  modules: 1,
  health: 1,
  electronicsW: 10,
  selfDischargePerMonth: 0,
}
const SCENE = { minutes: 60, critical: 0.39, formingKva: () => 1, peakKva: () => 1 }

/** Minutes in which the island gave up, with so many kVA running in minutes [from, to). */
function overloads(kva: number, from: number, to: number, inverter: object = INVERTER): number[] {
  const runningKva = (_: number, i: number): number => (i >= from && i < to ? kva : 1)
  const t = liveHouse({ inverter, stack: STACK }, { ...SCENE, runningKva }, 0.9)
  return minutesOf(t, Event.overload)
}

describe('running power', () => {
  it('may pass the rating by a tenth for one minute, not for two', () => {
    expect(overloads(5.5, 30, 31)).toEqual([])
    expect(overloads(5.5, 30, 32)).toEqual([31])
    expect(overloads(5.51, 30, 31)).toEqual([30])
    expect(overloads(5, 30, 40)).toEqual([])
  })

  it('is apparent power: 4.8 kW at a power factor of 0.8 are 6 kVA', () => {
    expect(overloads(6, 30, 31)).toEqual([30])
    expect(overloads(6, 30, 31, { ...INVERTER, minuteKva: 6 })).toEqual([])
  })
})

describe('the whole stack', () => {
  it('may give and take less than its modules together', () => {
    const stack = { ...STACK, modules: 2, modulesMax: 2, dischargeKw: 3, chargeKw: 1 }
    const t = liveHouse(
      { inverter: INVERTER, stack },
      { ...SCENE, critical: (i) => (i === 30 ? 3 : 0.39), gridUp: (i) => i >= 50 },
      0.5,
    )
    expect(minutesOf(t, Event.overload)).toEqual([30])
    expect(-t.batteryKw[55]!).toBeCloseTo(1, 8)
  })
})

describe('an island that forms', () => {
  // A pump that runs from minute 30 to 40 takes 12 kVA in its start, more than the 10 carried.
  const pump = {
    ...SCENE,
    peakKva: (_: number, i: number) => (i === 30 ? 12 : 3),
    formingKva: (_: number, i: number) => (i >= 30 && i < 40 ? 12 : 3),
  }

  it('starts all that runs in its minute: a pump too heavy is never served, at no try', () => {
    const person = { minutes: 30, from: '00:00', to: '24:00' }
    const t = liveHouse({ inverter: INVERTER, stack: STACK, person }, { ...pump, minutes: 90 }, 0.9)
    expect(minutesOf(t, Event.overload)).toEqual([30, 31, 32, 33])
    expect(t.states[50]).toBe('off, overload')
    // Somebody called at minute 33 resets it at 63, when the pump wants nothing.
    expect(minutesOf(t, Event.loadsBack).at(-1)).toBe(63)
    expect(t.states[63]).toBe('island')
  })

  it('comes back at its first try where the start is past', () => {
    const short = { ...pump, formingKva: (_: number, i: number) => (i === 30 ? 12 : 3) }
    const t = liveHouse({ inverter: INVERTER, stack: STACK }, short, 0.9)
    expect(minutesOf(t, Event.overload)).toEqual([30])
    expect(minutesOf(t, Event.loadsBack)).toEqual([31])
  })
})

describe('a load that switches itself', () => {
  /** A sump pump of 3 kW for three minutes an hour; its float stays closed until it has run. */
  const pump = {
    ...{ name: 'sump pump', tier: 'critical', w: 3000, startingMultiple: 6, powerFactor: 0.75 },
    ...{ cycle: { onMinutes: 3, offMinutes: 57 }, toleratesMinutes: 60 },
  }
  const house = (person: object) =>
    prepare(checkHouse(plainHouse({ inverter: INVERTER, loads: [pump], ...person })))
  const PERSON = { person: { minutes: 30, from: '00:00', to: '24:00' } }

  it.each([
    ['nobody', {}],
    ['somebody who resets', PERSON],
  ])('and is too heavy never runs, and the island does not come back for it: with %s', (_, who) => {
    const { trace, events } = traceCut(house(who), {
      ...{ startMs: Date.UTC(2025, 0, 1), hours: 12, sky: 'none', startSoc: 1 },
    })
    expect(trace.servedCriticalKw.every((kw) => kw === 0)).toBe(true)
    const first = trace.demandCriticalKw.findIndex((kw) => kw > 0)
    // Three tries, a minute apart: the third is after its three minutes, and it starts all the same.
    expect([...trace.states.slice(first, first + 20)].every((s) => s === 'off, overload')).toBe(
      true,
    )
    expect(events.some(({ text }) => text.includes('24.0 kVA'))).toBe(true)
  })

  it('ends the ride of a load that bears an hour, by the clock', () => {
    const prepared = house(PERSON)
    const { rules, plant, startKwh } = equip(prepared, { startSoc: 1 })
    const sky = plainSky(prepared, 'none')
    const window = windowOf(prepared, sky, newScratch(prepared), 0, 0, 4 * 1440)
    const { columns } = compile(
      prepared.house,
      prepared.calendar,
      prepared.demand,
      plant,
      rules,
      window,
    )
    const rides = ridesOf(
      pass(columns, rules, 1440, startKwh, 1440),
      rideLoads(prepared.demand),
      0,
      1440,
    )
    // The house is off from the pump's next turn on: within the hour for every start.
    expect(Math.max(...rides.minutes)).toBeLessThan(60)
  })
})

describe('the changeover', () => {
  const scene = { ...SCENE, formingKva: () => 12, peakKva: () => 3 }

  it('of some milliseconds finds motors running, one of a second starts them all', () => {
    const lost = (changeoverMs: number): boolean => {
      const gateway = { changeoverMs, reconnectSeconds: 0 }
      const t = liveHouse({ inverter: INVERTER, stack: STACK, gateway }, scene, 0.9)
      return minutesOf(t, Event.overload).includes(0)
    }
    expect(lost(20)).toBe(false)
    expect(lost(200)).toBe(false)
    expect(lost(1000)).toBe(true)
  })
})
