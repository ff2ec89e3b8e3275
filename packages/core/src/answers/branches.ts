// A generator that may not start, with both ways weighed instead of drawn.
//
// Of a house whose set fails to start with chance p, 0 < p < 1, every cut is lived three times:
//
//   drawn   each try succeeds or fails by the luck of its minute, as in a trace
//   starts  every try succeeds
//   fails   the first try of the cut fails; the set is out of order until the grid is back
//
// p of the weight of a cut goes to `fails`, whatever its luck. The rest is for cuts whose first try
// succeeds and whose later tries are drawn. That is the drawn course, unless in it the first try
// failed too, which is told by its being the same as `fails`: then nothing is known of its later
// tries, and it takes them from the other cuts of its class, those that begin in the same hour of the
// clock, windy or not. Where in a class of k cuts known m met a later failure, and u are not known:
//
//     known, no later failure    p fails + (1 - p) drawn
//     known, a later failure     p fails + (1 - p) (1 + u / k) drawn
//     not known                  p fails + (1 - p) (1 - m / k) starts
//
// so a class weighs as many as it has cuts. The first try of every cut is weighed, without luck. Later
// tries hold the luck of the seed, and in a class where nothing is known they are taken to succeed:
// its share is then too high, by p (1 - p) for each of them at most. (To take them to fail would put
// back the luck of one try for the cuts of a whole night.) A cut in which the set changes nothing
// counts as it is. Failures while running are drawn in all three.

import type { Calendar } from '../axis/calendar.js'
import type { MinuteColumn } from '../cut/rides.js'
import type { Prepared } from '../series/prepare.js'
import type { BatchRides, MonthRides } from './month-rides.js'
import { WeighedMinutes } from './weighed-minutes.js'

/** How a start was lived. */
export type Branch = 'drawn' | 'starts' | 'fails'

/** A batch of rides with what each counts for. */
export interface WeighedBatch extends BatchRides {
  readonly branch: Branch
  /** By start; null where each counts for one. */
  readonly weights: Float64Array | null
}

/** What of the rides of a month counts for how much; the weights add up to the starts. */
export function weighed(
  { calendar }: Pick<Prepared, 'calendar'>,
  { batches, branches }: Pick<MonthRides, 'batches' | 'branches'>,
): WeighedBatch[] {
  if (branches === undefined) return asDrawn(batches)
  const { chance, starts, fails } = branches
  const all = (branch: Branch, of: readonly BatchRides[]): (WeighedBatch & Weights)[] =>
    of.map((batch) => ({ ...batch, branch, weights: new Float64Array(batch.rides.minutes.length) }))
  const [drawn, well, ill] = [all('drawn', batches), all('starts', starts), all('fails', fails)]
  const fates = batches.map((batch, b) => fatesOf(batch, starts[b]!, fails[b]!))
  const classes = classesOf(calendar, batches, fates)
  for (const [b, batch] of drawn.entries()) {
    for (let s = 0; s < batch.weights.length; s++) {
      const fate = fates[b]![s]!
      const { known, later, unknown } = classes[classOf(calendar, batch, s)]!
      if (fate === Fate.same) batch.weights[s] = 1
      else ill[b]!.weights[s] = chance
      if (fate === Fate.through) batch.weights[s] = 1 - chance
      if (fate === Fate.later) batch.weights[s] = (1 - chance) * (1 + unknown / known)
      if (fate === Fate.unknown) {
        well[b]!.weights[s] = (1 - chance) * (known === 0 ? 1 : 1 - later / known)
      }
    }
  }
  return [...drawn, ...well, ...ill]
}

/** What the drawn course of a cut tells of its tries. */
const Fate = { same: 0, through: 1, later: 2, unknown: 3 } as const

/** Nothing to fail, all tries well, a later one ill, or the first. [starts] */
function fatesOf(drawn: BatchRides, starts: BatchRides, fails: BatchRides): Uint8Array {
  return Uint8Array.from(drawn.rides.minutes, (_, s) => {
    if (!isSame(drawn, fails, s)) return isSame(drawn, starts, s) ? Fate.through : Fate.later
    return isSame(starts, fails, s) ? Fate.same : Fate.unknown
  })
}

/** Cuts alike enough to stand for each other. */
interface Class {
  known: number
  /** Of those known, how many met a failure after their first try. */
  later: number
  unknown: number
}

function classOf({ wallMinute }: Calendar, { from, windy }: BatchRides, s: number): number {
  return 2 * Math.floor(wallMinute[from + s]! / 60) + windy[s]!
}

function classesOf(
  calendar: Calendar,
  batches: readonly BatchRides[],
  fates: readonly Uint8Array[],
): Class[] {
  const classes = Array.from({ length: 48 }, () => ({ known: 0, later: 0, unknown: 0 }))
  for (const [b, batch] of batches.entries()) {
    for (const [s, fate] of fates[b]!.entries()) {
      const into = classes[classOf(calendar, batch, s)]!
      if (fate === Fate.unknown) into.unknown++
      if (fate === Fate.through || fate === Fate.later) into.known++
      if (fate === Fate.later) into.later++
    }
  }
  return classes
}

export function weightOf({ weights }: Pick<WeighedBatch, 'weights'>, s: number): number {
  return weights === null ? 1 : weights[s]!
}

/** Every start for one. */
export function asDrawn(batches: readonly BatchRides[]): WeighedBatch[] {
  return batches.map((batch) => ({ ...batch, branch: 'drawn', weights: null }))
}

/** Rides by what they count for. */
export function rankedMinutes(
  batches: readonly WeighedBatch[],
  horizon: number,
  columnOf: (batch: WeighedBatch) => MinuteColumn,
): WeighedMinutes {
  const minutes = new WeighedMinutes(horizon)
  for (const batch of batches) {
    const column = columnOf(batch)
    for (let s = 0; s < column.length; s++) minutes.add(column[s]!, weightOf(batch, s))
  }
  return minutes
}

type Weights = { readonly weights: Float64Array }

/** Whether all that is known of a start is the same in both. */
function isSame(a: BatchRides, b: BatchRides, s: number): boolean {
  const [one, other] = [a.rides, b.rides]
  if (one.minutes[s] !== other.minutes[s] || one.endedBy[s] !== other.endedBy[s]) return false
  if (a.without[s] !== b.without[s]) return false
  for (let load = 0; load < one.byLoad.length; load++) {
    if (one.byLoad[load]![s] !== other.byLoad[load]![s]) return false
    if (one.lostAfter[load]![s] !== other.lostAfter[load]![s]) return false
  }
  return true
}
