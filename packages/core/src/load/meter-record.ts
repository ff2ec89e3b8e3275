// A measured load as a reader hands it over: mean power on a regular step of UTC time.

/** Mean power of a metered load; one column on a regular step. */
export interface MeterRecord {
  /** Where it came from, as a person would name it. */
  readonly name: string
  /** Start of the first interval. UTC [ms], a multiple of 60000 */
  readonly startMs: number
  /** Length of one interval. [min], 1..60 */
  readonly stepMinutes: number
  /** Mean power of each interval. [n], [kW], NaN where the record has a gap */
  readonly kw: Float64Array
  /** What the reader understood: period, step, zone, gaps filled, total kWh, peak. */
  readonly notes: readonly string[]
}
