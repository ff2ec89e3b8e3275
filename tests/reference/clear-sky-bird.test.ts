// The clear sky against Bird & Hulstrom 1981: another road to the same light, from ozone, water and
// aerosol instead of one turbidity.
//
// Stated: solar constant 1367 W/m², distance by Spencer 1971 (1414.913 W/m² on day 1), air mass by
// Kasten 1966 in Bird's model and by Kasten & Young 1989 in ours, zenith angles as printed.

import { describe, expect, it } from 'vitest'
import { standardPressurePa } from '../../packages/core/src/sky/air-mass.js'
import { clearSky, clearSkySite } from '../../packages/core/src/sky/clear-sky.js'
import { extraterrestrialNormal } from '../../packages/core/src/sky/extraterrestrial.js'
import { type BirdAir, birdSky, kastenTurbidity } from './bird.js'

// seen: the spreadsheet of 2012-08-16, as pvlib carries it (tests/data/BIRD_08_16_2012.csv).
const AIR: BirdAir = {
  pressureMbar: 840,
  ozoneCm: 0.3,
  waterCm: 1.5,
  aerosol: 0.2758 * 0.15 + 0.35 * 0.1,
  forward: 0.85,
  albedo: 0.2,
}
const EXTRA = extraterrestrialNormal(1, 1367)

describe("Bird's own spreadsheet, 40° N 105° W, day 1", () => {
  it.each([
    [9, 80.2029, 5.6863, 492.188, 83.751, 135.705, 51.954],
    [12, 63.5242, 2.2325, 805.171, 358.962, 450.216, 91.254],
    [17, 88.4963, 22.4654, 109.449, 2.872, 6.316, 3.444],
  ])('hour %d: zenith %d°', (_, zenith, airMass, beam, level, global, diffuse) => {
    const sky = birdSky(zenith, EXTRA, AIR)
    expect(Math.abs(sky.airMass / airMass - 1)).toBeLessThan(0.001)
    expect(Math.abs(sky.beam / beam - 1)).toBeLessThan(0.001)
    expect(Math.abs(sky.level / level - 1)).toBeLessThan(0.001)
    expect(Math.abs(sky.global / global - 1)).toBeLessThan(0.001)
    expect(Math.abs(sky.diffuse / diffuse - 1)).toBeLessThan(0.001)
  })

  it.each([
    ['rayleigh', 0.860924],
    ['ozone', 0.971083],
    ['gases', 0.985205],
    ['water', 0.874506],
    ['dust', 0.817674],
  ] as const)('hour 12, transmittance of %s: %d', (name, expected) => {
    expect(Math.abs(birdSky(63.5242, EXTRA, AIR)[name] - expected)).toBeLessThan(2e-5)
  })
})

describe('Linke turbidity by Kasten 1996', () => {
  // seen: pvlib tests/test_atmosphere.py
  it.each([
    [3, 2.5, 0.1, 3.384],
    [1, 0, 0, 1.38],
  ])('air mass %d, water %d cm, aerosol %d: %d', (airMass, water, aerosol, expected) => {
    expect(Math.abs(kastenTurbidity(airMass, water, aerosol) - expected)).toBeLessThan(0.001)
  })
})

describe('the product beside Bird', () => {
  // The elevation whose standard pressure is 840 mbar.
  const elevationM = (1 - (840 / 1013.25) ** (1 / 5.25588)) * (288.15 / 0.0065)
  const site = clearSkySite(elevationM)
  // Turbidity is stated for air mass 2, as Ineichen & Perez want it.
  const turbidity = kastenTurbidity(2, AIR.waterCm, AIR.aerosol)

  it('stands at 840 mbar under a turbidity of 3', () => {
    expect(Math.abs(standardPressurePa(elevationM) - 84000)).toBeLessThan(1)
    expect(turbidity).toBeGreaterThan(2.8)
    expect(turbidity).toBeLessThan(3.2)
  })

  // Bird is the darker of the two at this elevation, by 7 % in the global of a high sun; our own day at
  // 1829 m nearby agrees with a pyranometer to 0.2 % (measured-sun.test.ts). 8 % is asked.
  it.each([70, 50, 30, 20, 15, 10])('at %d° global and beam within 8 in 100 of it', (h) => {
    const out = { ghi: 0, dni: 0, dhi: 0 }
    clearSky(site, h, EXTRA, turbidity, out)
    const bird = birdSky(90 - h, EXTRA, AIR)
    expect(Math.abs(out.ghi / bird.global - 1)).toBeLessThan(0.08)
    expect(Math.abs(out.dni / bird.beam - 1)).toBeLessThan(0.08)
  })
})
