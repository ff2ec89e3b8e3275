// A metered load on the house's calendar.
//
// Each day of the year takes the recorded day of the same weekday whose day of the year lies
// nearest, so that weekends stay weekends: in a record of the house's own year that is the day
// itself, in one of another year a day within three of it. A shorter record is repeated; the note
// says so. What the load contains is taken out of each interval, and what is left of it is spread
// over its minutes; a record on steps of 5 minutes or less is taken minute by minute as it is.

import { type Calendar, DAY_MINUTES, listOfMonths, MINUTE_MS } from '../axis/calendar.js'
import type { House, LoadInput } from '../house/house.js'
import { InputError } from '../house/problem.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { type OtherLoads, takeOut } from './contained.js'
import { looksNet } from './looks-net.js'
import { type LoadRecords, type MeterRecord, recordKey } from './meter-record.js'
import { seasonFactor } from './profile.js'
import { rebuiltLoad, stoodThen } from './rebuilt.js'
import { monthsWithout, nearestDay, type RecordedDay, recordedDays } from './recorded-days.js'
import { type Intervals, SPREAD_ABOVE, spreadMeans } from './spread.js'

/** How far a record can be trusted for the year. */
export interface MeteredGround {
  readonly name: string
  /** Whole days of the record. */
  readonly days: number
  /** Months of which most days have no recorded day within 15 days. 1..12 */
  readonly monthsWithout: readonly number[]
  /** Whether it is scaled from season to season by a standard profile. */
  readonly isScaled: boolean
  /** Why it looks like the meter of a house with solar; null where it does not. */
  readonly looksNet: string | null
  /** Its column is named for what is taken from the grid, with solar in the house. */
  readonly countsImport: boolean
  /** Hours by which the record's own clock differs from that of the house, at its nearest; 0 where it does not tell. */
  readonly otherClock: number
}

/** What a metered load is worked out from, and where it tells what it found. */
export interface MeterContext {
  readonly house: House
  readonly calendar: Calendar
  readonly records: LoadRecords
  /** Columns of the loads it contains, by name. */
  readonly others: OtherLoads
  /** Receives what was assumed. */
  readonly notes: string[]
  /** Receives how far the record can be trusted. */
  readonly grounds: MeteredGround[]
}

/**
 * Power of a metered load in each minute of the year, less what it `contains`.
 *
 * @returns  New Float64Array [n], [kW], >= 0
 * @throws   InputError where the record is absent or holds no whole day, or is that of a net meter
 *           from which the load cannot be rebuilt
 */
export function meteredColumn(load: LoadInput, context: MeterContext): Float64Array {
  const { house, calendar, others, notes } = context
  const { days, stepMinutes } = groundOf(load, context)
  const { kw, interval } = layOnYear(days, load, context)
  const isSpread = stepMinutes > SPREAD_ABOVE
  const intervals = intervalsOf(interval, isSpread ? stepMinutes : 1, calendar)
  takeOut(kw, intervals.starts, load, others, 'meter', notes)
  if (!isSpread) return kw
  spreadMeans(kw, intervals, house.seed, load.name)
  notes.push(
    `${load.name}: recorded in steps of ${stepMinutes} min; the minutes within a step are drawn, ` +
      'as appliances go on and off, and its energy is kept.',
  )
  return kw
}

/** The whole days of a load's record, and how far they can be trusted. */
function groundOf(
  load: LoadInput,
  { house, calendar, records, notes, grounds }: MeterContext,
): { days: RecordedDay[]; stepMinutes: number } {
  const found = records.meters?.get(recordKey(load))
  if (found === undefined) {
    throw new InputError(`load ${load.name}`, `given with its meter record ${load.file}`, undefined)
  }
  const record = rebuiltLoad(load, house, found, records.outputs ?? new Map(), notes)
  const days = recordedDays(record, calendar.zone)
  if (days.length === 0) {
    throw new InputError(record.name, 'a record of at least one whole local day', 'less than that')
  }
  const without = monthsWithout(days, calendar)
  const isPlain = record === found && stoodThen(load, house).length > 0
  grounds.push({
    name: load.name,
    days: days.length,
    monthsWithout: without,
    isScaled: load.seasonal !== undefined,
    looksNet: isPlain ? looksNet(days, house.site.latitudeDeg < 0) : null,
    countsImport: isPlain && record.countsImport === true,
    otherClock: otherClock(record, calendar),
  })
  if (days.length < 365) notes.push(shortNote(load.name, days.length, without))
  return { days, stepMinutes: record.stepMinutes }
}

/** Hours between the clock that a record tells of and that of the house, in winter or in summer. */
function otherClock(
  { localOffsetMinutes }: MeterRecord,
  { wallMinute, startMs }: Calendar,
): number {
  if (localOffsetMinutes === undefined) return 0
  const utcMinute = (startMs / MINUTE_MS) % DAY_MINUTES
  const apart = [0, Math.floor(wallMinute.length / 2)].map((i) => {
    const offset = wallMinute[i]! - ((utcMinute + i) % DAY_MINUTES) - localOffsetMinutes
    return ((offset + 3 * DAY_MINUTES + DAY_MINUTES / 2) % DAY_MINUTES) - DAY_MINUTES / 2
  })
  const least = apart.reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a))
  return least / 60
}

/** Recorded days on the days of the year, scaled to their season where the house file asks for it. */
function layOnYear(
  days: readonly RecordedDay[],
  { name, seasonal }: LoadInput,
  { house, calendar, notes }: MeterContext,
): { kw: Float64Array; interval: Int32Array } {
  const south = house.site.latitudeDeg < 0
  const kw = new Float64Array(calendar.n)
  const interval = new Int32Array(calendar.n)
  const scales: number[] = []
  for (const day of calendar.days) {
    const source = nearestDay(days, day)
    const scale =
      seasonal === undefined
        ? 1
        : seasonFactor(day.dayOfYear, south) / seasonFactor(source.dayOfYear, south)
    scales.push(scale)
    for (let i = day.start; i < day.end; i++) {
      const wall = calendar.wallMinute[i]!
      kw[i] = scale === 1 ? source.kw[wall]! : onSeriesGrid(scale * source.kw[wall]!)
      interval[i] = source.interval[wall]!
    }
  }
  if (seasonal !== undefined) notes.push(scaledNote(name, seasonal, scales, south))
  return { kw, interval }
}

function scaledNote(name: string, kind: string, scales: readonly number[], south: boolean): string {
  const [least, most] = [Math.min(...scales).toFixed(2), Math.max(...scales).toFixed(2)]
  const shifted = south ? ', its seasons shifted by half a year for the south' : ''
  return (
    `${name}: each recorded day is scaled to the season of the day it stands for, by ${least} to ` +
    `${most}, with the factor of the day of the standard profile ${kind}, as seasonal asks: a mean ` +
    `of many German houses${shifted}.`
  )
}

function shortNote(name: string, days: number, without: readonly number[]): string {
  const stand =
    `${name}: ${days} recorded day${days === 1 ? ' stands' : 's stand'} for the whole year, each ` +
    'day of the year taking the recorded day of its weekday nearest in season.'
  if (without.length === 0) return stand
  return `${stand} No recorded day lies within 15 days of most of ${listOfMonths(without)}.`
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
