// EPW: eight header lines, then 35 columns without names; hour h covers (h - 1, h].

import { printable } from '@tideover/core'
import type { Faults } from '../faults.js'
import { measured, type RawWeather } from './raw-weather.js'

const HEADER_LINES = 8
/** Columns counted from 0. */
const AT = { air: 6, ghi: 13, dni: 14, dhi: 15, wind: 21 } as const
const WIDTH = 35
/** Some writers leave off the last columns, none of which is read. */
const LEAST_WIDTH = 29

/** Whether a text is EPW. */
export function isEpw(text: string): boolean {
  return /^LOCATION\s*,/i.test(text)
}

/**
 * Rows of an EPW file.
 *
 * @throws InputError where the header is short, its place is no number, or a row is none
 */
export function readEpw(text: string, faults: Faults): RawWeather {
  const lines = text.split(/\r?\n/)
  const place = (lines[0] ?? '').split(',').map((cell) => cell.trim())
  const [latitudeDeg, longitudeDeg, hours, elevationM] = [6, 7, 8, 9].map((at) =>
    place[at] ? Number(place[at]) : Number.NaN,
  ) as [number, number, number, number]
  if (![latitudeDeg, longitudeDeg, hours, elevationM].every(Number.isFinite)) {
    faults.refuse(
      1,
      'LOCATION with latitude, longitude, UTC offset [h] and elevation [m]',
      printable(lines[0]),
    )
  }
  const perHour = Number(lines[HEADER_LINES - 1]?.split(',')[2] ?? 1)
  if (!/^DATA PERIODS/i.test(lines[HEADER_LINES - 1] ?? '')) {
    faults.refuse(
      HEADER_LINES,
      'the DATA PERIODS line, eighth of the header',
      printable(lines[7] ?? ''),
    )
  }
  const kept = rowsOf(lines, faults)
  const n = kept.rows.length
  const stampMs = new Float64Array(n)
  const column = (at: number, codeFrom: number): Float64Array =>
    Float64Array.from(kept.rows, (row) => measured(row[at] ?? Number.NaN, codeFrom))
  for (let i = 0; i < n; i++) {
    const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = kept.rows[i] ?? []
    const withinHour = perHour > 1 ? (minute === 0 ? 60 : minute) : 60
    stampMs[i] = Date.UTC(year, month - 1, day) + ((hour - 1) * 60 + withinHour) * 60_000
  }
  const called = `${place[4]} ${lines.slice(0, HEADER_LINES).filter(isComment).join(' ')}`
  return {
    name: `EPW ${place[5]} (${place[1]})`,
    stampMs,
    marksEnd: true,
    lines: kept.lines,
    columns: {
      ghi: column(AT.ghi, 9999),
      dni: column(AT.dni, 9999),
      dhi: column(AT.dhi, 9999),
      airC: column(AT.air, 99.9),
      windMs: column(AT.wind, 999),
    },
    utcOffsetMinutes: Math.round(hours * 60),
    site: { latitudeDeg, longitudeDeg, elevationM },
    typicalYear: /\bTMY|IWEC|CWEC|WYEC|\bTRY\b|typical/i.test(called),
    notes: [],
  }
}

function isComment(line: string): boolean {
  return /^COMMENTS/i.test(line)
}

function rowsOf(
  all: readonly string[],
  faults: Faults,
): { rows: Float64Array[]; lines: Int32Array } {
  const rows: Float64Array[] = []
  const lines: number[] = []
  for (let i = HEADER_LINES; i < all.length; i++) {
    const line = all[i] ?? ''
    if (line.trim() === '') continue
    const cells = line.split(',')
    if (cells.length < LEAST_WIDTH) {
      faults.add(i + 1, `a row of ${WIDTH} columns`, `${cells.length}`)
      continue
    }
    // Column 5 holds source flags, which are no number and not read.
    const row = Float64Array.from(cells.slice(0, AT.wind + 1), (cell) =>
      cell.trim() === '' ? Number.NaN : Number(cell),
    )
    const wrong = wrongTime(row)
    if (wrong !== null) faults.add(i + 1, wrong, printable(cells.slice(0, 5).join(',')))
    else {
      rows.push(row)
      lines.push(i + 1)
    }
  }
  if (rows.length === 0 && !faults.any) faults.add(HEADER_LINES, 'followed by rows of data', 'none')
  faults.throwIfAny()
  return { rows, lines: Int32Array.from(lines) }
}

function wrongTime(row: Float64Array): string | null {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0] = row
  const date = new Date(Date.UTC(year, month - 1, day))
  const exists = date.getUTCMonth() === month - 1 && date.getUTCDate() === day
  if (!exists) return 'a day that exists (year,month,day)'
  if (!(hour >= 1 && hour <= 24)) return 'an hour of 1 to 24'
  return minute >= 0 && minute <= 60 ? null : 'a minute of 0 to 60'
}
