// Sun, air and demand over a window of minutes of a numbered year: what the island gets to see.
//
// A window may run past the end of the year; it goes on in the next synthetic year, with one year
// in the same one. Powers are rounded to the series grid, so that they are equal on every machine.

import { arrayDcKw } from '../equipment/array.js'
import { cellTemperatureC } from '../equipment/cell-temperature.js'
import { placeTemperature } from '../equipment/place.js'
import { solarInverterAcKw } from '../equipment/solar-inverter.js'
import { solarGroups } from '../house/solar-groups.js'
import { fillPlane } from '../sky/plane.js'
import type { Sky } from '../sky/sky.js'
import type { MinuteSky } from '../sky/within-day.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import type { Prepared, PreparedArray } from './prepare.js'

/** Wind where there is no record. [m/s] */
export const DEFAULT_WIND_MS = 1

/** What a window needs of the sky. Power columns are indexed from the window's first minute. */
export interface Window {
  readonly from: number
  readonly n: number
  /** Number of the year of its first minute. */
  readonly year: number
  /**
   * AC-coupled arrays on phases of the island by group, at their AC terminals, as if always in;
   * those on others give nothing. [groups][n], [kW]
   */
  readonly acKw: readonly Float64Array[]
  /** All DC-coupled arrays behind their trackers, as if all could be taken. [n], [kW] */
  readonly dcKw: Float64Array
  /** Temperature of the stack's place, one value an hour of the axis from `firstHour`. [°C] */
  readonly placeC: Float64Array
  readonly firstHour: number
  /** Global irradiation of each local day the window touches, whole days. [W/m² · min] */
  readonly dayGhi: Float64Array
  /** Wind of each of those days, its mean; NaN where there is no record. [m/s] */
  readonly dayWindMs: Float64Array
  /** Number of the first of those days, counted on over the year's end. */
  readonly firstDay: number
}

/** The columns of one array, kept for `series`; indexed as the window is. */
export interface ArrayColumns {
  readonly name: string
  readonly dcCoupled: boolean
  readonly poaWm2: Float64Array
  readonly cellC: Float64Array
  readonly dcKw: Float64Array
  readonly acKw: Float64Array
}

/** Sky and arrays of a window, kept for `series`. */
export interface WindowDetail {
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
  readonly airC: Float64Array
  readonly windMs: Float64Array
  readonly arrays: readonly ArrayColumns[]
}

/** Scratch columns over a whole year, reused from window to window. */
export interface Scratch {
  readonly sky: MinuteSky
  readonly poa: Float64Array
}

export function newScratch(prepared: Prepared): Scratch {
  const { n } = prepared.calendar
  return {
    sky: { ghi: new Float64Array(n), dni: new Float64Array(n), dhi: new Float64Array(n) },
    poa: new Float64Array(n),
  }
}

/**
 * @param year    number of the synthetic or recorded year
 * @param from    first minute on the axis, 0..n-1
 * @param to      one past the last, at most n past the year's end
 * @param detail  filled where given, arrays of the window's length
 */
export function windowOf(
  prepared: Prepared,
  sky: Sky,
  scratch: Scratch,
  year: number,
  from: number,
  to: number,
  detail?: WindowDetail,
): Window {
  const { n } = prepared.calendar
  const firstHour = Math.floor(from / 60)
  const firstDay = dayNumber(prepared, from)
  const days = dayNumber(prepared, to - 1) - firstDay + 1
  const groups = solarGroups(prepared.house)
  const window: Window = {
    from,
    n: to - from,
    year,
    acKw: groups.map(() => new Float64Array(to - from)),
    dcKw: new Float64Array(to - from),
    placeC: new Float64Array(Math.floor((to - 1) / 60) - firstHour + 1),
    firstHour,
    dayGhi: new Float64Array(days),
    dayWindMs: new Float64Array(days).fill(Number.NaN),
    firstDay,
  }
  for (let lap = 0, at = from; at < to; lap++) {
    const shift = lap * n
    const end = Math.min(to, shift + n)
    fillPiece(prepared, sky, scratch, (year + lap) % sky.years, at, end, shift, window, detail)
    at = end
  }
  return window
}

/** The day of a minute, counted on over the year's end. */
export function dayNumber(prepared: Prepared, minute: number): number {
  const { n, days, dayOf } = prepared.calendar
  return Math.floor(minute / n) * days.length + dayOf[minute % n]!
}

