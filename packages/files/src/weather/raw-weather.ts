// What a reader of one weather format hands on: rows as written, not yet on an axis.

import type { WeatherRecord } from '@tideover/core'

/** Columns a weather record may have. */
export const WEATHER_COLUMNS = ['ghi', 'dni', 'dhi', 'airC', 'windMs'] as const
export type WeatherColumn = (typeof WEATHER_COLUMNS)[number]

/** Rows of a weather file. */
export interface RawWeather {
  readonly name: string
  /** Standard time of each row counted as if it were UTC, with the year as written. [n], [ms] */
  readonly stampMs: Float64Array
  /** True where a stamp marks the end of its interval. */
  readonly marksEnd: boolean
  /** Line of each row, from 1. [n] */
  readonly lines: Int32Array
  /** Values of each row, NaN where missing; null where the file has no such column. */
  readonly columns: Readonly<Record<WeatherColumn, Float64Array | null>>
  /** Standard time minus UTC. [min] */
  readonly utcOffsetMinutes: number
  readonly site: WeatherRecord['site']
  /** True where the file calls itself a typical year. */
  readonly typicalYear: boolean
  readonly notes: readonly string[]
}

/** Any value this low is a code for "missing" (-99, -999, -7999, -9999.9 …) in every column. */
const CODE_BELOW = -90

/**
 * A measured value, or NaN where it is a missing code.
 *
 * @param codeFrom  Values from here up are missing codes too. Default none
 */
export function measured(value: number, codeFrom = Number.POSITIVE_INFINITY): number {
  return value > CODE_BELOW && value < codeFrom ? value : Number.NaN
}
