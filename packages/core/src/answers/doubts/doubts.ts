// How sure are we? What moves the answer most, one thing at a time, and when the answer expires.

import type { Prepared } from '../../series/prepare.js'
import { besideOf } from '../beside.js'
import { checkQuestion } from '../check-question.js'
import type { RideAnswer } from '../ride.js'
import type { RideQuestion } from '../ride-question.js'
import { bySwing, type Doubt, type DoubtFigures, doubtFigures, type OpenDoubt } from './doubt.js'
import { type Expiry, expiryOf } from './expiry.js'
import { generatorDoubt } from './generator-doubt.js'
import { DOUBT_YEARS, type Ridden, type Rider, rideAgain, riderOf } from './rider.js'
import { stackDoubts } from './stack-doubts.js'
import { weatherDoubts } from './weather-doubts.js'

export type { Doubt, DoubtEnd, DoubtFigures } from './doubt.js'
export type { Expiry } from './expiry.js'

/** What was asked, as a ride says it; `years` are those of the typical sky. */
type AsOfRide = Pick<
  RideAnswer,
  'house' | 'site' | 'month' | 'cutHours' | 'modules' | 'startSoc' | 'health' | 'years' | 'seed'
> &
  Pick<RideAnswer, 'promise' | 'cautions' | 'slips' | 'warnings' | 'defaults'>

export interface DoubtsAnswer extends AsOfRide {
  /** Return period of `dull` and `none`. */
  readonly winters: number
  readonly promised: DoubtFigures
  /** What moves the answer most first. */
  readonly doubts: readonly Doubt[]
  readonly expiry: Expiry
}

/**
 * @param question  as for `rideAnswer`; `years` is 5 where left out
 * @param plain     the house as it was read, to tell which defaults it leans on
 * @param told      called after each part of the work
 * @throws          InputError where the question does not fit the house
 */
export function doubtsAnswer(
  prepared: Prepared,
  question: RideQuestion,
  plain?: unknown,
  told: () => void = () => {},
): DoubtsAnswer {
  checkQuestion(question, ['month', 'hours'])
  const rider = riderOf(prepared, question)
  const { equipped } = rider
  const { house } = prepared
  const promise = rideAgain(rider)[0]!
  told()
  const doubts = workOf(rider, promise).flatMap((each) => {
    const done = each()
    told()
    return done
  })
  const promised = doubtFigures(promise.figures)
  return {
    house: house.house,
    site: house.site,
    month: question.month,
    cutHours: question.hours,
    modules: equipped.modules,
    startSoc: equipped.startSoc,
    health: equipped.health,
    years: question.years ?? DOUBT_YEARS,
    winters: question.winters ?? 10,
    seed: question.seed ?? house.seed,
    promise: question.sky ?? 'dull',
    promised,
    doubts: bySwing(promised, doubts),
    expiry: expiryOf(rider, promised.share, told),
    ...besideOf(prepared, equipped, question.month, plain),
  }
}

/** What is asked of a house, in parts; each is done when it is called. */
function workOf(rider: Rider, promise: Ridden): (() => OpenDoubt | OpenDoubt[])[] {
  const { generator } = rider.equipped.house
  return [
    () => stackDoubts(rider),
    ...weatherDoubts(rider),
    ...(generator === undefined ? [] : [() => generatorDoubt(rider, promise)]),
  ]
}
