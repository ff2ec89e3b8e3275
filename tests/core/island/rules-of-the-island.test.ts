// The rules of the island, one scene each. Small houses of 10 kWh, losses of 60 W in all.

import { clockMinute, Event, generatorLitresPerHour } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, firstWithout, liveHouse, minutesOf, solar } from '../plain-house.js'

const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }
const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'automatic',
  readySeconds: 140,
  leastRunMinutes: 30,
}
const PERSON = { minutes: 30, from: '07:00', to: '22:00' }

/** Minute of the day. */
function at(clock: string): number {
  return clockMinute(clock)!
}

function between(minute: number, from: string, to: string): boolean {
  return minute % 1440 >= at(from) && minute % 1440 < at(to)
}

describe('AC-coupled solar at the start of a cut', () => {
  it.each([
    [20, 1],
    [60, 1],
    [180, 3],
    [300, 5],
  ])('drops out and waits %d s, that is %d whole minutes', (seconds, minutes) => {
    for (const onIsland of ['throttles', 'trips'] as const) {
      const arrays = [solar(onIsland, seconds)]
      const t = liveHouse({ arrays }, { minutes: 10, critical: 0.39, ac: 1 }, 0.5)
      expect(t.solarUsedKw.findIndex((kw) => kw > 0)).toBe(minutes)
    }
  })

  it('drops out again at the next cut, after the grid was back', () => {
    const arrays = [solar('throttles', 180)]
    const gridUp = (i: number): boolean => i >= 20 && i < 30
    const t = liveHouse({ arrays }, { minutes: 60, critical: 0.39, ac: 1, gridUp }, 0.5)
    expect(minutesOf(t, Event.cutBegins)).toEqual([0, 30])
    expect(minutesOf(t, Event.gridReturns)).toEqual([20])
    expect([...t.solarUsedKw.slice(30, 34)].map((kw) => kw > 0)).toEqual([
      false,
      false,
      false,
      true,
    ])
    expect(t.solarUsedKw[25]).toBeCloseTo(1, 12)
  })

  it('with the grid the stack charges, the sun counts, and what is over goes out', () => {
    const arrays = [solar('throttles', 180)]
    const t = liveHouse(
      { arrays },
      { minutes: 600, critical: 0.39, ac: 4, gridUp: () => true },
      0.5,
    )
    // 2 kW into the stack, 60 W of losses, 0.39 kW of load, 4 kW of sun.
    expect(t.gridKw[10]).toBeCloseTo(2 + 0.06 + 0.39 - 4, 8)
    expect(t.gridKw[599]).toBeCloseTo(0.06 + 0.39 - 4, 8)
  })
})

describe('the gateway', () => {
  it('takes a grid that comes back after its wait; one that goes again meanwhile begins anew', () => {
    const gateway = { reconnectSeconds: 180 }
    // Back for two minutes, gone for one, back to stay from minute 30.
    const gridUp = (i: number): boolean => i === 27 || i === 28 || i >= 30
    const t = liveHouse({ gateway }, { minutes: 60, critical: 0.39, gridUp }, 0.5)
    expect(minutesOf(t, Event.gridReturns)).toEqual([33])
    expect(t.states[32]).toBe('island')
  })
})

describe('the main fuse', () => {
  it('leaves to the stack what the load has not taken: 10 A are 2.3 kW', () => {
    const gateway = { mainFuseA: 10 }
    const t = liveHouse({ gateway }, { minutes: 10, critical: 1.3, gridUp: () => true }, 0.5)
    expect(t.gridKw[5]).toBeCloseTo(2.3, 8)
    expect(t.batteryKw[5]).toBeCloseTo(-(1 - 0.06), 8)
  })
})

describe('loads that are not on the island', () => {
  it('take their part of the main fuse when the grid is back', () => {
    const scene = { minutes: 10, critical: 0.3, gridOnly: 1, gridUp: () => true }
    const t = liveHouse({ gateway: { mainFuseA: 10 } }, scene, 0.5)
    // 2.3 kW of fuse less 1.3 kW; the grid column is that of the island's own meter.
    expect(t.batteryKw[5]).toBeCloseTo(-(1 - 0.06), 8)
    expect(t.gridKw[5]).toBeCloseTo(1.3, 8)
  })
})

