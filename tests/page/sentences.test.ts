// Sentences of the page, by hand.

import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { CutView } from '../../packages/page/src/cut/cut-view.js'
import { cutWords } from '../../packages/page/src/words/cut.js'
import { FINDING_TITLES, firstSentence } from '../../packages/page/src/words/finding-titles.js'
import { regionOf } from '../../packages/page/src/words/region.js'

const words = cutWords(regionOf('America/Chicago'))

/** A cut of 24 hours with one load. */
function view(changes: Partial<CutView>): CutView {
  const loads = [{ name: 'pump', lostAt: null, lostLocal: null }]
  const none = {
    lasts: null,
    first: null,
    without: 0,
    moods: [],
    nights: [],
    events: [],
    clock: [],
  }
  const localAt = (): string => 'Tue 14 Jan 18:00'
  const charge = new Float64Array(1441)
  return { minutes: 1440, from: localAt(), loads, charge, localAt, ...none, ...changes }
}

describe('how long a cut lasts', () => {
  const first = { name: 'pump', lostAt: 810, lostLocal: 'Wed 15 Jan 07:30' }

  it('is told in whole hours, rounded down, with what gives out first', () => {
    expect(words.lasts(view({ lasts: 799, first, loads: [first] }))).toBe(
      'It lasts 13 hours. The first to give out is pump, at Wed 15 Jan 07:30.',
    )
  })

  it('is nothing where the first minute is lost', () => {
    expect(words.lasts(view({ lasts: 0, first, loads: [first] }))).toMatch(
      /^It does not last at all\./,
    )
  })

  it('is the whole of it where nothing is lost, gaps told', () => {
    expect(words.lasts(view({}))).toBe('It lasts the whole of the outage, 24 hours.')
    expect(words.lasts(view({ without: 25 }))).toBe(
      'It lasts the whole of the outage, 24 hours: everything is off for 25 minutes of it, which ' +
        'nothing that must stay on is harmed by.',
    )
  })

  it('is not said where nothing that must stay on is on', () => {
    expect(words.lasts(view({ loads: [] }))).toMatch(/^Nothing that must stay on is switched on/)
  })
})

describe('findings in short', () => {
  it('every finding that check knows has a title', () => {
    const page = readFileSync(new URL('../../packages/cli/README.md', import.meta.url), 'utf8')
    const [, line] = /^Ids: (.*)\.$/m.exec(page)!
    const ids = line!.split(', ').map((id) => id.replaceAll('`', ''))
    expect(ids.length).toBeGreaterThan(20)
    // Good to know only: told in the fold.
    const told = ids.filter((id) => id !== 'peaks-fit')
    expect(told.filter((id) => FINDING_TITLES[id] === undefined)).toEqual([])
  })

  it('the first sentence of a text ends at its full stop, not at a decimal point', () => {
    expect(firstSentence('It draws 3.68 kW. Look at it.')).toBe('It draws 3.68 kW.')
  })
})
