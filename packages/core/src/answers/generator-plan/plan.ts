// What a generator changes over a cut of some days: how much to store, who must be there.

import { minutesOfHours } from '../../axis/calendar.js'
import { rideLoads } from '../../cut/rides.js'
import { usedDefaults } from '../../house/defaults.js'
import type { GeneratorInput, Person } from '../../house/house.js'
import { InputError } from '../../house/problem.js'
import type { Prepared } from '../../series/prepare.js'
import { cautionsFor } from '../cautions.js'
import { checkQuestion } from '../check-question.js'
import { meterDoubts } from '../meter-doubts.js'
import type { RideAnswer } from '../ride.js'
import { equip } from '../scenario.js'
import { slipsOf } from '../slips.js'
import { warningsFor } from '../warnings.js'
import { type Closer, lookCloser } from './closer.js'
import { type FuelFigures, fuelFigures } from './fuel-figures.js'
import { type FuelRule, fuelRule } from './fuel-rule.js'
import {
  hasWorst,
  PLAN_YEARS,
  type PlanGround,
  planSky,
  SAMPLE_MINUTES,
  withFuel,
} from './ground.js'
import { monthWalks } from './month-walks.js'
import type { PlanQuestion } from './plan-question.js'
import { withSupposedSet } from './supposed-set.js'

export type { Closer, FailingRow, PlanCase, PlanQuiet, Visit } from './closer.js'
export type { FuelFigures, Spread } from './fuel-figures.js'
export type { FuelRule } from './fuel-rule.js'
export type { PlanQuestion } from './plan-question.js'
export type { QuietHours } from './quiet.js'

export interface PlanMonth {
  readonly month: number
  readonly figures: FuelFigures
}

/** What was asked, as a ride says it; `promise` is the sky of the months. */
type AsOfRide = Pick<
  RideAnswer,
  'house' | 'site' | 'modules' | 'startSoc' | 'health' | 'years' | 'seed' | 'promise'
> &
  Pick<RideAnswer, 'cautions' | 'slips' | 'warnings' | 'defaults'>

export interface PlanAnswer extends AsOfRide {
  readonly days: number
  /** Return period of `dull` and `none`. */
  readonly winters: number
  /** Cuts begin on wall-clock minutes that this divides. [min] */
  readonly everyMinutes: number
  /** True where the house has no generator and one was supposed. */
  readonly supposed: boolean
  readonly set: GeneratorInput
  readonly person: Person | null
  readonly months: readonly PlanMonth[]
  /** The month looked at closely, under each sky. */
  readonly closer: Closer
  /** What may be kept at home; null where no rule is known here. */
  readonly rule: FuelRule | null
}

/**
 * @param plain  the house as it was read, to tell which defaults it leans on
 * @param told   called after each part of the work, with how many there are
 * @throws       InputError where the question does not fit the house
 */
export function generatorPlan(
  asked: Prepared,
  question: PlanQuestion,
  plain?: unknown,
  told: () => void = () => {},
): PlanAnswer {
  checkQuestion(question, ['days'])
  const supposed = asked.house.generator === undefined
  if (!supposed && question.setKw !== undefined) {
    throw new InputError('--set', 'left out: the house has a generator', question.setKw)
  }
  const prepared = supposed ? withSupposedSet(asked, question.setKw) : asked
  const ground = groundOf(prepared, question, supposed)
  const months = monthsOf(ground, told)
  const { house } = prepared
  return {
    house: house.house,
    site: house.site,
    days: question.days,
    modules: ground.asStands.modules,
    startSoc: ground.asStands.startSoc,
    health: ground.asStands.health,
    years: ground.years,
    winters: ground.winters,
    seed: ground.seed,
    promise: ground.promise,
    everyMinutes: SAMPLE_MINUTES,
    supposed,
    set: house.generator!,
    person: house.person ?? null,
    months,
    closer: lookCloser(ground, question.month ?? thirstiest(months), told),
    rule: fuelRule(house),
    cautions: cautionsFor(house),
    slips: [...slipsOf(asked), ...meterDoubts(prepared, null)],
    warnings: [...warningsFor(prepared, ground.asStands), ...prepared.notes],
    defaults: plain === undefined ? [] : usedDefaults(plain),
  }
}

function monthsOf(ground: PlanGround, told: () => void): PlanMonth[] {
  const { prepared, question, hours, promise, enough, loads, cutMinutes } = ground
  return (question.months ?? MONTHS).map((month) => {
    const sky = planSky(ground, month, promise)
    const span = { hours, everyMinutes: SAMPLE_MINUTES, branches: false }
    const walks = monthWalks(prepared, sky, [enough], loads, span)[0]!
    told()
    return { month, figures: fuelFigures(walks, cutMinutes, hasWorst(sky)) }
  })
}

function groundOf(prepared: Prepared, question: PlanQuestion, supposed: boolean): PlanGround {
  const hours = 24 * question.days
  const stands = equip(prepared, question)
  const filled = { ...prepared, house: withFuel(prepared.house, hours) }
  const enough = equip(filled, question)
  return {
    prepared,
    question,
    hours,
    cutMinutes: minutesOfHours(hours),
    loads: rideLoads(prepared.demand),
    // A set that is only supposed has what it needs.
    asStands: supposed ? enough : stands,
    enough,
    promise: question.sky ?? 'dull',
    years: question.years ?? PLAN_YEARS,
    winters: question.winters ?? 10,
    seed: question.seed ?? prepared.house.seed,
  }
}

const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

/** The month in which 1 cut in 20 takes most; the earliest of equals. */
function thirstiest(months: readonly PlanMonth[]): number {
  return months.reduce((most, each) =>
    each.figures.litres.oneIn20 > most.figures.litres.oneIn20 ? each : most,
  ).month
}
