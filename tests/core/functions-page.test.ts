// The page of core names functions that there are.

import { readFileSync } from 'node:fs'
import * as core from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from './plain-house.js'

const page = readFileSync(new URL('../../packages/core/README.md', import.meta.url), 'utf8')
const part = page.slice(page.indexOf('## Which function answers what'))
const section = part.slice(0, part.indexOf('\n## '))

describe('the page of core', () => {
  it('names functions that core exports', () => {
    const known = Object.keys(core)
    const calls = section.split('\n').flatMap((row) => {
      const cell = row.split(' | ')[1] ?? ''
      return [...cell.matchAll(/`([a-z]\w*)/g)].map(([, name]) => name!)
    })
    expect(calls.length).toBeGreaterThan(12)
    expect(calls.filter((name) => !known.includes(name))).toEqual([])
  })

  it('tells how down spells are had', () => {
    // 1 kW on the 5 kWh of the plain house, or less, is gone within 6 hours.
    const loads = [{ name: 'all', tier: 'critical', w: 1000 }]
    const prepared = core.prepare(core.checkHouse(plainHouse({ loads })))
    const starts = core.monthStarts(prepared, { month: 1, hours: 24 }, 6 * 60)
    const [spells] = core.spellsWith(starts, core.equip(prepared, {}), prepared.demand)
    const first = spells!.first[0]!
    expect(first).toBeGreaterThanOrEqual(0)
    expect(spells!.from(first)).toBeLessThan(6 * 60)
    expect(spells!.to(first)).toBe(-1)
  })
})
