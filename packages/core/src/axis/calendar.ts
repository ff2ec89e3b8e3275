// The house's year: one axis of UTC minutes, and what the clock on its wall shows.
//
// Minute i covers [i, i + 1). The axis runs from local midnight on 1 January to the next, so it
// holds 525 600 or 527 040 minutes, and a local day has 1440 of them but for the clock changes
// (1380 and 1500, 1410 and 1470 on Lord Howe Island).
// luxon is asked once a day and once a clock change, never once a minute.

import { DateTime, IANAZone } from 'luxon'
import { sharedRoom } from '../units/year-column.js'

export const MINUTE_MS = 60000
export const DAY_MINUTES = 1440

/** One local day on the axis. */
export interface LocalDay {
  /** First minute of the day on the axis. */
  readonly start: number
  /** One past the last minute. */
  readonly end: number
  /** 1..12 */
  readonly month: number
  /** 1..31 */
  readonly day: number
  /** Monday 1 .. Sunday 7 */
  readonly weekday: number
  /** 1..366 */
  readonly dayOfYear: number
}

export interface Calendar {
  readonly year: number
  readonly zone: string
  /** UTC [ms] of minute 0. */
  readonly startMs: number
  /** Minutes in the year. */
  readonly n: number
  readonly days: readonly LocalDay[]
  /** Wall-clock minute of the day of each minute. [n], 0..1439 */
  readonly wallMinute: Int16Array
  /** Index into `days` of each minute. [n] */
  readonly dayOf: Uint16Array
}

/** Whether a name is a zone of the IANA database that this machine knows. */
export function isZone(name: string): boolean {
  return IANAZone.isValidZone(name)
}

/**
 * The calendar of one local year.
 *
 * @param year  1970..2100
 * @param zone  a valid IANA zone
 */
export function calendarOf(year: number, zone: string): Calendar {
  const midnights: DateTime[] = []
  let date = DateTime.fromObject({ year, month: 1, day: 1 }, { zone })
  while (date.year === year) {
    midnights.push(date)
    date = date.plus({ days: 1 }).startOf('day')
  }
  const startMs = (midnights[0] as DateTime).toMillis()
  const n = (date.toMillis() - startMs) / MINUTE_MS
  const days = midnights.map((midnight, i): LocalDay => {
    const next = midnights[i + 1] ?? date
    return {
      start: (midnight.toMillis() - startMs) / MINUTE_MS,
      end: (next.toMillis() - startMs) / MINUTE_MS,
      month: midnight.month,
      day: midnight.day,
      weekday: midnight.weekday,
      dayOfYear: midnight.ordinal,
    }
  })
  const wallMinute = new Int16Array(sharedRoom(n * Int16Array.BYTES_PER_ELEMENT))
  const dayOf = new Uint16Array(sharedRoom(n * Uint16Array.BYTES_PER_ELEMENT))
  const offsets = IANAZone.create(zone)
  for (const [i, day] of days.entries()) fillDay(wallMinute, dayOf, i, day, startMs, offsets)
  return { year, zone, startMs, n, days, wallMinute, dayOf }
}

function fillDay(
  wallMinute: Int16Array,
  dayOf: Uint16Array,
  index: number,
  day: LocalDay,
  startMs: number,
  zone: IANAZone,
): void {
  dayOf.fill(index, day.start, day.end)
  const offsetAt = (minute: number): number => zone.offset(startMs + minute * MINUTE_MS)
  let change = day.end
  if (offsetAt(day.start) !== offsetAt(day.end - 1)) {
    let before = day.start
    while (change - before > 1) {
      const middle = (before + change) >> 1
      if (offsetAt(middle) === offsetAt(day.start)) before = middle
      else change = middle
    }
  }
  const first = wallClock(startMs, day.start, offsetAt(day.start))
  for (let m = day.start; m < change; m++) wallMinute[m] = first + m - day.start
  if (change === day.end) return
  const second = wallClock(startMs, change, offsetAt(change))
  for (let m = change; m < day.end; m++) wallMinute[m] = second + m - change
}

