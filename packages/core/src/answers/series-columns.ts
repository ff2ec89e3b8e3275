// The columns that feed a trace, over a span of the house's year, for people to look at.

import type { Prepared } from '../series/prepare.js'
import { newScratch, windowOf } from '../series/window.js'
import type { ArrayColumns, Window, WindowDetail } from '../series/window-columns.js'
import type { Sky } from '../sky/sky.js'

export interface SeriesColumns extends WindowDetail {
  readonly from: number
  readonly n: number
  readonly sunAltitudeDeg: Float64Array
  readonly sunAzimuthDeg: Float64Array
  readonly criticalKw: Float64Array
  readonly comfortKw: Float64Array
  readonly peakKva: Float64Array
  readonly window: Window
}

/**
 * Sun, sky, arrays and load of minutes [from, to) of a numbered year.
 *
 * @param to  at most the end of the year
 */
export function seriesColumns(
  prepared: Prepared,
  sky: Sky,
  year: number,
  from: number,
  to: number,
): SeriesColumns {
  const n = to - from
  const column = (): Float64Array => new Float64Array(n)
  const detail: WindowDetail = {
    ghi: column(),
    dni: column(),
    dhi: column(),
    airC: column(),
    windMs: column(),
    arrays: prepared.arrays.map(
      ({ input }): ArrayColumns => ({
        name: input.name,
        dcCoupled: input.inverter === undefined,
        poaWm2: column(),
        cellC: column(),
        dcKw: column(),
        acKw: column(),
      }),
    ),
  }
  const window = windowOf(prepared, sky, newScratch(prepared), year, from, to, detail)
  const { demand, sun } = prepared
  const comfortKw = column()
  for (const step of demand.comfortKw) for (let i = 0; i < n; i++) comfortKw[i]! += step[i + from]!
  return {
    ...detail,
    from,
    n,
    sunAltitudeDeg: sun.sun.altitudeDeg.slice(from, to),
    sunAzimuthDeg: sun.sun.azimuthDeg.slice(from, to),
    criticalKw: demand.criticalKw.slice(from, to),
    comfortKw,
    peakKva: demand.peakKva[0]!.slice(from, to),
    window,
  }
}
