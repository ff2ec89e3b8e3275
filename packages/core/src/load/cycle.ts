// A thermostat going on and off.
//
// A cycle is as long as its two times together and begins with its on-time. Where the on-time
// follows the room it is whole minutes in each cycle, its fraction carried over to the next.

import type { LoadInput } from '../house/house.js'
import type { CycleInput } from '../house/survey-lines.js'
import { luck } from '../units/luck.js'
import { onShares } from './by-air.js'
import type { SurveyYear } from './day-filter.js'
import { nameHash } from './name-hash.js'

const PHASE_STREAM = 11

/**
 * Whether a piece is on, minute by minute of the year, as far as its thermostat is asked.
 *
 * It starts at a seeded phase for each piece, so that two fridges do not run in step; the phase
 * belongs to the load's name and does not move when other loads change.
 */
export function thermostat(
  { name, cycle }: Pick<LoadInput, 'name'> & { readonly cycle: CycleInput },
  piece: number,
  year: SurveyYear,
): (minute: number) => boolean {
  const period = cycle.onMinutes + cycle.offMinutes
  const draw = luck(year.house.seed, PHASE_STREAM, nameHash(name, piece))
  const phase = Math.floor(draw * period)
  if (cycle.insideC === undefined) return (i) => (i + phase) % period < cycle.onMinutes
  const onMinutes = wholeMinutes(onShares(cycle, year), period, phase, year)
  return (i) => (i + phase) % period < onMinutes[Math.floor((i + phase) / period)]!
}

/** On-time of each cycle of the year, by the day in which it begins. [min] */
function wholeMinutes(
  shares: Float64Array,
  period: number,
  phase: number,
  { calendar }: SurveyYear,
): Uint16Array {
  const out = new Uint16Array(Math.ceil((calendar.n + phase) / period))
  let due = 0.5
  for (let c = 0; c < out.length; c++) {
    due += period * shares[calendar.dayOf[Math.max(0, c * period - phase)]!]!
    out[c] = Math.floor(due)
    due -= out[c]!
  }
  return out
}
