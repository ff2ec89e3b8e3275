// The trace of a cut is the traces of its two halves joined: a state holds all that a minute needs.

import { type Compiled, newState, onGrid, type Trace, traceSpan } from '@tideover/core'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { islandOf } from '../plain-house.js'
import { RANDOM_MINUTES, randomHouse } from '../random-house.js'

/** Columns of a trace by name. */
function columnsOf(t: Trace): [string, ArrayLike<unknown>][] {
  return Object.entries(t).filter(([, column]) => typeof column !== 'number')
}

function inPieces(compiled: Compiled, startShare: number, cuts: readonly number[]): Trace[] {
  const state = newState(compiled.rules, onGrid(startShare * compiled.rules.capacityKwh))
  return cuts.slice(1).map((to, i) => traceSpan(compiled, state, cuts[i]!, to))
}

it('holds for every column of random houses, wherever they are cut', () => {
  fc.assert(
    fc.property(
      randomHouse,
      fc.integer({ min: 1, max: RANDOM_MINUTES - 1 }),
      ({ given, startShare }, at) => {
        const compiled = islandOf(given)
        const [whole] = inPieces(compiled, startShare, [0, RANDOM_MINUTES])
        const halves = inPieces(compiled, startShare, [0, at, RANDOM_MINUTES])
        expect(halves.map((half) => [half.from, half.n])).toEqual([
          [0, at],
          [at, RANDOM_MINUTES - at],
        ])
        for (const [name, column] of columnsOf(whole!)) {
          for (let i = 0; i < RANDOM_MINUTES; i++) {
            const half = i < at ? halves[0]! : halves[1]!
            const got = (half as unknown as Record<string, ArrayLike<unknown>>)[name]!
            if (!Object.is(got[i < at ? i : i - at], column[i])) {
              throw new Error(`${name}, minute ${i}, cut at ${at}`)
            }
          }
        }
      },
    ),
    { seed: 7, numRuns: 60 },
  )
})
