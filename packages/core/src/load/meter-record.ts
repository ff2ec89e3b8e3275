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
  /** The file names what it counts as taken from the grid, and no export beside it. */
  readonly countsImport?: boolean | undefined
  /** Offset of its own local time, winter or summer. [min], east positive; absent where not told */
  readonly localOffsetMinutes?: number | undefined
  /** What the reader understood: period, step, zone, gaps filled, total kWh, peak. */
  readonly notes: readonly string[]
}

/** What a load or an array says of its file. */
export interface RecordChoice {
  readonly file?: string | undefined
  readonly column?: string | undefined
  readonly zone?: string | undefined
}

/** Name under which a record is kept: the file, and with it what is said of its reading. */
export function recordKey({ file = '', column, zone }: RecordChoice): string {
  return [file, column, zone].filter((part) => part !== undefined).join(' | ')
}

/** Records that a house file names, by `recordKey`: the file's name where no more is said of it. */
export interface LoadRecords {
  /** Of loads. */
  readonly meters?: ReadonlyMap<string, MeterRecord> | undefined
  /** Logs of the AC output of arrays. */
  readonly outputs?: ReadonlyMap<string, MeterRecord> | undefined
}
