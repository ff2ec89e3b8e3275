// What is asked when somebody asks to see one cut.

import type { Scenario } from './scenario.js'
import type { SkyQuestion } from './sky-of-start.js'

export interface CutQuestion extends Scenario, SkyQuestion {
  /** UTC [ms], within the house's year. */
  readonly startMs: number
  /** Cuts that follow in the same run, in order of time, none within another. */
  readonly further?: readonly { readonly startMs: number; readonly hours: number }[]
  /** Hours to follow with the grid back; default 0. [h] */
  readonly after?: number
}
