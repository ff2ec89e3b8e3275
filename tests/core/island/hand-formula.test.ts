// Rides by hand. The form is that of the stand-alone sizing standards (IEEE 1562, IEC 62124):
// energy that may be used over the need.

import { Event, onGrid } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { firstWithout, liveHouse, minutesOf, solar } from '../plain-house.js'

describe('a constant load without sun', () => {
  it('4 kWh above 10 % at 0.45 kW in all: 8 h 53 min and 20 s, so the minute 534 is dark', () => {
    // 10 kWh, from 50 % to 10 %; 390 W of load, 50 W idle, 10 W electronics.
    const t = liveHouse({}, { minutes: 600, critical: 0.39 }, 0.5)
    expect(firstWithout(t)).toBe(534)
    expect(t.storedKwh[299]).toBeCloseTo(5 - 0.45 * 5, 8)
  })

  it('with the inverter of 0.87 there and back: 500 W draw 581 W from the stack', () => {
    // Loss at a third of rating: (1 - 0.87) / (1 + 0.87) / 3 = 0.0231729 of rating, of which
    // 0.012 is idle; the rest splits as 0.01411/3 to 0.0411/9 (Schmidt & Sauer 1996), scale 1.20527:
    // linear 0.0170064, quadratic 0.0495366. At p = 0.1 in all 0.0141960 of 5 kW = 70.980 W;
    // electronics 10 W: 580.980 W. 4 kWh last 413.095 minutes.
    const inverter = { ratedKva: 5, idleW: 60, roundTrip: 0.87 }
    const t = liveHouse({ inverter }, { minutes: 500, critical: 0.5 }, 0.5)
    expect(t.lossKw[0]! * 1000).toBeCloseTo(80.98, 3)
    expect(t.batteryKw[0]! * 1000).toBeCloseTo(580.98, 3)
    expect(firstWithout(t)).toBe(414)
  })

  it('twice the modules at half the health last as long, less the second electronics', () => {
    const stack = {
      module: { usableKwh: 10, chargeKw: 2, dischargeKw: 5 },
      modules: 2,
      health: 0.5,
      electronicsW: 10,
      selfDischargePerMonth: 0,
    }
    // 4 kWh at 0.46 kW: 521.74 minutes.
    expect(firstWithout(liveHouse({ stack }, { minutes: 600, critical: 0.39 }, 0.5))).toBe(522)
  })

  it('2 % a month is 10 kWh x 0.02 / 730.5 h, a draw of 0.274 W', () => {
    const stack = {
      module: { usableKwh: 10, chargeKw: 2, dischargeKw: 5 },
      modules: 1,
      health: 1,
      electronicsW: 0,
      selfDischargePerMonth: 0.02,
    }
    const t = liveHouse({ stack }, { minutes: 1, critical: 0.39 }, 0.5)
    expect((t.lossKw[0]! - 0.05) * 1000).toBeCloseTo(0.27379, 4)
  })
})

describe('shed thresholds', () => {
  it('two steps go at 40 and 25 %, half way to the 10 % at which all goes', () => {
    // 0.39 + 0.60 + 0.75 kW and 0.06 beside: 1.8 kW from 5 to 4 kWh, 33.3 minutes;
    // then 1.05 kW. 4 kWh were undershot by 34 x 0.03 - 1 = 0.02: 3.98 - 2.5 = 1.48 kWh, 84.6 min;
    // then 0.45 kW from 3.98 - 85 x 0.0175 = 2.4925 to 1 kWh: 199 minutes to the dot.
    const t = liveHouse({}, { minutes: 400, critical: 0.39, comfort: [0.75, 0.6] }, 0.5)
    expect([...new Set(t.levels)]).toEqual([0, 1, 2, 4])
    expect(t.levels.indexOf(1)).toBe(34)
    expect(t.levels.indexOf(2)).toBe(34 + 85)
    expect(firstWithout(t)).toBe(34 + 85 + 199)
    expect(t.servedComfortKw[40]).toBeCloseTo(0.6, 12)
    expect(t.states[200]).toBe('island, critical only')
  })
})

describe('charge limits under a square sun', () => {
  // 4 kW of sun, 0.39 kW of load, 2.1 kW into the stack far from full, lossless. A minute ends at
  // a charge edge: 5 to 9 kWh at 2.1 kW 114.3 min, to 9.5 at 1.05 kW 28.6 min, to 9.8 at 0.525 kW
  // 34.3 min, to 10 at 0.21 kW 57.1 min, each rounded up: 115, 29, 35 and 58 minutes.
  const stack = {
    module: { usableKwh: 10, chargeKw: 2.1, dischargeKw: 5 },
    modules: 1,
    health: 1,
    electronicsW: 10,
    selfDischargePerMonth: 0,
  }
  const t = liveHouse(
    { arrays: [solar('throttles', 60)], stack },
    { minutes: 300, critical: 0.39, ac: 4 },
    (5 + 0.45 / 60) / 10,
  )

  it('the array waits one minute, and each band takes its time', () => {
    expect(t.solarUsedKw[0]).toBe(0)
    expect(t.storedKwh[0]).toBeCloseTo(5, 8)
    for (const [minute, kwh] of [
      [115, 9],
      [115 + 29, 9.5],
      [115 + 29 + 35, 9.8],
      [115 + 29 + 35 + 58, 10],
    ] as const) {
      expect(t.storedKwh[minute], `minute ${minute}`).toBeCloseTo(kwh, 8)
      expect(t.storedKwh[minute - 1]).toBeLessThan(kwh - 0.0001)
    }
    expect(minutesOf(t, Event.full)).toEqual([237])
  })

  it('of the sun only load, idle, electronics and charge are used', () => {
    expect(t.solarUsedKw[60]).toBeCloseTo(0.45 + 2.1, 8)
    expect(t.solarUsedKw[130]).toBeCloseTo(0.45 + 1.05, 8)
    expect(t.solarUsedKw[290]).toBeCloseTo(0.45, 8)
    expect(t.solarAvailableKw[290]).toBe(4)
  })

  it('full is the capacity on the grid of energies, not a rounding away from it', () => {
    expect(t.storedKwh[299]).toBe(onGrid(10))
  })
})

describe('cold and heat', () => {
  it('at 0 °C a tenth of the capacity is out of reach: 20 % ends the ride, stored energy stays', () => {
    // 5 to 2 kWh at 0.45 kW: 400 minutes.
    const t = liveHouse({}, { minutes: 600, critical: 0.39, placeC: 0 }, 0.5)
    expect(firstWithout(t)).toBe(400)
    expect(t.storedKwh[399]).toBeCloseTo(2, 8)
  })

  it('below 0 °C nothing is charged and discharging goes on; at 3 °C 0.1 and at 7 °C 0.2 of capacity an hour', () => {
    const gain = (placeC: number): number => {
      const arrays = [solar('throttles', 60)]
      const t = liveHouse({ arrays }, { minutes: 20, critical: 0.39, ac: 4, placeC }, 0.5)
      return (t.storedKwh[19]! - t.storedKwh[9]!) * 6
    }
    expect(gain(-0.1)).toBe(0)
    expect(gain(3)).toBeCloseTo(1, 8)
    expect(gain(7)).toBeCloseTo(2, 8)
    expect(gain(25)).toBeCloseTo(2, 8)
    expect(gain(50)).toBeCloseTo(2, 8)
    expect(gain(55)).toBe(0)
  })
})
