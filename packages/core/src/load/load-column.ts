// One load of the house as a column.

import type { LoadInput } from '../house/house.js'

/**
 * Whether a load is a line of the survey, whose starts are known; a metered load and a standard
 * profile show means only.
 */
export function isSurveyed({ file, profile }: Pick<LoadInput, 'file' | 'profile'>): boolean {
  return file === undefined && profile === undefined
}

/** One load over the year. */
export interface LoadColumn {
  readonly load: LoadInput
  /** All pieces together. [n], [kW] */
  readonly kw: Float64Array
}
