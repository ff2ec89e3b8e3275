// A sky with days as they come may hold harder ones than the dull sky of the promise, by hand.

import type { RideAnswer, SkyFigures } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import type { PageFacts } from '../../packages/page/src/facts.js'
import { harderSky, harderSkyWords } from '../../packages/page/src/words/hardest.js'

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
    expect(harderSkyWords(facts({ worstHours: 15.5 }))).toMatch(
      /there it lasts 15 hours at worst\.$/,
    )
  })
})
