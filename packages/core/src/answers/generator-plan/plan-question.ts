// What is asked when somebody asks how much fuel to store.

import type { SkyKind } from '../../sky/sky.js'
import type { Scenario } from '../scenario.js'
import type { Chances } from './failing.js'
import type { QuietHours } from './quiet.js'

export interface PlanQuestion extends Scenario {
  /** Days of the cut; 0.5 is half a day. > 0 */
  readonly days: number
  /** To look at closely, 1..12; the one of `months` that takes most where left out. */
  readonly month?: number
  /** Months told one by one; all twelve where left out. */
  readonly months?: readonly number[]
  /** Default `dull`. */
  readonly sky?: SkyKind
  /** Synthetic years of `typical`; default 5. */
  readonly years?: number
  readonly winters?: number
  readonly seed?: number
  readonly quiet?: QuietHours
  /** Chances to look at beside the published ones. */
  readonly chances?: Chances
  /** Size of a set to suppose where the house has none. [kW] */
  readonly setKw?: number
}
