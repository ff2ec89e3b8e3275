// A line of the survey as a column: steady, cycling or scheduled, all the year or in season.

import { type Calendar, clockMinute, inSpan } from '../axis/calendar.js'
import { type House, type LoadInput, WEEKDAYS } from '../house/house.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { luck } from '../units/luck.js'

const PHASE_STREAM = 11

/**
 * Power of one surveyed load in each minute of the year.
 *
 * A thermostat's cycle starts at a seeded phase for each piece, so that two fridges do not run
 * in step; the phase belongs to the load's name and does not move when other loads change.
 *
 * @returns  New Float64Array [n], [kW]
 */
export function surveyColumn(load: LoadInput, house: House, calendar: Calendar): Float64Array {
  const kw = new Float64Array(calendar.n)
  const pieceKw = onSeriesGrid((load.w ?? 0) / 1000)
  for (let piece = 0; piece < load.pieces; piece++) {
    addPiece(kw, pieceKw, load, cyclePhase(load, house.seed, piece), calendar, house.heatingMonths)
  }
  return kw
}

function addPiece(
  kw: Float64Array,
  pieceKw: number,
  load: LoadInput,
  phase: number,
  calendar: Calendar,
  heatingMonths: readonly number[],
): void {
  const spans = (load.at ?? []).map(spanMinutes)
  const on = load.cycle?.onMinutes ?? 1
  const period = on + (load.cycle?.offMinutes ?? 0)
  for (const day of calendar.days) {
    if (load.runs === 'heating season' && !heatingMonths.includes(day.month)) continue
    const weekday = WEEKDAYS[day.weekday - 1]
    if (load.days !== undefined && weekday !== undefined && !load.days.includes(weekday)) continue
    for (let i = day.start; i < day.end; i++) {
      if ((i + phase) % period >= on) continue
      const wall = calendar.wallMinute[i]!
      if (spans.length > 0 && !spans.some(([from, to]) => inSpan(wall, from, to))) continue
      kw[i]! += pieceKw
    }
  }
}

function spanMinutes(span: string): readonly [number, number] {
  const [from, to] = span.split('-').map((part) => clockMinute(part.trim()) ?? 0)
  return [from ?? 0, to ?? 0]
}

function cyclePhase(load: LoadInput, seed: number, piece: number): number {
  if (load.cycle === undefined) return 0
  let hash = piece
  for (const char of load.name) hash = (Math.imul(hash, 31) + (char.codePointAt(0) ?? 0)) | 0
  return Math.floor(luck(seed, PHASE_STREAM, hash) * (load.cycle.onMinutes + load.cycle.offMinutes))
}
