// Which rows of a long column are drawn, so that no extreme is lost.
//
// A screen has some hundreds of columns of pixels; of what falls into one of them only the least
// and the greatest can be seen. What is kept here has to be drawn as it is: plotly would leave out
// more (`line.simplify`) and move the foot of a gentle slope by half an hour.

/** Columns of pixels of the widest drawing that is reckoned with. */
export const WIDEST_PX = 900

/**
 * Rows of the least and of the greatest value among [from, to), the earliest of equals; none
 * where no value is known.
 */
export function extremes(column: ArrayLike<number>, from: number, to: number): number[] {
  let least = -1
  let greatest = -1
  for (let i = from; i < to; i++) {
    const value = column[i]!
    if (Number.isNaN(value)) continue
    if (least < 0 || value < column[least]!) least = i
    if (greatest < 0 || value > column[greatest]!) greatest = i
  }
  return least < 0 ? [] : [least, greatest]
}

/** Begin of each of so many stretches of n rows as even as can be, and the end of the last. */
export function stretchEnds(n: number, stretches: number): number[] {
  const count = Math.max(1, Math.min(n, stretches))
  return Array.from({ length: count + 1 }, (_, s) => Math.floor((s * n) / count))
}

/**
 * Rows to draw of a line, rising: the first and the last, of each stretch the least and the
 * greatest, those that matter, and both sides of every gap (NaN), so that it stays one.
 *
 * @param column     any length; NaN is a gap
 * @param stretches  how many columns of pixels there are, >= 1; default for the widest drawing
 * @param must       rows that stay whatever their values
 * @returns          at most 2 rows a stretch, 2, the rows that must, and 2 for each end of a gap
 */
export function decimate(
  column: ArrayLike<number>,
  stretches: number = WIDEST_PX,
  must: Iterable<number> = [],
): Int32Array {
  const n = column.length
  const kept = new Uint8Array(n)
  if (n > 0) kept[0] = kept[n - 1] = 1
  for (const row of must) kept[row] = 1
  const ends = stretchEnds(n, stretches)
  for (let s = 1; s < ends.length; s++) {
    for (const row of extremes(column, ends[s - 1]!, ends[s]!)) kept[row] = 1
  }
  for (let i = 1; i < n; i++) {
    if (Number.isNaN(column[i]!) !== Number.isNaN(column[i - 1]!)) kept[i - 1] = kept[i] = 1
  }
  return keptRows(kept)
}

/** The rows that are marked, rising. */
export function keptRows(kept: Uint8Array): Int32Array {
  const rows = new Int32Array(kept.reduce((sum, mark) => sum + mark, 0))
  let at = 0
  for (let i = 0; i < kept.length; i++) if (kept[i] === 1) rows[at++] = i
  return rows
}
