// What the columns of an island are made of, handed from one maker of columns to the next.
//
// The loops over minutes take columns and the plant, none of these objects: an engine throws away
// what it compiled for objects that live for one set of columns only.

import type { Calendar } from '../axis/calendar.js'
import type { Plant } from '../equipment/plant.js'
import type { House } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Window } from '../series/window-columns.js'
import type { ColumnRoom } from '../units/column-room.js'
import type { Rules } from './rules.js'

/** A power of a level in a minute of the window. [kW] */
export type ByLevel = (level: number, minute: number) => number

export interface ColumnParts {
  /** Where columns are made. */
  readonly room: ColumnRoom
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

/** A stretch of a window that lies in one year: views of its columns. */
export interface Stretch {
  /** What of a column of the window lies in it. */
  here<Column extends Float64Array | Uint8Array>(column: Column): Column
  /** What of a column of the year lies in it. */
  ofYear<Column extends Float64Array | Int16Array>(column: Column): Column
  /** Minute of the year at which it begins. */
  readonly at: number
}

/** The stretches of a window, which may run past the end of the year. */
export function stretchesOf({ n, from }: Pick<Window, 'n' | 'from'>, yearN: number): Stretch[] {
  const stretches: Stretch[] = []
  let at = from % yearN
  for (let first = 0; first < n; at = 0) {
    const [a, b, start] = [first, Math.min(n, first + yearN - at), at]
    stretches.push({
      here: (column) => column.subarray(a, b) as typeof column,
      ofYear: (column) => column.subarray(start, start + b - a) as typeof column,
      at,
    })
    first = b
  }
  return stretches
}
