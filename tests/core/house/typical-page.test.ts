// The page of typical loads is the table in the README of core; it must be the code's.

import { readFileSync } from 'node:fs'
import { type TypicalLine, typicalTable } from '@tideover/core'
import { describe, expect, it } from 'vitest'

const PAGE = readFileSync(new URL('../../../packages/core/README.md', import.meta.url), 'utf8')
const SECTION = PAGE.slice(PAGE.indexOf('### Typical loads'), PAGE.indexOf('## Loads metered'))

const LINES = typicalTable()
const line = (kind: string): TypicalLine => LINES.find((each) => each.kind === kind)!

describe('the page of typical loads', () => {
  it.each(LINES)('has $kind as the code has it', (row) => {
    const { kind, tier, w, runs, powerFactor, startingMultiple, source } = row
    const off = row.toleratesMinutes === null ? '' : `${row.toleratesMinutes} min`
    const cells = [kind, tier, w, runs, powerFactor, startingMultiple, off, source]
    expect(SECTION).toContain(`| ${cells.join(' | ')} |\n`)
  })

  it('has no row beside them', () => {
    expect(SECTION.match(/^\| .* \|$/gm)).toHaveLength(LINES.length + 1)
  })

  it('names a source on every row', () => {
    for (const { source } of LINES) {
      expect(source).toMatch(/common practice, no source|appliance lists|memory/)
    }
  })
})

// Truth: appliance powers as published lists have them, gaps of USDA, FDA and CDC, the mean of a
// fridge-freezer by Ofgem: 1 kWh in 26 h; a boiler of 20 l at 60 °C under 15 kW boils after
// m c dT / P = 20 x 4186 x 40 / 15000 = 223 s.
describe('typical values lie in what is published', () => {
  it.each([
    ['kettle', 2200, 3000],
    ['larder fridge', 100, 120],
    ['freezer', 150, 200],
    ['fridge-freezer', 100, 150],
    ['router', 7, 10],
    ['immersion heater', 3000, 3000],
    ['heating pump', 5, 45],
    ['old heating pump', 60, 100],
    ['solid-fuel boiler pump', 60, 100],
    ['boiler electronics and fan', 30, 120],
  ])('the power of a %s within %i..%i W', (kind, least, most) => {
    expect(line(kind).w).toBeGreaterThanOrEqual(least)
    expect(line(kind).w).toBeLessThanOrEqual(most)
  })

  it('gaps: 4 h for a fridge, 24 h for a freezer half full, whole minutes within 223 s', () => {
    expect([line('fridge'), line('freezer')].map((l) => l.toleratesMinutes)).toEqual([240, 1440])
    expect(line('solid-fuel boiler pump').toleratesMinutes).toBe(Math.floor(223 / 60))
  })
})
