// A measured load on the house's calendar: energy kept, weekdays kept, nothing counted twice.

import { calendarOf, checkHouse, type Demand, demandOf, type MeterRecord } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const DAY_MS = 86_400_000

function record(startMs: number, stepMinutes: number, kw: Float64Array): MeterRecord {
  return { name: 'meter.csv', startMs, stepMinutes, kw, notes: [] }
}

/** Quarter hours of a year, each with a power of its own below 2 kW. */
function year(): Float64Array {
  return Float64Array.from({ length: 365 * 96 }, (_, i) => ((i * 7919) % 2003) / 1024)
}

function demand(meter: MeterRecord, more: object[] = [], contains?: string[]): Demand {
  const loads = [
    { name: 'whole', tier: 'critical', file: 'meter.csv', ...(contains && { contains }) },
    ...more,
  ]
  const house = checkHouse(plainHouse({ loads }))
  return demandOf(house, UTC_2025, { meters: new Map([['meter.csv', meter]]) })
}

const kwh = (kw: Float64Array): number => kw.reduce((sum, value) => sum + value / 60, 0)

/** Mean of the interval of a column that begins with a minute. [kW] */
const meanAt = (kw: Float64Array, from: number, minutes: number): number =>
  kwh(kw.subarray(from, from + minutes)) * (60 / minutes)

describe('a record of the house’s own year', () => {
  const meter = record(Date.UTC(2025, 0, 1), 15, year())

  it('is taken interval by interval, its energy kept', () => {
    const { kw } = demand(meter).critical[0]!
    expect(Math.abs(kwh(kw) - meter.kw.reduce((sum, v) => sum + v / 4, 0))).toBeLessThan(1e-3)
    // Minutes within a quarter hour are drawn, so its mean is compared.
    for (const i of [0, 15, 200_010, 525_585]) {
      expect(meanAt(kw, i, 15)).toBeCloseTo(meter.kw[i / 15]!, 5)
    }
  })

  it('on steps of 5 minutes or less is taken minute by minute as it is, and nothing is said', () => {
    const short = record(meter.startMs, 5, meter.kw.subarray(0, 288 * 30))
    const { critical, notes } = demand(short)
    for (let i = 0; i < 30 * 1440; i += 7) {
      expect(critical[0]!.kw[i]).toBeCloseTo(short.kw[Math.floor(i / 5)]!, 5)
    }
    expect(notes.join()).not.toContain('drawn')
  })

  it('on longer steps says that minutes are drawn', () => {
    expect(demand(meter).notes).toEqual([
      'whole: recorded in steps of 15 min; the minutes within a step are drawn, as appliances go ' +
        'on and off, and its energy is kept.',
    ])
  })

  it('less what it contains: the sum of all is what the meter shows', () => {
    const fridge = { name: 'fridge', tier: 'critical', w: 100 }
    const busy = record(
      meter.startMs,
      15,
      meter.kw.map((value) => value + 0.2),
    )
    const d = demand(busy, [fridge], ['fridge'])
    const total = d.criticalKw
    for (const i of [0, 105, 300_000]) {
      expect(meanAt(total, i, 15)).toBeCloseTo(busy.kw[i / 15]!, 5)
    }
    expect(d.notes.join()).not.toContain('more than')
  })

  it('a short load inside a quarter hour is held by its energy, not by its power', () => {
    const kettle = { name: 'kettle', tier: 'critical', w: 3000, at: ['07:00-07:05'] }
    const steady = record(meter.startMs, 15, new Float64Array(365 * 96).fill(1.2))
    const d = demand(steady, [kettle], ['kettle'])
    // 3 kW for 5 min are 1 kW of the quarter hour's 1.2 kW.
    expect(meanAt(d.criticalKw, 420, 15)).toBeCloseTo(1.2, 5)
    expect(meanAt(d.critical[0]!.kw, 420, 15)).toBeCloseTo(0.2, 5)
    expect(d.notes.join()).not.toContain('more than')
  })

  it('a part that is metered itself is taken out too, wherever it stands in the file', () => {
    const house = checkHouse(
      plainHouse({
        loads: [
          { name: 'whole', tier: 'comfort', file: 'meter.csv', contains: ['heat pump', 'fridge'] },
          { name: 'heat pump', tier: 'gridOnly', file: 'pump.csv', contains: ['fridge'] },
          { name: 'fridge', tier: 'critical', w: 100 },
        ],
      }),
    )
    const steady = (kw: number): MeterRecord =>
      record(meter.startMs, 15, new Float64Array(365 * 96).fill(kw))
    const meters = new Map([
      ['meter.csv', steady(2)],
      ['pump.csv', steady(1.5)],
    ])
    // 2 kW in all: 1.4 kW of heat pump, 0.1 kW of fridge, 0.5 kW else.
    expect(demandOf(house, UTC_2025, { meters }).comfortKw[0]![1000]).toBeCloseTo(0.5, 5)
  })

  it('where the parts draw more than the meter shows, nothing is left and it is said', () => {
    const low = record(meter.startMs, 15, new Float64Array(365 * 96).fill(0.05))
    const d = demand(low, [{ name: 'fridge', tier: 'critical', w: 150 }], ['fridge'])
    expect(Math.max(...d.critical[0]!.kw.subarray(0, 5000))).toBe(0)
    // 100 W too much all the year: 876 kWh.
    expect(d.notes[0]).toContain('draw 876 kWh a year more than the meter shows')
  })
})

