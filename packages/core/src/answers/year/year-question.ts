// What is asked when somebody asks for the worst of the year.

import type { SkyKind } from '../../sky/sky.js'
import type { Scenario } from '../scenario.js'

/** Synthetic years of `typical` where none are asked for: a year has twelve months of each. */
export const YEAR_YEARS = 5

/** Days between two worst starts where none are asked for. */
export const APART_DAYS = 14

export interface YearQuestion extends Scenario {
  /** Length of the cut. [h], > 0 */
  readonly hours: number
  /** Default `dull`. A clear year is asked of nobody. */
  readonly sky?: SkyKind
  /** Synthetic years of `typical`; default 5. */
  readonly years?: number
  /** Return period of `dull` and `none`; default 10. */
  readonly winters?: number
  readonly seed?: number
  /** Days between two worst starts; default 14. [d], >= 1 */
  readonly apartDays?: number
}
