// A sky: where irradiance and air come from, over one or more numbered years.

import type { MinuteSky } from './within-day.js'

export const SKIES = ['clear', 'typical', 'dull', 'none', 'file'] as const
export type SkyKind = (typeof SKIES)[number]

export interface Sky {
  readonly kind: SkyKind
  /** Years it can tell apart: 1 for clear, none and a record of one year. */
  readonly years: number
  /** False where its unusual months were removed: no "worst" may be said from it. */
  readonly hasExtremes: boolean
  /**
   * Irradiance for minutes [from, to) of a year, whole local days or parts of them, written at
   * the same places of the columns.
   */
  fill(year: number, from: number, to: number, into: MinuteSky): void
  /**
   * How bright a day is among its like: 0 the dullest, 1 the brightest day of its season. Absent
   * where days are as they were recorded.
   */
  readonly dayRank?: (year: number, day: number) => number
  /** Hourly air temperature over the axis of a year. [°C] */
  airC(year: number): Float64Array
  /** Hourly wind over the axis of a year, or null where there is no record. [m/s] */
  windMs(year: number): Float64Array | null
}
