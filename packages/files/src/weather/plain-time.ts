// Time of the rows of a plain weather table, as standard time.
//
// Either stamps, or numbers in columns of their own: year with month and day, or with the day of
// the year; then hour and minute, or a clock written as a number (59, then 100).

import { printable } from '@tideover/core'
import { cellNumber } from '../csv/number.js'
import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { offsetText } from '../time/say.js'
import { findTimeColumns, headerOffset, namesEnd, readStamps } from '../time/time-columns.js'

/** Standard time of each row counted as if it were UTC, and its offset. */
export interface StandardTime {
  /** [rows], [ms] */
  readonly stampMs: Float64Array
  readonly marksEnd: boolean
  /** Standard time minus UTC. [min] */
  readonly utcOffsetMinutes: number
  readonly notes: readonly string[]
}

const PARTS = {
  year: /^(year|yyyy|yr)$/i,
  month: /^(month|mo|mm)$/i,
  day: /^(day|dd)$/i,
  dayOfYear: /^(doy|day.?of.?year|jday|julian.?day)$/i,
  hour: /^(hour|hr|hh)$/i,
  minute: /^(minute|min)$/i,
  clock: /^(hhmm|time|lst|utc|gmt|ast|est|cst|mst|pst|akst|hst|cet|eet)$/i,
} as const
type Part = keyof typeof PARTS

/**
 * Reads the time of every row.
 *
 * @param saidOffset  Offset that the file says above its header. [min], NaN where none
 * @throws            InputError where there is no time, or no offset from UTC
 */
export function readTime(table: Table, saidOffset: number, faults: Faults): StandardTime {
  return readStamped(table, saidOffset, faults) ?? readParts(table, saidOffset, faults)
}

function readStamped(table: Table, saidOffset: number, faults: Faults): StandardTime | null {
  const columns = findTimeColumns(table)
  if (columns === null) return null
  const { wallMs, offsetMinutes } = readStamps(table, columns, faults)
  const offsets = new Set<number>()
  let bare = 0
  for (let i = 0; i < wallMs.length; i++) {
    if (Number.isNaN(wallMs[i]!)) continue
    if (!Number.isNaN(offsetMinutes[i]!)) offsets.add(offsetMinutes[i]!)
    else if (bare === 0) bare = table.lines[i]!
  }
  faults.throwIfAny()
  const { marksEnd } = columns
  if (offsets.size === 0) {
    if (Number.isNaN(saidOffset)) askForOffset(table, faults)
    return { stampMs: wallMs, marksEnd, utcOffsetMinutes: saidOffset, notes: [] }
  }
  if (bare > 0) faults.refuse(bare, 'a stamp with an offset, as the other rows have', 'one without')
  // Summer time is ahead, so the least offset is standard time.
  const standard = Math.min(...offsets)
  const stampMs = wallMs.map((wall, i) => wall + (standard - offsetMinutes[i]!) * 60_000)
  const notes =
    offsets.size > 1 ? [`Stamps change their offset: put to ${offsetText(standard)}.`] : []
  return { stampMs, marksEnd, utcOffsetMinutes: standard, notes }
}

function readParts(table: Table, saidOffset: number, faults: Faults): StandardTime {
  const at = (part: Part): number => table.header.findIndex((name) => PARTS[part].test(name))
  const hasDay = at('dayOfYear') >= 0 || (at('month') >= 0 && at('day') >= 0)
  if (at('year') < 0 || !hasDay || (at('hour') < 0 && at('clock') < 0)) {
    const need = 'a header with a time (a stamp; or year, month, day, hour, minute in columns)'
    faults.refuse(table.headerLine, need, table.header.join(', '))
  }
  const timeHeader = table.header[at('clock') >= 0 ? at('clock') : at('hour')] ?? ''
  const utcOffsetMinutes = headerOffset(timeHeader) ?? saidOffset
  if (Number.isNaN(utcOffsetMinutes)) askForOffset(table, faults)
  const stampMs = new Float64Array(table.rows.length)
  let least = Number.POSITIVE_INFINITY
  let most = 0
  for (let i = 0; i < stampMs.length; i++) {
    const cells = table.rows[i] ?? []
    const part = (name: Part, otherwise: number): number =>
      at(name) < 0 ? otherwise : cellNumber(cells[at(name)] ?? '', false)
    const clock = part('clock', Number.NaN)
    const hour = part('hour', Math.floor(clock / 100))
    const minute = part('minute', at('hour') < 0 ? clock % 100 : 0)
    const month = at('dayOfYear') < 0 ? part('month', 1) : 1
    const ms = Date.UTC(part('year', 0), month - 1, part('dayOfYear', part('day', 1)), hour, minute)
    if (!(hour >= 0 && hour <= 24 && minute >= 0 && minute <= 60) || Number.isNaN(ms)) {
      faults.add(table.lines[i] ?? null, 'a row with a date and time', printable(cells.join(',')))
    }
    stampMs[i] = ms
    least = Math.min(least, hour)
    most = Math.max(most, hour)
  }
  faults.throwIfAny()
  const countsTo24 = least === 1 && most === 24
  const notes = countsTo24 ? ['Hours run from 1 to 24: each is the end of its interval.'] : []
  return { stampMs, marksEnd: countsTo24 || namesEnd(timeHeader), utcOffsetMinutes, notes }
}

function askForOffset(table: Table, faults: Faults): never {
  const need =
    'stamps with an offset from UTC (2024-01-01T00:00-07:00), or a line above the header ' +
    '(# utc_offset_hours: -7)'
  return faults.refuse(table.lines[0] ?? table.headerLine, need, 'stamps without an offset')
}
