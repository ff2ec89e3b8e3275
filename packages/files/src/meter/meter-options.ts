// What the caller knows better than a meter file.

export interface MeterOptions {
  /** Header of the column to read, where the file has several that could be the load. */
  readonly column?: string
  /**
   * The file is a log of what an array gives, not the load of a house: its own column is sought
   * first, and gaps over 2 h stay gaps.
   */
  readonly output?: boolean
}
