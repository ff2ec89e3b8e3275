// The pass against walking every start: all starts, whole lists of down spells, to the minute.
//
// The walk is the plain reading of the rule book, one start at a time without any sharing; it is
// the truth here. A difference of one minute is a failure.

import { newState, onGrid, pass, type Spells, step, walkStarts } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { randomIsland } from './random-island.js'

const STARTS = 2 * 1440
const HORIZON = 2 * 1440
const FIRST = Number(process.env.TIDEOVER_FIRST ?? 0)
const HOUSES = Number(process.env.TIDEOVER_HOUSES ?? 24)

/** Spells of one start within its horizon; -1 where one is open there. */
function spellsOf(spells: Spells, start: number): number[] {
  const out: number[] = []
  for (let s = spells.first[start]!; s >= 0; s = spells.next(s)) {
    if (spells.from(s) >= start + HORIZON) break
    const to = spells.to(s)
    out.push(spells.from(s), to < 0 || to >= start + HORIZON ? -1 : to)
  }
  return out
}

/** The same by stepping a state of its own, with nothing shared. */
function stepped(island: ReturnType<typeof randomIsland>, start: number): number[] {
  const { columns, rules } = island.compiled
  const state = newState(rules, onGrid(island.startShare * rules.capacityKwh))
  const out: number[] = []
  for (let i = start; i < start + HORIZON; i++) {
    step(state, i, columns, rules)
    const down = state.level > rules.lastLevel
    if (down !== (out.length % 2 === 1)) out.push(i)
  }
  if (out.length % 2 === 1) out.push(-1)
  return out
}

describe('every start of a random island', () => {
  it.each(Array.from({ length: HOUSES }, (_, k) => FIRST + k))(
    'island %i: pass, walk and step agree',
    (number) => {
      const island = randomIsland(number, STARTS + HORIZON)
      const { columns, rules } = island.compiled
      const stored = onGrid(island.startShare * rules.capacityKwh)
      const carried = pass(columns, rules, STARTS, stored, HORIZON)
      const walked = walkStarts(columns, rules, STARTS, stored, HORIZON)
      for (let start = 0; start < STARTS; start++) {
        const [a, b] = [spellsOf(carried, start), spellsOf(walked, start)]
        if (a.join() !== b.join()) expect(a, `start ${start} of ${island.about}`).toEqual(b)
      }
      for (let start = 0; start < STARTS; start += 97) {
        expect(spellsOf(carried, start), `start ${start} of ${island.about}`).toEqual(
          stepped(island, start),
        )
      }
    },
  )

  it('takes a column of start charges as it takes one', () => {
    const island = randomIsland(3, STARTS + HORIZON)
    const { columns, rules } = island.compiled
    const column = new Float64Array(STARTS).fill(onGrid(0.5 * rules.capacityKwh))
    const [a, b] = [column, column[0]!].map((start) => pass(columns, rules, STARTS, start, HORIZON))
    for (let s = 0; s < STARTS; s++) expect(spellsOf(a!, s)).toEqual(spellsOf(b!, s))
  })
})
