// What glass lets through at a slant: the product's one-parameter modifier beside two fuller models.
//
// Stated: pure geometry, no sun and no air. Models the product does not use are written out here from
// their papers, checked on printed values, and then set beside ours as a bracket.

import { describe, expect, it } from 'vitest'
import { beamModifier, diffuseModifier } from '../../packages/core/src/sky/incidence.js'

const RAD = Math.PI / 180

/**
 * Share of light that passes glass and reaches the cell, over that of a square beam: Fresnel at each
 * surface, half of each polarization, and absorption along the bent path.
 *
 * W. De Soto, S. A. Klein and W. A. Beckman, Solar Energy 80, 78-88 (2006), eq. 13 to 15; an
 * anti-reflection film between air and glass as a second surface.
 */
function physical(angleDeg: number, film = 1): number {
  const [glass, perMetre, thickness] = [1.526, 4, 0.002]
  const passed = (angle: number): number => {
    const inFilm = Math.asin(Math.sin(angle) / film)
    const inGlass = Math.asin(Math.sin(angle) / glass)
    const both = [0, 1].map((polarization) => {
      const at = (n1: number, n2: number, a1: number, a2: number): number => {
        const [c1, c2] = [Math.cos(a1), Math.cos(a2)]
        const r =
          polarization === 0
            ? (n1 * c1 - n2 * c2) / (n1 * c1 + n2 * c2)
            : (n2 * c1 - n1 * c2) / (n2 * c1 + n1 * c2)
        return 1 - r * r
      }
      const [first, second] = [at(1, film, angle, inFilm), at(film, glass, inFilm, inGlass)]
      // What the second surface throws back meets the first again.
      return (first * second) / (1 - (1 - first) * (1 - second))
    })
    return ((both[0]! + both[1]!) / 2) * Math.exp((-perMetre * thickness) / Math.cos(inGlass))
  }
  return passed(angleDeg * RAD) / passed(0)
}

/** N. Martin and J. M. Ruiz, Solar Energy Materials & Solar Cells 70, 25-38 (2001), eq. 4; ar 0.16. */
function martinRuiz(angleDeg: number, ar = 0.16): number {
  return (1 - Math.exp(-Math.cos(angleDeg * RAD) / ar)) / (1 - Math.exp(-1 / ar))
}

/** The same for light from all the sky and all the ground before a tilted plane, eq. 10 to 13. */
function martinRuizDiffuse(tiltDeg: number, ar = 0.16): { sky: number; ground: number } {
  const tilt = tiltDeg * RAD
  const [c1, c2] = [4 / (3 * Math.PI), 0.5 * ar - 0.154]
  const share = (x: number): number => 1 - Math.exp(-(c1 * x + c2 * x * x) / ar)
  const sine = Math.sin(tilt)
  return {
    sky: share(sine + (Math.PI - tilt - sine) / (1 + Math.cos(tilt))),
    ground: share(sine + (tilt - sine) / (1 - Math.cos(tilt))),
  }
}

describe('the fuller models themselves', () => {
  // seen: pvlib tests/test_iam.py; 60° computed
  it.each([
    [22.5, 0.99926198],
    [45, 0.98797788],
    [67.5, 0.8893998],
    [60, 0.946003],
  ])('De Soto, Klein & Beckman 2006 at %d°: %d', (angle, expected) => {
    expect(Math.abs(physical(angle) - expected)).toBeLessThan(1e-6)
  })

  it('with an anti-reflection film of 1.29 at 67.5°: 0.91506158', () => {
    expect(Math.abs(physical(67.5, 1.29) - 0.91506158)).toBeLessThan(1e-6)
  })

  it('Martin & Ruiz 2001 at 45°: 0.98986965', () => {
    expect(Math.abs(martinRuiz(45) - 0.98986965)).toBeLessThan(1e-6)
  })

  it('Martin & Ruiz at a tilt of 30°: sky 0.9549735, ground 0.7944426', () => {
    const { sky, ground } = martinRuizDiffuse(30)
    // 4/3π is 0.42441; the printed values take 0.4244.
    expect(Math.abs(sky - 0.9549735)).toBeLessThan(1e-5)
    expect(Math.abs(ground - 0.7944426)).toBeLessThan(3e-5)
  })
})

describe('the product beside them', () => {
  const ours = (angle: number): number => beamModifier(Math.cos(angle * RAD))

  it('passes the beam as they do to 0.01 up to 60°, to 0.04 up to 70°', () => {
    for (let angle = 0; angle <= 70; angle += 2.5) {
      const allowed = angle <= 60 ? 0.011 : 0.04
      const [least, most] = [physical(angle), martinRuiz(angle)].sort((a, b) => a - b)
      expect(ours(angle), `${angle}°`).toBeGreaterThan(least! - allowed)
      expect(ours(angle), `${angle}°`).toBeLessThan(most! + allowed)
    }
  })

  it('passes the light of the sky as Martin & Ruiz do to 0.01, at tilts to 60°', () => {
    for (const tilt of [1, 15, 30, 45, 60]) {
      expect(Math.abs(diffuseModifier() - martinRuizDiffuse(tilt).sky)).toBeLessThan(0.012)
    }
  })
})
