// Daily files of the SURFRAD stations: two header lines, then columns of fixed meaning, each
// value followed by its flag (0 good). UTC, the stamp is the end of the minute.

import { printable } from '@tideover/core'
import type { Faults } from '../faults.js'
import { measured, type RawWeather } from './raw-weather.js'

/** Columns counted from 0; the flag stands behind the value. */
const AT = { ghi: 8, dni: 12, dhi: 14, air: 38, wind: 42 } as const
const WIDTH = 48

/** Whether a text is a daily SURFRAD file. */
export function isSurfrad(text: string): boolean {
  const [, place = '', row = ''] = text.split(/\r?\n/, 3)
  return /^\s*-?[\d.]+\s+-?[\d.]+\s+\d+\s+m\b/.test(place) && cellsOf(row).length === WIDTH
}

/**
 * Rows of a daily SURFRAD file.
 *
 * Longitude is written positive for west in older files; all stations lie west.
 *
 * @throws InputError where a row is short or its time is none
 */
export function readSurfrad(text: string, faults: Faults): RawWeather {
  const all = text.split(/\r?\n/)
  const station = (all[0] ?? '').trim()
  const [latitudeDeg = 0, written = 0, elevationM = 0] = cellsOf(all[1] ?? '').map(Number)
  const rows: number[][] = []
  const lines: number[] = []
  for (let i = 2; i < all.length; i++) {
    const cells = cellsOf(all[i] ?? '')
    if (cells.length === 0) continue
    const row = cells.map(Number)
    if (row.length !== WIDTH || row.some(Number.isNaN)) {
      faults.add(i + 1, `a row of ${WIDTH} numbers`, printable((all[i] ?? '').trim()))
      continue
    }
    rows.push(row)
    lines.push(i + 1)
  }
  if (rows.length === 0) faults.add(2, 'followed by rows of data', 'none')
  faults.throwIfAny()
  const column = (at: number): Float64Array =>
    Float64Array.from(rows, (row) => (row[at + 1] === 0 ? measured(row[at] ?? 0) : Number.NaN))
  const stampMs = Float64Array.from(rows, (row) => {
    const [year = 0, , month = 1, day = 1, hour = 0, minute = 0] = row
    return Date.UTC(year, month - 1, day, hour, minute)
  })
  return {
    name: `SURFRAD (${station})`,
    stampMs,
    marksEnd: true,
    lines: Int32Array.from(lines),
    columns: {
      ghi: column(AT.ghi),
      dni: column(AT.dni),
      dhi: column(AT.dhi),
      airC: column(AT.air),
      windMs: column(AT.wind),
    },
    utcOffsetMinutes: 0,
    site: { latitudeDeg, longitudeDeg: -Math.abs(written), elevationM },
    typicalYear: false,
    notes: written > 0 ? ['Longitude is written positive for west: taken as west.'] : [],
  }
}

function cellsOf(line: string): string[] {
  const trimmed = line.trim()
  return trimmed === '' ? [] : trimmed.split(/\s+/)
}
