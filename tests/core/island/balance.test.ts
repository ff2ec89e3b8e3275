// The energy law and the limits, in every minute of many random houses.

import {
  acForBattery,
  batteryKw,
  checkHouse,
  type House,
  inverterLossKw,
  lossBeyondIdle,
  type Plant,
  plantOf,
  type Trace,
} from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { islandOf, live, plainHouse } from '../plain-house.js'
import { RANDOM_MINUTES, randomHouse, share } from '../random-house.js'

const LAW_KWH = 1e-9
/** Columns are rounded to 2^-37 kWh a minute, which is 4e-10 kW. */
const ROUNDING_KW = 1e-9

/** What the law leaves over in a minute. [kWh] */
function residualKwh(t: Trace, i: number): number {
  const kw =
    t.solarUsedKw[i]! +
    t.generatorKw[i]! +
    t.gridKw[i]! -
    t.servedCriticalKw[i]! -
    t.servedComfortKw[i]! -
    t.lossKw[i]!
  return kw / 60 - (t.storedKwh[i]! - t.startStoredKwh[i]!)
}

/** Every rule that a minute of a trace breaks, by name. */
function broken(t: Trace, i: number, plant: Plant, house: House): string[] {
  const eps = ROUNDING_KW
  const onGrid = t.states[i] === 'grid'
  const standing = plant.standingKw + plant.heaterKw
  const rules: Record<string, boolean> = {
    'energy law': Math.abs(residualKwh(t, i)) <= LAW_KWH,
    'a minute starts where the one before ended':
      i === 0 || t.startStoredKwh[i] === t.storedKwh[i - 1],
    'nothing critical served that is not wanted':
      t.servedCriticalKw[i]! <= t.demandCriticalKw[i]! + eps,
    'nothing of comfort served that is not wanted':
      t.servedComfortKw[i]! <= t.demandComfortKw[i]! + eps,
    'served >= 0': t.servedCriticalKw[i]! >= 0 && t.servedComfortKw[i]! >= 0,
    'solar used <= available': t.solarUsedKw[i]! <= t.solarAvailableKw[i]! + eps,
    'solar used >= 0': t.solarUsedKw[i]! >= -eps,
    'generator >= 0': t.generatorKw[i]! >= -eps,
    'generator <= rated': t.generatorKw[i]! <= (house.generator?.ratedKw ?? 0) + eps,
    'no grid in a cut': onGrid || t.gridKw[i] === 0,
    'loss >= 0': t.lossKw[i]! >= -eps,
    'charge within the limit of the inverter': t.chargeKw[i]! <= plant.chargeAcKw + eps,
    'discharge within what is carried for a minute': t.dischargeKw[i]! <= plant.minuteKva + eps,
    'discharge within the rating for more than a minute':
      i === 0 ||
      t.dischargeKw[i]! <= plant.ratedKw + eps ||
      // A level served for its first minute may follow a heavier one.
      Math.min(t.dischargeKw[i]!, t.dischargeKw[i - 1]!) <= plant.ratedKw + eps,
    'never charge and discharge together': t.chargeKw[i] === 0 || t.dischargeKw[i] === 0,
    'charge and discharge >= 0': t.chargeKw[i]! >= 0 && t.dischargeKw[i]! >= 0,
    'stack charge limit': -t.batteryKw[i]! <= plant.chargeKw + eps,
    'stack discharge limit': t.batteryKw[i]! <= Math.max(plant.dischargeKw, standing) + eps,
    'stored >= 0': t.storedKwh[i]! >= 0,
    'stored <= capacity': t.storedKwh[i]! <= plant.usableKwh + 1e-10,
    'never generator and AC-coupled solar':
      t.generatorKw[i]! <= eps || !house.arrays.some((a) => a.inverter) || dcOnly(t, i, house),
    'fuel never grows': i === 0 || t.fuelL[i]! <= t.fuelL[i - 1]!,
    'nothing is NaN': !Number.isNaN(t.storedKwh[i]! + t.lossKw[i]! + t.fuelL[i]!),
  }
  return Object.keys(rules).filter((name) => !rules[name])
}

