// Loss of the grid-forming inverter: self + linear p + quadratic p², with p the share of its rating.
//
// H. Schmidt and D. U. Sauer, "Wechselrichter-Wirkungsgrade", Sonnenenergie 4, 43-47 (1996). Stated:
// p is AC power over rating, efficiency AC over DC while discharging, p / (p + loss).

import { checkHouse, inverterLossKw, lossBeyondIdle, type Plant, plantOf } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../core/plain-house.js'

/** A plant of 1 kW with a given set of losses; nothing else of it is asked. */
function plantWith(self: number, linear: number, quadratic: number): Plant {
  const plant = plantOf(checkHouse(plainHouse({ inverter: { ratedKva: 1 } })), 1, 1)
  return { ...plant, idleKw: self, linear, quadratic }
}

function efficiency(plant: Plant, p: number): number {
  return p / (p + inverterLossKw(plant, p))
}

// The three numbers of each set are memory; the efficiencies are identities computed from them.
const SCHMIDT_SAUER = plantWith(0.0079, 0.01411, 0.0411)
const JANTSCH_1992 = plantWith(0.01, 0.025, 0.05)

describe('typical set of Schmidt & Sauer: 0.0079, 0.01411, 0.0411', () => {
  it.each([
    [0.05, 0.85167],
    [0.1, 0.91139],
    [0.2, 0.94177],
    [0.5, 0.95196],
    [1, 0.94064],
  ])('efficiency at %d of rating: %d', (p, expected) => {
    expect(Math.abs(efficiency(SCHMIDT_SAUER, p) - expected)).toBeLessThan(1e-5)
  })

  it('draws the self-consumption with nothing to do, and loses the same both ways', () => {
    expect(inverterLossKw(SCHMIDT_SAUER, 0)).toBe(0.0079)
    expect(inverterLossKw(SCHMIDT_SAUER, -0.4)).toBe(inverterLossKw(SCHMIDT_SAUER, 0.4))
  })
})

describe('the best point lies at the root of self over quadratic', () => {
  it.each([
    ['Schmidt & Sauer 1996', SCHMIDT_SAUER, 0.438],
    ['Jantsch, Schmidt & Schmid 1992', JANTSCH_1992, 0.447],
  ] as const)('%s', (_, plant, expected) => {
    let at = 0.01
    for (let p = 0.01; p <= 1; p += 0.001) {
      if (efficiency(plant, p) > efficiency(plant, at)) at = p
    }
    expect(Math.abs(at - expected)).toBeLessThan(0.0015)
  })
})

describe('the round trip of a data sheet', () => {
  // Identity: out and back at a third of rating gives the round trip that was asked for.
  it.each([
    [0.87, 0.012],
    [0.92, 0.0079],
    [0.85, 0.01],
  ])('AC to AC %d with an idle draw of %d of rating', (roundTrip, self) => {
    const { linear, quadratic } = lossBeyondIdle(roundTrip, self)
    const plant = plantWith(self, linear, quadratic)
    const p = 1 / 3
    const loss = inverterLossKw(plant, p)
    expect((p - loss) / (p + loss)).toBeCloseTo(roundTrip, 12)
  })
})
