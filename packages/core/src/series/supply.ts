// What one inverter or tracker gives in a piece of a window, all of its arrays together.
//
// Powers are rounded to the series grid, so that they are equal on every machine.

import { arrayDcKw } from '../equipment/array.js'
import { cellTemperatureC } from '../equipment/cell-temperature.js'
import { solarInverterAcKw } from '../equipment/solar-inverter.js'
import { fillPlane } from '../sky/plane.js'
import type { Sky } from '../sky/sky.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { DEFAULT_WIND_MS, hourly } from './hourly.js'
import { loggedDay } from './logged-array.js'
import type { Prepared, PreparedArray } from './prepare.js'
import type { ArrayColumns, Scratch, Window, WindowDetail } from './window-columns.js'

/** Minutes [a, b) of one numbered year, which lie in the window from a + offset on. */
export interface Piece {
  readonly prepared: Prepared
  readonly sky: Sky
  readonly scratch: Scratch
  readonly year: number
  readonly air: Float64Array
  readonly wind: Float64Array | null
  readonly a: number
  readonly b: number
  readonly offset: number
  readonly window: Window
  readonly detail: WindowDetail | undefined
}

/** @param which  the array that brings the inverter or tracker */
export function fillSupply(piece: Piece, which: number): void {
  const { prepared, detail } = piece
  const first = prepared.arrays[which]!
  const isFed = first.input.inverter === undefined || first.group >= 0
  if (!isFed && detail === undefined) return
  if (first.log === null) modelled(piece, which, piece.a, piece.b)
  else logged(piece, which)
}

/** Days with a logged one near in season take it; the others are modelled. */
function logged(piece: Piece, which: number): void {
  const { prepared, sky, year, a, b, offset, window, detail } = piece
  const { log, group } = prepared.arrays[which]!
  const { days, dayOf, wallMinute } = prepared.calendar
  const sum = window.acKw[group]
  for (let d = dayOf[a]!; d <= dayOf[b - 1]!; d++) {
    const [from, to] = [Math.max(a, days[d]!.start), Math.min(b, days[d]!.end)]
    const kw = sky.kind === 'none' ? NO_OUTPUT : loggedDay(log!, d, sky.dayRank?.(year, d))
    if (kw === null) {
      modelled(piece, which, from, to)
      continue
    }
    const keep = detail?.arrays[which]
    for (let i = from; i < to; i++) {
      const ac = onSeriesGrid(kw[wallMinute[i]!]!)
      if (sum !== undefined) sum[i + offset]! += ac
      if (keep !== undefined) keepLogged(keep, i + offset, ac)
    }
  }
}

const NO_OUTPUT = new Float64Array(1440)

/** A log tells nothing of light and cells. */
function keepLogged(keep: ArrayColumns, place: number, ac: number): void {
  keep.poaWm2[place] = Number.NaN
  keep.cellC[place] = Number.NaN
  keep.dcKw[place] = Number.NaN
  keep.acKw[place] = ac
}

/** Minutes [from, to) by the model. */
function modelled(piece: Piece, which: number, from: number, to: number): void {
  const { prepared, scratch } = piece
  const { name } = prepared.arrays[which]!.input
  scratch.dc.fill(0, from, to)
  const members = prepared.arrays.flatMap(({ input }, i) =>
    i === which || input.onInverterOf === name ? [i] : [],
  )
  for (const member of members) addDc(piece, member, from, to)
  feed(piece, which, members, from, to)
}

/** Adds the DC power of one array to that of its inverter. */
function addDc(piece: Piece, which: number, from: number, to: number): void {
  const { prepared, scratch, air, wind, offset, detail } = piece
  const array = prepared.arrays[which]!
  fillArrayPlane(prepared, scratch, array, from, to)
  const { perKelvin } = array.input
  const keep = detail?.arrays[which]
  for (let i = from; i < to; i++) {
    const light = scratch.poa[i]!
    if (!(light > 0) && keep === undefined) continue
    const windMs = wind === null ? DEFAULT_WIND_MS : hourly(wind, i)
    const cellC = cellTemperatureC(light, hourly(air, i), windMs)
    const dc = arrayDcKw(light, cellC, array.peakKw, perKelvin)
    scratch.dc[i]! += dc
    if (keep === undefined) continue
    keep.poaWm2[i + offset] = onSeriesGrid(light)
    keep.cellC[i + offset] = onSeriesGrid(cellC)
    keep.dcKw[i + offset] = dc
  }
}

/** Hands on what the arrays of an inverter or a tracker give, cut off at its limit. */
function feed(
  piece: Piece,
  which: number,
  members: readonly number[],
  from: number,
  to: number,
): void {
  const { prepared, scratch, offset, window, detail } = piece
  const { input, group } = prepared.arrays[which]!
  const { inverter, trackerKw, peakKw } = input
  const sum = inverter === undefined ? window.dcKw : window.acKw[group]
  for (let i = from; i < to; i++) {
    const dc = scratch.dc[i]!
    if (!(dc > 0) && detail === undefined) continue
    const given =
      inverter === undefined
        ? Math.min(dc, trackerKw ?? peakKw)
        : solarInverterAcKw(dc, inverter.efficiency, inverter.ratedKw)
    if (sum !== undefined) sum[i + offset]! += onSeriesGrid(given)
    if (detail !== undefined) keepShares(detail, members, i + offset, dc, given, inverter)
  }
}

/** Each array's part of what was handed on, by its part of the DC power. */
function keepShares(
  detail: WindowDetail,
  members: readonly number[],
  place: number,
  allDc: number,
  given: number,
  inverter: object | undefined,
): void {
  for (const member of members) {
    const keep = detail.arrays[member]!
    const dc = keep.dcKw[place]!
    const part = members.length === 1 ? given : allDc > 0 ? (given * dc) / allDc : 0
    keep.dcKw[place] = onSeriesGrid(inverter === undefined ? part : dc)
    keep.acKw[place] = inverter === undefined ? 0 : onSeriesGrid(part)
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