describe('a short record', () => {
  // Ten days from Monday 3 March 2025, 1 kW on weekdays and 2 kW at weekends.
  const start = Date.UTC(2025, 2, 3)
  const kw = Float64Array.from({ length: 10 * 24 }, (_, hour) =>
    [0, 6].includes(new Date(start + hour * 3_600_000).getUTCDay()) ? 2 : 1,
  )
  const d = demand(record(start, 60, kw))

  it('is repeated by weekday: weekends stay weekends', () => {
    for (const day of UTC_2025.days) {
      const expected = day.weekday >= 6 ? 2 : 1
      expect(d.critical[0]!.kw[day.start + 700]).toBe(expected)
    }
  })

  it('says so', () => {
    expect(d.notes).toHaveLength(2)
    // 3 to 12 March and 15 days either side are 16 February to 27 March: 13 of 28 days of February.
    expect(d.notes[0]).toBe(
      'whole: 10 recorded days stand for the whole year, each day of the year taking the recorded ' +
        'day of its weekday nearest in season. No recorded day lies within 15 days of most of ' +
        'April to February.',
    )
  })

  it('a gap costs the day it lies in, no more', () => {
    const gappy = kw.slice()
    gappy[30] = Number.NaN
    expect(demand(record(start, 60, gappy)).notes[0]).toContain('9 recorded days')
  })

  it('of less than a whole local day is refused', () => {
    const meter = record(start + 3_600_000, 60, kw.slice(0, 30))
    expect(refusal(() => demand(meter))).toBe(
      'meter.csv must be a record of at least one whole local day, got "less than that"',
    )
  })
})

