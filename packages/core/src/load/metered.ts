// A metered load on the house's calendar.
//
// Each day of the year takes the recorded day of the same weekday whose day of the year lies
// nearest, so that weekends stay weekends: in a record of the house's own year that is the day
// itself, in one of another year a day within three of it. A shorter record is repeated; the note
// says so.

import {
  type Calendar,
  calendarOf,
  DAY_MINUTES,
  type LocalDay,
  MINUTE_MS,
} from '../axis/calendar.js'
import type { LoadInput } from '../house/house.js'
import { InputError } from '../house/problem.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { type OtherLoads, takeOut } from './contained.js'
import type { MeterRecord } from './meter-record.js'

/** One whole local day of a record. */
export interface RecordedDay {
  readonly weekday: number
  readonly dayOfYear: number
  /** Mean power by wall-clock minute. [1440], [kW] */
  readonly kw: Float64Array
}

/**
 * Power of a metered load in each minute of the year, less what it `contains`.
 *
 * @param meters   records by file name
 * @param others   columns of the loads it contains, by name
 * @param notes    receives what was assumed
 * @returns        New Float64Array [n], [kW], >= 0
 * @throws         InputError where the record is absent or holds no whole day
 */
export function meteredColumn(
  load: LoadInput,
  meters: ReadonlyMap<string, MeterRecord>,
  calendar: Calendar,
  others: OtherLoads,
  notes: string[],
): Float64Array {
  const record = meters.get(load.file ?? '')
  if (record === undefined) {
    throw new InputError(`load ${load.name}`, `given with its meter record ${load.file}`, undefined)
  }
  const days = recordedDays(record, calendar.zone)
  if (days.length === 0) {
    throw new InputError(record.name, 'a record of at least one whole local day', 'less than that')
  }
  if (days.length < 365) {
    notes.push(
      `${load.name}: ${days.length} recorded days stand for the whole year, each day of the year ` +
        'taking the recorded day of its weekday nearest in season.',
    )
  }
  const kw = new Float64Array(calendar.n)
  const minutes = Int32Array.from({ length: calendar.n + 1 }, (_, i) => i)
  for (const day of calendar.days) {
    const source = nearestDay(days, day)
    for (let i = day.start; i < day.end; i++) kw[i] = source.kw[calendar.wallMinute[i]!]!
  }
  takeOut(kw, minutes, load, others, 'meter', notes)
  return kw
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
      const kw = dayColumn(record, calendar, day)
      if (kw !== null) found.push({ weekday: day.weekday, dayOfYear: day.dayOfYear, kw })
    }
  }
  return found
}

function dayColumn(record: MeterRecord, calendar: Calendar, day: LocalDay): Float64Array | null {
  const offset = (calendar.startMs - record.startMs) / MINUTE_MS
  const kw = new Float64Array(DAY_MINUTES).fill(Number.NaN)
  for (let i = day.start; i < day.end; i++) {
    const value = record.kw[Math.floor((i + offset) / record.stepMinutes)]
    if (value === undefined || Number.isNaN(value)) return null
    kw[calendar.wallMinute[i]!] = onSeriesGrid(value)
  }
  // The hour that a spring change leaves out repeats the one before it.
  for (let m = 0; m < DAY_MINUTES; m++) {
    if (Number.isNaN(kw[m]!)) kw[m] = kw[m >= 60 ? m - 60 : m + 60]!
  }
  return kw
}

function nearestDay(days: readonly RecordedDay[], day: LocalDay): RecordedDay {
  let best = days[0] as RecordedDay
  let least = Number.POSITIVE_INFINITY
  for (const candidate of days) {
    const apart = Math.abs(candidate.dayOfYear - day.dayOfYear)
    const season = Math.min(apart, 366 - apart)
    // A day of another weekday is taken only where no record of the right one exists.
    const cost = season + (candidate.weekday === day.weekday ? 0 : 1000)
    if (cost < least) [best, least] = [candidate, cost]
  }
  return best
}
