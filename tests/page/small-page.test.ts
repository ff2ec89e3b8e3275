// The page of a small house: the year by the hour, the words of a hardest month, its size.

import { yearMonth } from '@tideover/core'
import { MOST_BYTES, pageHtml } from '@tideover/page'
import { beforeAll, describe, expect, it } from 'vitest'
import { shadeOf } from '../../packages/page/src/sections/grid.js'
import { doingWords } from '../../packages/page/src/words/doing.js'
import { hardestMonthWords } from '../../packages/page/src/words/hardest.js'
import { coldText } from '../../packages/page/src/words/keeps.js'
import { shortHours } from '../../packages/page/src/words/numbers.js'
import { regionOf } from '../../packages/page/src/words/region.js'
import { plainHouse } from '../core/plain-house.js'
import { type MadePage, madePage } from './made-page.js'

let made: MadePage

beforeAll(() => {
  const house = plainHouse()
  const stack = { ...(house.stack as object), place: 'house' }
  made = madePage({ ...house, stack }, {}, { month: 1, hours: 6 }, [7])
}, 120_000)

describe('the months by the hour', () => {
  it('are those of year, the month that was asked about not ridden again', () => {
    const { prepared, facts } = made
    const again = yearMonth(prepared, { hours: 6 }, 1).row
    expect(facts.months.map(({ month }) => month)).toEqual([1, 7])
    // `ride` tells the hand figure without sun beside it.
    expect(facts.months[0]).toMatchObject({ ...again })
  })

  it('stand in a table and in a picture, 24 squares a month', () => {
    expect(made.html.match(/<rect [^>]*><title>(January|July), /g)).toHaveLength(48)
    expect(made.html).toContain('<th scope="row">Jan</th>')
  })

  // By hand: from the reserve of 50 % less 5 points to 10 % and the 4 % of a room at 15 °C, 3.1 kWh
  // of 10 last 413.3 minutes at 0.45 kW, from every minute: there is no sun on the house.
  it('spread as little as a load without hours does', () => {
    const dull = made.facts.spread.find(({ sky }) => sky === 'dull')!
    expect(dull.hours).toHaveLength(5)
    for (const hours of dull.hours) expect(Math.abs(60 * hours - 413.3)).toBeLessThan(1)
  })
})

describe('what brings an empty house back', () => {
  const steps = (inverter: object, arrays: readonly object[] = []): string => {
    const { equipped } = made.facts
    const house = {
      ...equipped.house,
      arrays,
      inverter: { ...equipped.house.inverter, ...inverter },
    }
    const facts = { ...made.facts, equipped: { ...equipped, house } } as typeof made.facts
    return doingWords(regionOf('UTC'), facts).steps.join(' ')
  }

  it('is nothing but the grid where nothing wakes it, and sun is spoken of where there are panels', () => {
    const dark = steps({ whenEmpty: 'collapses', wakesOn: [] })
    expect(dark).toContain('nothing but the grid brings it back. Dark at')
    const roof = steps({ whenEmpty: 'collapses', wakesOn: [] }, [{}])
    expect(roof).toContain('nothing but the grid brings it back. The sun alone cannot wake it.')
  })

  // By hand: 10 % and the 4 % that a room at 15 °C keeps.
  it('an empty one is told from too much at once by the charge of the coldest hour', () => {
    const said = steps({ whenEmpty: 'collapses' }).replaceAll('\u00a0', ' ')
    expect(said).toContain(
      'At a charge of 10 % (14 % when the battery is at its coldest) everything',
    )
    expect(said).toContain('Dark at a charge well above 14 %: too much at once')
    expect(said).toContain('reset it at the battery inverter')
  })

  it('is also its own clock, where it tries again by itself', () => {
    const tries = steps({ whenEmpty: 'retries', wakesOn: [] }, [{}])
    expect(tries).toContain('tries again by itself from 10:00-10:10')
    expect(tries).toContain('The grid brings it back too.')
    expect(tries).not.toContain('nothing but the grid')
  })
})

describe('what a fridge keeps', () => {
  it('is said in full, with what public guidance counts on', () => {
    expect(coldText({ hours: 4, keeps: 'medicine' })).toBe(
      'door shut, it warms from 5 to 8 °C in 4 hours in a room at 20 °C. Above 8 °C what it keeps may ' +
        'be lost. Public guidance counts on 4 hours for food; for medicine ask who made it.',
    )
    expect(coldText({ hours: 30, keeps: 'frozen', roomC: 12 })).toContain(
      'at 20 °C; here it has 12 °C.',
    )
  })
})

describe('a page that would be larger than 8 MB', () => {
  it('goes without what it carries, and without the script, and says so', () => {
    const { facts } = made
    // Digits that nothing makes smaller: a minute a reading, over 20 months.
    const kw = Array.from({ length: 880_000 }, (_, i) => Math.abs(Math.sin(i * i)))
    const meters = [['all.csv', { startMs: 0, stepMinutes: 1, kw }]] as const
    const script = '"the script"'
    const small = pageHtml(facts, script)
    expect(small).toContain('"the script"')
    expect(small).toContain('id="house-data"')
    const large = pageHtml({ ...facts, carried: { ...facts.carried, meters } }, script)
    expect(large.length).toBeLessThan(MOST_BYTES)
    expect(large).not.toContain('"the script"')
    expect(large).not.toContain('id="house-data"')
    expect(large).not.toContain('id="play-clear"')
    expect(large).toContain('too many for a page that travels by mail')
  }, 60_000)
})

describe('a shade', () => {
  it.each([
    [1, 0],
    [0.999, 1],
    [0.75, 1],
    [0.5, 2],
    [0.25, 3],
    [0.249, 4],
    [0.01, 4],
    [0.009, 5],
    [0, 5],
  ])('of a share of %f is %i', (share, shade) => expect(shadeOf(share)).toBe(shade))
})

describe('hours of a table', () => {
  it.each([
    [48, '48+'],
    [47.9, '47'],
    [0.5, '30 min'],
    [0, '0'],
  ])('%f h followed for 48 are %s', (hours, text) => expect(shortHours(hours, 48)).toBe(text))
})

describe('the hardest month', () => {
  const row = (month: number, share: number) => {
    const figures = {
      ...made.facts.promised,
      share,
      hardest: 'evening' as const,
      medianHours: 15.9,
    }
    const shareByPattern = { any: 0.4, evening: share, windy: null }
    const worstHours = 4.2
    return {
      month,
      figures: { ...figures, shareByPattern, worstHours },
      byHour: [],
      byThreeHours: [],
    }
  }
  const year = (worst: number) =>
    Array.from({ length: 12 }, (_, m) => row(m + 1, m + 1 === worst ? 0.09 : 0.5))

  it('is told where it is another one, with when it is so hard', () => {
    expect(hardestMonthWords({ ...made.facts, months: year(4) })).toBe(
      'January is not the hardest month for this house: in April it lasts 4 hours at worst, 15 hours in ' +
        'the middle case; when it starts from 15 to 21 h, it lasts to the end in 9 of 100 cases.',
    )
    expect(hardestMonthWords({ ...made.facts, months: year(1) })).toBe(
      'No month is harder for this house than January.',
    )
  })

  it('is none where every month lasts to the end', () => {
    const months = Array.from({ length: 12 }, (_, m) => row(m + 1, 1))
    expect(hardestMonthWords({ ...made.facts, months })).toBe(
      'In every other month it lasts to the end as well.',
    )
  })

  it('is not told of a part of the year', () => {
    expect(hardestMonthWords(made.facts)).toBe('')
  })
})
