// A set that does not start, or fails while it runs, carried through every cut.
//
// Each start of the set in a cut is a branch: with chance p it fails, the set is out of order until
// the grid is back, and what follows is lived without it; else the cut goes on to its next start.
//
//     weight of start j failing = (1 - p1) … (1 - p(j-1)) · pj
//
// so every branch is lived and weighed, and no luck is drawn. A failure while running counts from
// the start of its run, the cautious side: pj = 1 - (1 - p) · exp(-run / hours between failures).

import type { Calendar } from '../../axis/calendar.js'
import type { BatchRides } from '../month-rides.js'
import { isEvening, PATTERNS, type Pattern } from '../patterns.js'
import { isWindy, type MonthWalk } from './month-walks.js'
import type { SetWalk } from './set-walk.js'

/** How a set fails. */
export interface Chances {
  /** Share of starts that fail, 0..1. */
  readonly startFailsShare: number
  /** Mean running hours between failures; null where none is counted. [h] */
  readonly hoursBetweenFailures: number | null
}

export const NEVER_FAILS: Chances = { startFailsShare: 0, hoursBetweenFailures: null }

/** Chances with a name and what they rest on. */
export interface NamedChances extends Chances {
  readonly name: string
  readonly basis: string
}

const NREL = 'Marqusee, Ericson & Jenket, NREL/TP-5C00-76553 (2020)'

/** Published and customary chances, the kindest first. */
export const CHANCES: readonly NamedChances[] = [
  {
    name: 'well kept',
    startFailsShare: 0.0013,
    hoursBetweenFailures: 1506,
    basis: `${NREL}: 80 in 100 run for two weeks, 1506 h between failures; 0.13 % from memory`,
  },
  {
    name: 'standby mean',
    startFailsShare: 0.0135,
    hoursBetweenFailures: null,
    basis: 'IEEE 493 (Gold Book), 0.0135 an attempt, from memory',
  },
  {
    name: 'poorly kept',
    startFailsShare: 0.016,
    hoursBetweenFailures: 69,
    basis: `${NREL}: 50 in 100 fail within 48 h, 69 h between failures; 1.6 % from memory`,
  },
  {
    name: 'petrol, by hand',
    startFailsShare: 0.05,
    hoursBetweenFailures: null,
    basis: 'common practice, no source; 2-20 %',
  },
]

/** One way a cut may go. */
export interface Outcome {
  readonly rideMinutes: number
  readonly weight: number
}

/** Every way a cut may go, their weights adding up to 1. */
export function outcomesOf({ starts, rideMinutes }: SetWalk, chances: Chances): Outcome[] {
  const { startFailsShare, hoursBetweenFailures } = chances
  let alive = 1
  const failed = starts.map(({ runMinutes, rideIfFails }) => {
    const runs =
      hoursBetweenFailures === null ? 1 : Math.exp(-runMinutes / 60 / hoursBetweenFailures)
    const fails = 1 - (1 - startFailsShare) * runs
    const weight = alive * fails
    alive *= 1 - fails
    return { rideMinutes: rideIfFails, weight }
  })
  return [...failed, { rideMinutes, weight: alive }]
}

/** Share of cuts that last, by the pattern in which they begin; null where none does so. */
export function lastingShares(
  calendar: Calendar,
  walks: readonly MonthWalk[],
  batches: readonly BatchRides[],
  cutMinutes: number,
  chances: Chances,
): Record<Pattern, number | null> {
  const tally = { any: [0, 0], evening: [0, 0], windy: [0, 0] } as Record<Pattern, [number, number]>
  for (const walk of walks) {
    const lasting = outcomesOf(walk, chances)
      .filter(({ rideMinutes }) => rideMinutes >= cutMinutes)
      .reduce((sum, { weight }) => sum + weight, 0)
    const within = {
      any: true,
      evening: isEvening(calendar, walk.minute),
      windy: isWindy(walk, batches),
    }
    for (const pattern of PATTERNS) {
      if (!within[pattern]) continue
      tally[pattern][0] += lasting
      tally[pattern][1]++
    }
  }
  const share = ([sum, count]: [number, number]): number | null =>
    count === 0 ? null : sum / count
  return { any: share(tally.any), evening: share(tally.evening), windy: share(tally.windy) }
}

/** The least share and its pattern. */
export function leastShare(shares: Readonly<Record<Pattern, number | null>>): {
  share: number | null
  hardest: Pattern
} {
  const known = PATTERNS.filter((pattern) => shares[pattern] !== null)
  const hardest = known.reduce(
    (least, pattern) => (shares[pattern]! < shares[least]! ? pattern : least),
    known[0] ?? 'any',
  )
  return { share: shares[hardest], hardest }
}

/**
 * Shares of every start, with what other chances take from them as a sample of the starts tells it.
 *
 * @param all    of every start, under the chances `from`
 * @param share  of the sample, under some chances
 */
export function shiftedShares(
  all: Readonly<Record<Pattern, number | null>>,
  share: (chances: Chances) => Readonly<Record<Pattern, number | null>>,
  from: Chances,
  to: Chances,
): Record<Pattern, number | null> {
  const [before, after] = [share(from), share(to)]
  const shifted = (pattern: Pattern): number | null => {
    const [had, b, a] = [all[pattern], before[pattern], after[pattern]]
    return had === null || b === null || a === null ? had : clamp(had + a - b)
  }
  return { any: shifted('any'), evening: shifted('evening'), windy: shifted('windy') }
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0, share))
}
