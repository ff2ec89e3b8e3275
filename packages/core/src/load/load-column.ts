// One load of the house as a column.

import type { LoadInput } from '../house/house.js'

/**
 * Whether a load is a line of the survey, whose starts are known; a metered load and a standard
 * profile show means only.
 */
export function isSurveyed({ file, profile }: Pick<LoadInput, 'file' | 'profile'>): boolean {
  return file === undefined && profile === undefined
}

/**
 * Whether it runs when power is back, in place of the turn it missed: a thermostat, a float, or
 * somebody who puts the kettle on then. A load by the clock does not.
 */
export function runsOnReturn({ cycle, events }: Pick<LoadInput, 'cycle' | 'events'>): boolean {
  return cycle !== undefined || events !== undefined
}

/**
 * Whether a load starts in a minute: its power rises, or, where it follows the air step by step, it
 * rises from nothing.
 */
export function startsIn(
  { byAir }: Pick<LoadInput, 'byAir'>,
  beforeKw: number,
  nowKw: number,
): boolean {
  return nowKw > beforeKw && (byAir === undefined || beforeKw === 0)
}

/** One load over the year. */
export interface LoadColumn {
  readonly load: LoadInput
  /** All pieces together. [n], [kW] */
  readonly kw: Float64Array
}
