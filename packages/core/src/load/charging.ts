// A vehicle at its charger: a stated energy on each day on which it charges.
//
// It takes its full power from the start of its hours until the energy is in; the last minute is a
// part of one. What the clock takes from a night in spring is charged behind the end of its hours,
// and a night that runs past the end of the year is charged in its first minutes, for over the turn
// of the year it is the same year again.

import { onSeriesGrid } from '../units/energy-grid.js'
import { type SurveyYear, spanMinutes } from './day-filter.js'

/**
 * Adds the charging of one piece to a column, in place.
 *
 * @param w     power while it charges. [W]
 * @param from  wall-clock span, `00:30-04:30`; only its start counts here
 * @param on    1 for each day on which it charges. [days]
 */
export function addCharging(
  kw: Float64Array,
  { w, kwhPerDay, from }: { readonly w: number; readonly kwhPerDay: number; readonly from: string },
  on: Uint8Array,
  { calendar }: Pick<SurveyYear, 'calendar'>,
): void {
  const full = onSeriesGrid(w / 1000)
  const [opens] = spanMinutes(from)
  for (const [d, day] of calendar.days.entries()) {
    if (on[d] === 0) continue
    let at = day.start
    while (at < day.end && calendar.wallMinute[at]! < opens) at++
    for (let left = kwhPerDay * 60; left > 0; left -= full) {
      kw[at++ % kw.length]! += onSeriesGrid(Math.min(left, full))
    }
  }
}
