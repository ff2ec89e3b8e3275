// The steps in which comfort loads go off and come back, with their names.

import { shedSteps } from '@tideover/core'
import type { PapersInput } from './input.js'

export interface ComfortStep {
  readonly names: readonly string[]
  /** Shares of usable capacity, 0..1 */
  readonly dropBelow: number
  readonly returnAt: number
}

/** The first goes off first; none for a house without comfort loads. */
export function comfortSteps({
  prepared: { house, demand },
}: Pick<PapersInput, 'prepared'>): ComfortStep[] {
  return shedSteps(house, demand.comfortNames.length).map((step, i) => ({
    ...step,
    names: demand.comfortNames[i]!,
  }))
}