describe('an empty stack', () => {
  const lasting = { minutes: 1440, critical: 0.39 }
  const sunAfter = (minute: number) => (i: number) => (i >= minute ? 3 : 0)

  it('collapses: dark for good with AC-coupled sun, which has nothing to follow', () => {
    const arrays = [solar('throttles')]
    const t = liveHouse({ arrays }, { ...lasting, ac: sunAfter(300) }, 0.2)
    expect(firstWithout(t)).toBe(134)
    expect(t.servedCriticalKw.slice(134).some((kw) => kw > 0)).toBe(false)
    expect(t.solarUsedKw.some((kw) => kw > 0)).toBe(false)
    expect(t.states[1439]).toBe('off, empty')
    expect(minutesOf(t, Event.goesDark)).toEqual([134])
  })

  it('collapses: DC-coupled sun wakes it once the charge is back at 20 %', () => {
    const t = liveHouse({ arrays: [DC_ARRAY] }, { ...lasting, dc: sunAfter(300) }, 0.2)
    const [back] = minutesOf(t, Event.loadsBack)
    expect(t.startStoredKwh[back!]).toBeGreaterThanOrEqual(2)
    expect(t.startStoredKwh[back! - 1]).toBeLessThan(2)
    // From 0.970 kWh (0.9955 less 166 minutes of 10 W) at 2 kW, the limit of the stack.
    expect(back).toBe(300 + Math.ceil((2 - (0.995 - (166 * 0.01) / 60)) / (2 / 60)))
    expect(t.servedCriticalKw[back!]).toBeCloseTo(0.39, 12)
  })

  it('holds: the load is off, the island stays formed on 60 W, AC-coupled sun brings it back at 20 %', () => {
    const inverter = { ...INVERTER, whenEmpty: 'holds' }
    const arrays = [solar('throttles')]
    const t = liveHouse({ inverter, arrays }, { ...lasting, ac: sunAfter(300) }, 0.2)
    expect(t.states[200]).toBe('loads off, holding')
    expect(t.storedKwh[200]! - t.storedKwh[260]!).toBeCloseTo(0.06, 8)
    const [back] = minutesOf(t, Event.loadsBack)
    expect(t.startStoredKwh[back!]).toBeGreaterThanOrEqual(2)
    expect(t.startStoredKwh[back! - 1]).toBeLessThan(2)
    expect(t.states[back!]).toBe('island')
  })

  it('holds only while anything is left: 996.5 Wh at 60 W last 996 minutes, then all is dark', () => {
    // 2.0315 kWh less 138 minutes of 7.5 Wh.
    const inverter = { ...INVERTER, whenEmpty: 'holds' }
    const arrays = [solar('throttles')]
    const sun = sunAfter(1300)
    const t = liveHouse({ inverter, arrays }, { ...lasting, ac: sun }, 0.20315)
    expect(minutesOf(t, Event.goesDark)).toEqual([138 + 996])
    expect(t.states[1439]).toBe('off, empty')
  })

  it('loads back means critical loads; comfort returns at its own threshold', () => {
    const t = liveHouse(
      { arrays: [DC_ARRAY] },
      { minutes: 1440, critical: 0.39, comfort: [0.2], dc: sunAfter(300) },
      0.2,
    )
    const [back] = minutesOf(t, Event.loadsBack)
    expect(t.servedComfortKw[back!]).toBe(0)
    const [comfort] = minutesOf(t, Event.comfortOn)
    expect(t.startStoredKwh[comfort!]).toBeGreaterThanOrEqual(6)
    expect(t.startStoredKwh[comfort! - 1]).toBeLessThan(6)
  })

  it('a short grid return ends the dark at once', () => {
    const gridUp = (i: number): boolean => i >= 400 && i < 405
    const t = liveHouse({}, { ...lasting, gridUp }, 0.2)
    expect(t.states[399]).toBe('off, empty')
    expect(t.states[400]).toBe('grid')
    expect(t.servedCriticalKw[400]).toBeCloseTo(0.39, 12)
  })
})

