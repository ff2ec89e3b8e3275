// Apparent power inside the minute: what runs, the hardest single start beside it, and everything
// starting at once when an island forms.
//
// A surveyed load starts in the minute in which it rises. A metered load shows means only: its
// start is taken as the largest step between neighbouring minutes of the hour, in every minute of
// that hour, and is said to be an estimate. On records it holds most peaks and not all; a test
// says how many. A standard profile is treated alike, and being smooth shows next to nothing.
//
// Apparent powers are summed as they stand. Added with their angles they are never more than the
// sum, and hardly less: 1 kVA that runs at a power factor of 0.95 beside a start of 5 kVA at 0.4 is
// 5.7 kVA for 6. The limits they are held against are in kVA and rarely known to a tenth, so the
// sum is the cautious bound, and the power factor of a start is not asked for.

import { ownColumn } from '../units/year-column.js'
import { isSurveyed, type LoadColumn, startsIn } from './load-column.js'
import { startExtraKva } from './starting.js'

/** Columns of one shed level. [n], [kVA] */
export interface ApparentPower {
  /** What runs. */
  readonly running: Float64Array
  /** What runs and the hardest single start of the minute. */
  readonly peak: Float64Array
  /** What runs, all of it starting in this minute. */
  readonly forming: Float64Array
}

export function newApparent(n: number, newColumn = ownColumn): ApparentPower {
  return { running: newColumn(n), peak: newColumn(n), forming: newColumn(n) }
}

/** @param into  receives the columns, all 0 as yet; room of their own where left out */
export function apparentPower(
  columns: readonly LoadColumn[],
  n: number,
  into: ApparentPower = newApparent(n),
): ApparentPower {
  const { running, peak: start, forming: starts } = into
  for (const { load, kw } of columns) {
    const perKw = 1 / load.powerFactor
    for (let i = 0; i < n; i++) running[i]! += kw[i]! * perKw
    if (isSurveyed(load)) addSurveyed(load, kw, start, starts)
    else addMetered(kw, perKw, start, starts)
  }
  for (let i = 0; i < n; i++) {
    start[i]! += running[i]!
    starts[i]! += running[i]!
  }
  return into
}

/**
 * What each list of loads takes when all of its loads start in one minute; a metered one shows no
 * motors. [lists][n], [kVA]
 */
export function formingKva(
  lists: readonly (readonly LoadColumn[])[],
  n: number,
  newColumn = ownColumn,
): Float64Array[] {
  const spare = { running: new Float64Array(n), peak: new Float64Array(n) }
  return lists.map((columns) => {
    spare.running.fill(0)
    spare.peak.fill(0)
    return apparentPower(columns, n, { ...spare, forming: newColumn(n) }).forming
  })
}

function addSurveyed(
  load: LoadColumn['load'],
  kw: Float64Array,
  start: Float64Array,
  starts: Float64Array,
): void {
  const extra = startExtraKva(load)
  const perKw = extra / ((load.w ?? 0) / 1000)
  let before = kw[kw.length - 1]!
  for (let i = 0; i < kw.length; i++) {
    const now = kw[i]!
    if (extra > start[i]! && startsIn(load, before, now)) start[i] = extra
    starts[i]! += now * perKw
    before = now
  }
}

function addMetered(
  kw: Float64Array,
  perKw: number,
  start: Float64Array,
  starts: Float64Array,
): void {
  for (let hour = 0; hour < kw.length; hour += 60) {
    const end = Math.min(hour + 60, kw.length)
    const kva = largestStep(kw, hour, end) * perKw
    for (let i = hour; i < end; i++) {
      if (kva > start[i]!) start[i] = kva
      starts[i]! += kva
    }
  }
}

/**
 * Largest step between neighbours of a column in [from, to), the one into `from` included.
 *
 * @returns  in the unit of the column, >= 0
 */
export function largestStep(column: Float64Array, from: number, to: number): number {
  let most = 0
  for (let i = Math.max(1, from); i < to; i++) {
    const step = Math.abs(column[i]! - column[i - 1]!)
    if (step > most) most = step
  }
  return most
}
