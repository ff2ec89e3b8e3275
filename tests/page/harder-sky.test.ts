// A sky with days as they come may hold harder ones than the dull sky of the promise, by hand.

import type { RideAnswer, SkyFigures } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import type { PageFacts } from '../../packages/page/src/facts.js'
import {
  harderSky,
  harderSkyWords,
  hardestMonthWords,
} from '../../packages/page/src/words/hardest.js'

const DULL = { share: 1, worstHours: 36, horizonHours: 48 } as SkyFigures

function answerWith(typical: Partial<SkyFigures>, more: Partial<RideAnswer['skies']> = {}) {
  const skies = { dull: DULL, typical: { ...DULL, ...typical }, ...more }
  return { promise: 'dull', skies } as unknown as RideAnswer
}

describe('a sky harder than the dull one', () => {
  it('is one of a lesser share, or of a worst that is whole hours less', () => {
    expect(harderSky(answerWith({ share: 0.97 }))?.share).toBe(0.97)
    expect(harderSky(answerWith({ worstHours: 35.9 }))?.worstHours).toBe(35.9)
    expect(harderSky(answerWith({ share: 0.998, worstHours: 36.5 }))).toBeNull()
    expect(harderSky(answerWith({}))).toBeNull()
  })

  it('is the one of the shortest ride where there are two; no sun at all is none of them', () => {
    const file = { ...DULL, share: 0.9, worstHours: 12 }
    const none = { ...DULL, share: 0, worstHours: 1 }
    const answer = answerWith({ share: 0.8, worstHours: 15 }, { file, none })
    expect(harderSky(answer)?.worstHours).toBe(12)
  })

  it('is told with its worst and its share', () => {
    const facts = (typical: Partial<SkyFigures>) =>
      ({ answer: answerWith(typical), promised: DULL }) as unknown as PageFacts
    expect(harderSkyWords(facts({}))).toBe('')
    expect(harderSkyWords(facts({ share: 0.97, worstHours: 15.5 }))).toBe(
      'Of the days as they come some are harder than a dull one (the coldest are often bright, and a ' +
        'cold battery gives less): there it lasts 15 hours at worst, and it lasts to the end in 97 of 100 cases.',
    )
    expect(harderSkyWords(facts({ share: 0.97 }))).toMatch(
      /there it lasts to the end in 97 of 100 cases\.$/,
    )
    expect(harderSkyWords(facts({ worstHours: 15.5 }))).toMatch(
      /there it lasts 15 hours at worst\.$/,
    )
  })
})

describe('the hardest month', () => {
  /** January is asked about; the share of November is least, the ride of October shortest. */
  const monthsWith = (octoberHours: number) =>
    Array.from({ length: 12 }, (_, m) => {
      const share = m === 10 ? 0.3 : 0.6
      const worstHours = m === 9 ? octoberHours : 11
      const shareByPattern = { any: share, evening: share, windy: share }
      const figures = { share, worstHours, medianHours: 20, p05Hours: 12, horizonHours: 48 }
      return { month: m + 1, figures: { ...figures, hardest: 'any', shareByPattern } }
    })
  const words = (octoberHours: number): string => {
    const answer = { ...answerWith({}), month: 1 }
    return hardestMonthWords({ answer, months: monthsWith(octoberHours) } as unknown as PageFacts)
  }

  it('is that of the least share; the shortest ride of the year is told where it is elsewhere', () => {
    expect(words(11)).toBe(
      'January is not the hardest month for this house: in November it lasts 11 hours at worst, 20 ' +
        'hours in the middle case; it lasts to the end in 30 of 100 cases.',
    )
    expect(words(0.6)).toMatch(/ The shortest of the year starts in October: 36 minutes\.$/)
  })
})
