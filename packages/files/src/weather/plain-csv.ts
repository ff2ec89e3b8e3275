// A plain table of irradiance with named columns to rows of weather.

import { printable } from '@tideover/core'
import { parseTable } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { commonStep } from '../time/regular.js'
import { count } from '../time/say.js'
import { factsAbove } from './above-header.js'
import { findColumns, namesIrradiance, readColumn } from './plain-columns.js'
import { readTime } from './plain-time.js'
import type { RawWeather, WeatherColumn } from './raw-weather.js'

/**
 * Rows of a plain table.
 *
 * @throws InputError where there is no global irradiance, no time, no offset from UTC, or a
 *         cell is no number
 */
export function readPlainCsv(text: string, name: string, faults: Faults): RawWeather {
  const table = parseTable(text, faults, namesIrradiance)
  if (table === null) {
    const need =
      'a weather file: EPW, TMY3, or a table whose header names global irradiance (ghi_w_m2), ' +
      'with time, dni_w_m2, dhi_w_m2, air_c and wind_m_s where known'
    return faults.refuse(1, need, printable(text.trimStart().split(/\r?\n/, 1)[0] ?? ''))
  }
  if (table.rows.length === 0) faults.refuse(table.headerLine, 'followed by rows of data', 'none')
  const facts = factsAbove(table.above)
  const time = readTime(table, facts.utcOffsetMinutes, faults)
  const { at, notes } = findColumns(table.header)
  const stepMinutes = commonStep(time.stampMs)
  const column = (each: WeatherColumn): Float64Array | null =>
    readColumn(each, table, at[each], stepMinutes, faults)
  const columns = {
    ghi: column('ghi'),
    dni: column('dni'),
    dhi: column('dhi'),
    airC: column('airC'),
    windMs: column('windMs'),
  }
  faults.throwIfAny()
  const { latitudeDeg, longitudeDeg, elevationM } = facts
  const isPlaced = ![latitudeDeg, longitudeDeg, elevationM].some(Number.isNaN)
  const left = table.after > 0 ? [`${count(table.after, 'line')} after the data left out.`] : []
  return {
    name,
    stampMs: time.stampMs,
    marksEnd: time.marksEnd,
    lines: table.lines,
    columns,
    utcOffsetMinutes: time.utcOffsetMinutes,
    site: isPlaced ? { latitudeDeg, longitudeDeg, elevationM } : null,
    typicalYear: facts.typicalYear,
    notes: [...notes, ...time.notes, ...left],
  }
}
