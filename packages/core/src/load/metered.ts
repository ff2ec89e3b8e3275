// A metered load on the house's calendar.
//
// Each day of the year takes the recorded day of the same weekday whose day of the year lies
// nearest, so that weekends stay weekends: in a record of the house's own year that is the day
// itself, in one of another year a day within three of it. A shorter record is repeated; the note
// says so. What the load contains is taken out of each interval, and what is left of it is spread
// over its minutes; a record on steps of 5 minutes or less is taken minute by minute as it is.

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
import { type Intervals, SPREAD_ABOVE, spreadMeans } from './spread.js'

/** One whole local day of a record. */
export interface RecordedDay {
  readonly weekday: number
  readonly dayOfYear: number
  /** Mean power by wall-clock minute. [1440], [kW] */
  readonly kw: Float64Array
  /** Number of the recorded interval, counted from 1970, by wall-clock minute. [1440] */
  readonly interval: Int32Array
}

/**
 * Power of a metered load in each minute of the year, less what it `contains`.
 *
 * @param meters   records by file name
 * @param others   columns of the loads it contains, by name
 * @param seed     of the house
 * @param notes    receives what was assumed
 * @returns        New Float64Array [n], [kW], >= 0
 * @throws         InputError where the record is absent or holds no whole day
 */
export function meteredColumn(
  load: LoadInput,
  meters: ReadonlyMap<string, MeterRecord>,
  calendar: Calendar,
  others: OtherLoads,
  seed: number,
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
  const interval = new Int32Array(calendar.n)
  for (const day of calendar.days) {
    const source = nearestDay(days, day)
    for (let i = day.start; i < day.end; i++) {
      const wall = calendar.wallMinute[i]!
      kw[i] = source.kw[wall]!
      interval[i] = source.interval[wall]!
    }
  }
  const { stepMinutes } = record
  const isSpread = stepMinutes > SPREAD_ABOVE
  const intervals = intervalsOf(interval, isSpread ? stepMinutes : 1, calendar)
  takeOut(kw, intervals.starts, load, others, 'meter', notes)
  if (!isSpread) return kw
  spreadMeans(kw, intervals, seed, load.name)
  notes.push(
    `${load.name}: recorded in steps of ${stepMinutes} min; the minutes within a step are drawn, ` +
      'as appliances go on and off, and its energy is kept.',
  )
  return kw
}

/** Stretches of one recorded interval on the calendar, none over midnight or longer than a step. */
function intervalsOf(interval: Int32Array, step: number, { n, days, dayOf }: Calendar): Intervals {
  const starts: number[] = []
  for (let i = 0; i < n; i++) {
    const goesOn =
      i > days[dayOf[i]!]!.start && interval[i] === interval[i - 1] && i - starts.at(-1)! < step
    if (!goesOn) starts.push(i)
  }
  return { starts: [...starts, n], ids: starts.map((i) => interval[i]!) }
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
