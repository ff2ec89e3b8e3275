// Which columns of a table hold the time, and what they say, row by row.
//
// Columns are known by what is in them, not by their language; the header only tells whether a
// stamp marks the start or the end of its interval, and whether it is UTC.

import { printable } from '@tideover/core'
import { isMissing } from '../csv/number.js'
import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { dateOrder } from './date-order.js'
import { clockOf, dateOf, isClock, splitStamp } from './stamp.js'

/** Where the time is written. */
export interface TimeColumns {
  /** Column of the stamp, or of the date where the clock has its own column. */
  readonly date: number
  readonly clock: number | null
  /** True where a stamp marks the end of its interval. */
  readonly marksEnd: boolean
  /** Offset that the header names (`time_utc`, `time (UTC-7)`). [min], null where none */
  readonly offsetMinutes: number | null
}

/** The stamps of a table; rows that can't be read are NaN and noted as faults. */
export interface Stamps {
  /** Local time counted as if it were UTC. [n], [ms] */
  readonly wallMs: Float64Array
  /** Local time minus UTC where the stamp says so, else NaN. [n], [min] */
  readonly offsetMinutes: Float64Array
}

/** Rows that are looked at to tell what a column holds. */
const SAMPLED = 20

/** Whether a header names the end of an interval: `time_end`, `Interval End`, `hour ending`. */
export function namesEnd(header: string): boolean {
  return /(^|[^a-z])(end|ends|ending|until|to|bis|ende|fin|stop)([^a-z]|$)/i.test(header)
}

/** Offset in a header [min], or null: `time_utc`, `UTC+01:00`, `MST`. */
export function headerOffset(header: string): number | null {
  const match = /(?:utc|gmt)\s*([+-]\d{1,2})?(?::?(\d{2}))?/i.exec(header)
  if (match !== null) {
    const hours = Number(match[1] ?? 0)
    const rest = Number(match[2] ?? 0)
    return hours * 60 + (match[1]?.startsWith('-') ? -rest : rest)
  }
  const named = /(?:^|[^a-z])(ast|est|cst|mst|pst|akst|hst|cet|eet)(?:[^a-z]|$)/i.exec(header)
  const hours = { ast: -4, est: -5, cst: -6, mst: -7, pst: -8, akst: -9, hst: -10, cet: 1, eet: 2 }
  const name = named?.[1]?.toLowerCase() as keyof typeof hours | undefined
  return name === undefined ? null : hours[name] * 60
}

/** Finds the time of a table; null where no column reads as one. */
export function findTimeColumns(table: Table): TimeColumns | null {
  const kinds = table.header.map((_, column) => kindOf(table, column))
  const date = pick(table, kinds, 'stamp') ?? pick(table, kinds, 'date')
  if (date === null) return null
  const clock = kinds[date] === 'stamp' ? null : pick(table, kinds, 'clock')
  const names = clock === null ? [date] : [date, clock]
  const offsets = names.map((column) => headerOffset(table.header[column] ?? ''))
  return {
    date,
    clock,
    marksEnd: namesEnd(table.header[clock ?? date] ?? ''),
    offsetMinutes: offsets.find((offset) => offset !== null) ?? null,
  }
}

/** Whether a row holds a date: then it is data and no header. */
export function hasDate(row: readonly string[]): boolean {
  return row.some((cell) => splitStamp(cell) !== null)
}

/**
 * Reads every stamp. Each different date is worked out once.
 *
 * @throws InputError where the order of day and month can't be told
 */
export function readStamps(table: Table, columns: TimeColumns, faults: Faults): Stamps {
  const n = table.rows.length
  const wallMs = new Float64Array(n).fill(Number.NaN)
  const offsetMinutes = new Float64Array(n).fill(Number.NaN)
  const dateNumber = new Int32Array(n).fill(-1)
  const numbers = new Map<string, number>()
  for (let i = 0; i < n; i++) {
    const row = table.rows[i] ?? []
    const parts = splitStamp(row[columns.date] ?? '')
    const clockMs = columns.clock === null ? parts?.clockMs : clockOf(row[columns.clock] ?? '')
    if (parts === null || clockMs === undefined || Number.isNaN(clockMs)) {
      faults.add(table.lines[i] ?? 0, 'a row with a date and time', written(row, columns))
      continue
    }
    const number = numbers.get(parts.date) ?? numbers.size
    if (number === numbers.size) numbers.set(parts.date, number)
    dateNumber[i] = number
    wallMs[i] = clockMs
    offsetMinutes[i] = Number.isNaN(parts.offsetMinutes)
      ? (columns.offsetMinutes ?? Number.NaN)
      : parts.offsetMinutes
  }
  const dates = [...numbers.keys()]
  const order = dateOrder(dates, table.lines[0] ?? 1, faults)
  const midnights = Float64Array.from(dates, (date) => dateOf(date, order))
  for (let i = 0; i < n; i++) {
    if (dateNumber[i]! < 0) continue
    wallMs[i]! += midnights[dateNumber[i]!]!
    if (Number.isNaN(wallMs[i]!)) {
      const got = written(table.rows[i] ?? [], columns)
      faults.add(table.lines[i] ?? 0, 'a day that exists', got)
    }
  }
  return { wallMs, offsetMinutes }
}

type Kind = 'stamp' | 'date' | 'clock' | null

function pick(table: Table, kinds: readonly Kind[], kind: Kind): number | null {
  const having = kinds.flatMap((each, column) => (each === kind ? [column] : []))
  const utc = having.find((column) => headerOffset(table.header[column] ?? '') !== null)
  const start = having.find((column) => !namesEnd(table.header[column] ?? ''))
  return utc ?? start ?? having[0] ?? null
}

/** What most of the first cells are: a single bad one is a fault of its row, not of the column. */
function kindOf(table: Table, column: number): Kind {
  const counts = { stamp: 0, date: 0, clock: 0 }
  let filled = 0
  for (const row of table.rows.slice(0, SAMPLED)) {
    const cell = row[column] ?? ''
    if (isMissing(cell)) continue
    filled++
    const parts = splitStamp(cell)
    if (parts !== null) counts[parts.hasClock ? 'stamp' : 'date']++
    else if (isClock(cell)) counts.clock++
  }
  if (counts.clock > filled / 2) return 'clock'
  if (counts.stamp + counts.date <= filled / 2) return null
  // A midnight may be written without its clock: a date among stamps is a stamp.
  return counts.stamp > 0 ? 'stamp' : 'date'
}

function written(row: readonly string[], columns: TimeColumns): string {
  const cells = [row[columns.date], columns.clock === null ? '' : row[columns.clock]]
  return printable(cells.filter((cell) => cell !== undefined && cell !== '').join(' '))
}
