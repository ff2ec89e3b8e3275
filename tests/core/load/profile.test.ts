// Standard profiles: the tables as they were published, the factor of the day, the year's energy.
//
// Truth of the tables: data-samples/bdew-*.csv (BDEW, via demandlib 0.2.2, MIT). Every number of
// the code is compared with those files.

import { readFileSync } from 'node:fs'
import {
  calendarOf,
  checkHouse,
  type DayType,
  type Demand,
  dayFactor,
  demandOf,
  type House,
  type ProfileKind,
  prepare,
  standardDay,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { slipsOf } from '../../../packages/core/src/answers/slips.js'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const BERLIN = calendarOf(2025, 'Europe/Berlin')

function sample(name: string): string[][] {
  const url = new URL(`../../../data-samples/${name}`, import.meta.url)
  const lines = readFileSync(url, 'utf8').trim().split(/\r?\n/)
  return lines.map((line) => line.split(','))
}

function house(kind: ProfileKind, kwhPerYear: number, site = {}, more: object[] = []): House {
  const contains = more.length > 0 && { contains: more.map((load) => (load as Line).name) }
  return checkHouse(
    plainHouse({
      site: { latitudeDeg: 52, longitudeDeg: 0, elevationM: 0, timezone: 'UTC', ...site },
      loads: [
        { name: 'whole', tier: 'critical', profile: { kind, kwhPerYear }, ...contains },
        ...more,
      ],
    }),
  )
}

type Line = { readonly name: string }

const demand = (of: House, calendar = UTC_2025): Demand => demandOf(of, calendar)

const kwhOf = (kw: Float64Array): number => kw.reduce((sum, value) => sum + value / 60, 0)

describe('the tables', () => {
  const SEASON_DAYS = { winter: [1, 15], transition: [4, 15], summer: [7, 15] } as const

  it('of H0 hold every value of the published file, 3 seasons x 7 weekdays x 96', () => {
    const [, ...rows] = sample('bdew-slp-week-types-15min.csv')
    let compared = 0
    for (const [at, period, weekday, value] of rows) {
      const [month, day] = SEASON_DAYS[period as keyof typeof SEASON_DAYS]
      const time = (at as string).slice(11).split(':').map(Number)
      const quarter = time[0]! * 4 + time[1]! / 15
      const type = weekday === '7' ? 'sunday' : weekday === '6' ? 'saturday' : 'weekday'
      const found = standardDay('H0', month, day, type)[quarter]!
      expect(Math.abs(found - Number(value))).toBeLessThan(1e-12)
      compared++
    }
    expect(compared).toBe(3 * 7 * 96)
  })

  it('of H25 hold every value of the published file, 12 months x 3 day types x 96', () => {
    const [months, types, ...rows] = sample('bdew-h25.csv')
    const DAY_TYPES: Record<string, DayType> = { WT: 'weekday', SA: 'saturday', FT: 'sunday' }
    const names = [...new Set(months!.slice(1))]
    let compared = 0
    for (const [quarter, row] of rows.entries()) {
      for (let column = 1; column < row.length; column++) {
        const month = names.indexOf(months![column]!) + 1
        const found = standardDay('H25', month, 1, DAY_TYPES[types![column]!]!)[quarter]!
        // The file has kWh in the quarter hour for 1 000 000 kWh a year.
        expect(Math.abs(found - (Number(row[column]) * 4) / 1000)).toBeLessThan(1e-12)
        compared++
      }
    }
    expect([names.length, compared]).toEqual([12, 12 * 3 * 96])
  })

  // Source: the H0 table as published with demandlib, kW for 1000 kWh a year; sums in kWh.
  it.each([
    ['summer', 6, 21, [0.08636, 0.07696, 0.06884, 0.06244], [2.81411, 3.033, 2.85405]],
    ['winter', 12, 21, [0.0676, 0.06084, 0.05488, 0.04992], [2.55606, 2.88645, 2.68553]],
    ['transition', 10, 21, [0.07776, 0.06956, 0.0624, 0.0566], null],
  ] as const)('of H0 in %s begin and sum as printed', (_, month, day, first, sums) => {
    const kw = standardDay('H0', month, day, 'weekday')
    expect(kw).toHaveLength(96)
    for (const [i, value] of first.entries()) expect(Math.abs(kw[i]! - value)).toBeLessThan(1e-5)
    for (const [i, type] of (['weekday', 'saturday', 'sunday'] as const).entries()) {
      const sum = standardDay('H0', month, day, type).reduce((all, value) => all + value / 4, 0)
      if (sums !== null) expect(Math.abs(sum - sums[i]!)).toBeLessThan(1e-5)
    }
  })

  // Source: BDEW: winter 1 Nov to 20 Mar, summer 15 May to 14 Sep, transition between.
  it.each([
    ['winter', 3, 20],
    ['transition', 3, 21],
    ['transition', 5, 14],
    ['summer', 5, 15],
    ['summer', 9, 14],
    ['transition', 9, 15],
    ['transition', 10, 31],
    ['winter', 11, 1],
  ] as const)('of H0 are those of %s on %i-%i', (season, month, day) => {
    const [m, d] = SEASON_DAYS[season]
    expect(standardDay('H0', month, day, 'weekday')).toEqual(standardDay('H0', m, d, 'weekday'))
  })
})

describe('the factor of the day', () => {
  // Source: VDEW/BDEW polynomial as demandlib documents it, computed by hand.
  it.each([
    [1, 1.242],
    [46, 1.2174],
    [105, 1.0093],
  ])('of day %i is %d', (day, factor) => {
    expect(Math.abs(dayFactor(day) - factor)).toBeLessThan(1e-4)
  })
})

describe('a load given as a profile', () => {
  // Each minute is rounded to 2^-20 kW, half of which is 0.004 kWh a year.
  it.each(['H0', 'H25'] as const)('%s sums to the energy of the calendar year', (kind) => {
    for (const [year, kwh] of [
      [2025, 3500],
      [2024, 820],
    ] as const) {
      const calendar = calendarOf(year, 'Europe/Berlin')
      const { kw } = demand(house(kind, kwh), calendar).critical[0]!
      expect(Math.abs(kwhOf(kw) - kwh)).toBeLessThan(0.005)
    }
  })

  // Source: both are published for a year of 1000 kWh (1 000 000 kWh), so the table with its factor
  // ought to sum to it; holidays and the rounded polynomial leave a little.
  it.each(['H0', 'H25'] as const)('%s needs next to no scaling in Germany', (kind) => {
    const { kw } = demand(house(kind, 1000, { timezone: 'Europe/Berlin' }), BERLIN).critical[0]!
    // 15 July 2025, a Tuesday, 18:00: minute of the year by the calendar.
    const day = BERLIN.days[195]!
    expect([day.month, day.day, day.weekday]).toEqual([7, 15, 2])
    const table = standardDay(kind, 7, 15, 'weekday')[72]! * dayFactor(196)
    expect(Math.abs(kw[day.start + 18 * 60]! / table - 1)).toBeLessThan(0.006)
  })

  it('follows the clock on the wall, weekday by weekday', () => {
    const { kw } = demand(house('H0', 1000, { timezone: 'Europe/Berlin' }), BERLIN).critical[0]!
    const at = (day: number, quarter: number): number => kw[BERLIN.days[day]!.start + quarter * 15]!
    const table = (type: DayType, quarter: number): number =>
      standardDay('H0', 7, 15, type)[quarter]!
    // Saturday 19 and Sunday 20 July 2025 against Friday 18.
    for (const [day, type] of [
      [199, 'saturday'],
      [200, 'sunday'],
    ] as const) {
      for (const quarter of [30, 50, 80]) {
        const ratio = at(day, quarter) / at(198, quarter)
        const expected =
          (table(type, quarter) * dayFactor(day + 1)) / (table('weekday', quarter) * dayFactor(199))
        expect(ratio).toBeCloseTo(expected, 4)
      }
    }
  })

  it('on 24 December is a Saturday’s, as BDEW has it', () => {
    const { kw } = demand(house('H0', 1000)).critical[0]!
    const at = (day: number): number =>
      kw[UTC_2025.days[day]!.start + 12 * 60]! / dayFactor(day + 1)
    // Wednesday 24 December against Saturday 20 and Wednesday 17.
    expect(at(357)).toBeCloseTo(at(353), 5)
    expect(at(357)).not.toBeCloseTo(at(350), 5)
  })

  it('is smooth: it never moves by more than a quarter of its mean within a minute', () => {
    const { kw } = demand(house('H25', 8760)).critical[0]!
    let step = 0
    for (let i = 1; i < kw.length; i++) step = Math.max(step, Math.abs(kw[i]! - kw[i - 1]!))
    expect(step).toBeLessThan(0.25)
  })

  it('says that it is a mean of many houses, and what it takes for holidays', () => {
    const { notes } = demand(house('H0', 1000))
    expect(notes).toHaveLength(2)
    expect(notes[0]).toMatch(/^whole: the standard profile H0 is a mean of many German houses: /)
    expect(notes[0]).toContain('without peaks')
    expect(notes[0]).toContain('one house meets is higher')
    expect(notes[1]).toBe(
      'whole: no holidays are named (holidays); they count as the weekday they fall on.',
    )
    expect(prepare(house('H0', 1000)).notes).toEqual(expect.arrayContaining([...notes]))
  })
})

describe('south of the equator', () => {
  const south = demand(house('H25', 1000, { latitudeDeg: -46 }))
  const north = demand(house('H25', 1000))

  it('the seasons are shifted by half a year, and it is said', () => {
    const monday = (of: Demand, day: number): number =>
      of.critical[0]!.kw[UTC_2025.days[day]!.start + 18 * 60]!
    // Mondays 20 January and 21 July: July's table and factor stand in January.
    const [winter, summer] = [monday(north, 19), monday(north, 201)]
    expect(Math.abs(monday(south, 19) / summer - 1)).toBeLessThan(0.01)
    expect(Math.abs(monday(south, 201) / winter - 1)).toBeLessThan(0.01)
    expect(winter / summer).toBeGreaterThan(1.1)
    expect(south.notes[0]).toContain('shifted by half a year for the south')
    expect(north.notes[0]).not.toContain('shifted')
  })

  it('the energy of the year is the same', () => {
    expect(Math.abs(kwhOf(south.critical[0]!.kw) - 1000)).toBeLessThan(0.005)
  })
})

describe('what a profile contains', () => {
  it('is taken out quarter hour by quarter hour: the sum is the profile', () => {
    const fridge = {
      name: 'fridge',
      tier: 'critical',
      w: 90,
      cycle: { onMinutes: 7, offMinutes: 8 },
    }
    const alone = demand(house('H0', 3500)).criticalKw
    const { criticalKw, notes } = demand(house('H0', 3500, {}, [fridge]))
    for (let quarter = 0; quarter < alone.length; quarter += 15 * 101) {
      const [a, b] = [alone, criticalKw].map((kw) => kwhOf(kw.subarray(quarter, quarter + 15)))
      expect(Math.abs(a! - b!)).toBeLessThan(1e-6)
    }
    expect(Math.abs(kwhOf(criticalKw) - 3500)).toBeLessThan(0.01)
    expect(notes).toHaveLength(2)
  })

  it('where it draws more than the profile shows, it is said', () => {
    const { notes } = demand(house('H0', 1000, {}, [{ name: 'pump', tier: 'critical', w: 1000 }]))
    // 8760 kWh of pump inside 1000 kWh of profile.
    expect(notes.at(-1)).toContain('draw 7760 kWh a year more than the profile shows')
  })
})

describe('what runs and starts', () => {
  it('a profile has no starts of its own: an island that forms meets its power and its steps', () => {
    const { kw } = demand(house('H0', 3500)).critical[0]!
    const { peakKva, runningKva } = demand(house('H0', 3500))
    for (let i = 0; i < kw.length; i += 997) {
      expect(runningKva[0]![i]).toBeCloseTo(kw[i]! / 0.9, 9)
      expect(peakKva[0]![i]! - runningKva[0]![i]!).toBeLessThan(0.15)
    }
  })

  it('an energy that is no year of a house is asked about', () => {
    const warn = (kwhPerYear: number): string => slipsOf({ house: house('H0', kwhPerYear) }).join()
    expect(warn(350_000)).toBe('whole: 350000 kWh a year is a lot for one house; were Wh meant?')
    expect(warn(3.5)).toBe('whole: 3.5 kWh a year is very little; were MWh meant?')
    expect(warn(3500)).toBe('')
  })
})
