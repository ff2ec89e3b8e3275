// How bright each day of a synthetic year is, as a share of the clear day.
//
// A Gaussian score with memory is mapped by its rank onto a bounded distribution whose mean is
// the month's. The mapping of a Gaussian process onto the observed distribution is that of
// V. A. Graham, K. G. T. Hollands and T. E. Huget, "A time series model for Kt with application
// to global synthetic weather generation", Solar Energy 40, 83-92 (1988), here in clear-sky
// index; the one-parameter bounded exponential is the form of P. Bendt, M. Collares-Pereira and
// A. Rabl, "The frequency distribution of daily insolation values", Solar Energy 27, 1-5 (1981).
// The mean holds over many years, not in each month: bad Januaries exist.

import { errorFunction } from 'simple-statistics'
import type { Calendar } from '../axis/calendar.js'
import { normalLuck } from '../units/luck.js'

/** The darkest day, as a share of the clear day; common practice, 0.05-0.08. */
export const DARKEST_DAY = 0.06

/** Share of the score's variance that changes slowly, and its memory: 0.15 over some 8 days. */
const SLOW_SHARE = 0.15
const SLOW_MEMORY = Math.exp(-1 / 8)

/** Day-to-day memory of the whole score: winter and the rest of the year. */
const WINTER_MEMORY = 0.35
const OTHER_MEMORY = 0.3

const FAST_STREAM = 1
const SLOW_STREAM = 2
/** Days before 1 January from which the memory is run in. */
const RUN_IN_DAYS = 80

/**
 * Gaussian scores of the days of a synthetic year; low is dull.
 *
 * @param year   number of the synthetic year, 0 and up
 * @returns      New Float64Array [days], mean 0 and variance 1 over many years
 */
export function dailyScores(
  seed: number,
  year: number,
  calendar: Calendar,
  northern: boolean,
): Float64Array {
  const { days } = calendar
  const scores = new Float64Array(days.length)
  let fast = 0
  let slow = 0
  for (let d = -RUN_IN_DAYS; d < days.length; d++) {
    const month = days[(d + days.length) % days.length]!.month
    const memory = isWinter(month, northern) ? WINTER_MEMORY : OTHER_MEMORY
    const fastMemory = (memory - SLOW_SHARE * SLOW_MEMORY) / (1 - SLOW_SHARE)
    // The run-in shares its luck with the end of the year before.
    const index = year * days.length + d
    fast = fastMemory * fast + Math.sqrt(1 - fastMemory ** 2) * normalLuck(seed, FAST_STREAM, index)
    slow =
      SLOW_MEMORY * slow + Math.sqrt(1 - SLOW_MEMORY ** 2) * normalLuck(seed, SLOW_STREAM, index)
    if (d >= 0) scores[d] = Math.sqrt(1 - SLOW_SHARE) * fast + Math.sqrt(SLOW_SHARE) * slow
  }
  return scores
}

/** November to February north of the equator, May to August south of it. */
export function isWinter(month: number, northern: boolean): boolean {
  return northern ? month >= 11 || month <= 2 : month >= 5 && month <= 8
}

/** The bounded exponential on [DARKEST_DAY, 1]: density proportional to exp(shape · x). */
export interface DayLaw {
  readonly shape: number
}

/**
 * The law whose mean is a month's clear-sky index.
 *
 * @param mean  DARKEST_DAY + 0.01 .. 0.99
 */
export function dayLaw(mean: number): DayLaw {
  let low = -400
  let high = 400
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (lawMean(middle) < mean) low = middle
    else high = middle
  }
  return { shape: (low + high) / 2 }
}

/** Mean of the law. */
export function lawMean(shape: number): number {
  const span = 1 - DARKEST_DAY
  const x = shape * span
  if (Math.abs(x) < 1e-4) return DARKEST_DAY + span * (0.5 + x / 12)
  return DARKEST_DAY + span * (1 / (1 - Math.exp(-x)) - 1 / x)
}

/** Share of days that are duller than one of a score, 0..1. */
export function rankOfScore(score: number): number {
  return 0.5 * (1 + errorFunction(score / Math.SQRT2))
}

/** Clear-sky index of a day with a score: the law's quantile at the score's rank. */
export function dayIndex(law: DayLaw, score: number): number {
  const rank = rankOfScore(score)
  const span = 1 - DARKEST_DAY
  const x = law.shape * span
  if (Math.abs(x) < 1e-4) return DARKEST_DAY + span * rank
  const share =
    x > 0
      ? 1 + Math.log(rank + (1 - rank) * Math.exp(-x)) / x
      : Math.log1p(rank * Math.expm1(x)) / x
  return DARKEST_DAY + span * Math.min(1, Math.max(0, share))
}