/** Whether what solar gives can all be DC-coupled: asked only of houses that have both. */
function dcOnly(t: Trace, i: number, house: House): boolean {
  return house.arrays.some((array) => array.inverter === undefined) || t.solarUsedKw[i]! === 0
}

describe('random houses over two days', () => {
  it('keep the energy law to 1e-9 kWh and every limit in every minute', () => {
    let minutes = 0
    const lived = new Set<string>()
    fc.assert(
      fc.property(randomHouse, ({ given, startShare }) => {
        const t = live(given, startShare)
        const { plant } = islandOf({ ...given, minutes: 1 })
        for (let i = 0; i < t.n; i++) {
          const faults = broken(t, i, plant, given.house)
          if (faults.length > 0)
            throw new Error(`minute ${i} (${t.states[i]}): ${faults.join('; ')}`)
          lived.add(t.states[i]!)
        }
        minutes += t.n
      }),
      { seed: 20250114, numRuns: 160, endOnFailure: true },
    )
    expect(minutes).toBe(160 * RANDOM_MINUTES)
    expect([...lived].sort()).toEqual([
      'grid',
      'island',
      'island, comfort in part',
      'island, critical only',
      'island, generator',
      'loads off, holding',
      'off, empty',
      'off, overload',
    ])
  })
})

describe('the inverter', () => {
  it('acForBattery inverts batteryKw, charging and discharging', () => {
    fc.assert(
      fc.property(
        share(0.7, 1),
        share(0, 0.03),
        share(-1, 1),
        share(0, 0.2),
        (roundTrip, self, p, standing) => {
          const rated = 5
          const idleW = 1000 * self * rated
          const plain = plainHouse({ inverter: { ratedKva: rated, idleW, roundTrip } })
          const plant = plantOf(checkHouse(plain), 1, 1)
          // Past the vertex more power into the inverter only makes more heat: not invertible.
          const most = plant.quadratic > 0 ? (1 - plant.linear) / (2 * plant.quadratic) : rated
          const acKw = Math.max(-0.999 * most, p * rated)
          const back = acForBattery(plant, batteryKw(plant, acKw, 0, standing), standing)
          expect(Math.abs(back - acKw)).toBeLessThan(1e-6)
        },
      ),
      { seed: 1, numRuns: 500 },
    )
  })

  // H. Schmidt and D. U. Sauer, Sonnenenergie 4, 43-47 (1996): typical set 0.0079, 0.01411, 0.0411
  // (the three from memory; the efficiencies follow from them).
  it.each([
    [0.05, 0.85167],
    [0.1, 0.91139],
    [0.2, 0.94177],
    [0.5, 0.95196],
    [1, 0.94064],
  ])('at %d of rating has the efficiency %d of the typical set', (p, efficiency) => {
    const rated = 4
    const plant: Plant = {
      ...plantOf(checkHouse(plainHouse()), 1, 1),
      ratedKw: rated,
      idleKw: 0.0079 * rated,
      linear: 0.01411,
      quadratic: 0.0411 / rated,
    }
    const acKw = p * rated
    expect(Math.abs(acKw / (acKw + inverterLossKw(plant, acKw)) - efficiency)).toBeLessThan(1e-5)
  })

  it.each([0.8, 0.87, 0.92])('there and back at a third of rating keeps %d', (roundTrip) => {
    const plain = plainHouse({ inverter: { ratedKva: 6, idleW: 60, roundTrip } })
    const plant = plantOf(checkHouse(plain), 1, 1)
    const p = 2
    const intoStack = p - inverterLossKw(plant, p)
    const outOfStack = p + inverterLossKw(plant, p)
    expect((intoStack / p) * (p / outOfStack)).toBeCloseTo(roundTrip, 12)
  })

  it('an idle draw above the whole stated loss leaves nothing for the rest', () => {
    expect(lossBeyondIdle(0.95, 0.05)).toEqual({ linear: 0, quadratic: 0 })
  })
})
