// The pass against walking on many islands: an hour of work, so it is no part of the tests. Its
// last report is kept beside it.
//
// Of each island all starts of some weeks are walked for two days, and one start in 97 is stepped
// for a month with nothing shared.

import { writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { type Comparison, compareIsland } from '../core/pass/compare-island.js'

const FIRST = Number(process.env.TIDEOVER_FIRST ?? 10_000)
const HOUSES = Number(process.env.TIDEOVER_HOUSES ?? 200)
const STARTS = 1440 * Number(process.env.TIDEOVER_DAYS ?? 20)
const SHORT = 2 * 1440
const LONG = 30 * 1440
const REPORT = fileURLToPath(new URL('report.md', import.meta.url))

const sums = { starts: 0, spells: 0, stepped: 0, ends: 0 }
const differing: string[] = []

function count({ about, differences, ...counted }: Comparison): void {
  for (const key of Object.keys(sums) as (keyof typeof sums)[]) sums[key] += counted[key]
  if (differences.length > 0) differing.push(`${about}: ${differences.slice(0, 3).join('; ')}`)
}

function report(islands: number): string {
  const n = (value: number): string => value.toLocaleString('en-GB')
  return `# The pass against walking

Written by \`npm run equality\`. Random islands ${FIRST} to ${FIRST + islands - 1}, Node ${process.version}.

| | |
|---|---|
| islands | ${n(islands)} |
| days of starts of each | ${STARTS / 1440} |
| starts walked for ${SHORT / 1440} days, whole lists of down spells | ${n(sums.starts)} |
| starts stepped with nothing shared, one in 97, for ${SHORT / 1440} and for ${LONG / 1440} days | ${n(sums.stepped)} |
| states at the end compared | ${n(sums.ends)} |
| down spells found | ${n(sums.spells)} |
| islands with a difference | ${differing.length} |

${differing.map((line) => `- ${line}\n`).join('')}`
}

it(`${HOUSES} islands from ${FIRST} on`, { timeout: 0 }, () => {
  for (let k = 0; k < HOUSES; k++) {
    count(compareIsland(FIRST + k, STARTS, SHORT))
    const long = compareIsland(FIRST + k, STARTS, LONG, false)
    count({ ...long, starts: 0 })
    // What is known so far outlives an interruption.
    writeFileSync(REPORT, report(k + 1))
  }
  expect(differing).toEqual([])
})
