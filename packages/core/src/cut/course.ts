// What the gaps of one traced cut do to each critical load, minute by minute.

import type { Shown } from '../consequence/consequence.js'
import type { Rules } from '../island/rules.js'
import { gapIn, type RideLoad, relief, toleranceOf } from './rides.js'
import type { Trace } from './trace.js'

export interface Course {
  readonly name: string
  /** The longest gap it bears when long supplied; Infinity for any. [min] */
  readonly toleratesMinutes: number
  /** What that follows from; null where it is given. */
  readonly basis: string | null
  /** First minute of the trace in which it is lost; null where it is not. */
  readonly lostAt: number | null
  /** What people are shown, at the end of each minute; null for a plain gap. */
  readonly shown:
    | (Pick<Shown, 'word' | 'unit' | 'column' | 'limit' | 'most' | 'keeps'> & {
        /** [n], in the unit */
        readonly values: Float64Array
      })
    | null
}

/** The same fold as that of a ride, over the spells of one trace that begins with all supplied. */
export function courseOf(trace: Trace, load: RideLoad, { lastLevel }: Rules): Course {
  const { consequence } = load
  const { shown } = consequence
  const values = new Float64Array(shown === null ? 0 : trace.n)
  let isDown = false
  // State at the last turn between supply and none, and when that was.
  let state = consequence.rest
  let turned = 0
  let gapFrom = 0
  let lostAt: number | null = null
  const stateAt = (end: number): number => {
    if (isDown) return end > gapFrom ? consequence.afterGap(state, end - gapFrom) : state
    return consequence.afterSupply(state, relief(load, trace.from + turned, trace.from + end))
  }
  for (let i = 0; i < trace.n; i++) {
    const down = trace.levels[i]! > lastLevel
    if (down !== isDown) {
      state = stateAt(i)
      turned = i
      isDown = down
      gapFrom = i + gapIn(load, trace.from + i)
    }
    if (down && lostAt === null && i === gapFrom + consequence.lostIn(state)) lostAt = i
    if (shown !== null) values[i] = shown.value(stateAt(i + 1))
  }
  return {
    name: load.name,
    toleratesMinutes: toleranceOf(load),
    basis: consequence.basis,
    lostAt,
    shown: shown === null ? null : { ...shown, values },
  }
}
