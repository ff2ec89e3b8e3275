// Which rows of a trace are drawn, so that nothing that matters is lost.
//
// Powers hold for a minute, so a row like the one before it need not be drawn: leaving those out
// loses nothing. Only where still too many are left, what lies between extremes goes too.

import { extremes, keptRows, stretchEnds } from './decimate.js'

/** Columns of a trace by how they are drawn. All of one length n. */
export interface DrawnColumns {
  /** Held through the minute: powers. */
  readonly steps: readonly Float64Array[]
  /** Straight from row to row while no step changes: what is stored at the start of each minute. */
  readonly lines: readonly Float64Array[]
}

/** Changes below do not show: half a watt. [kW] */
const UNSEEN = 0.0005

/**
 * Rows to draw, rising: all at which some step changes; where they are more than `most`, of each
 * stretch the least and the greatest of every column, each with the row after it, so that a spike
 * stays as narrow as it is. The first and the last row and those that must not go are among them.
 *
 * One set of rows serves all columns, so that what is stacked stays a sum.
 *
 * @param most  about how many rows to draw, some more where columns peak at different times
 * @param must  rows that stay whatever their values
 */
export function keepRows(
  { steps, lines }: DrawnColumns,
  most: number,
  must: Iterable<number> = [],
): Int32Array {
  const columns = [...steps, ...lines]
  const n = columns[0]?.length ?? 0
  const kept = new Uint8Array(n)
  kept[0] = kept[n - 1] = 1
  for (const row of must) kept[row] = 1
  const changed = changedRows(steps, n)
  if (changed.length <= most) for (const row of changed) kept[row] = 1
  else {
    const ends = stretchEnds(n, Math.max(1, Math.floor(most / columns.length)))
    for (let stretch = 1; stretch < ends.length; stretch++) {
      for (const column of columns) keepExtremes(column, ends[stretch - 1]!, ends[stretch]!, kept)
    }
  }
  return keptRows(kept)
}

function changedRows(steps: readonly Float64Array[], n: number): number[] {
  const rows: number[] = []
  const drawn = steps.map((column) => column[0] ?? 0)
  for (let i = 1; i < n; i++) {
    if (steps.every((column, c) => Math.abs(column[i]! - drawn[c]!) <= UNSEEN)) continue
    rows.push(i)
    steps.forEach((column, c) => {
      drawn[c] = column[i]!
    })
  }
  return rows
}

function keepExtremes(column: Float64Array, from: number, to: number, kept: Uint8Array): void {
  for (const row of extremes(column, from, to)) {
    kept[row] = 1
    if (row + 1 < kept.length) kept[row + 1] = 1
  }
}