describe('a record scaled to the season, where the house file asks for it', () => {
  // A week of July at a steady 1 kW, in the north and in the south.
  const july = record(Date.UTC(2025, 6, 7), 5, new Float64Array(7 * 288).fill(1))
  const lived = (latitudeDeg: number): Demand => {
    const site = { latitudeDeg, longitudeDeg: 0, elevationM: 0, timezone: 'UTC' }
    const loads = [{ name: 'whole', tier: 'critical', file: 'meter.csv', seasonal: 'H0' }]
    const house = checkHouse(plainHouse({ site, loads }))
    return demandOf(house, UTC_2025, { meters: new Map([['meter.csv', july]]) })
  }
  const monday = (month: number, day: number): number =>
    UTC_2025.days.find((each) => each.month === month && each.day === day)!.start

  it('by the factor of the day: Monday 13 January from Monday 7 July', () => {
    const { criticalKw, notes } = lived(52)
    // F(t) as VDEW/BDEW prints it, by hand: F(13) = 1.24 + 0.0273 - 0.011864 + 0.000703 - 0.000011
    // = 1.256128; F(188) = 1.24 + 0.3948 - 2.481149 + 2.126295 - 0.489685 = 0.790261.
    expect(criticalKw[monday(1, 13)]).toBeCloseTo(1.256128 / 0.790261, 4)
    expect(criticalKw[monday(7, 7)]).toBe(1)
    expect(notes.join('\n')).toContain('as seasonal asks')
  })

  it('with the seasons of the south half a year later: January is their July', () => {
    const { criticalKw, notes } = lived(-40)
    // 13 January is day 13 + 182 = 195, 7 July is day 188 + 182 - 365 = 5 of the north:
    // F(195) = 1.24 + 0.4095 - 2.669355 + 2.3727 - 0.566794 = 0.786051;
    // F(5) = 1.24 + 0.0105 - 0.001755 + 0.00004 = 1.248785.
    expect(criticalKw[monday(1, 13)]).toBeCloseTo(0.786051 / 1.248785, 4)
    expect(notes.join('\n')).toContain('its seasons shifted by half a year for the south')
  })

  it('is never done unasked, and only to a meter file', () => {
    expect(new Set(demand(july).criticalKw)).toEqual(new Set([1]))
    const loads = [{ name: 'pump', tier: 'critical', w: 60, seasonal: 'H0' }]
    expect(refusal(() => checkHouse(plainHouse({ loads })))).toContain(
      'loads[0].seasonal must be left out where no meter file is named, got "H0"',
    )
  })
})

describe('a record of another year', () => {
  it('keeps weekends, and each day lies within four of its place in the season', () => {
    // 2023: each day's power is its day of the year, in watts.
    const start = Date.UTC(2023, 0, 1)
    const kw = Float64Array.from(
      { length: 365 * 24 },
      (_, hour) => Math.floor(hour / 24 + 1) / 1024,
    )
    const column = demand(record(start, 60, kw)).critical[0]!.kw
    for (const day of UTC_2025.days) {
      const source = Math.round(column[day.start + 60]! * 1024)
      const apart = Math.abs(source - day.dayOfYear)
      expect(Math.min(apart, 366 - apart)).toBeLessThanOrEqual(4)
      const weekday = new Date(start + (source - 1) * DAY_MS).getUTCDay() || 7
      expect(weekday).toBe(day.weekday)
    }
  })
})

describe('local days', () => {
  it('a record in UTC is cut at midnights of the house’s zone', () => {
    const zone = 'Pacific/Auckland'
    const calendar = calendarOf(2025, zone)
    // Local clock hour in watts, from local midnight of 1 July 2025 (UTC+12).
    const start = Date.UTC(2025, 5, 30, 12)
    const kw = Float64Array.from({ length: 7 * 24 }, (_, hour) => (hour % 24) / 1024)
    const site = { latitudeDeg: -46, longitudeDeg: 168, elevationM: 0, timezone: zone }
    const loads = [{ name: 'whole', tier: 'critical', file: 'meter.csv' }]
    const house = checkHouse(plainHouse({ site, loads }))
    const d = demandOf(house, calendar, { meters: new Map([['meter.csv', record(start, 60, kw)]]) })
    const column = d.critical[0]!.kw
    for (let i = 0; i < calendar.n; i += 60 * 17) {
      expect(meanAt(column, i, 60)).toBeCloseTo(Math.floor(calendar.wallMinute[i]! / 60) / 1024, 9)
    }
  })

  it('without its record a metered load is refused by name', () => {
    const loads = [{ name: 'whole', tier: 'critical', file: 'meter.csv' }]
    const house = checkHouse(plainHouse({ loads }))
    expect(refusal(() => demandOf(house, UTC_2025))).toMatch(
      /^load whole must be given with its meter record meter.csv/,
    )
  })
})
