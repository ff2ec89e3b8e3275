// A line of the survey as a column: steady, cycling, in events, charging or by the air, on the days
// and at the hours on which it runs.

import type { LoadInput } from '../house/house.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { hourlyKw } from './by-air.js'
import { addCharging } from './charging.js'
import { thermostat } from './cycle.js'
import { daysOn, hoursOpen, type SurveyYear } from './day-filter.js'
import { eventStarts } from './events.js'

/**
 * Power of one surveyed load in each minute of the year. Its chance belongs to its name and does
 * not move when other loads change.
 *
 * @param kw  receives it, all 0 as yet. [n], [kW]; a new column where left out
 * @returns   `kw`
 * @throws    InputError where it follows the air and the year has none
 */
export function surveyColumn(
  load: LoadInput,
  year: SurveyYear,
  kw: Float64Array = new Float64Array(year.calendar.n),
): Float64Array {
  const on = daysOn(load, year)
  for (let piece = 0; piece < load.pieces; piece++) addPiece(kw, load, piece, on, year)
  return kw
}

function addPiece(
  kw: Float64Array,
  load: LoadInput,
  piece: number,
  on: Uint8Array,
  year: SurveyYear,
): void {
  const { name, w = 0, events, charging, cycle, byAir, at } = load
  const pieceKw = onSeriesGrid(w / 1000)
  if (events !== undefined) {
    for (const start of eventStarts({ name, events, piece }, on, year)) {
      for (let i = start; i < start + events.minutes; i++) kw[i]! += pieceKw
    }
  } else if (charging !== undefined) {
    addCharging(kw, { w, ...charging, from: at?.[0] ?? '00:00-24:00' }, on, year)
  } else if (cycle !== undefined) {
    const isOn = thermostat({ name, cycle }, piece, year)
    addWhile(kw, load, on, year, (i) => (isOn(i) ? pieceKw : 0))
  } else if (byAir !== undefined) {
    const hours = hourlyKw(byAir, year)
    addWhile(kw, load, on, year, (i) => hours[Math.floor(i / 60)]!)
  } else addWhile(kw, load, on, year, () => pieceKw)
}

/** Adds a power in the minutes in which a load runs by day and clock. */
function addWhile(
  kw: Float64Array,
  { at }: LoadInput,
  on: Uint8Array,
  { calendar }: SurveyYear,
  power: (minute: number) => number,
): void {
  const open = hoursOpen(at)
  for (const [d, day] of calendar.days.entries()) {
    if (on[d] === 0) continue
    for (let i = day.start; i < day.end; i++) {
      if (open[calendar.wallMinute[i]!] === 1) kw[i]! += power(i)
    }
  }
}
