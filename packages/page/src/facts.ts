// Everything a page says, worked out once; the sections only put it into words.

import {
  type AutonomyCurve,
  autonomyCurve,
  type CutStory,
  checkAnswer,
  type Equipped,
  equip,
  type Finding,
  type HourFigures,
  type HouseFiles,
  hourFigures,
  hoursTo,
  type MonthRides,
  type MonthRow,
  minutesOfHours,
  monthRidesOf,
  monthRow,
  monthSky,
  type Prepared,
  type RideAnswer,
  type RideQuestion,
  type RideResult,
  rankedMinutes,
  riddenUnder,
  rideFrom,
  rideLoads,
  type SkyFigures,
  type SkyKind,
  traceCut,
  untoldNames,
  variantsOf,
  weighed,
} from '@tideover/core'
import { type FormStart, hardestStart } from './hardest-start.js'
import type { Carried } from './replay/carried.js'
import { carriedOf } from './replay/carry.js'

export interface PageQuestion extends RideQuestion {
  /** A clear sky promises nothing. */
  readonly sky?: 'dull' | 'none'
}

export interface StackFacts {
  readonly modules: number
  readonly isPresent: boolean
  /** Of the modules alone, in the money of the house file; null where none is given. */
  readonly price: number | null
  readonly figures: HourFigures
}

/** How the rides of all starts spread, under one sky. [h] */
export interface Spread {
  readonly sky: SkyKind
  /** At the shares of `SPREAD_AT`. */
  readonly hours: readonly number[]
  readonly horizonHours: number
}

/** The first share of starts lasts so long at most: 1 in 20, 1 in 4, half, 3 in 4, 19 in 20. */
export const SPREAD_AT = [0.05, 0.25, 0.5, 0.75, 0.95] as const

export interface PageFacts {
  readonly prepared: Prepared
  readonly equipped: Equipped
  readonly answer: RideAnswer
  /** Under the sky of the promise. */
  readonly promised: SkyFigures
  readonly winters: number
  readonly stacks: readonly StackFacts[]
  /** The middle case under the sky of the promise. */
  readonly middle: CutStory
  readonly findings: readonly Finding[]
  /** By sky, the promise's first. */
  readonly curves: readonly { readonly sky: SkyKind; readonly curve: AutonomyCurve }[]
  readonly spread: readonly Spread[]
  /** The months by the hour under the sky of the promise, January first; none where not asked for. */
  readonly months: readonly MonthRow[]
  /** The start on a full hour that lasts least under the sky of the promise. */
  readonly hardestStart: FormStart | null
  /** Loads that must stay on of which nobody said how long they may be off. */
  readonly untold: readonly string[]
  readonly carried: Carried
}

/** At most so many stacks side by side. */
const STACKS = 3

/**
 * @param results  of all jobs of the question, in the order of `rideJobs`
 * @param others   the other months under the sky of the promise, as `year` tells them
 */
export function factsOf(
  prepared: Prepared,
  files: HouseFiles,
  question: PageQuestion,
  results: readonly RideResult[],
  plain: unknown,
  others: readonly MonthRow[] = [],
): PageFacts {
  const answer = rideFrom(prepared, question, results, plain)
  const promised = answer.skies[answer.promise] as SkyFigures
  const { winters = 10, seed = prepared.house.seed, month, hours } = question
  const equipped = equip(prepared, question)
  const { modules, health } = equipped
  const startSoc = question.startSoc ?? 'reserve'
  const asked = { month, hours, winters, seed, modules, health, startSoc }
  const ridesUnder: RidesUnder = (sky) =>
    riddenUnder(results, sky, 'main', variantsOf(prepared, question, sky).main!)!
  return {
    prepared,
    equipped,
    answer,
    promised,
    winters,
    stacks: stacksOf(prepared, question, answer, promised),
    middle: traceCut(prepared, { ...question, startMs: middleStart(prepared, answer, ridesUnder) }),
    findings: checkAnswer(prepared, { modules, health }).findings,
    curves: curvesOf(prepared, answer, ridesUnder),
    spread: spreadOf(prepared, answer, ridesUnder),
    months: monthsOf(prepared, question, answer, ridesUnder, others),
    hardestStart: hardestStart(prepared, ridesUnder(answer.promise).batches),
    untold: untoldNames(prepared, plain),
    carried: carriedOf(prepared, files, asked),
  }
}

/** The rides behind the answer. */
type RidesUnder = (sky: SkyKind) => MonthRides

