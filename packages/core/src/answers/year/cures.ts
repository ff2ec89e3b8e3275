// Steps tried on the worst starts themselves: which is the smallest that lasts the cut?

import { MINUTE_MS, minutesOfHours } from '../../axis/calendar.js'
import { longestTolerance, rideLoads } from '../../cut/rides.js'
import type { Prepared } from '../../series/prepare.js'
import type { CutQuestion } from '../cut-question.js'
import { rideHorizon } from '../ride-jobs.js'
import { rideOfTrace } from '../ride-of-trace.js'
import type { Scenario } from '../scenario.js'
import { type CutStory, traceCut } from '../trace-cut.js'
import { type HouseSource, type StepId, stepsFor } from './steps.js'
import type { YearQuestion } from './year-question.js'

/** What a step makes of one start. */
export interface Tried {
  readonly id: StepId
  readonly words: string
  /** The horizon where it outlasts it. [min] */
  readonly rideMinutes: number
  /** Whether it lasts the whole cut. */
  readonly lasts: boolean
}

/** A start to be lived again. */
export interface Again {
  /** On the axis. */
  readonly minute: number
  readonly year: number
}

/** Every step on every start, [starts][steps]; the weather of each start stays what it was. */
export function triedSteps(
  prepared: Prepared,
  question: YearQuestion,
  starts: readonly Again[],
  source: HouseSource,
  done: () => void,
): Tried[][] {
  const found: Tried[][] = starts.map(() => [])
  const cut = minutesOfHours(question.hours)
  if (starts.length === 0) return found
  for (const step of stepsFor(prepared, question, source)) {
    for (const [i, start] of starts.entries()) {
      const story = livedAgain(step.prepared, { ...question, ...step.scenario }, start)
      const rideMinutes = rideMinutesOf(story, question.hours)
      const { id, words } = step
      found[i]!.push({ id, words, rideMinutes, lasts: rideMinutes >= cut })
    }
    done()
  }
  return found
}

/** One start traced as far as the rides of a month are followed, its loss included. */
export function livedAgain(
  prepared: Prepared,
  question: YearQuestion & Scenario,
  { minute, year }: Again,
): CutStory {
  const tolerance = longestTolerance(rideLoads(prepared.demand))
  const traced: CutQuestion = {
    ...question,
    startMs: prepared.calendar.startMs + minute * MINUTE_MS,
    hours: (rideHorizon(question.hours) + tolerance + 1) / 60,
    syntheticYear: year,
  }
  return traceCut(prepared, traced)
}

/** A loss that begins past the horizon is none of this ride. */
function rideMinutesOf(story: CutStory, hours: number): number {
  const horizon = rideHorizon(hours)
  return Math.min(horizon, rideOfTrace(story)?.minutes ?? horizon)
}