describe('an array that trips', () => {
  it('is out while its surplus is above the charge limit, and tries again after its wait', () => {
    // 2 kW at most; surplus of 3 kW in the first half hour, then 1 kW.
    const ac = (i: number): number => (i < 30 ? 3.45 : 1.45)
    const t = liveHouse({ arrays: [solar('trips', 180)] }, { minutes: 60, critical: 0.39, ac }, 0.5)
    expect(t.solarUsedKw.slice(0, 30).some((kw) => kw > 0)).toBe(false)
    // Out at the cut for minutes 0..2, tries in 3, waits 4..6, tries in 7: every fourth minute.
    expect(minutesOf(t, Event.solarTrips)).toEqual([3, 7, 11, 15, 19, 23, 27])
    expect(t.solarUsedKw.findIndex((kw) => kw > 0)).toBe(31)
    expect(t.solarUsedKw[31]).toBeCloseTo(1.45, 8)
  })

  it('a throttling array in the same light charges all the time', () => {
    const ac = (i: number): number => (i < 30 ? 3.45 : 1.45)
    const arrays = [solar('throttles', 180)]
    const t = liveHouse({ arrays }, { minutes: 60, critical: 0.39, ac }, 0.5)
    expect([...t.solarUsedKw.slice(3, 30)].every((kw) => Math.abs(kw - 2.45) < 1e-8)).toBe(true)
  })

  it('trips when the inverter itself takes less than the surplus', () => {
    const inverter = { ...INVERTER, chargeKw: 0.9 }
    const given = { minutes: 20, critical: 0.39, ac: 1.45 }
    const t = liveHouse({ inverter, arrays: [solar('trips', 60)] }, given, 0.5)
    expect(t.solarUsedKw.some((kw) => kw > 0)).toBe(false)
    const less = liveHouse({ inverter, arrays: [solar('trips', 60)] }, { ...given, ac: 1.2 }, 0.5)
    expect(less.solarUsedKw[5]).toBeCloseTo(1.2, 8)
  })

  it('goes out above 92 % and comes back below 85 %', () => {
    const t = liveHouse(
      { arrays: [solar('trips', 60)] },
      { minutes: 600, critical: 0.39, ac: (i) => (i < 300 ? 0.75 : 0.7) },
      0.9,
    )
    // 0.75 - 0.45 = 0.3 kW: from 9 kWh less the first minute of 7.5 Wh it gains 5 Wh a minute.
    const [out] = minutesOf(t, Event.solarHeldOut)
    expect(out).toBe(1 + Math.ceil((9.2 - (9 - 0.0075)) / 0.005))
    expect(t.startStoredKwh[out!]).toBeGreaterThanOrEqual(9.2)
    const back = t.solarUsedKw.findIndex((kw, i) => i > out! && kw > 0)
    // Down at 7.5 Wh a minute to 8.5, and a minute of wait.
    expect(t.startStoredKwh[back - 1]).toBeLessThanOrEqual(8.5)
    expect(t.startStoredKwh[back - 2]).toBeGreaterThan(8.5)
  })

  it('trips at a charge edge whose next band takes less', () => {
    // Surplus 1.5 kW: fits below 90 % (2 kW), not above it (1 kW).
    const t = liveHouse(
      { arrays: [solar('trips', 180)] },
      { minutes: 30, critical: 0.39, ac: 1.95 },
      0.89,
    )
    const [trip] = minutesOf(t, Event.solarTrips)
    expect(t.storedKwh[trip!]).toBeCloseTo(9, 8)
    expect(t.solarUsedKw[trip!]).toBeGreaterThan(0)
    expect([...t.solarUsedKw.slice(trip! + 1, trip! + 4)]).toEqual([0, 0, 0])
  })

  it('a minute that reaches a charge edge ends on it exactly', () => {
    for (const [start, edge] of [
      [0.899, 9],
      [0.9497, 9.5],
      [0.9797, 9.8],
      [0.9997, 10],
    ] as const) {
      const arrays = [DC_ARRAY]
      const t = liveHouse({ arrays }, { minutes: 3, critical: 0.39, dc: 3 }, start)
      expect([...t.storedKwh].some((kwh) => Math.abs(kwh - edge) < 1e-11)).toBe(true)
    }
  })
})

