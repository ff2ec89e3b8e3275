import {
  autonomyCurve,
  type CurveRides,
  checkHouse,
  hoursTo,
  leastCurve,
  onGrid,
  pass,
  plainGap,
  ridesOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, islandOf, plainHouse, solar } from '../plain-house.js'

const HORIZON = 48 * 60

/** Rides of a day's starts: stored energy in units of half a kilowatt for a minute. */
function sunnyDays(): CurveRides {
  const full = 6 * 2 * 60
  const sunUp = (minute: number) => minute % 1440 >= 12 * 60 && minute % 1440 < 16 * 60
  const minutes = Int32Array.from({ length: 1440 }, (_, start) => {
    let stored = full
    let now = start
    while (stored > 0) {
      stored = Math.min(full, stored - 1 + (sunUp(now) ? 5 : 0))
      now++
    }
    return now - start
  })
  return { minutes, beyond: new Uint8Array(1440) }
}

// 6 kWh, full at the start, 0.5 kW of load, 2.5 kW of sun from 12:00 to 16:00, every day.
//
// The battery alone lasts 6 / 0.5 = 12 h. Sun leaves 2 kW over for 4 h = 8 kWh, more than it
// holds, so whoever reaches noon is full at 16:00 and lasts 12 h more, to 4:00 = hour 28.
// A start at t in (0, 16] hours reaches noon (t > 0: the battery outlasts the 12 - t hours to it)
// or is in the sun already: it lasts 28 - t hours. A start at t in (16, 24] has 12 hours, which
// end before the next noon. So a ride of N hours, 12 < N <= 28, is had by 0 < t <= 28 - N:
// (28 - N) hours of 24. Twelve hours are had by all; more than 28 by none.
describe('a curve that can be derived by hand', () => {
  const hours = hoursTo(30)
  const { share, starts } = autonomyCurve([sunnyDays()], hours, HORIZON)

  it('is (28 - N) / 24 for 12 < N <= 28, 1 before and 0 after', () => {
    expect(starts).toBe(1440)
    for (const [i, n] of hours.entries()) {
      const by = n <= 12 ? 1 : n <= 28 ? (28 - n) / 24 : 0
      expect(share[i], `share at ${n} h`).toBe(by)
    }
  })

  it('keeps the level at the length of a ride and falls a minute later', () => {
    const at = autonomyCurve([sunnyDays()], [12, 12 + 1 / 60], HORIZON)
    expect([...at.share]).toEqual([1, (16 * 60 - 1) / 1440])
  })
})

/** The same days on a lossless island, all powers times `scale`: columns, the pass, spells, rides. */
function islandDays(coupled: 'ac' | 'dc', scale: number): CurveRides {
  const house = checkHouse(
    plainHouse({
      arrays: [coupled === 'ac' ? solar('throttles', 0) : DC_ARRAY],
      inverter: { ratedKva: 5, idleW: 0, roundTrip: 1, loadsOffAt: 0 },
      // What slows charging near full still takes all the sun that is left over.
      stack: {
        module: { usableKwh: 6 * scale, chargeKw: 50, dischargeKw: 5 },
        ...{ modules: 1, health: 1, electronicsW: 0, selfDischargePerMonth: 0 },
      },
    }),
  )
  const sunUp = (minute: number): boolean => minute % 1440 >= 12 * 60 && minute % 1440 < 16 * 60
  const { columns, rules } = islandOf({
    ...{ house, minutes: 1440 + HORIZON, critical: 0.5 * scale },
    [coupled]: (minute: number) => (sunUp(minute) ? 2.5 * scale : 0),
  })
  const spells = pass(columns, rules, 1440, onGrid(6 * scale), HORIZON)
  const pump = {
    ...{ name: 'pump', consequence: plainGap(0) },
    ...{ wantedIn: new Int32Array(1440), wantedUpTo: null },
  }
  return ridesOf(spells, [pump], 0, HORIZON)
}

