// The pass against stepping on the houses that the project ships, in every month of the year;
// `npm run equality` follows more of their starts for a month.

import { describe, expect, it } from 'vitest'
import { compareMonth, DEMO_CASES, DEMO_HOUSES, demoHouse } from './compare-house.js'

/** Twelve hours of starts from a seeded minute of each month on, 36 of them stepped for three days. */
const SPAN = { starts: 720, horizon: 3 * 1440, stepped: 36 } as const
const MONTHS = Array.from({ length: 12 }, (_, m) => m + 1)

describe.each(DEMO_HOUSES)('sampled starts of every month, the %s', (name) => {
  const prepared = demoHouse(name)

  it.each(DEMO_CASES.map((kind, seed) => ({ ...kind, seed })))(
    'pass and step agree under the sky $sky with $scenario, to the minute and in the end',
    (kind) => {
      for (const month of MONTHS) {
        const found = compareMonth(prepared, { ...SPAN, ...kind, month })
        expect(found.differences.slice(0, 3), found.about).toEqual([])
        // Who never goes down, or is dark for good, is compared in one way alone.
        expect(Math.max(found.spells, found.ends), found.about).toBeGreaterThanOrEqual(SPAN.stepped)
      }
    },
  )
})
