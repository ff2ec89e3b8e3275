// A weather record as a reader hands it over: interval means on a regular step, in the record's
// own standard time without clock change.

/** Irradiance and air of one or more years; columns share one axis of intervals. */
export interface WeatherRecord {
  /** Where it came from, as a person would name it: `tmy3 723170 (Greensboro)`. */
  readonly name: string
  /** Length of one interval. [min], 1..60 */
  readonly stepMinutes: number
  /**
   * Start of the first interval, written as UTC milliseconds of the record's *standard time*:
   * 00:00 on 1 January 2001 at UTC-5 is `Date.UTC(2001, 0, 1)` with `utcOffsetMinutes` -300.
   * A typical year that mixes source years is laid on 2001.
   */
  readonly startMs: number
  /** Standard time minus UTC. [min] */
  readonly utcOffsetMinutes: number
  /** Global, direct normal and diffuse horizontal, interval means. [n], [W/m²], >= 0, NaN where missing */
  readonly ghi: Float64Array
  readonly dni: Float64Array | null
  readonly dhi: Float64Array | null
  /** Air temperature. [n], [°C] */
  readonly airC: Float64Array | null
  /** Wind speed. [n], [m/s] */
  readonly windMs: Float64Array | null
  /** True for a typical year: its unusual months were removed, so no "worst" may be said from it. */
  readonly typicalYear: boolean
  /** The place the record names itself, where it does. */
  readonly site: { latitudeDeg: number; longitudeDeg: number; elevationM: number } | null
  /** What the reader understood, filled or clipped, one sentence each. */
  readonly notes: readonly string[]
}
