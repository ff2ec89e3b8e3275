// Gaps in a column: short ones are bridged by a straight line, long ones are told.

/** Intervals [from, to) without a value. */
export interface Gap {
  readonly from: number
  readonly to: number
}

/** What was done about the gaps of a column. */
export interface Bridged {
  /** Gaps that were filled, in order. */
  readonly filled: readonly Gap[]
  /** Gaps longer than allowed, left NaN. */
  readonly long: readonly Gap[]
}

/** Every run of NaN in a column. */
export function findGaps(column: Float64Array): Gap[] {
  const gaps: Gap[] = []
  for (let i = 0; i < column.length; i++) {
    if (!Number.isNaN(column[i]!)) continue
    const from = i
    while (i < column.length && Number.isNaN(column[i]!)) i++
    gaps.push({ from, to: i })
  }
  return gaps
}

/**
 * Fills runs of NaN in place by a straight line between their neighbours; at an end of the
 * column the one neighbour is repeated.
 *
 * @param column    Values. [n], changed in place
 * @param atMost    Longest run that is filled. [intervals]
 */
export function bridgeGaps(column: Float64Array, atMost: number): Bridged {
  const filled: Gap[] = []
  const long: Gap[] = []
  for (const gap of findGaps(column)) {
    if (gap.to - gap.from > atMost || gap.to - gap.from === column.length) {
      long.push(gap)
      continue
    }
    const left = column[gap.from - 1] ?? column[gap.to]!
    const right = column[gap.to] ?? left
    const width = gap.to - gap.from + 1
    for (let i = gap.from; i < gap.to; i++) {
      column[i] = left + ((right - left) * (i - gap.from + 1)) / width
    }
    filled.push(gap)
  }
  return { filled, long }
}

/** Line to name for a gap: its first row, or the row after it where the rows are absent. */
export function lineOfGap(gap: Gap, lineOfSlot: Int32Array): number {
  for (let i = gap.from; i <= gap.to && i < lineOfSlot.length; i++) {
    if (lineOfSlot[i]! > 0) return lineOfSlot[i]!
  }
  return 1
}

/** Intervals in a list of gaps, all together. */
export function gapLength(gaps: readonly Gap[]): number {
  return gaps.reduce((sum, gap) => sum + gap.to - gap.from, 0)
}
