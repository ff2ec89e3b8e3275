// One load of the house as a column.

import type { LoadInput } from '../house/house.js'

/** One load over the year. */
export interface LoadColumn {
  readonly load: LoadInput
  /** All pieces together. [n], [kW] */
  readonly kw: Float64Array
}
