// Module temperature and array power against printed figures.
//
// Stated: light on the plane behind the glass is given; no sun and no air mass enter.

import { describe, expect, it } from 'vitest'
import { agedPeakKw, arrayDcKw } from '../../packages/core/src/equipment/array.js'
import { cellTemperatureC } from '../../packages/core/src/equipment/cell-temperature.js'

describe('Faiman (2008), Prog. Photovolt. 16:307', () => {
  // Irradiance, air, wind, u0, u1 -> temperature. seen: pvlib tests/test_temperature.py
  it.each([
    [900, 20, 5, 25, 6.84, 35.203],
    [900, 20, 5, 22, 6, 37.308],
    [500, 10, 5, 25, 6.84, 18.446],
    [1000, 25, 1, 25, 6.84, 56.407], // computed
    [800, 20, 0, 25, 6.84, 52.0], // computed
  ])('%d W/m², %d °C, %d m/s, u0 %d, u1 %d: %d °C', (light, air, wind, u0, u1, expected) => {
    expect(Math.abs(cellTemperatureC(light, air, wind, u0, u1) - expected)).toBeLessThan(0.001)
  })

  it('takes u0 25 and u1 6.84 where nothing is said', () => {
    expect(cellTemperatureC(900, 20, 5)).toBe(cellTemperatureC(900, 20, 5, 25, 6.84))
  })
})

describe('beside other models of cell temperature', () => {
  // seen: pvlib tests/test_temperature.py, the exponential form for glass on an open rack: module
  // 40.809 °C, cell 43.509 °C. Racks differ by some 5 K (common practice, no source).
  it('900 W/m², 20 °C, 5 m/s: within 6 K of a module of 40.809 °C', () => {
    expect(Math.abs(cellTemperatureC(900, 20, 5) - 40.809)).toBeLessThan(6)
  })

  // Nominal operating temperature is stated at 800 W/m², 20 °C and 1 m/s: an open rack lies near 45 °C
  // (common practice, no source).
  it('800 W/m², 20 °C, 1 m/s: 45.1 °C', () => {
    expect(Math.abs(cellTemperatureC(800, 20, 1) - 45.13)).toBeLessThan(0.01)
  })
})

describe('linear power coefficient', () => {
  it('4000 W at 800 W/m² and 45.1256 °C, -0.35 %/K: 2974.59 W', () => {
    expect(Math.abs(1000 * arrayDcKw(800, 45.1256, 4, -0.0035) - 2974.59)).toBeLessThan(0.01)
  })

  it('a cold bright minute exceeds nameplate: 4490 W at -10 °C', () => {
    expect(Math.abs(1000 * arrayDcKw(1000, -10, 4, -0.0035) - 4490)).toBeLessThan(1e-6)
  })

  it('losses and ten years take 14 % and 5 %', () => {
    const array = { peakKw: 4, lossShare: 0.14, ageYears: 10 }
    expect(agedPeakKw(array)).toBeCloseTo(4 * 0.86 * 0.95, 12)
    expect(agedPeakKw({ ...array, lossShare: 0, ageYears: 0 })).toBe(4)
  })
})
