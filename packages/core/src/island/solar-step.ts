// The part of AC-coupled solar in the rule book: waits, comes in, is held out near full, trips.

import { limitOf } from './charge.js'
import type { Columns } from './columns.js'
import type { Rules } from './rules.js'
import { isOnBandEdge, SOLAR_EVENTS, SOLAR_HELD, type State, setSolar, solarOf } from './state.js'

/** Whether what groups force on the stack is more than it takes from where it stands. */
function isForced(state: State, i: number, mask: number, columns: Columns, rules: Rules): boolean {
  const { level, ranTogether } = state
  const limit = limitOf(state.stored, columns.tempLimit[i]!, rules)
  const forced = ranTogether
    ? columns.together!.forced(mask, level, i)
    : columns.forced[mask]![level]![i]!
  return forced > limit
}

/** Groups of AC-coupled solar that are in during minute `i`, a bit each; moves their latches and waits. */
export function takeSolar(state: State, i: number, columns: Columns, rules: Rules): number {
  let mask = 0
  for (let g = 0; g < rules.solar.length; g++) if (isIn(state, i, g, rules)) mask |= 1 << g
  const canTrip = mask & rules.tripMask
  if (canTrip === 0 || !isForced(state, i, mask, columns, rules)) return mask
  tripAll(state, i, canTrip, rules)
  return mask & ~canTrip
}

/** Whether a group has nothing to wait for in minute `i`. */
function isIn(state: State, i: number, group: number, rules: Rules): boolean {
  const solar = rules.solar[group]!
  let until = solarOf(state, group)
  if (until === SOLAR_HELD) {
    if (!(state.stored <= solar.backKwh)) return false
    until = i + solar.waitMinutes - 1
    setSolar(state, group, until)
  }
  if (i <= until) {
    if (i === until) state.events |= SOLAR_EVENTS[group]!.isIn
    return false
  }
  if (solar.heldOut && state.stored >= solar.offKwh) {
    setSolar(state, group, SOLAR_HELD)
    state.events |= SOLAR_EVENTS[group]!.heldOut
    return false
  }
  return true
}

/**
 * The frequency is one for all: every group that cannot throttle goes out at once. Nobody knows
 * what a dead array would give, so each waits from the next minute on, tries again and may fail
 * again.
 */
function tripAll(state: State, i: number, groups: number, rules: Rules): void {
  for (let g = 0; g < rules.solar.length; g++) {
    if ((groups & (1 << g)) === 0) continue
    setSolar(state, g, i + rules.solar[g]!.waitMinutes)
    state.events |= SOLAR_EVENTS[g]!.trips
  }
}

/** A minute that ended at a charge edge whose next band does not take the arrays: they trip there. */
export function tripAtEdge(
  state: State,
  i: number,
  mask: number,
  columns: Columns,
  rules: Rules,
): void {
  if (!(state.delta > 0) || !isOnBandEdge(state, rules)) return
  if (!isForced(state, i, mask, columns, rules)) return
  tripAll(state, i, mask & rules.tripMask, rules)
}

/** Groups of AC-coupled solar that wait for nothing in minute `i`, a bit each. */
export function groupsIn(state: State, i: number, rules: Rules): number {
  let mask = 0
  for (let g = 0; g < rules.solar.length; g++) if (solarOf(state, g) < i) mask |= 1 << g
  return mask
}
