// The work behind one ride answer, in pieces that can be run anywhere: here, or on several workers.

import { minutesOfHours } from '../axis/calendar.js'
import { rideLoads } from '../cut/rides.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import {
  type BatchRides,
  type MonthRides,
  monthOf,
  monthRidesOf,
  type SkyFacts,
  type Variant,
} from './month-rides.js'
import { monthSky } from './month-sky.js'
import type { RideQuestion } from './ride-question.js'
import { chanceOf, equip, type Scenario } from './scenario.js'

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
  /** By the name of the variant; where its generator starts by chance, both ways beside it. */
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
    batches: Object.fromEntries(variants.flatMap(([name], v) => named(name, rides[v]!))),
  }
}

/** Names of the batches of a variant: as drawn, and the two branches. */
const namesOf = (name: string): [string, string, string] => [
  name,
  `${name}, set starts`,
  `${name}, set fails`,
]

function named(name: string, { batches, branches }: MonthRides): [string, readonly BatchRides[]][] {
  const [main, starts, fails] = namesOf(name)
  if (branches === undefined) return [[main, batches]]
  return [
    [main, batches],
    [starts, branches.starts],
    [fails, branches.fails],
  ]
}

/**
 * The rides of one variant under one sky, put together from all jobs; null where there are none.
 *
 * @param name  of the variant, as `variantsOf` has it
 */
export function riddenUnder(
  results: readonly RideResult[],
  kind: SkyKind,
  name: string,
  { equipped, horizon }: Variant,
): MonthRides | null {
  const jobs = results.filter(({ job }) => job.sky === kind)
  if (jobs.length === 0) return null
  const [batches, ...both] = namesOf(name).map((each) =>
    jobs.flatMap((result) => result.batches[each] ?? []),
  )
  return monthOf(jobs[0]!.sky, horizon, batches!, both, chanceOf(equipped))
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
    variants.bright = { equipped: equip(prepared, scenario), horizon: cut, minutesOnly: true }
  }
  if (kind === (question.sky ?? 'dull') && prepared.house.generator !== undefined) {
    variants.bare = { equipped: equip(prepared, { ...question, generator: false }), horizon }
  }
  return variants
}
