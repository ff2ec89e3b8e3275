// A generator that does not start, or fails: every branch of one start in ten minutes is lived.

import { minutesOfHours } from '../../axis/calendar.js'
import { rideLoads } from '../../cut/rides.js'
import {
  CHANCES,
  type Chances,
  lastingShares,
  leastShare,
  outcomesOf,
  shiftedShares,
} from '../generator-plan/failing.js'
import { type MonthWalk, monthWalks } from '../generator-plan/month-walks.js'
import { rideHorizon } from '../ride-jobs.js'
import { CP, type DoubtFigures, type OpenDoubt } from './doubt.js'
import type { Ridden, Rider } from './rider.js'

const EVERY_MINUTES = 10
const PUBLISHED = 'NREL/TP-5C00-76553 (2020) and IEEE 493, in part from memory'

/** @param promise  the rides of the promise, of every start */
export function generatorDoubt(rider: Rider, promise: Ridden): OpenDoubt {
  const { prepared, question, monthSky, equipped } = rider
  const { startFailsShare, hoursBetweenFailures = null, start } = equipped.house.generator!
  const horizon = rideHorizon(question.hours)
  const span = { hours: question.hours, horizon, everyMinutes: EVERY_MINUTES, branches: true }
  const loads = rideLoads(prepared.demand)
  const walks = monthWalks(prepared, monthSky, [equipped], loads, span)[0]!
  const cutMinutes = minutesOfHours(question.hours)
  const sharesAt = (chances: Chances) =>
    lastingShares(prepared.calendar, walks, promise.month.batches, cutMinutes, chances)
  const asStated = { startFailsShare, hoursBetweenFailures }
  const isByHand = start === 'by hand'
  const shown = CHANCES.filter(({ name }) => isByHand || name !== 'petrol, by hand')
  return {
    id: 'generator-fails',
    name: 'generator fails',
    range: `0.1 to 1.6 % of starts${isByHand ? ', by hand 5 %' : ''}; once in 69 to 1506 h of running`,
    basis: isByHand ? `${PUBLISHED}; 5 %: ${CP}` : PUBLISHED,
    ends: [...shown].reverse().map((chances) => ({
      at: chances.name,
      figures: {
        ...leastShare(shiftedShares(promise.figures.shareByPattern, sharesAt, asStated, chances)),
        ...hoursAt(walks, chances),
        horizonHours: horizon / 60,
      },
    })),
  }
}

/** Lower nearest ranks of all outcomes by their weight, as those of a ride are. */
function hoursAt(
  walks: readonly MonthWalk[],
  chances: Chances,
): Pick<DoubtFigures, 'medianHours' | 'p05Hours'> {
  const outcomes = walks.flatMap((walk) => outcomesOf(walk, chances))
  outcomes.sort((a, b) => a.rideMinutes - b.rideMinutes)
  const hoursOf = (share: number): number => {
    let passed = 0
    for (const { rideMinutes, weight } of outcomes) {
      passed += weight
      if (passed > share * walks.length) return rideMinutes / 60
    }
    return outcomes.at(-1)!.rideMinutes / 60
  }
  return { medianHours: hoursOf(0.5), p05Hours: hoursOf(0.05) }
}
