// What is asked when somebody asks how long a house lasts.

import type { SkyKind } from '../sky/sky.js'
import type { Scenario } from './scenario.js'

export interface RideQuestion extends Scenario {
  /** 1..12 */
  readonly month: number
  /** Length of the cut. [h], > 0 */
  readonly hours: number
  /** Share of starts that must ride it, 0..1. */
  readonly share?: number
  /** The sky the promise stands on; default `dull`. */
  readonly sky?: SkyKind
  /** Synthetic years of `typical`; default 30. */
  readonly years?: number
  /** Return period of `dull`; default 10. */
  readonly winters?: number
  readonly seed?: number
}
