// The pass against walking on many islands: hours of work, so it is no part of the tests. Its last
// report is kept beside it.
//
// Of each island all starts of some weeks are walked for two days, and each of them is stepped for a
// month with nothing shared, a thousand million minutes an island: one in 97 to the very end, the
// others until they are dark for good. Of each demo house sampled starts of every month are stepped
// for a month; that takes a minute or two and can be asked for alone: `-- -t 'demo'`.

import { expect, it } from 'vitest'
import {
  compareMonth,
  DEMO_CASES,
  DEMO_HOUSES,
  demoHouse,
  type HouseComparison,
} from '../core/pass/compare-house.js'
import { type Comparison, compareIsland } from '../core/pass/compare-island.js'
import { writeSection } from './report.js'

const FIRST = Number(process.env.TIDEOVER_FIRST ?? 10_000)
const HOUSES = Number(process.env.TIDEOVER_HOUSES ?? 200)
/** A second core may take others at the same time, told in a part of their own. */
const PART = process.env.TIDEOVER_MORE === '1' ? 'More random islands' : 'Random islands'
const STARTS = 1440 * Number(process.env.TIDEOVER_DAYS ?? 20)
const SHORT = 2 * 1440
const LONG = 30 * 1440
const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

/** Of each demo house, month and case. */
const DEMO = { starts: 2 * 1440, horizon: LONG, stepped: 120 } as const

it('the demo houses, every month', { timeout: 0 }, () => {
  const found: HouseComparison[] = []
  for (const prepared of DEMO_HOUSES.map(demoHouse)) {
    for (const [which, kind] of DEMO_CASES.entries()) {
      for (const month of MONTHS) {
        found.push(compareMonth(prepared, { ...DEMO, ...kind, seed: FIRST + which, month }))
      }
    }
  }
  const sum = (of: (each: HouseComparison) => number): number =>
    found.reduce((all, each) => all + of(each), 0)
  writeSection('Demo houses', {
    about: `The houses of data-samples in ${MONTHS.length} months: as they stand under a dull sky, and with one module under a typical one, with and without the generator.`,
    rows: [
      ['days of starts of each month and case', DEMO.starts / 1440],
      [
        `sampled starts stepped with nothing shared, for ${LONG / 1440} days`,
        sum((f) => f.stepped),
      ],
      ['states at the end compared', sum(({ ends }) => ends)],
      ['down spells of those starts', sum(({ spells }) => spells)],
      ['differences', sum(({ differences }) => differences.length)],
    ],
    differences: found.flatMap(({ differences }) => differences.slice(0, 3)),
  })
  expect(found.flatMap(({ differences }) => differences)).toEqual([])
})

it(`${HOUSES} islands from ${FIRST} on`, { timeout: 0 }, () => {
  const sums = { starts: 0, spells: 0, stepped: 0, ends: 0 }
  const differing: string[] = []
  const count = ({ about, differences, ...counted }: Comparison): void => {
    for (const key of Object.keys(sums) as (keyof typeof sums)[]) sums[key] += counted[key]
    if (differences.length > 0) differing.push(`${about}: ${differences.slice(0, 3).join('; ')}`)
  }
  for (let k = 0; k < HOUSES; k++) {
    count(compareIsland(FIRST + k, STARTS, LONG, SHORT, 'all'))
    // What is known so far outlives an interruption.
    writeSection(PART, {
      about: `Islands ${FIRST} to ${FIRST + k}.`,
      rows: [
        ['islands', k + 1],
        ['days of starts of each', STARTS / 1440],
        [`starts walked for ${SHORT / 1440} days, whole lists of down spells`, sums.starts],
        [
          `all of them stepped with nothing shared, for ${LONG / 1440} days or until dark for good`,
          sums.starts,
        ],
        ['of these stepped on to the very end', sums.stepped],
        ['states at the end compared', sums.ends],
        ['down spells found', sums.spells],
        ['islands with a difference', differing.length],
      ],
      differences: differing,
    })
  }
  expect(differing).toEqual([])
})
