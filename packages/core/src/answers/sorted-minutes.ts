// Rides of many starts as one rising list, from which cases are read by rank.

import type { MinuteColumn } from '../cut/rides.js'

/** All values in rising order. */
export function sortedMinutes(columns: readonly MinuteColumn[]): Int32Array {
  const all = new Int32Array(columns.reduce((sum, column) => sum + column.length, 0))
  let at = 0
  for (const column of columns) {
    all.set(column, at)
    at += column.length
  }
  return all.sort()
}

/** The lower nearest rank. @param share  0 the least, 0.5 the middle one */
export function atShare(sorted: ArrayLike<number>, share: number): number {
  return sorted[Math.floor(share * (sorted.length - 1))]!
}
