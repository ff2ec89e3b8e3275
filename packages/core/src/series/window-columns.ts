// The columns of a window of minutes, and what is kept of them for people to look at.

import type { MinuteSky } from '../sky/within-day.js'

/** What a window needs of the sky. Power columns are indexed from the window's first minute. */
export interface Window {
  readonly from: number
  readonly n: number
  /** Number of the year of its first minute. */
  readonly year: number
  /**
   * AC-coupled arrays on phases of the island by group, at their AC terminals, as if always in;
   * those on others give nothing. [groups][n], [kW]
   */
  readonly acKw: readonly Float64Array[]
  /** All DC-coupled arrays behind their trackers, as if all could be taken. [n], [kW] */
  readonly dcKw: Float64Array
  /** Temperature of the stack's place, one value an hour of the axis from `firstHour`. [°C] */
  readonly placeC: Float64Array
  readonly firstHour: number
  /** Global irradiation of each local day the window touches, whole days. [W/m² · min] */
  readonly dayGhi: Float64Array
  /** Wind of each of those days, its mean; NaN where there is no record. [m/s] */
  readonly dayWindMs: Float64Array
  /** Number of the first of those days, counted on over the year's end. */
  readonly firstDay: number
}

/** The columns of one array, kept for `series`; indexed as the window is. */
export interface ArrayColumns {
  readonly name: string
  readonly dcCoupled: boolean
  readonly poaWm2: Float64Array
  readonly cellC: Float64Array
  readonly dcKw: Float64Array
  readonly acKw: Float64Array
}

/** Sky and arrays of a window, kept for `series`. */
export interface WindowDetail {
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
  readonly airC: Float64Array
  readonly windMs: Float64Array
  readonly arrays: readonly ArrayColumns[]
}

/** Scratch columns over a whole year, reused from window to window. */
export interface Scratch {
  readonly sky: MinuteSky
  readonly poa: Float64Array
  /** DC power of all arrays of one inverter. */
  readonly dc: Float64Array
}
