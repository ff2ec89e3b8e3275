// A standard profile where there is no meter file: a mean of very many German houses.
//
// The table of a day times the factor of its place in the year, scaled so that the calendar year
// sums to the energy that is given. Clock times are those of the house's wall. South of the equator
// the seasons come half a year later. Smooth by nature: it has no kettle and no start in it.

import { type Calendar, DAY_MINUTES, type LocalDay } from '../axis/calendar.js'
import { weekdayOf } from '../house/holidays.js'
import type { House, LoadInput, ProfileKind } from '../house/house.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { type OtherLoads, takeOut } from './contained.js'
import { H0_TABLE } from './profile-h0.js'
import { H25_TABLE } from './profile-h25.js'

const QUARTER = 15
const HALF_YEAR_DAYS = 182

export type DayType = 'weekday' | 'saturday' | 'sunday'

/**
 * The factor of the day, the same for both profiles.
 *
 *     F(t) = -3.92e-10 t^4 + 3.2e-7 t^3 - 7.02e-5 t^2 + 2.1e-3 t + 1.24
 *
 * Source: VDEW/BDEW, as printed in the documentation of demandlib 0.2.2.
 *
 * @param dayOfYear  1..365; 366 is taken as 365
 */
export function dayFactor(dayOfYear: number): number {
  const t = Math.min(dayOfYear, 365)
  return (((-3.92e-10 * t + 3.2e-7) * t - 7.02e-5) * t + 2.1e-3) * t + 1.24
}

/** The factor of the day at a place: the seasons of the south come half a year later. */
export function seasonFactor(dayOfYear: number, south: boolean): number {
  return dayFactor(south ? halfAYearLater(dayOfYear) : dayOfYear)
}

/**
 * One day of a profile by quarter hours, before the factor of the day.
 *
 * H0: winter from 1 November, summer from 15 May to 14 September, transition between (BDEW).
 *
 * @param month  1..12, of the north
 * @param day    1..31
 * @returns      New Float64Array [96], [kW] for 1000 kWh a year
 */
export function standardDay(
  kind: ProfileKind,
  month: number,
  day: number,
  type: DayType,
): Float64Array {
  if (kind === 'H25') return numbers(H25_TABLE[month - 1]![type], 4e-6)
  const date = 100 * month + day
  if (date >= 515 && date <= 914) return numbers(H0_TABLE.summer[type], 1e-5)
  return numbers(H0_TABLE[date >= 1101 || date <= 320 ? 'winter' : 'transition'][type], 1e-5)
}

function numbers(text: string, unit: number): Float64Array {
  return Float64Array.from(text.trim().split(/\s+/), (value) => Number(value) * unit)
}

/**
 * Power of a load that is given as a standard profile, less what it `contains`.
 *
 * @param others  columns of the loads it contains, by name
 * @param notes   receives what was assumed
 * @returns       New Float64Array [n], [kW], >= 0
 */
export function profileColumn(
  load: LoadInput & { readonly profile: NonNullable<LoadInput['profile']> },
  house: House,
  calendar: Calendar,
  others: OtherLoads,
  notes: string[],
): Float64Array {
  const { kind, kwhPerYear } = load.profile
  const south = house.site.latitudeDeg < 0
  const kw = new Float64Array(calendar.n)
  let sum = 0
  for (const day of calendar.days) {
    const { month, dayOfYear } = south ? halfAYearOn(day) : day
    const quarters = standardDay(kind, month, day.day, dayType(day, calendar.year, house.holidays))
    const factor = dayFactor(dayOfYear)
    for (let i = day.start; i < day.end; i++) {
      kw[i] = factor * quarters[Math.floor(calendar.wallMinute[i]! / QUARTER)]!
      sum += kw[i]!
    }
  }
  const scale = (kwhPerYear * 60) / sum
  for (let i = 0; i < kw.length; i++) kw[i] = onSeriesGrid(kw[i]! * scale)
  notes.push(...profileNotes(load.name, kind, south, house.holidays))
  takeOut(kw, quarterRuns(calendar), load, others, 'profile', notes)
  return kw
}

/** 24 and 31 December count as Saturdays but for a Sunday or holiday, as BDEW has it. */
function dayType(date: LocalDay, year: number, holidays: readonly string[]): DayType {
  const { month, day } = date
  const weekday = weekdayOf(date, year, holidays)
  if (weekday === 7) return 'sunday'
  return weekday === 6 || (month === 12 && (day === 24 || day === 31)) ? 'saturday' : 'weekday'
}

function halfAYearOn({ month, dayOfYear }: LocalDay): Pick<LocalDay, 'month' | 'dayOfYear'> {
  return {
    month: ((month + 5) % 12) + 1,
    dayOfYear: halfAYearLater(dayOfYear),
  }
}

function halfAYearLater(dayOfYear: number): number {
  return ((Math.min(dayOfYear, 365) - 1 + HALF_YEAR_DAYS) % 365) + 1
}

function profileNotes(
  name: string,
  kind: ProfileKind,
  south: boolean,
  holidays: readonly string[],
): string[] {
  const shifted = south ? ', its seasons shifted by half a year for the south' : ''
  return [
    `${name}: the standard profile ${kind} is a mean of many German houses${shifted}: smooth, ` +
      'without peaks and starts. What the inverter of one house meets is higher.',
    holidays.length === 0
      ? `${name}: no holidays are named (holidays); they count as the weekday they fall on.`
      : `${name}: the ${holidays.length} holidays that are named count as Sundays.`,
  ]
}

/** Quarter hours of the clock on the wall, and n behind the last. */
function quarterRuns({ n, wallMinute }: Calendar): number[] {
  const runs: number[] = []
  for (let i = 0; i < n; i++) {
    const wall = wallMinute[i]!
    const before = i === 0 ? -1 : wallMinute[i - 1]!
    const goesOn = wall % QUARTER !== 0 && wall === (before + 1) % DAY_MINUTES
    if (!goesOn) runs.push(i)
  }
  return [...runs, n]
}
