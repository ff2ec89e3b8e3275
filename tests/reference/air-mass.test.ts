// Air mass against the values of Kasten & Young 1989 and the standard atmosphere.
//
// Stated: altitudes are apparent ones, refraction included, as the paper has them.

import { describe, expect, it } from 'vitest'
import {
  absoluteAirMass,
  relativeAirMass,
  standardPressurePa,
} from '../../packages/core/src/sky/air-mass.js'

describe('Kasten & Young (1989), Applied Optics 28:4735', () => {
  it.each([
    [80, 5.586, 0.001], // seen: pvlib tests/test_atmosphere.py, printed to three decimals
    [89.9, 36.467, 0.001],
    [0, 1.0, 0.001],
    [30, 1.154, 1e-4], // computed with pvlib
    [60, 1.9943, 1e-4],
    [70, 2.9031, 1e-4],
    [75, 3.8129, 1e-4],
  ])('zenith %d°: %d', (zenith, airMass, tolerance) => {
    expect(Math.abs(relativeAirMass(90 - zenith) - airMass)).toBeLessThan(tolerance)
  })

  it('straight up the fit gives 0.9997, not 1', () => {
    expect(Math.abs(relativeAirMass(90) - 0.9997)).toBeLessThan(5e-5)
  })

  it('below the horizon there is none', () => {
    expect(relativeAirMass(-0.001)).toBeNaN()
    expect(relativeAirMass(Number.NaN)).toBeNaN()
    expect(relativeAirMass(0)).toBeGreaterThan(37)
  })
})

describe('pressure', () => {
  it.each([
    [2, 1.776],
    [40, 35.529],
  ])('air mass %d at 90 000 Pa: %d', (relative, absolute) => {
    // seen: pvlib tests/test_atmosphere.py
    expect(Math.abs(absoluteAirMass(relative, 90_000) - absolute)).toBeLessThan(0.001)
  })

  // seen: pvlib tests/test_atmosphere.py. Its constants (44331.514 m, exponent 1/0.1902632) are
  // another rounding of the same standard atmosphere: 1 Pa apart at most, 2e-5 of the air mass.
  it.each([
    [0, 101325],
    [1000, 89874.75],
    [8000, 35600.5],
  ])('%d m: %d Pa', (elevation, pressure) => {
    expect(Math.abs(standardPressurePa(elevation) - pressure)).toBeLessThan(1)
  })

  // U.S. Standard Atmosphere 1976, table I, geopotential altitude, from memory; computed with pvlib
  // 0.16.1: 79495.5 and 54020.5
  it.each([
    [2000, 79495],
    [5000, 54020],
  ])('%d m of the standard atmosphere: %d Pa', (elevation, pressure) => {
    expect(Math.abs(standardPressurePa(elevation) - pressure)).toBeLessThan(1)
  })
})
