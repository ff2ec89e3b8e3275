// The pass against walking every start, on short years of random islands; `npm run equality` takes
// more of them and longer ones. A difference of one minute is a failure.

import { onGrid, pass } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { compareIsland } from './compare-island.js'
import { randomIsland } from './random-island.js'

const STARTS = 1440
const HORIZON = 2 * 1440
const FIRST = Number(process.env.TIDEOVER_FIRST ?? 0)
const HOUSES = Number(process.env.TIDEOVER_HOUSES ?? 20)

describe('every start of a random island', () => {
  it.each(Array.from({ length: HOUSES }, (_, k) => FIRST + k))(
    'island %i: pass, walk and step agree, to the minute and in the end',
    (number) => {
      const { about, differences } = compareIsland(number, STARTS, HORIZON)
      expect(differences.slice(0, 3), about).toEqual([])
    },
  )

  it('ends are compared', () => {
    const ends = [0, 1, 2, 3].map((number) => compareIsland(number, 720, 720).ends)
    expect(Math.max(...ends)).toBe(8)
  })

  it('takes a column of start charges as it takes one', () => {
    const island = randomIsland(3, STARTS + HORIZON)
    const { columns, rules } = island.compiled
    const column = new Float64Array(STARTS).fill(onGrid(0.5 * rules.capacityKwh))
    const [a, b] = [column, column[0]!].map((start) => {
      const spells = pass(columns, rules, STARTS, start, HORIZON)
      return Array.from({ length: spells.length }, (_, s) => [spells.from(s), spells.to(s)])
    })
    expect(a!.length).toBeGreaterThan(0)
    expect(a).toEqual(b)
  })
})
