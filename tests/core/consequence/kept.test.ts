// What is kept cold, hot or dry through a gap, against worked figures.

import {
  boiler,
  type Consequence,
  coldStore,
  coldTimeConstantHours,
  hotWater,
  meanKineticC,
  waterBuffer,
  wholeMinutes,
} from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const lost = (kept: Consequence): number => kept.lostIn(kept.rest)

describe('a fridge', () => {
  it("warms as Newton's law says: 4 to 8 °C in a room at 20 °C, tau 24 h, takes 6.904 h", () => {
    // 24 ln(16 / 12) = 6.9044 h by hand; tau is given by the hours it takes to 12 °C: 24 ln 2.
    const hours = 24 * Math.LN2
    expect(coldTimeConstantHours({ hours, fromC: 4, untilC: 12, atC: 20 })).toBeCloseTo(24, 9)
    const fridge = coldStore({ hours, keeps: 'food', fromC: 4, untilC: 12 })
    expect(lost(fridge)).toBe(Math.floor(6.9044 * 60))
  })

  it('that meets "4 h" from 5 to 8 °C in 20 °C has a time constant of 17.93 h', () => {
    // 4 / ln(15 / 12) by hand.
    const tau = coldTimeConstantHours({ hours: 4, fromC: 5, untilC: 8, atC: 20 })
    expect(tau).toBeCloseTo(17.93, 2)
    expect(lost(coldStore({ hours: 4, keeps: 'food' }))).toBe(240)
  })

  it('stated at 43 °C to +10 °C, as vaccine fridges are, holds longer in a cooler room', () => {
    // tau = 4 / ln(38 / 33) = 28.353 h; 5 to 8 °C in 20 °C: 28.353 ln(15 / 12) = 6.3268 h.
    const stated = { hours: 4, keeps: 'medicine', atC: 43, untilC: 10, limitC: 8 } as const
    expect(lost(coldStore({ ...stated, roomC: 20 }))).toBe(Math.floor(6.3268 * 60))
    // 28.353 ln(38 / 35) = 2.3317 h where it stands in that heat itself.
    expect(lost(coldStore(stated))).toBe(Math.floor(2.3317 * 60))
  })

  it('in a room no warmer than its limit is never lost', () => {
    expect(lost(coldStore({ hours: 4, keeps: 'food', roomC: 8 }))).toBe(Number.POSITIVE_INFINITY)
    expect(lost(coldStore({ hours: 4, keeps: 'food', roomC: 8.1 }))).toBeGreaterThan(3600)
  })

  it('cools again as hard as its cycle shows', () => {
    // Runs 1/4 of the time at 5 °C in 20 °C: running on it falls towards 20 - 15 / (1/4) = -40 °C.
    // From 8 °C: tau ln((8 + 40) / (5 + 40)) = 17.926 ln(48 / 45) = 1.1569 h.
    const fridge = coldStore({ hours: 4, keeps: 'food' }, 1 / 4)
    expect(fridge.afterSupply(8, 1.15 * 60)).toBeGreaterThan(5)
    expect(fridge.afterSupply(8, 1.16 * 60)).toBe(5)
  })

  it('is not warmer for having been split: gaps in a row add up as one without supply between', () => {
    const fridge = coldStore({ hours: 24, keeps: 'frozen' })
    fc.assert(
      fc.property(fc.nat(2000), fc.nat(2000), (a, b) => {
        const once = fridge.afterGap(fridge.rest, a + b)
        expect(fridge.afterGap(fridge.afterGap(fridge.rest, a), b)).toBeCloseTo(once, 9)
      }),
      { seed: 1 },
    )
    expect(lost(fridge)).toBe(1440)
  })
})

describe('a solid-fuel boiler whose pump stops', () => {
  it('20 l at 60 °C and 15 kW boil in 3.72 min', () => {
    // m c dT / P = 20 kg x 4.186 kJ/(kg K) x 40 K / 15 kW = 223.3 s = 3.72 min.
    const open = boiler({ waterL: 20, heatKw: 15, fromC: 60, limitC: 100 })
    expect(open.afterGap(60, 3.7211)).toBeCloseTo(100, 2)
    expect(lost(open)).toBe(3)
  })

  it('gives no more heat than a dying fire holds', () => {
    // 20 l take 20 x 4.186 / 3600 = 0.023256 kWh a kelvin; 0.6 kWh warm them by 25.8 K.
    const dying = { waterL: 20, heatKw: 15, fromC: 60, limitC: 95, stillKwh: 0.6 }
    expect(boiler(dying).afterGap(60, 1e4)).toBeCloseTo(85.8, 1)
    expect(lost(boiler(dying))).toBe(Number.POSITIVE_INFINITY)
    // 1 kWh would warm them by 43 K, so 35 K come after -(1 / 15) ln(1 - 0.81396) h = 6.727 min.
    expect(lost(boiler({ ...dying, stillKwh: 1 }))).toBe(6)
  })

  it('is cooled again by its pump, and no further than it runs', () => {
    const { afterSupply } = boiler({ waterL: 20, heatKw: 15, fromC: 60, limitC: 95 })
    // 15 kW on 0.023256 kWh/K: 10.75 K a minute.
    expect(afterSupply(90, 1)).toBeCloseTo(79.25, 2)
    expect(afterSupply(90, 5)).toBe(60)
  })
})

describe('water', () => {
  it('fills a sump of 60 l at 0.5 l a minute in two hours', () => {
    const sump = waterBuffer({ litres: 60, litresPerMinute: 0.5 }, 0.2)
    expect(lost(sump)).toBe(120)
    // A pump that runs a fifth of the time moves 2.5 l a minute: 2 l more than come.
    expect(sump.afterSupply(sump.afterGap(0, 60), 10)).toBe(10)
  })

  it('180 l at 60 °C are 300 l at 40 °C: two and a half days of 120 l', () => {
    // 180 x (60 - 10) / (40 - 10) = 300.
    const cylinder = { litres: 180, litresADay: 120, lossKwhADay: 0 }
    expect(lost(hotWater(cylinder, 3))).toBe(2.5 * 1440)
    // 1.0465 kWh a day lost is 30 l at 40 °C a day: 2 days.
    const lossKwhADay = (30 * 30 * 4.186) / 3600
    expect(lost(hotWater({ ...cylinder, lossKwhADay }, 3))).toBe(2 * 1440)
  })
})

it('mean kinetic temperature: 23 h at 5 °C and 1 h at 12 °C are 5.4445 °C', () => {
  // Computed apart from this library with 83.144 kJ/mol (WHO) and R 8.314462.
  const celsius = Float64Array.from({ length: 24 * 60 }, (_, i) => (i < 60 ? 12 : 5))
  expect(Math.abs(meanKineticC(celsius) - 5.4445)).toBeLessThan(1e-3)
})

it('four hours are 240 minutes, be a logarithm a hair below', () => {
  expect([239.9999999999, 240, 240.0000000001, 239.99].map(wholeMinutes)).toEqual([
    240, 240, 240, 239,
  ])
})
