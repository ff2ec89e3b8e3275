// Sun and load of some days, a line a day.

import { type Prepared, type SeriesColumns, type SkyKind, skyName } from '@tideover/core'
import { bullets } from './lines.js'

export interface DayTotals {
  readonly date: string
  readonly ghiKwhM2: number
  readonly solarKwh: number
  readonly criticalKwh: number
  readonly comfortKwh: number
  readonly peakKva: number
  readonly airC: number
}

export function dailyTotals(prepared: Prepared, s: SeriesColumns): DayTotals[] {
  const { calendar } = prepared
  return calendar.days
    .filter((day) => day.start >= s.from && day.end <= s.from + s.n)
    .map((day) => {
      const [a, b] = [day.start - s.from, day.end - s.from]
      const kwh = (column: Float64Array): number => sum(column, a, b) / 60
      const month = String(day.month).padStart(2, '0')
      return {
        date: `${calendar.year}-${month}-${String(day.day).padStart(2, '0')}`,
        ghiKwhM2: kwh(s.ghi) / 1000,
        solarKwh: s.window.acKw.reduce((all, kw) => all + kwh(kw), kwh(s.window.dcKw)),
        criticalKwh: kwh(s.criticalKw),
        comfortKwh: kwh(s.comfortKw),
        peakKva: s.peakKva.subarray(a, b).reduce((most, kva) => Math.max(most, kva), 0),
        airC: sum(s.airC, a, b) / (b - a),
      }
    })
}

function sum(column: Float64Array, from: number, to: number): number {
  let total = 0
  for (let i = from; i < to; i++) total += column[i]!
  return total
}

export function seriesText(
  prepared: Prepared,
  s: SeriesColumns,
  sky: SkyKind,
  year: number,
): string {
  const head = `${prepared.house.house}, ${skyName(sky)}, year ${year}.`
  const columns = 'date        sun kWh/m2  solar kWh  critical kWh  comfort kWh  peak kVA  air C'
  const rows = dailyTotals(prepared, s).map(
    (d) =>
      `${d.date}  ${d.ghiKwhM2.toFixed(2).padStart(10)}  ${d.solarKwh.toFixed(2).padStart(9)}  ` +
      `${d.criticalKwh.toFixed(2).padStart(12)}  ${d.comfortKwh.toFixed(2).padStart(11)}  ` +
      `${d.peakKva.toFixed(1).padStart(8)}  ${d.airC.toFixed(1).padStart(5)}`,
  )
  return [head, columns, ...rows, '', 'Assumed:', ...bullets(prepared.notes)].join('\n')
}
