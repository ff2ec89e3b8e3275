// The ride of one start, walked.

import type { RideLoad } from '../../cut/rides.js'
import { walk } from '../../cut/walk.js'
import type { Compiled } from '../../island/compile.js'
import { Event, type State } from '../../island/state.js'
import { firstOf, lossesOf } from '../losses.js'

export interface OneRide {
  /** To the end of the ride; the horizon where it lasts longer. */
  readonly minutes: number
  readonly lost: boolean
  /** Minutes, from the start, in which the island or its comfort loads dropped out by overload. */
  readonly overloads: readonly number[]
}

/**
 * @param state    as the first minute finds it; it is lived on
 * @param from     minute of the window in which the cut begins
 * @param horizon  minutes; the window must hold from + horizon of them
 */
export function oneRide(
  { columns, rules }: Compiled,
  state: State,
  from: number,
  horizon: number,
  loads: readonly RideLoad[],
): OneRide {
  const levels = new Uint8Array(horizon)
  const overloads: number[] = []
  walk(state, from, from + horizon, columns, rules, (i, state) => {
    levels[i - from] = state.level
    if ((state.events & (Event.overload | Event.relaySheds)) !== 0) overloads.push(i - from)
  })
  const loss = firstOf(lossesOf(levels, rules, loads, columns.from + from))
  return { minutes: loss?.spellFrom ?? horizon, lost: loss !== null, overloads }
}
