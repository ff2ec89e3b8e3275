// When cuts tend to start, and the figures of a month made of rides written by hand.

import {
  calendarOf,
  isEvening,
  type Prepared,
  plainGap,
  type RideLoad,
  type Sky,
  skyFigures,
  wilson95,
  windyDays,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { UTC_2025 } from '../plain-house.js'

describe('evening', () => {
  it('is 15 to 21 h on the clock on the wall, summer and winter', () => {
    const london = calendarOf(2025, 'Europe/London')
    const hours = (month: number): number[] => {
      const day = london.days.find((d) => d.month === month && d.day === 10)!
      return Array.from({ length: 24 }, (_, h) => h).filter((h) =>
        isEvening(london, day.start + 60 * h),
      )
    }
    expect(hours(1)).toEqual([15, 16, 17, 18, 19, 20])
    expect(hours(7)).toEqual([15, 16, 17, 18, 19, 20])
    const { start } = london.days[9]!
    expect([899, 900, 1259, 1260].map((m) => isEvening(london, start + m))).toEqual([
      false,
      true,
      true,
      false,
    ])
  })
})

describe('windy', () => {
  it('without a wind record is a day no brighter than 0.8 of the mean', () => {
    const days = [0.79, 0.8, 0.81, 1.4].map((brightness) => ({ brightness, windMs: Number.NaN }))
    expect(windyDays(days)).toEqual([true, true, false, false])
  })

  it('with one is the windiest twentieth, at least a day', () => {
    const days = Array.from({ length: 60 }, (_, d) => ({ brightness: 1, windMs: d % 60 }))
    expect(windyDays(days).flatMap((windy, d) => (windy ? [d] : []))).toEqual([57, 58, 59])
    expect(windyDays(days.slice(0, 3))).toEqual([false, false, true])
  })
})

describe('Wilson’s interval', () => {
  // R. G. Newcombe, Statist. Med. 17, 857-872 (1998), Table I, method 3.
  it.each([
    [81, 263, 0.2553, 0.3662],
    [15, 148, 0.0624, 0.1605],
    [0, 20, 0, 0.1611],
    [1, 29, 0.0061, 0.1718],
  ])('%i of %i', (k, n, low, high) => {
    const [a, b] = wilson95(k, n)
    expect(Math.abs(a - low)).toBeLessThanOrEqual(0.5e-4)
    expect(Math.abs(b - high)).toBeLessThanOrEqual(0.5e-4)
  })

  it('of 15 of 20 years is 0.53 to 0.89, of 30 of 30 0.89 to 1', () => {
    expect(wilson95(15, 20).map((x) => x.toFixed(2))).toEqual(['0.53', '0.89'])
    expect(wilson95(30, 30).map((x) => x.toFixed(2))).toEqual(['0.89', '1.00'])
  })
})

describe('the figures of a month', () => {
  const prepared = {
    calendar: UTC_2025,
    house: { gateway: { reconnectSeconds: 0 } },
  } as Prepared
  const load: RideLoad = {
    ...{ name: 'pump', consequence: plainGap(0) },
    ...{ wantedIn: new Int32Array(1), wantedUpTo: null },
  }
  const sky = (kind: Sky['kind'], years: number, hasExtremes = true): Sky =>
    ({ kind, years, hasExtremes }) as Sky

  /** 1440 starts of 1 January: start s rides s minutes; those of one hour count as windy. */
  function figures(of: Sky, hours: number, horizon = 1440) {
    const minutes = Int32Array.from({ length: 1440 }, (_, s) => Math.min(s, horizon))
    const batch = {
      year: 3,
      from: 0,
      rides: {
        minutes,
        beyond: Uint8Array.from(minutes, (m) => (m >= horizon ? 1 : 0)),
        endedBy: Int16Array.from(minutes, (m) => (m >= horizon ? -1 : 0)),
        byLoad: [minutes],
        lostAfter: [minutes],
      },
      without: new Int32Array(1440).fill(30),
      lostAtOnce: 72,
      windy: Uint8Array.from(minutes, (_, s) => (s >= 60 && s < 120 ? 1 : 0)),
    }
    return skyFigures(prepared, { sky: of, batches: [batch], horizon }, [load], {
      hours,
      winters: 10,
    })
  }

  it('the share of each pattern is that of its own starts, the headline the least', () => {
    // 16 hours: 480 of 1440 starts hold; of 15 to 21 h the 300 from 16 h of 360; of the windy none.
    const found = figures(sky('dull', 200), 16)
    expect(found.shareByPattern.any).toBeCloseTo(480 / 1440, 12)
    expect(found.shareByPattern.evening).toBeCloseTo(300 / 360, 12)
    expect([found.shareByPattern.windy, found.share]).toEqual([0, 0])
    expect(found.startsByPattern).toEqual({ any: 1440, evening: 360, windy: 60 })
    expect(found.loads[0]).toMatchObject({ name: 'pump', share: 0, firstToFail: true })
  })

  it('worst, 1 in 20, middle and best by the lower nearest rank', () => {
    const found = figures(sky('dull', 200), 16)
    expect(found.worstHours).toBe(0)
    // 0.05 x 1439 = 71.95, 0.5 x 1439 = 719.5.
    expect(found.p05Hours * 60).toBeCloseTo(71, 9)
    expect(found.medianHours * 60).toBeCloseTo(719, 9)
    expect(found.bestHours * 60).toBeCloseTo(1439, 9)
    expect([found.worstStart, found.worstYear]).toEqual(['2025-01-01T00:00Z', 3])
    expect(found.hoursWithoutMean).toBeCloseTo(0.5, 12)
    expect(found.changeoverLostShare).toBeCloseTo(0.05, 12)
    expect(found.atLeastHours).toBe(false)
    expect(figures(sky('dull', 200), 16, 1200).atLeastHours).toBe(true)
  })

  it('a worst case has a return period or is not said', () => {
    for (const of of [sky('typical', 1), sky('file', 1), sky('file', 1, false)]) {
      const found = figures(of, 16)
      expect([found.worstHours, found.worstStart, found.worstYear]).toEqual([null, null, null])
      expect(found.shareLow ?? null).toBe(null)
    }
    expect(figures(sky('none', 1), 16).worstHours).toBe(0)
    expect(figures(sky('file', 3), 16).worstHours).toBe(0)
    const typical = figures(sky('typical', 30), 16)
    expect([typical.worstHours, typical.worstHoursReturnWinters]).toEqual([0, 30])
    expect([typical.shareLow, typical.shareHigh]).toEqual([...wilson95(0, 30)])
  })
})
