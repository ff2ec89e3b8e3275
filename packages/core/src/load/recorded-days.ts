// Whole local days of a record, and what they stand for in a year.

import {
  type Calendar,
  calendarOf,
  DAY_MINUTES,
  type LocalDay,
  MINUTE_MS,
} from '../axis/calendar.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import type { MeterRecord } from './meter-record.js'

/** How far apart two days of one season may be. [days]; common practice, no source */
export const SEASON_DAYS = 15

/** One whole local day of a record. */
export interface RecordedDay {
  readonly weekday: number
  readonly dayOfYear: number
  /** Mean power by wall-clock minute. [1440], [kW] */
  readonly kw: Float64Array
  /** Number of the recorded interval, counted from 1970, by wall-clock minute. [1440] */
  readonly interval: Int32Array
}

/** Whole local days of a record; days with a gap are left out. */
export function recordedDays(record: MeterRecord, zone: string): RecordedDay[] {
  const endMs = record.startMs + record.kw.length * record.stepMinutes * MINUTE_MS
  const firstYear = new Date(record.startMs - DAY_MINUTES * MINUTE_MS).getUTCFullYear()
  const lastYear = new Date(endMs + DAY_MINUTES * MINUTE_MS).getUTCFullYear()
  const found: RecordedDay[] = []
  for (let year = firstYear; year <= lastYear; year++) {
    const calendar = calendarOf(year, zone)
    for (const day of calendar.days) {
      const columns = dayColumns(record, calendar, day)
      if (columns === null) continue
      found.push({ weekday: day.weekday, dayOfYear: day.dayOfYear, ...columns })
    }
  }
  return found
}

function dayColumns(
  record: MeterRecord,
  calendar: Calendar,
  day: LocalDay,
): Pick<RecordedDay, 'kw' | 'interval'> | null {
  const { stepMinutes } = record
  const offset = (calendar.startMs - record.startMs) / MINUTE_MS
  const first = Math.floor(record.startMs / MINUTE_MS / stepMinutes)
  const kw = new Float64Array(DAY_MINUTES).fill(Number.NaN)
  const interval = new Int32Array(DAY_MINUTES)
  for (let i = day.start; i < day.end; i++) {
    const at = Math.floor((i + offset) / stepMinutes)
    const value = record.kw[at]
    if (value === undefined || Number.isNaN(value)) return null
    const wall = calendar.wallMinute[i]!
    kw[wall] = onSeriesGrid(value)
    interval[wall] = first + at
  }
  // The hour that a spring change leaves out repeats the one before it.
  for (let m = 0; m < DAY_MINUTES; m++) {
    if (!Number.isNaN(kw[m]!)) continue
    const like = m >= 60 ? m - 60 : m + 60
    kw[m] = kw[like]!
    interval[m] = interval[like]!
  }
  return { kw, interval }
}

/** The recorded day of the same weekday that lies nearest in season. */
export function nearestDay(days: readonly RecordedDay[], day: LocalDay): RecordedDay {
  let best = days[0] as RecordedDay
  let least = Number.POSITIVE_INFINITY
  for (const candidate of days) {
    // A day of another weekday is taken only where no record of the right one exists.
    const cost =
      daysApart(candidate.dayOfYear, day.dayOfYear) + (candidate.weekday === day.weekday ? 0 : 1000)
    if (cost < least) [best, least] = [candidate, cost]
  }
  return best
}

/** Days between two days of the year, over its end where that is shorter. */
export function daysApart(a: number, b: number): number {
  const apart = Math.abs(a - b) % 366
  return Math.min(apart, 366 - apart)
}

/** Months of which most days have no recorded day within 15 days. 1..12 */
export function monthsWithout(days: readonly RecordedDay[], calendar: Calendar): number[] {
  const isNear = (day: LocalDay): boolean =>
    days.some(({ dayOfYear }) => daysApart(dayOfYear, day.dayOfYear) <= SEASON_DAYS)
  return Array.from({ length: 12 }, (_, i) => i + 1).filter((month) => {
    const own = calendar.days.filter((day) => day.month === month)
    return own.filter((day) => !isNear(day)).length > own.length / 2
  })
}
