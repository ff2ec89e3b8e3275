// The cuts of a month, one in so many, each lived by a house with a generator.

import { minutesOfHours } from '../../axis/calendar.js'
import { longestTolerance, type RideLoad } from '../../cut/rides.js'
import { compile } from '../../island/compile.js'
import type { Prepared } from '../../series/prepare.js'
import { newScratch, windowOf } from '../../series/window.js'
import type { BatchRides } from '../month-rides.js'
import type { MonthSky } from '../month-sky.js'
import type { Equipped } from '../scenario.js'
import { type SetWalk, setGround, walkSet } from './set-walk.js'

export type { SetStart, SetWalk } from './set-walk.js'

/** One cut of the month. */
export interface MonthWalk extends SetWalk {
  /** Axis minute of the start of the cut; that of minute 0 of its window. */
  readonly minute: number
  readonly windowFrom: number
  readonly year: number
  /** Number of the batch, and of the start in it, as the rides of the month count them. */
  readonly batch: number
  readonly which: number
}

export interface WalkSpan {
  /** Length of the cut. [h] */
  readonly hours: number
  /** How far rides are told; the cut where left out. [min] */
  readonly horizon?: number
  /** Starts on wall-clock minutes that this divides: 60 for every full hour. [min] */
  readonly everyMinutes: number
  /** Also live what follows where a start of the set fails. */
  readonly branches: boolean
}

/** Walks several houses through the same weather, which is worked out once; one list a house. */
export function monthWalks(
  prepared: Prepared,
  { sky, batches }: MonthSky,
  houses: readonly Equipped[],
  loads: readonly RideLoad[],
  span: WalkSpan,
): MonthWalk[][] {
  const { calendar, demand } = prepared
  const scratch = newScratch(prepared)
  const cutMinutes = minutesOfHours(span.hours)
  const horizon = Math.max(cutMinutes, span.horizon ?? 0)
  const tolerance = longestTolerance(loads)
  const out = houses.map((): MonthWalk[] => [])
  for (const [batch, { year, from, to }] of batches.entries()) {
    const end = to + horizon + tolerance
    const window = windowOf(prepared, sky, scratch, year, from, end)
    for (const [h, { house, plant, rules, startKwh }] of houses.entries()) {
      const compiled = compile(house, calendar, demand, plant, rules, window)
      const given = { startKwh, loads, cutMinutes, horizon, tolerance }
      const ground = setGround(compiled, given, to - from)
      for (let which = 0; which < to - from; which++) {
        if (calendar.wallMinute[from + which]! % span.everyMinutes !== 0) continue
        const walk = walkSet(ground, which, span.branches)
        out[h]!.push({ ...walk, minute: from + which, windowFrom: from, year, batch, which })
      }
    }
  }
  return out
}

/** Whether the day of a walk counts as windy, by the rides of the same month and sky. */
export function isWindy({ batch, which }: MonthWalk, batches: readonly BatchRides[]): boolean {
  return batches[batch]?.windy[which] === 1
}
