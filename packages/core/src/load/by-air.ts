// Loads that follow the weather: a heat pump by its curve, a fridge by the warmth of its room.
//
// Demand depends on the calendar only, so the air is the mean of the season: the month's mean drawn
// over the days, with the mean swing between night and afternoon. A margin is taken off it or put
// on it, whichever makes the load draw more, for a cold (or warm) spell. All this is common
// practice, no source.

import type { CycleInput } from '../house/survey-lines.js'
import { onSeriesGrid } from '../units/energy-grid.js'
import { airOf, meanAirC, type SurveyYear } from './day-filter.js'

/** Warmth of a heated room, in which the times of a cold appliance are stated. [°C] */
export const ROOM_C = 20

type Curve = readonly (readonly [number, number])[]

/**
 * Power at an air temperature, in straight lines between the pairs, held beyond their ends. [W]
 *
 * @param curve  pairs of [°C] and [W], rising in temperature
 */
export function powerAt(curve: Curve, airC: number): number {
  const next = curve.findIndex(([c]) => c > airC)
  if (next <= 0) return (next === 0 ? curve[0] : curve.at(-1))![1]
  const [[c0, w0], [c1, w1]] = [curve[next - 1]!, curve[next]!]
  return w0 + ((w1 - w0) * (airC - c0)) / (c1 - c0)
}

/**
 * Power by the hour: the larger of what the curve gives a margin below and above the mean air.
 *
 * @returns  New Float64Array [hours of the axis], [kW]
 */
export function hourlyKw(curve: Curve, year: SurveyYear): Float64Array {
  const margin = year.house.sky.airMarginK
  return airOf(year).map((airC) =>
    onSeriesGrid(Math.max(powerAt(curve, airC - margin), powerAt(curve, airC + margin)) / 1000),
  )
}

/**
 * Share of its time for which a thermostat is on, day by day. A cold appliance loses cold in
 * proportion to room less inside (Newton):
 *
 *     share = on / (on + off) · (room - inside) / (20 °C - inside), within 0..1
 *
 * A heated room is at 20 °C, or at the day's air and the margin where that is warmer; an unheated
 * one is at the day's air and the margin.
 *
 * @returns  New Float64Array [days]
 */
export function onShares(cycle: CycleInput, year: SurveyYear): Float64Array {
  const { days } = year.calendar
  const stated = cycle.onMinutes / (cycle.onMinutes + cycle.offMinutes)
  const { insideC, room } = cycle
  if (insideC === undefined) return new Float64Array(days.length).fill(stated)
  return Float64Array.from(days, (day) => {
    const warmC = meanAirC(day, year) + year.house.sky.airMarginK
    const roomC = room === 'unheated' ? warmC : Math.max(ROOM_C, warmC)
    return Math.min(1, Math.max(0, (stated * (roomC - insideC)) / (ROOM_C - insideC)))
  })
}
