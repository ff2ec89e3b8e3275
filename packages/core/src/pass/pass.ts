// One sweep through time that carries every start at once, through the very same `step`.
//
// Cohorts of one mode form a crowd that a calm minute moves as a whole; those near a threshold,
// and those whose timers end, are stepped one by one. Cohorts that meet on a charge edge in the
// same state become one. The README of this package tells the whole story.

import type { Spells } from '../cut/spells.js'
import type { Columns } from '../island/columns.js'
import type { Rules } from '../island/rules.js'
import type { Watch } from './crowds.js'
import { type Enough, Sweep } from './sweep.js'

export type { Watch } from './crowds.js'
export type { Enough } from './sweep.js'

/**
 * Down spells of the starts in the first `starts` minutes of a window, each followed for
 * `horizon` minutes: the same as `walkStarts`, to the minute.
 *
 * @param startKwh  charge at every start, on the energy grid; or a column of it. [starts]
 * @param horizon   minutes; the window must hold starts + horizon of them
 * @param enough    where given, a history is left once its cut is over and its loads are lost;
 *                  its last spell ends there
 * @param watch     looks on, for tests
 */
export function pass(
  columns: Columns,
  rules: Rules,
  starts: number,
  startKwh: number | Float64Array,
  horizon: number,
  enough?: Enough,
  watch?: Watch,
): Spells {
  const sweep = new Sweep(columns, rules, starts, horizon, enough, watch)
  for (let i = 0; i < starts + horizon; i++) {
    if (i < starts) sweep.begin(typeof startKwh === 'number' ? startKwh : startKwh[i]!, i)
    else if (sweep.isDone) break
    sweep.live(i)
  }
  return sweep.spells
}
