// Diffuse share of the hour: Erbs, Klein & Duffie (1982), Solar Energy 28:293.
//
// Stated: clearness is given; no solar constant enters.

import { describe, expect, it } from 'vitest'
import { erbsDiffuseFraction } from '../../packages/core/src/sky/erbs.js'

describe('Erbs, Klein & Duffie 1982', () => {
  // computed from the printed polynomial
  it.each([
    [0.1, 0.991],
    [0.22, 0.9802],
    [0.3, 0.9486],
    [0.4, 0.83999],
  ])('kt %d: %d', (kt, share) => {
    expect(Math.abs(erbsDiffuseFraction(kt) - share)).toBeLessThan(1e-4)
  })

  // seen: pvlib tests/test_irradiance.py. The zenith of the first row is 85°, above its floor.
  it.each([
    [0.40572, 50, 41.57],
    [0.71813, 1000, 217.86],
  ])('kt %d of %d W/m²: %d W/m² diffuse', (kt, ghi, dhi) => {
    expect(Math.abs(erbsDiffuseFraction(kt) * ghi - dhi)).toBeLessThan(0.01)
  })

  it('stays within 0.165..1, all diffuse when dark, and joins at 0.22 and 0.8', () => {
    for (let kt = 0; kt <= 1.5; kt += 0.01) {
      expect(erbsDiffuseFraction(kt)).toBeGreaterThan(0.15)
      expect(erbsDiffuseFraction(kt)).toBeLessThanOrEqual(1)
    }
    expect(erbsDiffuseFraction(-0.1)).toBe(1)
    expect(Math.abs(erbsDiffuseFraction(0.22) - erbsDiffuseFraction(0.2200001))).toBeLessThan(0.002)
    expect(Math.abs(erbsDiffuseFraction(0.8) - erbsDiffuseFraction(0.8000001))).toBeLessThan(0.002)
    expect(erbsDiffuseFraction(Number.NaN)).toBeNaN()
  })
})
