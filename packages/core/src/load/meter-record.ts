// A measured load as a reader hands it over: mean power on a regular step of UTC time.

/** Mean power of a metered load; one column on a regular step. */
export interface MeterRecord {
  /** Where it came from, as a person would name it. */
  readonly name: string
  /** Start of the first interval. UTC [ms], a multiple of 60000 */
  readonly startMs: number
  /** Length of one interval. [min], 1..60 */
  readonly stepMinutes: number
  /**
   * Mean power of each interval: what the house used, or, beside `exportKw`, what it took from the
   * grid. [n], [kW], NaN where the record has a gap
   */
  readonly kw: Float64Array
  /**
   * A net meter: what went to the grid, so that `kw` alone is not the load. [n], [kW], >= 0, NaN
   * where the record has a gap; absent where nothing was given
   */
  readonly exportKw?: Float64Array | undefined
  /** What the reader understood: period, step, zone, gaps filled, total kWh, peak. */
  readonly notes: readonly string[]
}

/** Records that a house file names, by the name it gives them. */
export interface LoadRecords {
  /** Of loads. */
  readonly meters?: ReadonlyMap<string, MeterRecord> | undefined
  /** Logs of the AC output of arrays. */
  readonly outputs?: ReadonlyMap<string, MeterRecord> | undefined
}
