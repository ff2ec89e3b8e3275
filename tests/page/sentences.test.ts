// Sentences of the page, by hand.

import { readFileSync } from 'node:fs'
import { EVENT_IDS } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import type { CutView } from '../../packages/page/src/cut/cut-view.js'
import { cutWords } from '../../packages/page/src/words/cut.js'
import { eventWords, type SeenEvent } from '../../packages/page/src/words/events.js'
import { findingWords } from '../../packages/page/src/words/finding-words.js'
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
    expect(words.lasts(view({ lasts: 810, first, loads: [first] }))).toBe(
      'It lasts 13 hours. The first to give out is pump, at Wed 15 Jan 07:30.',
    )
  })

  it('says when the power went, where that is sooner than the loss', () => {
    const localAt = (minute: number): string => `minute ${minute}`
    expect(words.lasts(view({ lasts: 799, first, loads: [first], localAt }))).toBe(
      'It lasts 13 hours: everything goes off at minute 799. The first to give out is pump, at Wed ' +
        '15 Jan 07:30.',
    )
  })

  it('is nothing where the first minute is lost', () => {
    expect(words.lasts(view({ lasts: 0, first: { ...first, lostAt: 0 }, loads: [first] }))).toMatch(
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

describe('what happens in a cut', () => {
  const seen = (changes: Partial<SeenEvent>): string => {
    const local = 'Mon 13 Jan 11:18'
    const quiet = { minute: 0, local, names: [], charge: 0.19, isCold: false, fuelL: 27.3 }
    return eventWords({ id: 'goes-dark', ...quiet, ...changes })
  }

  it('names what it concerns, and says who is there', () => {
    expect(seen({ id: 'comfort-off', names: ['kettle', 'freezer'] })).toBe(
      'To save charge, this goes off: kettle and freezer.',
    )
    const wanted = { id: 'generator-wanted', charge: 0.25 } as const
    expect(seen({ ...wanted, tendedAt: 'Mon 13 Jan 11:48' })).toMatch(/there for it by Mon 13 Jan/)
    expect(seen({ ...wanted, tendedAt: null })).toMatch(/25\u00a0%.* Nobody is there for it\.$/)
    expect(seen(wanted)).toMatch(/It starts by itself\.$/)
  })

  it('names what was too much, and who resets what it switched off', () => {
    const over = { id: 'too-much-at-once' } as const
    expect(seen({ ...over, names: ['shower'] })).toBe(
      'shower alone is too much for the battery inverter.',
    )
    expect(seen({ ...over, names: ['kettle', 'pump', 'fridge', 'lamp'] })).toBe(
      'Too much runs or starts at once for the battery inverter (kettle, pump and fridge).',
    )
    expect(seen({})).toBe('Everything is off.')
    expect(seen({ tendedAt: null })).toMatch(/waits to be reset: nobody is there for it\.$/)
    expect(seen({ tendedAt: 'Mon 13 Jan 11:48' })).toMatch(/has done it by Mon 13 Jan 11:48\.$/)
  })

  it('says that the cold ends it sooner only where it does', () => {
    expect(seen({ id: 'battery-empty' })).toBe(
      'The battery is down to the least it may have: 19\u00a0%.',
    )
    expect(seen({ id: 'battery-empty', isCold: true })).toMatch(
      /19\u00a0%, more than when it is warm/,
    )
  })

  it('is in the reference of the command, every id of it', () => {
    const page = readFileSync(new URL('../../packages/cli/README.md', import.meta.url), 'utf8')
    const [, line] = /Ids of events: (.*)\.$/m.exec(page)!
    expect(line!.split(', ').map((id) => id.replaceAll('`', ''))).toEqual([...EVENT_IDS])
  })
})

describe('findings in short', () => {
  it('every finding that check knows has its words', () => {
    const page = readFileSync(new URL('../../packages/cli/README.md', import.meta.url), 'utf8')
    const [, line] = /^Ids: (.*)\.$/m.exec(page)!
    const ids = line!.split(', ').map((id) => id.replaceAll('`', ''))
    expect(ids.length).toBeGreaterThan(20)
    // Good to know only: told in the fold.
    const told = ids.filter((id) => id !== 'peaks-fit')
    const known = findingWords(regionOf('Europe/London'))
    expect(told.filter((id) => known[id] === undefined)).toEqual([])
  })
})
