import {
  isoUtc,
  MINUTE_MS,
  type Prepared,
  type SeriesColumns,
  seriesColumns,
  skyOfStart,
  usedDefaults,
} from '@tideover/core'
import { type CellColumn, rowsOf } from '@tideover/files'
import { openHouse } from '../open-house.js'
import { OptionReader, type Words } from '../options.js'
import { say, sayJson, writeCsv } from '../output.js'
import { dailyTotals, seriesText } from '../text/series-text.js'

/** `series`: the columns that feed a trace. */
export function series(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const kind = reader.sky()
  const asked = reader.whole('synthetic-year', 0, 199)
  const seed = reader.whole('seed', 0, 2147483647)
  const winters = reader.whole('winters', 2, 200) ?? 10
  reader.done()
  const { prepared, plain } = openHouse(path)
  const [from, to] = span(prepared, new OptionReader(words))
  // `dull` and `none` live the spell of a cut that begins with the first day and lasts to the end.
  const { sky, year } = skyOfStart(
    prepared,
    {
      ...{ sky: kind, hours: (to - from) / 60, winters },
      ...(asked === undefined ? {} : { syntheticYear: asked }),
      ...(seed === undefined ? {} : { seed }),
    },
    from,
  )
  const columns = seriesColumns(prepared, sky, year, from, to)
  if (typeof words.csv === 'string') writeSeries(words.csv, prepared, columns)
  if (words.json === true)
    sayJson({
      sky: kind,
      syntheticYear: year,
      days: dailyTotals(prepared, columns),
      defaults: usedDefaults(plain),
    })
  else if (words.csv !== '-') say(seriesText(prepared, columns, kind, year))
}

/** Minutes of the local days from..to, both included. */
function span(prepared: Prepared, reader: OptionReader): [number, number] {
  const { calendar } = prepared
  const first = reader.day('from', calendar.zone)
  const last = reader.day('to', calendar.zone)
  reader.done()
  const minute = (ms: number): number => Math.round((ms - calendar.startMs) / MINUTE_MS)
  const [from, to] = [minute(first.toMillis()), minute(last.plus({ days: 1 }).toMillis())]
  const year = `a day of ${calendar.year}, the house's year`
  if (from < 0 || from >= calendar.n) reader.fault('from', year, first.toISODate())
  if (to > calendar.n || to <= 0) reader.fault('to', year, last.toISODate())
  if (to <= from) reader.fault('to', 'not before --from', last.toISODate())
  reader.done()
  return [from, to]
}

function writeSeries(path: string, prepared: Prepared, s: SeriesColumns): void {
  const empty: CellColumn = { length: s.n }
  const header = [
    'time_utc',
    'sun_altitude_deg',
    'sun_azimuth_deg',
    'ghi_w_m2',
    'dni_w_m2',
    'dhi_w_m2',
    'air_c',
    'wind_m_s',
  ]
  const columns: CellColumn[] = [
    Array.from({ length: s.n }, (_, i) => isoUtc(prepared.calendar, s.from + i)),
    s.sunAltitudeDeg,
    s.sunAzimuthDeg,
    s.ghi,
    s.dni,
    s.dhi,
    s.airC,
    s.windMs,
  ]
  for (const array of s.arrays) {
    const names = ['poa_w_m2', 'cell_c', 'dc_kw', 'ac_kw'].map((name) => `${array.name}.${name}`)
    header.push(...names)
    columns.push(array.poaWm2, array.cellC, array.dcKw, array.dcCoupled ? empty : array.acKw)
  }
  header.push('critical_kw', 'comfort_kw', 'peak_kva')
  columns.push(s.criticalKw, s.comfortKw, s.peakKva)
  writeCsv(path, header, rowsOf(columns))
}
