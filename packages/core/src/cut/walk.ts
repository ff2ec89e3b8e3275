// One state, minute by minute.

import type { Columns } from '../island/columns.js'
import type { Rules } from '../island/rules.js'
import type { State } from '../island/state.js'
import { step } from '../island/step.js'

/** Sees each minute after it was lived. */
export type Recorder = (minute: number, state: State) => void

/** Lives minutes [from, to) of the window. */
export function walk(
  state: State,
  from: number,
  to: number,
  columns: Columns,
  rules: Rules,
  seen?: Recorder,
): void {
  if (seen === undefined) for (let i = from; i < to; i++) step(state, i, columns, rules)
  else {
    for (let i = from; i < to; i++) {
      step(state, i, columns, rules)
      seen(i, state)
    }
  }
}
