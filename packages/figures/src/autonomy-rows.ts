// The numbers of autonomy curves as rows of a table.

import type { AutonomyCurve } from '@tideover/core'
import { percentDown } from './words.js'

/** A curve and what it is called. */
export interface NamedCurve {
  readonly name: string
  readonly curve: AutonomyCurve
}

const HOURS = [3, 6, 12, 18, 24, 36, 48, 72, 96, 120, 168]

/**
 * A row for each length of cut: the share of cuts that are lasted, one column a curve. [%],
 * rounded down; null where it is not known
 *
 * @param hours  lengths to list; those that a curve does not tell are left out. [h]
 */
export function autonomyRows(
  curves: readonly NamedCurve[],
  hours: readonly number[] = HOURS,
): Record<string, number | null>[] {
  const [first] = curves
  return hours
    .filter((h) => first?.curve.hours.includes(h))
    .map((h) => ({
      'after [h]': h,
      ...Object.fromEntries(
        curves.map(({ name, curve }) => [`${name} [%]`, percentDown(shareAt(curve, h))]),
      ),
    }))
}

/** Share of cuts that last so many hours; NaN where the curve does not tell that hour. @param hours [h] */
export function shareAt(curve: AutonomyCurve, hours: number): number {
  return curve.share[curve.hours.indexOf(hours)] ?? Number.NaN
}
