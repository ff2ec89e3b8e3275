// How long does this house ride through an N-hour cut in this month?
//
// Every minute of the month is a start, in every year of the sky; each is followed past the cut
// and past the month's end. The promise stands on the cautious side: dull sky, reserve, health.

import { monthRange } from '../axis/calendar.js'
import { rideLoads } from '../cut/rides.js'
import { inverterLossKw, type Plant } from '../equipment/plant.js'
import type { Site } from '../house/house.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { type Beside, besideOf } from './beside.js'
import { checkQuestion } from './check-question.js'
import { PATTERN_GROUNDS, type PatternGround } from './patterns.js'
import {
  type RideResult,
  riddenUnder,
  rideJobs,
  runRideJob,
  skiesToShow,
  variantsOf,
} from './ride-jobs.js'
import type { RideQuestion } from './ride-question.js'
import { type Equipped, equip } from './scenario.js'
import { shareFigures } from './share-figures.js'
import { type SkyFigures, skyFigures } from './sky-figures.js'

export interface RideAnswer extends Beside {
  readonly house: string
  readonly site: Site
  readonly month: number
  readonly cutHours: number
  readonly modules: number
  readonly startSoc: Equipped['startSoc']
  readonly health: number
  readonly years: number
  readonly seed: number
  /** The sky the promise stands on. */
  readonly promise: SkyKind
  readonly skies: Partial<Record<SkyKind, SkyFigures>>
  /** The promise's figures with the generator left out; null for a house without one. */
  readonly withoutGenerator: SkyFigures | null
  readonly bright: { readonly share: number | null; readonly conditions: string }
  readonly met: boolean | null
  /** What each pattern of the shares counts and rests on. */
  readonly patterns: readonly PatternGround[]
}

/**
 * @param plain  the house as it was read, to tell which defaults it leans on; without it the
 *               answer lists none
 * @throws       InputError where the question does not fit the house
 */
export function rideAnswer(
  prepared: Prepared,
  question: RideQuestion,
  plain?: unknown,
): RideAnswer {
  checkQuestion(question, ['month', 'hours'])
  const results = rideJobs(prepared, question).map((job) => runRideJob(prepared, question, job))
  return rideFrom(prepared, question, results, plain)
}

/**
 * Puts together what `runRideJob` found, wherever it was run; the answer does not depend on it.
 *
 * @param results  of all jobs, in the order of `rideJobs`
 */
export function rideFrom(
  prepared: Prepared,
  question: RideQuestion,
  results: readonly RideResult[],
  plain?: unknown,
): RideAnswer {
  checkQuestion(question, ['month', 'hours'])
  const { house } = prepared
  const { month, hours, years = 30, seed = house.seed } = question
  const promise = question.sky ?? 'dull'
  const equipped = equip(prepared, question)
  const skies: Partial<Record<SkyKind, SkyFigures>> = {}
  for (const kind of skiesToShow(prepared, promise)) {
    skies[kind] = figuresUnder(prepared, question, kind, results, 'main') as SkyFigures
  }
  const bare = figuresUnder(prepared, question, promise, results, 'bare')
  const { bright } = variantsOf(prepared, question, 'typical')
  const brightRides = riddenUnder(results, 'typical', 'bright', bright!)!
  const promised = skies[promise]?.share ?? null
  return {
    house: house.house,
    site: house.site,
    month,
    cutHours: hours,
    modules: equipped.modules,
    startSoc: equipped.startSoc,
    health: equipped.health,
    years,
    seed,
    promise,
    skies,
    withoutGenerator: bare,
    bright: {
      share: shareFigures(prepared, brightRides, hours).share,
      conditions: 'full, new, typical sky',
    },
    met: question.share === undefined || promised === null ? null : promised >= question.share,
    patterns: PATTERN_GROUNDS,
    ...besideOf(prepared, equipped, month, plain),
  }
}

/** The figures of one variant under one sky; null where there is none. */
function figuresUnder(
  prepared: Prepared,
  question: RideQuestion,
  kind: SkyKind,
  results: readonly RideResult[],
  name: string,
): SkyFigures | null {
  const { month, hours, winters = 10 } = question
  const variant = variantsOf(prepared, question, kind)[name]
  const ride = variant === undefined ? null : riddenUnder(results, kind, name, variant)
  if (variant === undefined || ride === null) return null
  const figures = skyFigures(prepared, ride, rideLoads(prepared.demand), { hours, winters })
  return { ...figures, withoutSunHours: withoutSunHours(prepared, variant.equipped, month) }
}

/**
 * The hand figure: energy from the start charge down to the lower limit of a warm stack, over the
 * month's mean critical load, idle draw and losses; comfort loads, sun and cold left out, so that a
 * ride in the cold may well be shorter.
 *
 *     hours = (start - limit) / (load + loss(load) + standing)
 *
 * The form is that of the stand-alone sizing standards (IEEE 1562, IEC 62124): energy that may be
 * used over the daily need.
 */
export function withoutSunHours(prepared: Prepared, equipped: Equipped, month: number): number {
  const [from, to] = monthRange(prepared.calendar, month)
  let sum = 0
  for (let i = from; i < to; i++) sum += prepared.demand.criticalKw[i]!
  const usable = equipped.startKwh - equipped.rules.loadsOffKwh
  return Math.max(0, usable / drawKw(equipped.plant, sum / (to - from)))
}

function drawKw(plant: Plant, loadKw: number): number {
  return loadKw + inverterLossKw(plant, loadKw) + plant.standingKw
}
