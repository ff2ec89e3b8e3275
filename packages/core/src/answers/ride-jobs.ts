// The work behind one ride answer, in pieces that can be run anywhere: here, or on several workers.

import { minutesOfHours } from '../axis/calendar.js'
import { rideLoads } from '../cut/rides.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { type BatchRides, monthRidesOf, type SkyFacts, type Variant } from './month-rides.js'
import { monthSky } from './month-sky.js'
import type { RideQuestion } from './ride-question.js'
import { equip, type Scenario } from './scenario.js'

/** How far each start is followed at least. [min] */
const HORIZON_MINUTES = 2 * 1440

/** How far past the end of a long cut each start is followed. [min] */
const BEYOND_MINUTES = 1440

/** How far each start of a cut is followed. @param hours  of the cut [h] @returns [min] */
export function rideHorizon(hours: number): number {
  return Math.max(HORIZON_MINUTES, minutesOfHours(hours) + BEYOND_MINUTES)
}

/** One sky, or some years of it. */
export interface RideJob {
  readonly sky: SkyKind
  /** First year and one past the last; null for all of the sky. */
  readonly years: readonly [number, number] | null
}

/** What a job found; it can be sent from one worker to another. */
export interface RideResult {
  readonly job: RideJob
  readonly sky: SkyFacts
  /** By the name of the variant. */
  readonly batches: Readonly<Record<string, readonly BatchRides[]>>
}

/**
 * The jobs of a question, in the order in which their results are put together.
 *
 * @param most  years of the typical sky in one job; all in one when left out
 */
export function rideJobs(prepared: Prepared, question: RideQuestion, most?: number): RideJob[] {
  const { years = 30 } = question
  const step = Math.max(1, most ?? years)
  return skiesToShow(prepared, question.sky ?? 'dull').flatMap((sky): RideJob[] => {
    if (sky !== 'typical') return [{ sky, years: null }]
    return Array.from({ length: Math.ceil(years / step) }, (_, part) => ({
      sky,
      years: [part * step, Math.min(years, (part + 1) * step)] as const,
    }))
  })
}

/** Rides the starts of a job. */
export function runRideJob(prepared: Prepared, question: RideQuestion, job: RideJob): RideResult {
  const { month, hours, years = 30, winters = 10, seed = prepared.house.seed } = question
  const choice = { kind: job.sky, month, cutHours: hours, years, winters, seed }
  const { sky, batches } = monthSky(prepared, choice)
  const part = { sky, batches: job.years === null ? batches : batches.slice(...job.years) }
  const variants = Object.entries(variantsOf(prepared, question, job.sky))
  const list = variants.map(([, variant]) => variant)
  const loads = rideLoads(prepared.demand)
  const rides = monthRidesOf(prepared, part, list, loads, { month, hours })
  const { kind, years: known, hasExtremes } = sky
  return {
    job,
    sky: { kind, years: known, hasExtremes },
    batches: Object.fromEntries(variants.map(([name], v) => [name, rides[v]!.batches])),
  }
}

/** The promise's sky first; a clear one never first. */
export function skiesToShow(prepared: Prepared, promise: SkyKind): SkyKind[] {
  const order: SkyKind[] = ['dull', 'none', 'typical', 'clear']
  if (prepared.record !== null) order.push('file')
  return [promise, ...order.filter((kind) => kind !== promise)]
}

/** The stack as asked for; under typical skies also full and new; for the promise also bare. */
export function variantsOf(
  prepared: Prepared,
  question: RideQuestion,
  kind: SkyKind,
): Record<string, Variant> {
  const cut = minutesOfHours(question.hours)
  const horizon = rideHorizon(question.hours)
  const variants: Record<string, Variant> = {
    main: { equipped: equip(prepared, question), horizon },
  }
  if (kind === 'typical') {
    const scenario: Scenario = { ...question, startSoc: 'full', health: 1 }
    variants.bright = { equipped: equip(prepared, scenario), horizon: cut, shareOnly: true }
  }
  if (kind === (question.sky ?? 'dull') && prepared.house.generator !== undefined) {
    variants.bare = { equipped: equip(prepared, { ...question, generator: false }), horizon }
  }
  return variants
}