describe('more charge is not always a longer ride', () => {
  it('an array that trips is held out above 92 %: who starts at 93 % is dark before who starts at 82 %', () => {
    // 100 minutes of sun with 0.8 kW to spare, then none.
    const given = { minutes: 2400, critical: 0.39, ac: (i: number) => (i < 100 ? 1.25 : 0) }
    const arrays = [solar('trips', 60)]
    const full = firstWithout(liveHouse({ arrays }, given, 0.93))
    const less = firstWithout(liveHouse({ arrays }, given, 0.82))
    // By hand: 0.93 drains at 0.45 kW for 100 minutes to 8.55 kWh and never sees the sun;
    // 8.2 kWh gains 0.8 kW for 75 minutes to 9.2, then drains for 24.
    expect(full).toBe(Math.ceil((9.3 - 1) / (0.45 / 60)))
    expect(less).toBeGreaterThan(full + 40)
  })
})

describe('comfort loads', () => {
  it('go at 40 % and return at 60 %, not between', () => {
    // Drain of 0.75 + 0.45 kW; then DC-coupled sun of 2 kW.
    const t = liveHouse(
      { arrays: [DC_ARRAY] },
      { minutes: 600, critical: 0.39, comfort: [0.75], dc: (i) => (i >= 200 ? 2 : 0) },
      0.5,
    )
    const [off] = minutesOf(t, Event.comfortOff)
    expect(off).toBe(Math.ceil(1 / (1.2 / 60)))
    const [on] = minutesOf(t, Event.comfortOn)
    expect(t.startStoredKwh[on!]).toBeGreaterThanOrEqual(6)
    expect(t.startStoredKwh[on! - 1]).toBeLessThan(6)
    for (let i = off!; i < on!; i++) expect(t.servedComfortKw[i]).toBe(0)
  })
})

describe('overload', () => {
  const day = at('08:00')

  it('collapses, retries three times a minute apart, then waits for the person', () => {
    const heavy = (i: number): number => (i >= day && i < day + 20 ? 6 : 0.39)
    const t = liveHouse({ person: PERSON }, { minutes: 720, critical: heavy }, 1)
    expect(minutesOf(t, Event.overload)).toEqual([day, day + 1, day + 2, day + 3])
    expect(t.states[day + 10]).toBe('off, overload')
    // Called in the minute of the fourth trip, 30 minutes away.
    expect(minutesOf(t, Event.loadsBack).at(-1)).toBe(day + 3 + 30)
    expect(t.servedCriticalKw[day + 32]).toBe(0)
    expect(t.servedCriticalKw[day + 33]).toBeCloseTo(0.39, 12)
  })

  it('a short one is over at the next try', () => {
    const heavy = (i: number): number => (i === day ? 6 : 0.39)
    const t = liveHouse({ person: PERSON }, { minutes: 720, critical: heavy }, 1)
    expect(minutesOf(t, Event.overload)).toEqual([day])
    expect(t.servedCriticalKw[day]).toBe(0)
    expect(t.servedCriticalKw[day + 1]).toBeCloseTo(0.39, 12)
  })

  it('a minute that held gives the retries back, a return of the grid too', () => {
    // Three minutes of overload, each hour again: the fourth trip never comes.
    const heavy = (i: number): number => (i % 60 < 3 && i >= 60 && i < 240 ? 6 : 0.39)
    const t = liveHouse({}, { minutes: 720, critical: heavy }, 1)
    expect(minutesOf(t, Event.overload)).toEqual([60, 61, 62, 120, 121, 122, 180, 181, 182])
    expect(t.servedCriticalKw[183]).toBeCloseTo(0.39, 12)
    // Three tries used when the grid comes; after it another three, at once.
    const gridUp = (i: number): boolean => i === 63
    const long = (i: number): number => (i >= 60 && i < 67 ? 6 : 0.39)
    const again = liveHouse({}, { minutes: 720, critical: long, gridUp }, 1)
    expect(minutesOf(again, Event.overload)).toEqual([60, 61, 62, 64, 65, 66])
    expect(again.servedCriticalKw[67]).toBeCloseTo(0.39, 12)
  })

  it('with nobody there it stays dark', () => {
    const heavy = (i: number): number => (i >= day && i < day + 20 ? 6 : 0.39)
    const t = liveHouse({}, { minutes: 1440, critical: heavy }, 1)
    expect(t.servedCriticalKw.slice(day).some((kw) => kw > 0)).toBe(false)
  })

  it('a start inside the minute counts, not the mean', () => {
    const peakKva = (_: number, i: number): number => (i === day ? 10.1 : 0.39)
    const t = liveHouse({}, { minutes: 720, critical: 0.39, peakKva }, 1)
    expect(minutesOf(t, Event.overload)).toEqual([day])
    const just = liveHouse({}, { minutes: 720, critical: 0.39, peakKva: () => 10 }, 1)
    expect(minutesOf(just, Event.overload)).toEqual([])
  })

  it('the stack that gives less than the inverter is the limit', () => {
    const stack = {
      module: { usableKwh: 10, chargeKw: 2, dischargeKw: 2 },
      modules: 1,
      health: 1,
      electronicsW: 10,
      selfDischargePerMonth: 0,
    }
    // 2 kW less 60 W of losses.
    const gives = (critical: number): number =>
      liveHouse({ stack }, { minutes: 1, critical }, 1).servedCriticalKw[0]!
    expect(gives(1.939)).toBeCloseTo(1.939, 12)
    expect(gives(1.941)).toBe(0)
  })
})