describe.each(['ac', 'dc'] as const)('the same through the whole chain, %s-coupled', (coupled) => {
  const hours = hoursTo(30)
  const byHand = (n: number): number => (n <= 12 ? 1 : n <= 28 ? (28 - n) / 24 : 0)

  it('is the same to the start where a minute of load is a whole number on the energy grid', () => {
    // 0.9375 x 0.5 kW is 1/128 kWh a minute.
    const curve = autonomyCurve([islandDays(coupled, 0.9375)], hours, HORIZON)
    expect([curve.starts, curve.beyondShare]).toEqual([1440, 0])
    for (const [i, n] of hours.entries()) expect(curve.share[i], `at ${n} h`).toBe(byHand(n))
  })

  it('and with 6 kWh and 0.5 kW but for the one start that reaches noon with nothing left', () => {
    // Midnight: the grid of 2^-36 kWh leaves it a billionth of a kilowatt-hour.
    const { share } = autonomyCurve([islandDays(coupled, 1)], hours, HORIZON)
    for (const [i, n] of hours.entries()) {
      expect([0, 1], `at ${n} h`).toContain(Math.round(1440 * (share[i]! - byHand(n))))
    }
  })
})

const FOUR: CurveRides = {
  minutes: Int32Array.of(60, 120, 180, 600),
  beyond: Uint8Array.of(0, 0, 0, 1),
}

describe('starts that outlast the horizon', () => {
  it('count as riding up to it, and past it the share is not known', () => {
    const curve = autonomyCurve([FOUR], [1, 2, 2.5, 10, 10.1], 600)
    expect([...curve.share]).toEqual([1, 0.75, 0.5, 0.25, Number.NaN])
    expect(curve.horizonHours).toBe(10)
    expect(curve.beyondShare).toBe(0.25)
  })

  it('leave nothing open where every ride has ended', () => {
    const ended = { minutes: Int32Array.of(60, 120), beyond: new Uint8Array(2) }
    expect([...autonomyCurve([ended], [2, 500], 600).share]).toEqual([0.5, 0])
  })
})

describe('several batches', () => {
  it('count each start once, in whatever batch it lies', () => {
    const one = autonomyCurve([FOUR], hoursTo(10), 600)
    const split = [0, 1, 2, 3].map((s) => ({
      minutes: FOUR.minutes.slice(s, s + 1),
      beyond: FOUR.beyond.slice(s, s + 1),
    }))
    expect(autonomyCurve(split, hoursTo(10), 600)).toEqual(one)
  })

  it('count only the starts that are marked', () => {
    const marked = { ...FOUR, counted: Uint8Array.of(1, 0, 0, 1) }
    const curve = autonomyCurve([marked, { ...FOUR, counted: new Uint8Array(4) }], [2], 600)
    expect(curve).toMatchObject({ starts: 2, beyondShare: 0.5 })
    expect(curve.share[0]).toBe(0.5)
  })

  it('tell no share without a start', () => {
    const { share, beyondShare } = autonomyCurve([], [1, 11], 600)
    expect([...share, beyondShare]).toEqual([Number.NaN, Number.NaN, Number.NaN])
  })
})

describe('leastCurve', () => {
  it('takes the least at each hour, of the curves that have starts', () => {
    const early = { minutes: Int32Array.of(60, 300), beyond: new Uint8Array(2) }
    const late = { minutes: Int32Array.of(120, 120), beyond: new Uint8Array(2) }
    const curves = [[early], [late], []].map((rides) => autonomyCurve(rides, [1, 2, 3], 600))
    expect([...leastCurve(curves).share]).toEqual([1, 0.5, 0])
  })

  it('refuses to choose among none', () => {
    expect(() => leastCurve([])).toThrow('curves must be at least one with starts, got 0')
  })
})

describe('the hours', () => {
  it('begin at 0 and end with the last', () => {
    expect([...hoursTo(1)]).toEqual([0, 0.25, 0.5, 0.75, 1])
    expect(hoursTo(72, 1)).toHaveLength(73)
  })

  it('are refused below 0, and where missing', () => {
    expect(() => autonomyCurve([FOUR], [-1], 600)).toThrow('hours must be numbers >= 0 [h], got -1')
    expect(() => autonomyCurve([FOUR], [Number.NaN], 600)).toThrow('got NaN')
  })

  it('that are a sum of parts are not one minute more', () => {
    // 1.1 h is 66 minutes, though 1.1 * 60 is a little above 66 in doubles.
    const sixtySix = { minutes: Int32Array.of(66), beyond: new Uint8Array(1) }
    expect(autonomyCurve([sixtySix], [1.1], 600).share[0]).toBe(1)
  })
})
