// What the house wants, line by line of the survey; energies and hours by hand.

import {
  calendarOf,
  checkHouse,
  type Demand,
  demandOf,
  type LoadInput,
  monthRange,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const LONDON = calendarOf(2025, 'Europe/London')

type Line = Partial<LoadInput> & { name?: string }

/** Demand of a critical load beside a steady one of 1 W. */
function demand(line: Line, calendar = UTC_2025, house = {}): Demand {
  const loads = [
    { name: 'steady', tier: 'critical', w: 1 },
    { name: 'it', tier: 'critical', ...line },
  ]
  return demandOf(checkHouse(plainHouse({ loads, ...house })), calendar)
}

function column(line: Line, calendar = UTC_2025, house = {}): Float64Array {
  return demand(line, calendar, house).critical[1]!.kw
}

/** Powers are rounded to 1e-6 kW, half of which is 0.004 kWh a year and piece. */
function kwh(kw: Float64Array, from = 0, to = kw.length): number {
  return kw.subarray(from, to).reduce((sum, value) => sum + value / 60, 0)
}

describe('a steady load', () => {
  it('of 60 W takes 525.6 kWh a year, three of it three times as much', () => {
    expect(kwh(column({ w: 60 }))).toBeCloseTo(525.6, 1)
    expect(kwh(column({ w: 60, pieces: 3 }))).toBeCloseTo(3 * 525.6, 1)
  })

  it('in the heating season takes 212 days of 365', () => {
    const kw = column({ w: 60, runs: 'heating season' })
    expect(kwh(kw)).toBeCloseTo((212 * 24 * 60) / 1000, 2)
    const [may] = monthRange(UTC_2025, 5)
    expect([kw[may - 1]! > 0, kw[may]]).toEqual([true, 0])
  })

  it('in the south the season is the other one, and months of its own go first', () => {
    const southern = {
      site: { latitudeDeg: -46, longitudeDeg: 168, elevationM: 0, timezone: 'UTC' },
    }
    const at = (house: object, month: number): boolean =>
      column({ w: 60, runs: 'heating season' }, UTC_2025, house)[monthRange(UTC_2025, month)[0]]! >
      0
    expect([at(southern, 1), at(southern, 7)]).toEqual([false, true])
    expect([at({ heatingMonths: [3] }, 3), at({ heatingMonths: [3] }, 1)]).toEqual([true, false])
  })
})

describe('a thermostat', () => {
  const cycle = { onMinutes: 14, offMinutes: 31 }

  it('is on for its share: 14 minutes of 45', () => {
    const kw = column({ w: 90, cycle })
    // 525 600 minutes are 11 680 whole cycles.
    expect(kw.filter((value) => value > 0)).toHaveLength(11_680 * 14)
    let longest = 0
    for (let i = 0, run = 0; i < kw.length; i++) {
      run = kw[i]! > 0 ? run + 1 : 0
      longest = Math.max(longest, run)
    }
    expect(longest).toBe(14)
  })

  it('begins at a chance of its own: two pieces, and two names, do not run in step', () => {
    const two = column({ w: 90, cycle, pieces: 2 })
    expect(new Set(two).size).toBe(3)
    const other = column({ w: 90, cycle, name: 'other' })
    expect(other).not.toEqual(column({ w: 90, cycle }))
    expect(column({ w: 90, cycle })).toEqual(column({ w: 90, cycle }))
    expect(column({ w: 90, cycle }, UTC_2025, { seed: 2 })).not.toEqual(column({ w: 90, cycle }))
  })
})

describe('hours and weekdays', () => {
  it('a span over midnight: 21:00 to 08:00 is 11 hours a day', () => {
    const kw = column({ w: 100, at: ['21:00-08:00'] })
    expect(kwh(kw)).toBeCloseTo(365 * 1.1, 2)
    expect([kw[0]! > 0, kw[479]! > 0, kw[480], kw[1259], kw[1260]! > 0]).toEqual([
      true,
      true,
      0,
      0,
      true,
    ])
  })

  it('two spans that overlap count once', () => {
    expect(kwh(column({ w: 100, at: ['06:00-08:00', '07:00-09:00'] }))).toBeCloseTo(365 * 0.3, 2)
  })

  it('only on the named weekdays: 2025 has 52 Saturdays, 52 Sundays and 53 Wednesdays', () => {
    expect(kwh(column({ w: 1000, days: ['sat', 'sun'] }))).toBeCloseTo(104 * 24, 2)
    expect(kwh(column({ w: 1000, days: ['wed'] }))).toBeCloseTo(53 * 24, 2)
  })

  it('are those of the clock on the wall: 06:30 in London is 05:30 UTC in July', () => {
    const kw = column({ w: 100, at: ['06:30-08:30'] }, LONDON)
    const first = (month: number): number => {
      const [from] = monthRange(LONDON, month)
      return kw.subarray(from).findIndex((value) => value > 0) + from
    }
    expect(first(1)).toBe(390)
    expect((first(7) % 1440) / 60).toBe(5.5)
    expect(kwh(kw)).toBeCloseTo(365 * 0.2, 2)
  })

  it('an hour that spring leaves out is not there, one that autumn repeats is there twice', () => {
    expect(kwh(column({ w: 1000, at: ['01:00-02:00'] }, LONDON))).toBeCloseTo(364 + 1, 2)
    expect(kwh(column({ w: 1000, at: ['01:00-02:00'], days: ['sun'] }, LONDON))).toBeCloseTo(52, 2)
    const kw = column({ w: 1000, at: ['01:00-02:00'] }, LONDON)
    const of = (month: number, day: number): number => {
      const d = LONDON.days.find((x) => x.month === month && x.day === day)!
      return kwh(kw, d.start, d.end)
    }
    expect([of(3, 30), of(10, 26)].map((value) => Math.round(value * 1000))).toEqual([0, 2000])
  })
})

describe('tiers and steps', () => {
  const loads = [
    { name: 'a', tier: 'critical', w: 100 },
    { name: 'b', tier: 'comfort', w: 200, dropOrder: 2 },
    { name: 'c', tier: 'comfort', w: 400, dropOrder: 1 },
    { name: 'd', tier: 'comfort', w: 800, dropOrder: 2 },
    { name: 'e', tier: 'gridOnly', w: 1600 },
  ]
  const d = demandOf(checkHouse(plainHouse({ loads })), UTC_2025)

  it('go off in the order asked for; what is for the grid only is in none', () => {
    expect(d.comfortNames).toEqual([['c'], ['b', 'd']])
    expect(d.criticalKw[0]).toBeCloseTo(0.1, 5)
    expect(d.comfortKw.map((kw) => Math.round(kw[0]! * 1000))).toEqual([400, 1000])
  })
})

describe('apparent power inside a minute', () => {
  it('is what runs over its power factor, and the hardest single start', () => {
    const loads = [
      {
        name: 'pump',
        tier: 'critical',
        w: 750,
        at: ['06:00-07:00'],
        startingMultiple: 6,
        powerFactor: 0.75,
      },
      {
        name: 'fridge',
        tier: 'critical',
        w: 140,
        at: ['06:00-07:00'],
        startingMultiple: 5,
        powerFactor: 0.7,
      },
      { name: 'light', tier: 'comfort', w: 90, powerFactor: 0.9 },
    ]
    const { peakKva } = demandOf(checkHouse(plainHouse({ loads })), UTC_2025)
    // Pump 1 kVA, 5 more in the start; fridge 0.2 kVA, 0.8 more; light 0.1 kVA.
    expect(peakKva[0]![360]).toBeCloseTo(1 + 5 + 0.2 + 0.1, 4)
    expect(peakKva[0]![361]).toBeCloseTo(1.3, 4)
    expect(peakKva[1]![360]).toBeCloseTo(6.2, 4)
    expect(peakKva[1]![359]).toBe(0)
    expect(peakKva[0]![359]).toBeCloseTo(0.1, 4)
  })
})
