// How many starts last a cut, by the patterns in which cuts tend to start.

import { minutesOfHours } from '../axis/calendar.js'
import type { Prepared } from '../series/prepare.js'
import { type WeighedBatch, weighed, weightOf } from './branches.js'
import type { MonthRides } from './month-rides.js'
import { isEvening, PATTERNS, type Pattern } from './patterns.js'
import { weighedShare } from './weighed-minutes.js'

/** How many starts last the cut. */
export interface ShareFigures {
  /** The least of `shareByPattern`. */
  readonly share: number | null
  /** The pattern of that share. */
  readonly hardest: Pattern
  readonly shareByPattern: Readonly<Record<Pattern, number | null>>
  /** Starts that each pattern counts; each of them weighs the same, however it may go. */
  readonly startsByPattern: Readonly<Record<Pattern, number>>
}

/** @param hours  of the cut, no further than the starts were followed */
export function shareFigures(
  prepared: Prepared,
  month: Pick<MonthRides, 'batches' | 'branches'>,
  hours: number,
): ShareFigures {
  return sharesOf(prepared, weighed(prepared, month), minutesOfHours(hours))
}

export function sharesOf(
  prepared: Prepared,
  batches: readonly WeighedBatch[],
  cut: number,
): ShareFigures {
  const tally = tallied(prepared, batches, cut)
  const shareByPattern = byPattern(tally, shareOf)
  const known = PATTERNS.filter((pattern) => shareByPattern[pattern] !== null)
  const hardest = known.reduce((least, pattern) =>
    shareByPattern[pattern]! < shareByPattern[least]! ? pattern : least,
  )
  return {
    share: shareByPattern[hardest],
    hardest,
    shareByPattern,
    startsByPattern: byPattern(tally, ({ starts }) => Math.round(starts)),
  }
}

/** Starts of each pattern, and those that ride the whole cut. */
function tallied(
  prepared: Prepared,
  batches: readonly WeighedBatch[],
  cut: number,
): Record<Pattern, Tally> {
  const tally = { any: newTally(), evening: newTally(), windy: newTally() }
  for (const batch of batches) {
    const { from, rides, windy } = batch
    for (let s = 0; s < rides.minutes.length; s++) {
      const holds = rides.minutes[s]! >= cut
      const weight = weightOf(batch, s)
      count(tally.any, holds, weight)
      if (isEvening(prepared.calendar, from + s)) count(tally.evening, holds, weight)
      if (windy[s] === 1) count(tally.windy, holds, weight)
    }
  }
  return tally
}

function byPattern<T>(
  { any, evening, windy }: Record<Pattern, Tally>,
  value: (tally: Tally) => T,
): Record<Pattern, T> {
  return { any: value(any), evening: value(evening), windy: value(windy) }
}

/** Starts counted, and those of them that hold. */
export interface Tally {
  starts: number
  hold: number
}

export function newTally(): Tally {
  return { starts: 0, hold: 0 }
}

export function count(tally: Tally, holds: boolean, weight: number): void {
  tally.starts += weight
  if (holds) tally.hold += weight
}

/** Null where there is no start. */
export function shareOf({ starts, hold }: Tally): number | null {
  return starts === 0 ? null : weighedShare(hold, starts)
}
