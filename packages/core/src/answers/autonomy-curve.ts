// The autonomy curve: which share of cuts a house still rides after so many hours.
//
//     share(h) = starts whose ride lasts h hours or longer / all starts
//
// For a cut of h hours that is the `share` of an answer; the curve has it for every h. A ride of
// exactly h hours counts, so the curve falls just after the length of a ride, never at it.

import { minutesOfHours } from '../axis/calendar.js'
import type { MinuteColumn } from '../cut/rides.js'
import { InputError } from '../house/problem.js'
import { weighedShare } from './weighed-minutes.js'

/** Rides of one batch of starts. */
export interface CurveRides {
  /** Minutes from each start to the end of its ride; the horizon where it lasts longer. */
  readonly minutes: MinuteColumn
  /** 1 where the ride outlasts the horizon. */
  readonly beyond: Uint8Array
  /** 1 where the start counts; all of them when left out. */
  readonly counted?: Uint8Array
  /** What a start counts for; each for one when null or left out. */
  readonly weights?: Float64Array | null
}

export interface AutonomyCurve {
  /** Where the share is told. [h] */
  readonly hours: Float64Array
  /**
   * Share of starts, 0..1, that last as long. NaN without any start, and past the horizon while
   * some ride outlasts it: how much longer that one goes is not known.
   */
  readonly share: Float64Array
  /** Starts counted. */
  readonly starts: number
  /** How far each start was followed. [h] */
  readonly horizonHours: number
  /** Share of starts that outlast the horizon; NaN without any start. */
  readonly beyondShare: number
}

/**
 * @param hours    where to tell the share. [h], >= 0, in any order
 * @param horizon  how far each start was followed. [min]
 * @throws         InputError where an hour is negative or missing
 *
 * @example
 * const rides = { minutes: Int32Array.of(60, 120, 180, 600), beyond: Uint8Array.of(0, 0, 0, 1) }
 * autonomyCurve([rides], [1, 2, 2.5, 10], 600).share // => 1, 0.75, 0.5, 0.25
 */
export function autonomyCurve(
  batches: readonly CurveRides[],
  hours: ArrayLike<number>,
  horizon: number,
): AutonomyCurve {
  const tally = talliedRides(batches, horizon)
  const grid = Float64Array.from(hours)
  const share = grid.map((h) => {
    if (!(h >= 0)) throw new InputError('hours', 'numbers >= 0 [h]', h)
    const minute = minutesOfHours(h)
    if (minute <= horizon) return weighedShare(tally.lasting[minute]!, tally.starts)
    return tally.beyond > 0 ? Number.NaN : 0 / tally.starts
  })
  return {
    hours: grid,
    share,
    starts: Math.round(tally.starts),
    horizonHours: horizon / 60,
    beyondShare: weighedShare(tally.beyond, tally.starts),
  }
}

/**
 * Evenly spaced hours from 0 to `last`. [h]
 *
 * @param perHour  how many to each hour; default 4, so that place 4 h is hour h
 */
export function hoursTo(last: number, perHour = 4): Float64Array {
  return Float64Array.from({ length: Math.floor(last * perHour) + 1 }, (_, i) => i / perHour)
}

/** The least of some curves over the same hours, at each hour for itself. */
export function leastCurve(curves: readonly AutonomyCurve[]): AutonomyCurve {
  const known = curves.filter(({ starts }) => starts > 0)
  const [first] = known
  if (first === undefined) throw new InputError('curves', 'at least one with starts', curves.length)
  return {
    ...first,
    share: first.share.map((_, i) => Math.min(...known.map(({ share }) => share[i]!))),
    starts: Math.max(...known.map(({ starts }) => starts)),
    beyondShare: Math.min(...known.map(({ beyondShare }) => beyondShare)),
  }
}

/** How many starts last at least so many minutes, by minute, each by its weight. [horizon + 1] */
function talliedRides(
  batches: readonly CurveRides[],
  horizon: number,
): { lasting: Float64Array; starts: number; beyond: number } {
  const lasting = new Float64Array(horizon + 1)
  let starts = 0
  let past = 0
  for (const { minutes, beyond, counted, weights } of batches) {
    for (let s = 0; s < minutes.length; s++) {
      if (counted !== undefined && counted[s] !== 1) continue
      const weight = weights?.[s] ?? 1
      starts += weight
      past += weight * beyond[s]!
      lasting[minutes[s]!]! += weight
    }
  }
  for (let minute = horizon - 1; minute >= 0; minute--) lasting[minute]! += lasting[minute + 1]!
  return { lasting, starts, beyond: past }
}