function wallClock(startMs: number, minute: number, offsetMinutes: number): number {
  const local = startMs / MINUTE_MS + minute + offsetMinutes
  return ((local % DAY_MINUTES) + DAY_MINUTES) % DAY_MINUTES
}

/** Whole minutes of a length in hours, a begun one counted: 1.1 h are 66 min. */
export function minutesOfHours(hours: number): number {
  return Math.ceil(hours * 60 - 1e-6)
}

/** First minute of a local month and one past its last, on the axis. @param month 1..12 */
export function monthRange(calendar: Calendar, month: number): readonly [number, number] {
  const days = calendar.days.filter((day) => day.month === month)
  return [(days[0] as LocalDay).start, (days.at(-1) as LocalDay).end]
}

/** UTC time of a minute of the axis, ISO 8601: `2025-01-14T16:20Z`; past the year it runs on. */
export function isoUtc(calendar: Calendar, minute: number): string {
  return `${new Date(calendar.startMs + minute * MINUTE_MS).toISOString().slice(0, 16)}Z`
}

const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun']
/** As luxon has them in British English. */
const MONTHS = 'Jan Feb Mar Apr May Jun Jul Aug Sept Oct Nov Dec'.split(' ')

/** Local time of a minute, as a log shows it: `Tue 14 Jan 16:20`. */
export function localTime(calendar: Calendar, minute: number): string {
  const local = calendar.days[calendar.dayOf[minute] ?? -1]
  if (local !== undefined) {
    const { weekday, day, month } = local
    const wall = calendar.wallMinute[minute]!
    const two = (value: number): string => String(value).padStart(2, '0')
    return `${WEEKDAYS[weekday - 1]} ${day} ${MONTHS[month - 1]} ${two(Math.floor(wall / 60))}:${two(wall % 60)}`
  }
  // Past the year the days of the week go on.
  return DateTime.fromMillis(calendar.startMs + minute * MINUTE_MS, {
    zone: calendar.zone,
    locale: 'en-GB',
  }).toFormat('ccc d LLL HH:mm')
}

/** `"07:30"` as a minute of the day, or null where it is no time; 24:00 is the day's end. */
export function clockMinute(text: string): number | null {
  const match = /^([01]?\d|2[0-4]):([0-5]\d)$/.exec(text)
  if (match === null) return null
  const minute = Number(match[1]) * 60 + Number(match[2])
  return minute <= DAY_MINUTES ? minute : null
}

/** Whether a wall-clock minute lies in [from, to); a span may run over midnight. */
export function inSpan(minute: number, from: number, to: number): boolean {
  return from <= to ? minute >= from && minute < to : minute >= from || minute < to
}

/** `January`. @param month 1..12 */
export function monthName(month: number): string {
  const middle = new Date(Date.UTC(2025, month - 1, 15))
  return middle.toLocaleString('en-GB', { month: 'long', timeZone: 'UTC' })
}

/** `November to February, May and July`: three in a row together, over the end of the year too. */
export function listOfMonths(months: readonly number[]): string {
  const has = new Set(months)
  if (has.size === 12) return 'the whole year'
  const after = (month: number): number => (month % 12) + 1
  const parts: string[] = []
  for (const first of [...has].filter((month) => !has.has(((month + 10) % 12) + 1))) {
    const run = [first]
    while (has.has(after(run.at(-1)!))) run.push(after(run.at(-1)!))
    const names = run.map(monthName)
    parts.push(...(run.length < 3 ? names : [`${names[0]} to ${names.at(-1)}`]))
  }
  return parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`
}

/**
 * A moment of any year on the house's: its month, day and wall clock in the house's zone, in the
 * house's year. 29 February is taken as the 28th where that year has none.
 *
 * @param ms  UTC [ms]
 * @returns   UTC [ms], on the minute
 */
export function onHousesYear({ year, zone }: Pick<Calendar, 'year' | 'zone'>, ms: number): number {
  const there = DateTime.fromMillis(ms, { zone })
  return (there.year === year ? there : there.set({ year })).startOf('minute').toMillis()
}
