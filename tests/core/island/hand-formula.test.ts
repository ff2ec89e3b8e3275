// Rides by hand. The form is that of the stand-alone sizing standards (IEEE 1562, IEC 62124):
// energy that may be used over the need.

import { Event, onGrid, placeTemperature } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, firstWithout, liveHouse, minutesOf, solar } from '../plain-house.js'

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

  it('and return as far above as the first does: 45 and 60 %', () => {
    const t = liveHouse(
      { arrays: [DC_ARRAY] },
      { minutes: 600, critical: 0.39, comfort: [0.2, 0.2], dc: (i) => (i >= 60 ? 3 : 0) },
      0.24,
    )
    const back = (level: number): number => {
      const at = t.levels.findIndex((now, i) => i > 60 && now === level)
      return t.startStoredKwh[at]!
    }
    expect(back(1)).toBeGreaterThanOrEqual(4.5)
    expect(back(1)).toBeLessThan(4.55)
    expect(back(0)).toBeGreaterThanOrEqual(6)
    expect(back(0)).toBeLessThan(6.05)
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
  const STACK = {
    module: { usableKwh: 10, chargeKw: 9, dischargeKw: 5 },
    modules: 1,
    health: 1,
    electronicsW: 10,
    selfDischargePerMonth: 0,
  }

  /** What the stack gains in an hour at a temperature under 12 kW of DC-coupled sun. [kWh] */
  function gain(placeC: number, heaterW = 0): number {
    const stack = { ...STACK, heaterW }
    const given = { minutes: 20, critical: 0.39, dc: 12, placeC }
    const t = liveHouse({ arrays: [DC_ARRAY], stack }, given, 0.5)
    return (t.storedKwh[19]! - t.storedKwh[9]!) * 6
  }

  it('at 0 °C a tenth of the capacity is out of reach: 20 % ends the ride, stored energy stays', () => {
    // 5 to 2 kWh at 0.45 kW: 400 minutes.
    const t = liveHouse({}, { minutes: 600, critical: 0.39, placeC: 0 }, 0.5)
    expect(firstWithout(t)).toBe(400)
    expect(t.storedKwh[399]).toBeCloseTo(2, 8)
  })

  it('and the loads come back at 30 %, not at 20', () => {
    // Dark at 2 kWh; 0.1 of capacity an hour, the limit of 3 °C, brings it to 2.88 kWh.
    const t = liveHouse(
      { arrays: [DC_ARRAY] },
      { minutes: 600, critical: 0.39, dc: (i) => (i >= 100 ? 3 : 0), placeC: 3 },
      0.2,
    )
    const back = t.servedCriticalKw.findIndex((kw, i) => i > 100 && kw > 0)
    // A share of 0.1 x (25 - 3) / 25 = 0.088 is out of reach.
    expect(t.startStoredKwh[back]).toBeGreaterThanOrEqual(2.88)
    expect(t.startStoredKwh[back - 1]).toBeLessThan(2.88)
  })

  it.each([
    [-0.1, 0],
    [0, 1],
    [4.9, 1],
    [5, 2],
    [9.9, 2],
    [12.5, 3.5],
    [15, 9],
    [25, 9],
    [45, 9],
    [50, 2.5],
    [54, 0.5],
    [55, 0],
  ])('at %d °C a stack of 10 kWh takes at most %d kWh an hour', (placeC, kwh) => {
    expect(gain(placeC)).toBeCloseTo(kwh, 7)
  })

  it('a heater holds 5 °C: charge and reach are those of 5 °C, and it draws below that only', () => {
    expect(gain(-10, 40)).toBeCloseTo(2, 7)
    const stack = { ...STACK, heaterW: 40 }
    const draw = (placeC: number): number =>
      liveHouse({ stack }, { minutes: 1, critical: 0.39, placeC }, 0.5).lossKw[0]!
    expect(draw(4.9)).toBeCloseTo(0.1, 12)
    expect(draw(5)).toBeCloseTo(0.06, 12)
    // 0.08 out of reach at 5 °C: 5 to 1.8 kWh at 0.49 kW, 391.8 minutes.
    expect(
      firstWithout(liveHouse({ stack }, { minutes: 600, critical: 0.39, placeC: -10 }, 0.5)),
    ).toBe(392)
  })

  it('an array that trips is out in the cold where it forces more than the cold allows', () => {
    // 0.55 kW to spare: more than nothing and less than 1 kW.
    const used = (placeC: number): number =>
      liveHouse(
        { arrays: [solar('trips', 60)] },
        { minutes: 20, critical: 0.39, ac: 1, placeC },
        0.5,
      ).solarUsedKw.reduce((sum, kw) => sum + kw, 0)
    expect(used(-5)).toBe(0)
    expect(used(3)).toBeCloseTo(19, 8)
  })

  it('the place follows the air with its lag: a shed is 63 % of the way after 8 hours', () => {
    // First day at 10 °C, then at 0 °C: 10 · exp(-h / lag).
    const air = Float64Array.from({ length: 240 }, (_, hour) => (hour < 24 ? 10 : 0))
    expect(placeTemperature(air, 'shed')[24 + 7]).toBeCloseTo(10 * Math.exp(-1), 9)
    expect(placeTemperature(air, 'attached garage')[24 + 23]).toBeCloseTo(10 * Math.exp(-1), 9)
    expect(Math.min(...placeTemperature(air, 'house'))).toBe(15)
  })
})