/** The present stack and its neighbours on the base, under the sky of the promise. */
function stacksOf(
  prepared: Prepared,
  question: PageQuestion,
  answer: RideAnswer,
  promised: SkyFigures,
): StackFacts[] {
  const { house } = prepared
  const { month, hours, winters = 10, seed = house.seed, years = 30 } = question
  const most = house.stack.modulesMax
  const first = Math.max(1, Math.min(answer.modules - 1, most - STACKS + 1))
  const counts = Array.from({ length: Math.min(STACKS, most - first + 1) }, (_, i) => first + i)
  const others = counts.filter((modules) => modules !== answer.modules)
  const horizon = minutesOfHours(promised.horizonHours)
  const loads = rideLoads(prepared.demand)
  const variants = others.map((modules) => ({
    equipped: equip(prepared, { ...question, modules }),
    horizon,
    minutesOnly: true,
  }))
  const choice = { kind: answer.promise, month, cutHours: hours, years, winters, seed }
  const rides =
    variants.length === 0
      ? []
      : monthRidesOf(prepared, monthSky(prepared, choice), variants, loads, { month, hours })
  const { price } = house.stack.module
  return counts.map((modules) => ({
    modules,
    isPresent: modules === answer.modules,
    price: price === undefined ? null : price * modules,
    figures:
      modules === answer.modules
        ? promised
        : hourFigures(prepared, rides[others.indexOf(modules)]!, hours),
  }))
}

/** Starts of an evening stand for the middle case, where there is one. */
const EVENING_MINUTE = 18 * 60

/**
 * Of the starts whose ride is the middle one, to the whole hour and no shorter, the nearest to the
 * evening; the earliest of equals. Rides as they are traced: where chances are weighed none of them
 * need be the middle one, and the nearest stands for it. [ms]
 */
function middleStart({ calendar }: Prepared, answer: RideAnswer, ridesUnder: RidesUnder): number {
  const promised = answer.skies[answer.promise] as SkyFigures
  const middle = Math.round(60 * promised.medianHours)
  let best = { minute: 0, apart: Number.POSITIVE_INFINITY, off: Number.POSITIVE_INFINITY }
  for (const { from, rides } of ridesUnder(answer.promise).batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      const ride = rides.minutes[s]!
      const isMiddle = ride >= middle && Math.floor(ride / 60) === Math.floor(middle / 60)
      const apart = isMiddle ? 0 : Math.abs(ride - middle)
      const off = Math.abs(calendar.wallMinute[from + s]! - EVENING_MINUTE)
      if (apart < best.apart || (apart === best.apart && off < best.off)) {
        best = { minute: from + s, apart, off }
      }
    }
  }
  return calendar.startMs + best.minute * 60_000
}

/** Over all starts of each sky, as far as they were followed. */
function curvesOf(
  prepared: Prepared,
  { skies }: RideAnswer,
  ridesUnder: RidesUnder,
): PageFacts['curves'] {
  return Object.entries(skies).map(([name, { horizonHours }]) => {
    const sky = name as SkyKind
    const rides = weighed(prepared, ridesUnder(sky)).map((batch) => ({
      ...batch.rides,
      weights: batch.weights,
    }))
    const horizon = minutesOfHours(horizonHours)
    return { sky, curve: autonomyCurve(rides, hoursTo(horizonHours, 2), horizon) }
  })
}

function spreadOf(prepared: Prepared, { skies }: RideAnswer, ridesUnder: RidesUnder): Spread[] {
  return Object.entries(skies).map(([name, { horizonHours }]) => {
    const sky = name as SkyKind
    const month = ridesUnder(sky)
    const minutes = rankedMinutes(
      weighed(prepared, month),
      month.horizon,
      ({ rides }) => rides.minutes,
    )
    return { sky, hours: SPREAD_AT.map((share) => minutes.at(share) / 60), horizonHours }
  })
}

/** The month of the question is already ridden. */
function monthsOf(
  prepared: Prepared,
  { month, hours }: PageQuestion,
  answer: RideAnswer,
  ridesUnder: RidesUnder,
  others: readonly MonthRow[],
): MonthRow[] {
  if (others.length === 0) return []
  const figures = answer.skies[answer.promise] as SkyFigures
  const own = monthRow(prepared, ridesUnder(answer.promise), figures, { month, hours })
  return [own, ...others].sort((a, b) => a.month - b.month)
}
