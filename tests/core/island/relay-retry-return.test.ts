// A load relay, an empty island that tries again, an array that throttles to a floor, a tank and
// its cans, the changeover, a grid that comes back: one scene each. Small houses of 10 kWh, losses of 60 W in all.

import { Event, gridTaken } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { liveHouse, minutesOf, solar } from '../plain-house.js'

const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }

describe('an array that throttles to a floor', () => {
  const arrays = [solar('throttles to a floor', 180)]

  it('is throttled while its floor of 0.68 can be taken: 2.04 kW less 0.45 kW of load and loss', () => {
    const t = liveHouse({ arrays }, { minutes: 60, critical: 0.39, ac: 3 }, 0.5)
    // The stack takes 2 kW of the 2.55 kW that the whole array would give it.
    expect(t.batteryKw[10]).toBeCloseTo(-2, 8)
    expect(t.solarUsedKw[10]).toBeCloseTo(2 + 0.45, 8)
    expect(minutesOf(t, Event.solarTrips)).toEqual([])
  })

  it('trips where even the floor is too much: 2.72 kW less 0.45 kW against 2 kW', () => {
    const t = liveHouse({ arrays }, { minutes: 60, critical: 0.39, ac: 4 }, 0.5)
    expect(t.solarUsedKw.every((kw) => kw === 0)).toBe(true)
    // Out for three minutes, tried in the fourth, again and again.
    expect(minutesOf(t, Event.solarTrips).slice(0, 3)).toEqual([3, 7, 11])
  })

  it('trips at 90 % of charge, where the stack takes half of its 2 kW and the floor is 1.59 kW', () => {
    const t = liveHouse({ arrays }, { minutes: 120, critical: 0.39, ac: 3 }, 0.89)
    const [trip] = minutesOf(t, Event.solarTrips)
    expect(t.storedKwh[trip!]).toBeCloseTo(9, 8)
  })

  it('is not held out by charge alone: with no surplus it stays in at 95 %', () => {
    const t = liveHouse({ arrays }, { minutes: 60, critical: 1, ac: 1 }, 0.95)
    expect(t.solarUsedKw[30]).toBeCloseTo(1, 8)
  })
})

describe('a ramp after the reconnection', () => {
  it('counts half as waiting: 180 s and a ramp of 120 s are out for four minutes', () => {
    const [array] = [solar('throttles', 180)]
    const inverter = { ...(array!.inverter as object), rampSeconds: 120 }
    const arrays = [{ ...array, inverter }]
    const t = liveHouse({ arrays }, { minutes: 10, critical: 0.39, ac: 1 }, 0.5)
    expect(t.solarUsedKw.findIndex((kw) => kw > 0)).toBe(4)
  })
})

describe('a fast load relay', () => {
  const scene = {
    minutes: 60,
    critical: 0.39,
    comfort: [0.5],
    peakKva: (level: number, i: number) => (level === 0 && i === 30 ? 12 : 1),
  }

  it('drops the comfort loads for five minutes and the critical ones stay on', () => {
    const t = liveHouse({ inverter: { ...INVERTER, onOverload: 'sheds' } }, scene, 0.95)
    const without = [...t.servedComfortKw.keys()].filter((i) => t.servedComfortKw[i] === 0)
    expect(without).toEqual([30, 31, 32, 33, 34])
    expect(t.servedCriticalKw.every((kw) => kw > 0)).toBe(true)
    expect(minutesOf(t, Event.relaySheds)).toEqual([30])
  })

  it('where there is none the island trips', () => {
    const t = liveHouse({ inverter: INVERTER }, scene, 0.95)
    expect(t.servedCriticalKw[30]).toBe(0)
    expect(minutesOf(t, Event.overload)).toEqual([30])
  })

  it('does not help where the critical loads alone are too much', () => {
    const peakKva = (_: number, i: number): number => (i === 30 ? 12 : 1)
    const inverter = { ...INVERTER, onOverload: 'sheds' }
    const t = liveHouse({ inverter }, { ...scene, peakKva }, 0.95)
    expect(t.servedCriticalKw[30]).toBe(0)
  })
})

