// Stamps laid on a regular axis of intervals.

import type { Faults } from '../faults.js'

const MINUTE_MS = 60_000

/** A regular axis and the interval each row belongs to. */
export interface Axis {
  /** Start of the first interval, on the same count as the stamps. [ms] */
  readonly startMs: number
  readonly stepMinutes: number
  readonly n: number
  /** Interval of each row; -1 where the stamp is NaN. [rows] */
  readonly slot: Int32Array
  /** Farthest a stamp lies from the start of its interval. [s] */
  readonly offGridSeconds: number
}

/**
 * The most common distance between neighbouring stamps. [min], NaN where there are no two
 *
 * @param ms  Stamps in the order of the file. [n], [ms], NaN skipped
 */
export function commonStep(ms: Float64Array): number {
  const counts = new Map<number, number>()
  let last = Number.NaN
  for (const t of ms) {
    if (Number.isNaN(t)) continue
    const seconds = Math.round((t - last) / 1000)
    last = t
    if (seconds > 0) counts.set(seconds, (counts.get(seconds) ?? 0) + 1)
  }
  const seconds = mostCommon(counts)
  const minutes = Math.round(seconds / 60)
  return Math.abs(seconds - minutes * 60) <= 5 && minutes > 0 ? minutes : seconds / 60
}

/**
 * Step of a record that may be used: 1, 2, 3, 4, 5, 6, 10, 12, 15, 20, 30 or 60 minutes.
 *
 * @throws InputError for any other
 */
export function checkedStep(ms: Float64Array, line: number, faults: Faults): number {
  const step = commonStep(ms)
  if (Number.isInteger(step) && 60 % step === 0) return step
  const got = Number.isNaN(step)
    ? 'fewer than two different times'
    : step < 1
      ? `a reading every ${Math.round(step * 60)} s`
      : `a reading every ${Number(step.toFixed(2))} min`
  return faults.refuse(line, 'readings on a step of 1 to 60 min that divides the hour', got)
}

/**
 * Lays starts of intervals on one regular axis.
 *
 * @param startsMs     Start of each row's interval. [rows], [ms]
 * @param stepMinutes  1..60, a divisor of 60
 * @throws             InputError where the stamps lie so far apart that one must be wrong
 */
export function layOut(
  startsMs: Float64Array,
  stepMinutes: number,
  lines: Int32Array,
  faults: Faults,
): Axis {
  const stepMs = stepMinutes * MINUTE_MS
  const phases = new Map<number, number>()
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  let mostAt = 0
  for (let i = 0; i < startsMs.length; i++) {
    const t = startsMs[i]!
    if (Number.isNaN(t)) continue
    const minute = Math.round(t / MINUTE_MS)
    const phase = ((minute % stepMinutes) + stepMinutes) % stepMinutes
    phases.set(phase, (phases.get(phase) ?? 0) + 1)
    if (t < least) least = t
    if (t > most) {
      most = t
      mostAt = i
    }
  }
  const phase = mostCommon(phases)
  const first = Math.round((least / MINUTE_MS - phase) / stepMinutes)
  const startMs = (first * stepMinutes + phase) * MINUTE_MS
  const n = Math.round((most - startMs) / stepMs) + 1
  if (n > 20 * startsMs.length + 100_000) {
    const got = new Date(most).toISOString().slice(0, 10)
    faults.refuse(lines[mostAt] ?? 1, 'a time that follows the ones before it', got)
  }
  const slot = new Int32Array(startsMs.length).fill(-1)
  let offGrid = 0
  for (let i = 0; i < startsMs.length; i++) {
    const t = startsMs[i]!
    if (Number.isNaN(t)) continue
    slot[i] = Math.round((t - startMs) / stepMs)
    offGrid = Math.max(offGrid, Math.abs(t - startMs - slot[i]! * stepMs))
  }
  return { startMs, stepMinutes, n, slot, offGridSeconds: offGrid / 1000 }
}

/** Line of the row in each interval, 0 where it has none. [n] */
export function linesOfSlots(axis: Axis, lines: Int32Array): Int32Array {
  const lineOfSlot = new Int32Array(axis.n)
  for (let i = lines.length - 1; i >= 0; i--) {
    if (axis.slot[i]! >= 0) lineOfSlot[axis.slot[i]!] = lines[i]!
  }
  return lineOfSlot
}

function mostCommon(counts: ReadonlyMap<number, number>): number {
  let best = Number.NaN
  let bestCount = 0
  for (const [value, times] of counts) {
    if (times > bestCount || (times === bestCount && value < best)) {
      best = value
      bestCount = times
    }
  }
  return best
}
