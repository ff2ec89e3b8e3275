// How far the stack moves in a minute: bands near full, temperature, and edges that end a minute.
//
// What `step` needs a number for goes by the fields of the state: an engine allocates for a number
// that crosses a call, and a minute has many.

import type { Columns } from './columns.js'
import type { Rules } from './rules.js'
import { Event, type State } from './state.js'

/** Most the stack may gain in a minute from where it stands; 0 when full. [kWh] */
export function limitOf(stored: number, tempLimit: number, rules: Rules): number {
  const edges = rules.bandEdgesKwh
  for (let band = 0; band < edges.length; band++) {
    if (stored < edges[band]!) return Math.min(rules.bandLimitsKwh[band]!, tempLimit)
  }
  return 0
}

/** Moves the stack by `delta`, cut short; charging never passes a charge edge within the minute. */
export function move(state: State, i: number, columns: Columns, rules: Rules): void {
  let gain = state.delta
  if (gain > 0) {
    const edges = rules.bandEdgesKwh
    let band = 0
    while (band < edges.length && !(state.stored < edges[band]!)) band++
    if (band === edges.length) gain = 0
    else {
      gain = Math.min(gain, rules.bandLimitsKwh[band]!, columns.tempLimit[i]!)
      if (state.stored + gain >= edges[band]!) {
        gain = edges[band]! - state.stored
        if (band === edges.length - 1 && gain > 0) state.events |= Event.full
      }
    }
  }
  state.delta = Math.max(gain, -state.stored)
  state.stored += state.delta
}