describe('an empty island that tries again', () => {
  const inverter = { ...INVERTER, whenEmpty: 'retries', retryAt: ['10:00-10:10'] }
  const arrays = [solar('throttles', 180)]
  const night = { minutes: 1440, critical: 0.39 }

  it('forms at its time without loads, solar comes in after its wait and fills it to 20 %', () => {
    const t = liveHouse({ inverter, arrays }, { ...night, ac: (i) => (i > 540 ? 3 : 0) }, 0.2)
    expect(minutesOf(t, Event.triesAgain)).toEqual([600])
    expect(t.solarUsedKw.findIndex((kw) => kw > 0)).toBe(603)
    expect(t.states[601]).toBe('loads off, holding')
    // At 10:03 the stack gains 2 kW; the loads come back once it holds 2 kWh.
    const [back] = minutesOf(t, Event.loadsBack)
    expect(back).toBe(603 + Math.ceil((2 - t.storedKwh[602]!) / (2 / 60)))
    expect(t.servedCriticalKw[back!]).toBeCloseTo(0.39, 12)
  })

  it('gives up at the end of its time where there is no sun', () => {
    const t = liveHouse({ inverter, arrays }, night, 0.2)
    expect(minutesOf(t, Event.triesAgain)).toEqual([600])
    expect(minutesOf(t, Event.goesDark).at(-1)).toBe(610)
    expect(t.servedCriticalKw.slice(600).every((kw) => kw === 0)).toBe(true)
    // Ten minutes of 60 W instead of 10 W.
    expect(t.storedKwh[599]! - t.storedKwh[609]!).toBeCloseTo(0.01, 8)
  })

  it('one that only collapses sees the same sun come up and nothing happen', () => {
    const collapses = { ...INVERTER, whenEmpty: 'collapses' }
    const t = liveHouse(
      { inverter: collapses, arrays },
      { ...night, ac: (i) => (i > 540 ? 3 : 0) },
      0.2,
    )
    expect(t.solarUsedKw.every((kw) => kw === 0)).toBe(true)
    expect(t.states[1439]).toBe('off, empty')
  })
})

describe('a grid that comes back', () => {
  const gateway = { reconnectSeconds: 300 }

  it('is taken after the wait of the gateway', () => {
    const gridUp = (i: number): boolean => i >= 20
    const t = liveHouse({ gateway }, { minutes: 60, critical: 0.39, gridUp }, 0.5)
    expect(minutesOf(t, Event.gridReturns)).toEqual([25])
    expect(t.gridKw[24]).toBe(0)
    expect(t.dischargeKw[24]).toBeCloseTo(0.39, 8)
  })

  it('and goes again within the wait was never taken: three times in five minutes', () => {
    const gridUp = (i: number): boolean => [20, 22, 24].includes(i)
    const t = liveHouse({ gateway }, { minutes: 60, critical: 0.39, gridUp }, 0.5)
    expect(minutesOf(t, Event.cutBegins)).toEqual([0])
    expect(t.gridKw.every((kw) => kw === 0)).toBe(true)
  })

  it('a grid that is there from the first minute needs no wait', () => {
    expect([...gridTaken(Uint8Array.of(1, 1, 0, 1, 1, 1, 0, 1), 120)]).toEqual([
      1, 1, 0, 0, 0, 1, 0, 0,
    ])
  })
})

describe('a tank and cans', () => {
  // At 2.4 kW the set burns 0.95 + 0.6 · 0.55 = 1.28 l/h: 0.64 l are 30 minutes.
  const generator = {
    ratedKw: 3,
    tankL: 0.64,
    cansL: 0.64,
    litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
    start: 'automatic',
    leastRunMinutes: 0,
  }
  const person = { minutes: 30, from: '07:00', to: '22:00' }
  const stack = {
    module: { usableKwh: 10, chargeKw: 5, dischargeKw: 5 },
    modules: 1,
    health: 1,
    electronicsW: 10,
    selfDischargePerMonth: 0,
  }

  it('an empty tank stops the set, and somebody who comes by day fills it', () => {
    const t = liveHouse({ generator, person, stack }, { minutes: 600, critical: 0.39 }, 0.2)
    expect(minutesOf(t, Event.generatorOn)[0]).toBe(3)
    expect(minutesOf(t, Event.fuelOut)[0]).toBe(33)
    expect(t.fuelL[33]).toBeCloseTo(0.64, 6)
    expect(minutesOf(t, Event.poured)).toEqual([450])
    expect(minutesOf(t, Event.generatorOn)[1]).toBe(453)
  })

  it('with empty cans nobody is called', () => {
    const bare = { ...generator, cansL: 0 }
    const t = liveHouse({ generator: bare, person, stack }, { minutes: 600, critical: 0.39 }, 0.2)
    expect(minutesOf(t, Event.poured)).toEqual([])
    expect(minutesOf(t, Event.generatorOn)).toEqual([3])
    expect(t.fuelL[599]).toBe(0)
  })

  it('a load above its rating stalls the set, and the island with it', () => {
    const big = { ...generator, tankL: 12 }
    const t = liveHouse({ generator: big, stack }, { minutes: 20, critical: 4.2 }, 0.2)
    expect(t.generatorKw.every((kw) => kw <= 3)).toBe(true)
    expect(minutesOf(t, Event.generatorOverload)[0]).toBe(3)
  })
})

describe('the changeover', () => {
  const peakKva = (level: number, i: number): number => (level === 0 && i === 0 ? 12 : 1)
  const scene = { minutes: 10, critical: 0.39, comfort: [0.5], peakKva }

  it('is judged with all that is running, though comfort would go at once', () => {
    const t = liveHouse({}, scene, 0.3)
    expect(t.servedCriticalKw[0]).toBe(0)
    expect(t.servedCriticalKw[1]).toBeCloseTo(0.39, 12)
  })

  it('a relay is fast enough for it', () => {
    const t = liveHouse({ inverter: { ...INVERTER, onOverload: 'sheds' } }, scene, 0.3)
    expect(t.servedCriticalKw[0]).toBeCloseTo(0.39, 12)
  })
})
