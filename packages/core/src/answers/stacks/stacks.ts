// How many battery modules, and what else would give another day?

import { daysOfCut } from '../../series/dull.js'
import type { HouseFiles, Prepared } from '../../series/prepare.js'
import type { SkyKind } from '../../sky/sky.js'
import { type Beside, besideOf } from '../beside.js'
import { checkQuestion } from '../check-question.js'
import type { RideQuestion } from '../ride-question.js'
import { type Equipped, equip } from '../scenario.js'
import type { Spell } from '../words.js'
import { adviceOn } from './advice.js'
import { type FreeStep, freeStep } from './free-step.js'
import { LIMITS_TRIED, type StackLimits, stackLimits } from './limits.js'
import { changesOf, type NextStep, nextSteps } from './next-steps.js'
import { type Case, rideStacks, type StackRow, stackRows } from './stack-rows.js'

export interface StacksAnswer extends Beside {
  readonly house: string
  readonly month: number
  readonly cutHours: number
  readonly sky: SkyKind
  /** Return period and days of the spell; under `dull` and `none`, else null. */
  readonly spell: Spell | null
  readonly years: number
  readonly startSoc: Equipped['startSoc']
  readonly health: number
  readonly shareTarget: number | null
  /** How far starts were followed; a figure of so many hours is a lower bound. */
  readonly horizonHours: number
  /** One module up to what the base allows. */
  readonly stacks: readonly StackRow[]
  /** The fewest modules that meet the target; null without one, and where none does. */
  readonly smallest: number | null
  readonly met: boolean | null
  readonly limits: StackLimits
  /** The stack from which the next steps start. */
  readonly stepsFrom: number
  readonly comparedBy: Case
  readonly nextSteps: readonly NextStep[]
  readonly loadsTried: number
  /** With the step that costs nothing, where the target is not met; null without one. */
  readonly freeStep: FreeStep | null
  readonly advice: readonly string[]
}

export interface StacksOptions {
  /** The house as it was read, to tell which defaults the answer leans on. */
  readonly plain?: unknown
  /** Told how many rides of a month are done, of how many. */
  readonly tell?: (done: number, of: number) => void
}

/**
 * Every stack the base allows under the sky of the question (default `dull`), and the next steps
 * from `modules` of the question (default: those of the house).
 *
 * @param files  what `prepare` was given: changed houses are made ready from them again
 * @throws       InputError where the question does not fit the house
 */
export function stacksAnswer(
  prepared: Prepared,
  files: HouseFiles,
  question: RideQuestion,
  { plain, tell = () => {} }: StacksOptions = {},
): StacksAnswer {
  checkQuestion(question, ['month', 'hours'])
  const { house } = prepared
  const { month, hours, share, sky = 'dull', years = 30, winters = 10 } = question
  // What does not fit the house is told before anything is worked out.
  equip(prepared, question)
  const most = house.stack.modulesMax
  const changes = changesOf(prepared, files, month)
  const all = most + LIMITS_TRIED + changes.others.length + changes.loads.length
  const ridden = rideStacks(prepared, question, (count) => tell(count, all))
  const rows = stackRows(house, ridden, share)
  const [largest, figures] = [ridden.equipped[most - 1]!, ridden.figures[most - 1]!]
  const limits = stackLimits(prepared, question, rows, largest, figures)
  let done = most + LIMITS_TRIED
  tell(done, all)
  const next = nextSteps(prepared, changes, question, ridden, () => tell(++done, all))
  const free = freeStep(prepared, question, rows[next.from - 1]!, changes, next.steps)
  const smallest = rows.find(({ met }) => met === true)?.modules ?? null
  const equipped = ridden.equipped[next.from - 1]!
  return {
    ...{ house: house.house, month, cutHours: hours, sky, years },
    spell: sky === 'dull' || sky === 'none' ? { winters, days: daysOfCut(hours) } : null,
    startSoc: equipped.startSoc,
    health: equipped.health,
    shareTarget: share ?? null,
    horizonHours: figures.horizonHours,
    stacks: rows,
    smallest,
    met: metBy(rows),
    limits,
    stepsFrom: next.from,
    comparedBy: next.comparedBy,
    nextSteps: next.steps,
    loadsTried: next.loadsTried,
    freeStep: free,
    advice: adviceOn(next, rows, {
      month,
      sky,
      horizonHours: figures.horizonHours,
      shareTarget: share ?? null,
      free,
    }),
    ...besideOf(prepared, equipped, month, plain),
  }
}

/** Whether some stack meets the target; null without a target, or a share that cannot be told. */
function metBy(rows: readonly StackRow[]): boolean | null {
  if (rows.some(({ met }) => met === true)) return true
  return rows.every(({ met }) => met === null) ? null : false
}
