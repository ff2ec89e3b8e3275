// A meter file that does not reach the month asked about, or the winter, is doubted before the answer.

import { checkHouse, prepare } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { meterDoubts } from '../../../packages/core/src/answers/meter-doubts.js'
import { plainHouse } from '../plain-house.js'

/** Doubts about a house metered at a steady 1 kW from a day of 2025 on. */
function doubts(
  [firstMonth, days]: readonly [number, number],
  asked: number | null,
  changes: { latitudeDeg?: number; load?: object } = {},
): string {
  const kw = new Float64Array(days * 24).fill(1)
  const startMs = Date.UTC(2025, firstMonth - 1, 1)
  const { latitudeDeg = 52, load } = changes
  const site = { latitudeDeg, longitudeDeg: 0, elevationM: 0, timezone: 'UTC' }
  const loads = [{ name: 'whole', tier: 'critical', file: 'm.csv', ...load }]
  const meter = { name: 'm.csv', startMs, stepMinutes: 60, kw, notes: [] }
  const prepared = prepare(checkHouse(plainHouse({ site, loads })), {
    meters: new Map([['m.csv', meter]]),
  })
  return meterDoubts(prepared, asked).join('\n')
}

describe('a record of June alone', () => {
  it('stands in for January, and says so', () => {
    expect(doubts([6, 30], 1)).toBe(
      'whole: its meter file has no day near most of January, the month asked about; 30 recorded ' +
        'days of other months stand in, which may be far off. A record of that month is better ground.',
    )
  })

  it('lacks the winter, which is said of an answer for June too, and of the load table', () => {
    const said =
      /^whole: its meter file lacks the winter: no day near most of November to February;/
    expect(doubts([6, 30], 6)).toMatch(said)
    expect(doubts([6, 30], null)).toMatch(said)
  })

  it('has the winter in the south', () => {
    expect(doubts([6, 61], 7, { latitudeDeg: -46 })).not.toContain('the month asked about')
    expect(doubts([5, 123], 7, { latitudeDeg: -46 })).toBe('')
    expect(doubts([11, 59], null, { latitudeDeg: -46 })).toContain('May to August')
  })

  it('scaled by choice is doubted still, and says so', () => {
    expect(doubts([6, 30], 1, { load: { seasonal: 'H0' } })).toContain(
      'days of other months, scaled by a standard profile, stand in',
    )
  })
})

it('a record of one winter month is doubted for June, and not for that month', () => {
  expect(doubts([1, 31], 1)).toBe('')
  expect(doubts([1, 31], 6)).toContain('the month asked about')
  expect(doubts([1, 31], null)).toContain(
    // To 15 February a day of January is near, from 17 December on.
    'lacks part of the winter: no day near most of November and December;',
  )
})

it('a record of the year, or of the winter asked about, is not doubted', () => {
  expect(doubts([1, 365], 1)).toBe('')
  expect(doubts([1, 365], null)).toBe('')
})