describe('a generator', () => {
  it('automatic: wanted at 25 %, ready after 140 s, stops at 80 %', () => {
    const generator = { ...GENERATOR }
    const t = liveHouse({ generator }, { minutes: 1440, critical: 0.39 }, 0.26)
    const [called] = minutesOf(t, Event.generatorCalled)
    expect(called).toBe(Math.ceil(0.1 / (0.45 / 60)))
    const [on] = minutesOf(t, Event.generatorOn)
    expect(on).toBe(called! + 3)
    const [off] = minutesOf(t, Event.generatorOff)
    expect(t.startStoredKwh[off!]).toBeGreaterThanOrEqual(8)
    expect(t.startStoredKwh[off! - 1]).toBeLessThan(8)
    expect(firstWithout(t)).toBe(-1)
  })

  it('gives load and charge up to 0.8 of its rating and burns by its data sheet', () => {
    // 2.4 kW: 0.39 to the load, 2.01 in; 0.8 of the way from half (0.95) to full (1.5) load at
    // 2.4/3: 0.95 + 0.55 x 0.6 = 1.28 l/h. Into the stack 2.01 - 0.06 = 1.95 kW.
    const t = liveHouse({ generator: GENERATOR }, { minutes: 200, critical: 0.39 }, 0.25)
    const [on] = minutesOf(t, Event.generatorOn)
    expect(t.generatorKw[on!]).toBeCloseTo(2.4, 8)
    expect(t.batteryKw[on!]).toBeCloseTo(-1.95, 8)
    expect((t.fuelL[on!]! - t.fuelL[on! + 60]!) / 1).toBeCloseTo(1.28, 6)
  })

  it('never runs together with AC-coupled solar, which waits again afterwards', () => {
    const arrays = [solar('throttles', 180)]
    const given = { minutes: 1440, critical: 0.39, ac: (i: number) => (i > 60 ? 0.2 : 0) }
    const t = liveHouse({ generator: GENERATOR, arrays }, given, 0.3)
    const [on] = minutesOf(t, Event.generatorOn)
    const [off] = minutesOf(t, Event.generatorOff)
    expect(t.solarUsedKw[on! - 1]).toBeCloseTo(0.2, 8)
    expect(t.solarUsedKw.slice(on!, off! + 3).some((kw) => kw > 0)).toBe(false)
    expect(t.solarUsedKw[off! + 3]).toBeCloseTo(0.2, 8)
  })

  it('runs its least time even where the stop charge is there sooner', () => {
    const generator = { ...GENERATOR, stopAt: 0.26, leastRunMinutes: 45 }
    const t = liveHouse({ generator }, { minutes: 300, critical: 0.39 }, 0.25)
    const [on] = minutesOf(t, Event.generatorOn)
    expect(minutesOf(t, Event.generatorOff)[0]).toBe(on! + 45)
  })

  it('by hand: the person comes 30 minutes after the call, by day', () => {
    const generator = { ...GENERATOR, start: 'by hand' }
    // 10:00 from midnight at 0.45 kW: 4.5 kWh.
    const t = liveHouse(
      { generator, person: PERSON },
      { minutes: 1440, critical: 0.39 },
      (2.5 + 4.5) / 10,
    )
    const [called] = minutesOf(t, Event.generatorCalled)
    expect(called).toBe(at('10:00'))
    expect(minutesOf(t, Event.generatorOn)[0]).toBe(at('10:33'))
  })

  it('by hand: called at night it waits for the hours of the person', () => {
    const generator = { ...GENERATOR, start: 'by hand' }
    const t = liveHouse({ generator, person: PERSON }, { minutes: 1440, critical: 0.39 }, 0.26)
    expect(minutesOf(t, Event.generatorCalled)[0]).toBeLessThan(at('01:00'))
    expect(minutesOf(t, Event.generatorOn)[0]).toBe(at('07:33'))
    // 1.6 kWh above 10 %: dark from 213 minutes until then.
    expect(firstWithout(t)).toBe(Math.ceil(1.6 / (0.45 / 60)))
    expect(t.servedCriticalKw[at('07:32')]).toBe(0)
    expect(t.servedCriticalKw[at('07:33')]).toBeCloseTo(0.39, 12)
  })

  it('by hand: the call is forgotten once the sun has lifted the charge, and made anew', () => {
    const generator = { ...GENERATOR, start: 'by hand', startAt: 0.25 }
    // Below 25 % at 08:00; DC-coupled sun for 20 minutes; below again later.
    const t = liveHouse(
      { generator, person: PERSON, arrays: [DC_ARRAY] },
      {
        minutes: 1440,
        critical: 0.39,
        dc: (i) => (i >= at('08:05') && i < at('08:25') ? 2 : 0),
      },
      (2.5 + 8 * 0.45) / 10,
    )
    const calls = minutesOf(t, Event.generatorCalled)
    expect(calls[0]).toBe(at('08:00'))
    expect(calls).toHaveLength(2)
    expect(minutesOf(t, Event.generatorOn)[0]).toBe(calls[1]! + 33)
  })

  it('is not called between the tries after an overload, nor by one that waits to be reset', () => {
    const heavy = (from: number, to: number) => (i: number) => (i >= from && i < to ? 6 : 0.39)
    const short = liveHouse({ generator: GENERATOR }, { minutes: 90, critical: heavy(60, 62) }, 1)
    expect(minutesOf(short, Event.overload)).toEqual([60, 61])
    expect(minutesOf(short, Event.generatorCalled)).toEqual([])
    const waits = liveHouse({ generator: GENERATOR }, { minutes: 720, critical: heavy(60, 64) }, 1)
    expect(waits.states[700]).toBe('off, overload')
    expect(minutesOf(waits, Event.generatorCalled)).toEqual([])
  })

  it('goes on with its cans where its tank ran empty before its time', () => {
    // 0.5 l of tank last some 24 minutes; a person by day fills it although 25 % is long passed.
    const generator = { ...GENERATOR, tankL: 0.5, cansL: 1, startAt: 0.25 }
    const t = liveHouse({ generator, person: PERSON }, { minutes: 1440, critical: 0.39 }, 0.24)
    const [dry] = minutesOf(t, Event.fuelOut)
    expect(t.startStoredKwh[dry! + 1]).toBeGreaterThan(2.5)
    expect(minutesOf(t, Event.poured)[0]).toBe(at('07:30'))
    expect(minutesOf(t, Event.generatorOn)[1]).toBe(at('07:30') + 3)
  })

  it('stalls at a start that is more than it gives for a second: the island goes with it', () => {
    const peakKva = (_: number, i: number): number => (i === 30 ? 4.6 : 0.5)
    const scene = { minutes: 60, critical: 0.39, peakKva, formingKva: () => 0.5 }
    const house = { generator: GENERATOR, inverter: { ...INVERTER, startingKva: 12 } }
    const stalls = liveHouse(house, scene, 0.2)
    expect(minutesOf(stalls, Event.overload)).toEqual([30])
    const strong = { ...house, generator: { ...GENERATOR, startingKva: 4.6 } }
    expect(minutesOf(liveHouse(strong, scene, 0.2), Event.overload)).toEqual([])
  })

  it('a call is called off, and told, where the charge is back before anybody came', () => {
    const generator = { ...GENERATOR, start: 'by hand' }
    const person = { ...PERSON, from: '00:00', to: '24:00' }
    const t = liveHouse(
      { generator, person, arrays: [DC_ARRAY] },
      { minutes: 60, critical: 0.39, dc: (i) => (i >= 10 ? 3 : 0) },
      0.25,
    )
    expect(minutesOf(t, Event.generatorCalled)).toEqual([0])
    expect(minutesOf(t, Event.generatorCallOff)).toHaveLength(1)
    expect(minutesOf(t, Event.generatorOn)).toEqual([])
  })

  it('burns by straight lines between no, half and full load', () => {
    const set = { ratedKw: 4, litresPerHour: { none: 0.6, half: 1, full: 1.8 } }
    for (const [kw, litres] of [
      [0, 0.6],
      [1, 0.8],
      [2, 1],
      [2.2, 1.08],
      [3, 1.4],
      [4, 1.8],
    ] as const) {
      expect(generatorLitresPerHour(set, kw)).toBeCloseTo(litres, 12)
    }
  })

  it('out of fuel it stops, and is not wanted again', () => {
    // Half a litre at 1.28 l/h: 23.4 minutes.
    const generator = { ...GENERATOR, tankL: 0.5 }
    const t = liveHouse({ generator }, { minutes: 1440, critical: 0.39 }, 0.25)
    const [on] = minutesOf(t, Event.generatorOn)
    expect(minutesOf(t, Event.fuelOut)).toEqual([on! + 24])
    expect(minutesOf(t, Event.generatorOn)).toEqual([on])
    expect(t.fuelL[1439]).toBe(0)
    expect(t.states[1439]).toBe('off, empty')
  })

  it('what it cannot carry of comfort is left out', () => {
    const t = liveHouse(
      { generator: GENERATOR, comfort: { dropBelow: 0.2, returnAt: 0.22 } },
      { minutes: 60, critical: 0.39, comfort: [3] },
      0.25,
    )
    const [on] = minutesOf(t, Event.generatorOn)
    expect(minutesOf(t, Event.generatorOverload)).toContain(on)
    expect(t.servedComfortKw[on!]).toBe(0)
    expect(t.servedCriticalKw[on!]).toBeCloseTo(0.39, 12)
  })

  it('beside bright DC-coupled sun it idles: the sun is not pushed into it', () => {
    // Frost: nothing can be charged, so it runs until its fuel is gone or the charge is there.
    const t = liveHouse(
      { generator: GENERATOR, arrays: [DC_ARRAY] },
      { minutes: 60, critical: 0.39, dc: 3, placeC: -5 },
      0.24,
    )
    const [on] = minutesOf(t, Event.generatorOn)
    expect(t.generatorKw[on!]).toBeCloseTo(0, 8)
    expect(t.solarUsedKw[on!]).toBeCloseTo(0.45, 8)
  })
})

describe('the sun of a day', () => {
  it('serves the load alone where it is enough, the stack rests at full', () => {
    const t = liveHouse(
      { arrays: [DC_ARRAY] },
      { minutes: 1440, critical: 0.39, dc: (i) => (between(i, '09:00', '15:00') ? 3 : 0) },
      1,
    )
    // 9 h at 0.45 kW are 4.05 kWh; charged again by 15:00, and 9 h more.
    expect(t.storedKwh[at('09:00') - 1]).toBeCloseTo(5.95, 7)
    expect(t.storedKwh[at('15:00') - 1]).toBeCloseTo(10, 8)
    expect(t.storedKwh[1439]).toBeCloseTo(5.95, 7)
  })
})
