// Which columns of a plain table are irradiance, air and wind, and in which units.

import { printable } from '@tideover/core'
import { cellNumber, isMissing } from '../csv/number.js'
import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { measured, WEATHER_COLUMNS, type WeatherColumn } from './raw-weather.js'

const NAMES: Readonly<Record<WeatherColumn, RegExp>> = {
  ghi: /(^|[^a-z])ghi([^a-z]|$)|global.*hor|^global.*w.?m|^g\(h\)|short.?wave|global.*(irrad|radia)|globalstrahlung/i,
  dni: /(^|[^a-z])dni([^a-z]|$)|direct.*normal|beam.*normal|^gb\(n\)/i,
  dhi: /(^|[^a-z])dhi([^a-z]|$)|diffuse|diffusstrahlung|^gd\(h\)/i,
  airC: /(^|[^a-z])(air|ambient|outdoor)[^a-z]{0,4}(temp|[cfk]([^a-z]|$))|^air$|temp[a-z]*[^a-z]?(air|2m)|^t2m|dry.?bulb|lufttemp|^t_?air|^temp(erature)?([^a-z]*$|[^a-z]+(deg|°)?\s?[cfk]\W*$)/i,
  windMs: /wind.*speed|windgeschw|wind[^a-z]*(m[^a-z]s|km|mph|kn)|wspd|^ws10m|^wind$/i,
}
const NOT: Readonly<Record<WeatherColumn, RegExp>> = {
  ghi: /tilt|poa|clear|source|uncert|flag|illum|normal|north|south|east|west|extra|uv/i,
  dni: /clear|source|uncert|flag|illum/i,
  dhi: /clear|source|uncert|flag|illum/i,
  airC: /dew|soil|cell|module|panel|source|uncert|flag|max|min/i,
  windMs: /dir|gust|peak|max|source|uncert|flag/i,
}
const UNITLESS_KW = 3
const UNITLESS_F = 50

/** Column of the table for each weather column, and what else would have fitted. */
export interface FoundColumns {
  readonly at: Readonly<Record<WeatherColumn, number>>
  readonly notes: readonly string[]
}

/** Whether a row names global irradiance: then it is the header. */
export function namesIrradiance(row: readonly string[]): boolean {
  return row.length >= 2 && row.some((cell) => fits('ghi', cell.trim()))
}

/** Finds the columns; -1 where a table has none. The first of several is taken, and said. */
export function findColumns(header: readonly string[]): FoundColumns {
  const notes: string[] = []
  const at = { ghi: -1, dni: -1, dhi: -1, airC: -1, windMs: -1 }
  for (const name of WEATHER_COLUMNS) {
    const found = header.flatMap((cell, column) => (fits(name, cell) ? [column] : []))
    at[name] = found[0] ?? -1
    if (found.length === 0) continue
    const others = found.slice(1).map((column) => JSON.stringify(header[column]))
    const also = others.length > 0 ? ` (not ${others.join(', ')})` : ''
    notes.push(`${JSON.stringify(header[at[name]])} read as ${name}${also}.`)
  }
  return { at, notes }
}

/**
 * Values of one column in the unit of a weather record.
 *
 * @param stepMinutes  Turns energy of an interval (Wh/m²) into power
 * @returns            [rows], NaN where missing; null where the table has no such column
 */
export function readColumn(
  name: WeatherColumn,
  table: Table,
  at: number,
  stepMinutes: number,
  faults: Faults,
): Float64Array | null {
  if (at < 0) return null
  const header = table.header[at] ?? ''
  const convert = conversion(name, header, stepMinutes)
  if (convert === null) {
    faults.add(
      table.headerLine,
      'irradiance in W/m², kW/m² or Wh/m² an interval',
      printable(header),
    )
    return null
  }
  const values = new Float64Array(table.rows.length).fill(Number.NaN)
  let most = 0
  for (let i = 0; i < values.length; i++) {
    const cell = table.rows[i]?.[at] ?? ''
    if (isMissing(cell)) continue
    const written = cellNumber(cell, table.decimalComma)
    if (Number.isNaN(written)) {
      const need = `a number in ${JSON.stringify(header)}, or nothing`
      faults.add(table.lines[i] ?? null, need, printable(cell))
    }
    const value = measured(written, 9990)
    if (value > most) most = value
    values[i] = convert(value)
  }
  askForUnit(name, header, most, table.headerLine, faults)
  return values
}

function fits(name: WeatherColumn, header: string): boolean {
  return NAMES[name].test(header) && !NOT[name].test(header)
}

function conversion(
  name: WeatherColumn,
  header: string,
  stepMinutes: number,
): ((value: number) => number) | null {
  if (name === 'airC') {
    if (/(^|[^a-z])f([^a-z]|$)|fahr/i.test(header)) return (value) => ((value - 32) * 5) / 9
    if (/(^|[^a-z])k([^a-z]|$)|kelvin/i.test(header)) return (value) => value - 273.15
    return (value) => value
  }
  if (name === 'windMs') {
    if (/km/i.test(header)) return (value) => value / 3.6
    if (/mph|mile/i.test(header)) return (value) => value * 0.44704
    if (/(^|[^a-z])kn|kts/i.test(header)) return (value) => (value * 1852) / 3600
    return (value) => value
  }
  if (/(^|[^a-z])[mk]?j([^a-z]|$)/i.test(header)) return null
  const thousand = /kw/i.test(header) ? 1000 : 1
  const perHour = /wh([^a-z]|$)/i.test(header) ? 60 / stepMinutes : 1
  return (value) => value * thousand * perHour
}

/** A header without a unit is taken as W/m² and °C only where the size agrees. */
function askForUnit(
  name: WeatherColumn,
  header: string,
  most: number,
  line: number,
  faults: Faults,
): void {
  const got = `${JSON.stringify(header)} with a highest value of ${most}`
  const isIrradiance = name === 'ghi' || name === 'dni' || name === 'dhi'
  if (isIrradiance && most > 0 && most < UNITLESS_KW && !/w/i.test(header)) {
    faults.add(line, 'irradiance with its unit in the header (ghi_w_m2, or ghi [kW/m²])', got)
  }
  const named = /(^|[^a-z])[cfk]([^a-z]|$)|celsius|fahr|kelvin/i.test(header)
  if (name === 'airC' && most > UNITLESS_F && !named) {
    faults.add(line, 'air temperature with its unit in the header (air_c, or air [°F])', got)
  }
}