/** Minutes [at, end) of the window, which lie in one year that begins at `shift`. */
function fillPiece(
  prepared: Prepared,
  sky: Sky,
  scratch: Scratch,
  year: number,
  at: number,
  end: number,
  shift: number,
  window: Window,
  detail: WindowDetail | undefined,
): void {
  const [a, b] = [at - shift, end - shift]
  const air = sky.airC(year)
  const wind = sky.windMs(year)
  const placeC = placeTemperature(air, prepared.house.stack.place)
  for (let hour = Math.floor(a / 60); hour <= Math.floor((b - 1) / 60); hour++) {
    const place = Math.floor((hour * 60 + shift) / 60) - window.firstHour
    if (place >= 0 && place < window.placeC.length) window.placeC[place] = placeC[hour]!
  }
  const offset = shift - window.from
  fillDays(prepared, sky, scratch, year, a, b, shift, wind, window)
  if (detail !== undefined) {
    for (const name of ['ghi', 'dni', 'dhi'] as const) {
      for (let i = a; i < b; i++) detail[name][i + offset] = onSeriesGrid(scratch.sky[name][i]!)
    }
    for (let i = a; i < b; i++) {
      detail.airC[i + offset] = hourly(air, i)
      detail.windMs[i + offset] = wind === null ? DEFAULT_WIND_MS : hourly(wind, i)
    }
  }
  if (sky.kind === 'none' && detail === undefined) return
  for (const [which, array] of prepared.arrays.entries()) {
    const isFed = array.input.inverter === undefined || array.group >= 0
    if (!isFed && detail === undefined) continue
    fillArrayPlane(prepared, scratch, array, a, b)
    addPower(array, scratch.poa, air, wind, a, b, offset, window, detail?.arrays[which])
  }
}

/** Fills whole days of the sky, so that a day's sum does not depend on where a window begins. */
function fillDays(
  prepared: Prepared,
  sky: Sky,
  scratch: Scratch,
  year: number,
  from: number,
  to: number,
  shift: number,
  wind: Float64Array | null,
  window: Window,
): void {
  const { days, dayOf } = prepared.calendar
  const last = dayOf[to - 1]!
  for (let d = dayOf[from]!; d <= last; d++) {
    const { start, end } = days[d]!
    sky.fill(year, start, end, scratch.sky)
    let ghi = 0
    for (let i = start; i < end; i++) ghi += scratch.sky.ghi[i]!
    const at = dayNumber(prepared, start + shift) - window.firstDay
    window.dayGhi[at] = ghi
    if (wind === null) continue
    let sum = 0
    for (let i = start; i < end; i += 60) sum += wind[Math.floor(i / 60)]!
    window.dayWindMs[at] = sum / Math.ceil((end - start) / 60)
  }
}

function fillArrayPlane(
  prepared: Prepared,
  scratch: Scratch,
  array: PreparedArray,
  from: number,
  to: number,
): void {
  const { calendar, sun, house } = prepared
  // Every sky keeps its beam below that of clean air, so `dniClear` is not needed here.
  const sky = { ...scratch.sky, dniExtra: sun.dniExtra }
  let at = from
  while (at < to) {
    const { month } = calendar.days[calendar.dayOf[at]!]!
    let end = at
    while (end < to && calendar.days[calendar.dayOf[end]!]!.month === month) {
      end = calendar.days[calendar.dayOf[end]!]!.end
    }
    end = Math.min(end, to)
    fillPlane(scratch.poa, at, end, sky, array.geometry, house.sky.albedo[month - 1]!)
    at = end
  }
}

function addPower(
  array: PreparedArray,
  poa: Float64Array,
  air: Float64Array,
  wind: Float64Array | null,
  from: number,
  to: number,
  offset: number,
  window: Window,
  keep: ArrayColumns | undefined,
): void {
  const { inverter, perKelvin, trackerKw, peakKw: nameplateKw } = array.input
  const dcLimit = trackerKw ?? nameplateKw
  const sum = window.acKw[array.group]
  for (let i = from; i < to; i++) {
    const light = poa[i]!
    if (!(light > 0) && keep === undefined) continue
    const windMs = wind === null ? DEFAULT_WIND_MS : hourly(wind, i)
    const cellC = cellTemperatureC(light, hourly(air, i), windMs)
    const dc = arrayDcKw(light, cellC, array.peakKw, perKelvin)
    const place = i + offset
    const ac =
      inverter === undefined ? 0 : solarInverterAcKw(dc, inverter.efficiency, inverter.ratedKw)
    if (inverter === undefined) window.dcKw[place]! += onSeriesGrid(Math.min(dc, dcLimit))
    else if (sum !== undefined) sum[place]! += onSeriesGrid(ac)
    if (keep === undefined) continue
    keep.poaWm2[place] = onSeriesGrid(light)
    keep.cellC[place] = onSeriesGrid(cellC)
    keep.dcKw[place] = onSeriesGrid(inverter === undefined ? Math.min(dc, dcLimit) : dc)
    keep.acKw[place] = onSeriesGrid(ac)
  }
}

/** An hourly column in the middle of a minute, straight between the middles of the hours. */
export function hourly(column: Float64Array, minute: number): number {
  const position = (minute - 29.5) / 60
  const before = Math.max(0, Math.min(column.length - 1, Math.floor(position)))
  const after = Math.min(column.length - 1, before + 1)
  const share = Math.min(1, Math.max(0, position - before))
  return column[before]! + (column[after]! - column[before]!) * share
}

/** All AC-coupled solar of a minute that the island's phases could be given. [kW] */
export function acSumKw({ acKw }: Pick<Window, 'acKw'>, minute: number): number {
  let sum = 0
  for (const group of acKw) sum += group[minute]!
  return sum
}
