// Sun, air and demand over a window of minutes of a numbered year: what the island gets to see.
//
// A window may run past the end of the year; it goes on in the next synthetic year, with one year
// in the same one. Powers are rounded to the series grid, so that they are equal on every machine.

import { placeTemperature } from '../equipment/place.js'
import { solarGroups } from '../house/solar-groups.js'
import type { Sky } from '../sky/sky.js'
import { ColumnRoom } from '../units/column-room.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { DEFAULT_WIND_MS, hourly } from './hourly.js'
import type { Prepared } from './prepare.js'
import { fillSupply, type Piece } from './supply.js'
import type { Scratch, Window, WindowDetail } from './window-columns.js'

export function newScratch(prepared: Prepared): Scratch {
  const { n } = prepared.calendar
  return {
    sky: { ghi: new Float64Array(n), dni: new Float64Array(n), dhi: new Float64Array(n) },
    poa: new Float64Array(n),
    dc: new Float64Array(n),
  }
}

/**
 * @param year    number of the synthetic or recorded year
 * @param from    first minute on the axis, 0..n-1
 * @param to      one past the last, at most n past the year's end
 * @param detail  filled where given, arrays of the window's length
 * @param room    where its powers are made; they are good until it is cleared
 */
export function windowOf(
  prepared: Prepared,
  sky: Sky,
  scratch: Scratch,
  year: number,
  from: number,
  to: number,
  detail?: WindowDetail,
  room = new ColumnRoom(),
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
    acKw: groups.map(() => room.floats(to - from)),
    dcKw: room.floats(to - from),
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
  const piece: Piece = { prepared, sky, scratch, year, air, wind, a, b, offset, window, detail }
  for (const [which, { input }] of prepared.arrays.entries()) {
    if (input.onInverterOf === undefined) fillSupply(piece, which)
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

/** All AC-coupled solar of a minute that the island's phases could be given. [kW] */
export function acSumKw({ acKw }: Pick<Window, 'acKw'>, minute: number): number {
  let sum = 0
  for (const group of acKw) sum += group[minute]!
  return sum
}
