// What the columns of an island are made of, handed from one maker of columns to the next.

import type { Calendar } from '../axis/calendar.js'
import type { Plant } from '../equipment/plant.js'
import type { House } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Window } from '../series/window-columns.js'
import type { Rules } from './rules.js'

/** A power of a level in a minute of the window. [kW] */
export type ByLevel = (level: number, minute: number) => number

export interface ColumnParts {
  readonly house: House
  readonly calendar: Calendar
  readonly demand: Demand
  readonly plant: Plant
  readonly rules: Rules
  readonly window: Window
  /** What the stack spends on itself. [n], [kW] */
  readonly standing: Float64Array
  /** Load by level, 0 (all) to holding (none). [level][n], [kW] */
  readonly loads: readonly Float64Array[]
}

/**
 * A column of 1 where something is so. [n of the window]
 *
 * @param axis  minutes of the year, on which `at` is the place of minute `i` of the window
 */
export function flags(
  { n, from }: Pick<Window, 'n' | 'from'>,
  axis: number,
  isSo: (i: number, at: number) => boolean,
): Uint8Array {
  const out = new Uint8Array(n)
  let at = from % axis
  for (let i = 0; i < n; i++) {
    if (isSo(i, at)) out[i] = 1
    if (++at === axis) at = 0
  }
  return out
}
