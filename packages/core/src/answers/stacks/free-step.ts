// How many modules are left to buy once the step is taken that costs nothing.

import type { Prepared } from '../../series/prepare.js'
import type { RideQuestion } from '../ride-question.js'
import type { Change } from './change.js'
import type { Changes, NextStep } from './next-steps.js'
import { POINT, rideStacks, type StackRow, stackRows } from './stack-rows.js'

export interface FreeStep {
  readonly what: string
  /** The fewest modules that meet the target with it; null where none of the base does. */
  readonly smallest: number | null
}

/**
 * The step that costs nothing, gives up nothing and brings most cuts to their end, and what all
 * stacks do with it; null without one, and where the target is met already.
 *
 * @param base  the stack that the steps start from
 */
export function freeStep(
  prepared: Prepared,
  question: RideQuestion,
  base: StackRow,
  changes: Changes,
  steps: readonly NextStep[],
): FreeStep | null {
  const { share } = question
  if (share === undefined || base.share === null || base.share >= share) return null
  const gain = ({ gained }: NextStep): number => gained.share ?? 0
  const [best] = steps
    .filter((step) => step.price === 0 && step.givesUp === null && gain(step) >= POINT)
    .toSorted((a, b) => gain(b) - gain(a))
  const change = [...changes.others, ...changes.loads].find(({ what }) => what === best?.what)
  return change === undefined
    ? null
    : { what: change.what, smallest: smallestWith(change, question, prepared) }
}

function smallestWith(change: Change, question: RideQuestion, { house }: Prepared): number | null {
  const ridden = rideStacks(change.prepared(), question, () => {})
  const rows = stackRows(house, ridden, question.share)
  return rows.find(({ met }) => met === true)?.modules ?? null
}
