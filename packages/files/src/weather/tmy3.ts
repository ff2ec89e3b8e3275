// TMY3 CSV: a line about the station, a line of column names, then hours ending 01:00 to 24:00
// in local standard time.

import { printable } from '@tideover/core'
import Papa from 'papaparse'
import type { Faults } from '../faults.js'
import { clockOf, dateOf } from '../time/stamp.js'
import { measured, type RawWeather, type WeatherColumn } from './raw-weather.js'

const HEADERS: Readonly<Record<WeatherColumn, RegExp>> = {
  ghi: /^ghi \(w/i,
  dni: /^dni \(w/i,
  dhi: /^dhi \(w/i,
  airC: /^dry-?bulb \(c/i,
  windMs: /^wspd \(m/i,
}

/** Whether a text is TMY3 CSV. */
export function isTmy3(text: string): boolean {
  return /^[^\n]*\n"?Date \(MM\/DD\/YYYY\)"?,"?Time \(HH:MM\)/i.test(text)
}

/**
 * Rows of a TMY3 file.
 *
 * @throws InputError where the station's line or a row is none
 */
export function readTmy3(text: string, faults: Faults): RawWeather {
  const rows = Papa.parse<string[]>(text, { delimiter: ',' }).data
  const station = rows[0] ?? []
  const [hours, latitudeDeg, longitudeDeg, elevationM] = [3, 4, 5, 6].map((at) =>
    station[at] ? Number(station[at]) : Number.NaN,
  ) as [number, number, number, number]
  if (![hours, latitudeDeg, longitudeDeg, elevationM].every(Number.isFinite)) {
    const need =
      'a station: number, name, state, UTC offset [h], latitude, longitude, elevation [m]'
    faults.refuse(1, need, printable(station.join(',')))
  }
  const header = rows[1] ?? []
  const at = (column: WeatherColumn): number =>
    header.findIndex((name) => HEADERS[column].test(name.trim()))
  const stamps: number[] = []
  const lines: number[] = []
  const kept: string[][] = []
  for (let i = 2; i < rows.length; i++) {
    const row = rows[i] ?? []
    if (row.every((cell) => cell.trim() === '')) continue
    const ms = dateOf((row[0] ?? '').trim(), 'mdy') + clockOf(row[1] ?? '')
    if (Number.isNaN(ms)) {
      faults.add(
        i + 1,
        'a row with date (MM/DD/YYYY) and time (01:00 to 24:00)',
        printable(row.slice(0, 2).join(' ')),
      )
    } else if (row.length < header.length) {
      faults.add(i + 1, `a row of ${header.length} columns`, `${row.length}`)
    } else {
      stamps.push(ms)
      lines.push(i + 1)
      kept.push(row)
    }
  }
  const column = (name: WeatherColumn): Float64Array | null => {
    const where = at(name)
    return where < 0 ? null : numbersOf(kept, where, lines, header[where] ?? '', faults)
  }
  if (at('ghi') < 0) faults.add(2, 'column names with GHI (W/m^2)', printable(header.join(',')))
  const columns = {
    ghi: column('ghi'),
    dni: column('dni'),
    dhi: column('dhi'),
    airC: column('airC'),
    windMs: column('windMs'),
  }
  faults.throwIfAny()
  return {
    name: `TMY3 ${station[0]} (${station[1]})`,
    stampMs: Float64Array.from(stamps),
    marksEnd: true,
    lines: Int32Array.from(lines),
    columns,
    utcOffsetMinutes: Math.round(hours * 60),
    site: { latitudeDeg, longitudeDeg, elevationM },
    typicalYear: true,
    notes: [],
  }
}

function numbersOf(
  rows: readonly string[][],
  at: number,
  lines: readonly number[],
  header: string,
  faults: Faults,
): Float64Array {
  return Float64Array.from(rows, (row, i) => {
    const cell = (row[at] ?? '').trim()
    const value = cell === '' ? Number.NaN : Number(cell)
    if (cell !== '' && Number.isNaN(value)) {
      faults.add(lines[i] ?? null, `a number in ${JSON.stringify(header)}`, printable(cell))
    }
    return measured(value)
  })
}
