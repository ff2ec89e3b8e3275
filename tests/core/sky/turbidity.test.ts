import { describe, expect, it } from 'vitest'
import { linkeTurbidity } from '../../../packages/core/src/sky/turbidity.js'

const MONTHLY = Object.freeze([2.4, 2.6, 2.9, 3.1, 3.2, 3.3, 3.3, 3.2, 3.0, 2.8, 2.5, 2.2])

describe('Linke turbidity of a day', () => {
  it('meets each month in its middle', () => {
    // Noon of 16 January is 15.5 days into a month of 31.
    expect(linkeTurbidity(MONTHLY, 16)).toBeCloseTo(2.4, 12)
    expect(linkeTurbidity(MONTHLY, 197)).toBeCloseTo(3.3, 12) // 16 July
    expect(linkeTurbidity(MONTHLY, 350)).toBeCloseTo(2.2, 12) // 16 December
  })

  it('goes straight from month to month, and from December to January', () => {
    // 31 days lie between the middles of December and January; New Year's midnight halves them.
    expect(linkeTurbidity(MONTHLY, 0.5)).toBeCloseTo(2.3, 12)
    expect(linkeTurbidity(MONTHLY, 1)).toBeCloseTo(2.3 + 0.1 / 31, 12)
    expect(linkeTurbidity(MONTHLY, 365)).toBeCloseTo(2.3 - 0.1 / 31, 12)
    expect(linkeTurbidity(MONTHLY, 366)).toBeCloseTo(linkeTurbidity(MONTHLY, 1), 12)
  })

  it('never leaves the span of its months, and an even year stays even', () => {
    for (let day = 1; day <= 366; day++) {
      const value = linkeTurbidity(MONTHLY, day)
      expect(value).toBeGreaterThanOrEqual(2.2)
      expect(value).toBeLessThanOrEqual(3.3)
      expect(linkeTurbidity(Array(12).fill(3), day)).toBe(3)
    }
  })

  it('is NaN where a month is missing', () => {
    expect(linkeTurbidity([], 100)).toBeNaN()
  })
})
