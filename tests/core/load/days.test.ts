// On which days a load runs: months, public holidays; days counted by hand.

import {
  calendarOf,
  checkHouse,
  dayFactor,
  demandOf,
  type LocalDay,
  standardDay,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { faultsOf, plainHouse, UTC_2025 } from '../plain-house.js'

function column(line: object, house = {}, calendar = UTC_2025): Float64Array {
  const loads = [{ name: 'it', tier: 'critical', ...line }]
  return demandOf(checkHouse(plainHouse({ loads, ...house })), calendar).critical[0]!.kw
}

const hours = (kw: Float64Array): number => kw.filter((value) => value > 0).length / 60

const faults = (house: object): string[] =>
  faultsOf(() => checkHouse(plainHouse(house as Record<string, unknown>)))

describe('months', () => {
  it('December and January are 62 days; beside weekdays both must fit', () => {
    expect(hours(column({ w: 100, months: [12, 1] }))).toBe(62 * 24)
    // Mondays of January 2025: 6, 13, 20, 27.
    expect(hours(column({ w: 100, months: [1], days: ['mon'] }))).toBe(4 * 24)
  })

  it('a month that is none is refused', () => {
    const loads = [{ name: 'it', tier: 'critical', w: 1, months: [0, 13] }]
    expect(faults({ loads })).toEqual([
      'loads[0].months[0]: a whole number 1..12',
      'loads[0].months[1]: a whole number 1..12',
    ])
  })
})

describe('public holidays', () => {
  const holidays = ['12-25', '12-26', '2025-04-18', '2024-05-01']

  it('count as Sundays: 2025 has 52, and three holidays on a Thursday or a Friday', () => {
    expect(hours(column({ w: 100, days: ['sun'] }, { holidays }))).toBe(55 * 24)
    // 52 Thursdays but for 25 December, 52 Fridays but for 26 December and 18 April.
    expect(hours(column({ w: 100, days: ['thu'] }, { holidays }))).toBe(51 * 24)
    expect(hours(column({ w: 100, days: ['fri'] }, { holidays }))).toBe(50 * 24)
  })

  it('with a year belong to that year alone: 2024 has 52 Sundays, 1 May, and Christmas', () => {
    const leap = calendarOf(2024, 'UTC')
    expect(hours(column({ w: 100, days: ['sun'] }, { holidays, year: 2024 }, leap))).toBe(55 * 24)
  })

  it.each(['H0', 'H25'] as const)('a profile %s takes its Sunday on them, BDEW’s way', (kind) => {
    const kw = column({ profile: { kind, kwhPerYear: 1000 } }, { holidays })
    const noonOf = (month: number, day: number): number =>
      kw[UTC_2025.days.find((d: LocalDay) => d.month === month && d.day === day)!.start + 720]!
    const [sunday, weekday] = (['sunday', 'weekday'] as const).map(
      (type) => standardDay(kind, 4, 18, type)[48]!,
    )
    // Good Friday, day 108, against the Friday before, day 101.
    const expected = (sunday! * dayFactor(108)) / (weekday! * dayFactor(101))
    expect(noonOf(4, 18) / noonOf(4, 11)).toBeCloseTo(expected, 4)
  })

  it('a day that no year has is refused, and text that is no day', () => {
    expect(faults({ holidays: ['02-29', '2024-02-29', '12-25'] })).toEqual([])
    const need = 'a day such as 12-25 (every year) or 2025-04-18'
    expect(faults({ holidays: ['02-30', '2025-02-29', 'Easter', '13-01', '25.12.'] })).toEqual(
      [0, 1, 2, 3, 4].map((i) => `holidays[${i}]: ${need}`),
    )
  })
})
