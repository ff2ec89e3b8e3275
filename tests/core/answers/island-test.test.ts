// The readings that a test with the grid off is held against, by hand arithmetic.

import { checkHouse, type IslandTest, islandTest, prepare } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'by hand',
}

function tested(changes: Record<string, unknown> = {}): IslandTest {
  return islandTest(prepare(checkHouse(plainHouse(changes))), 1)
}

/** The small house aged to 0.8. */
const STACK = { ...(plainHouse().stack as object), health: 0.8 }

describe('islandTest', () => {
  it('takes load, idle draw and electronics off the charge, minute by minute', () => {
    // By hand: 0.39 kW of load, 0.05 kW idle, 0.01 kW electronics: 0.45 kW of 10 kWh, from 0.9.
    const { readings, loadKw } = tested().mean.fresh
    expect(loadKw).toBeCloseTo(0.39, 6)
    expect(readings.map(({ minutes }) => minutes)).toEqual([10, 30, 60])
    for (const { minutes, share, dischargeKw } of readings) {
      expect(share).toBeCloseTo(0.9 - (0.45 * minutes) / 60 / 10, 6)
      expect(dischargeKw).toBeCloseTo(0.39, 6)
    }
  })

  it('states half the rating, or less where the stack gives less', () => {
    expect(tested().statedKw).toBe(2.5)
    const module = { usableKwh: 10, chargeKw: 2, dischargeKw: 1.06 }
    // By hand: 1.06 kW at the terminals less 0.05 idle and 0.01 of electronics: 1.0 kW.
    expect(tested({ stack: { ...STACK, module } }).statedKw).toBeCloseTo(1, 9)
  })

  it('reads less in an aged stack', () => {
    const { stated } = tested({ stack: STACK })
    // By hand: 2.56 kW for an hour, of 10 kWh and of 8.
    expect(stated.fresh.readings[2]!.share).toBeCloseTo(0.9 - 0.256, 7)
    expect(stated.aged.readings[2]!.share).toBeCloseTo(0.9 - 0.32, 7)
    expect([stated.fresh.health, stated.aged.health]).toEqual([1, 0.8])
  })

  it('tells when each charge is reached under the stated load, down to the last', () => {
    const { thresholds } = tested({ stack: STACK, generator: GENERATOR, person: {} })
    expect(thresholds.map(({ what, share }) => [what, share])).toEqual([
      ['reserve', 0.5],
      ['generator is wanted', 0.25],
      ['all loads go off', 0.1],
    ])
    for (const { share, newKwh, agedKwh, newHours, agedHours } of thresholds) {
      expect([newKwh, agedKwh]).toEqual([10 * share, 8 * share])
      // By hand: (0.9 - share) of 10 and of 8 kWh over 2.56 kW, to the minute.
      expect(Math.abs(newHours! - (10 * (0.9 - share)) / 2.56)).toBeLessThanOrEqual(1 / 60)
      expect(Math.abs(agedHours! - (8 * (0.9 - share)) / 2.56)).toBeLessThanOrEqual(1 / 60)
    }
  })

  it('leaves out when a charge lies beyond a day', () => {
    const module = { usableKwh: 100, chargeKw: 2, dischargeKw: 1.06 }
    // By hand: 1.06 kW for 24 h is 25 of 100 kWh.
    const { thresholds } = tested({ stack: { ...STACK, module } })
    expect(thresholds.map(({ newHours }) => newHours)).toEqual([null, null])
  })

  it('says that a load is off where it is more than the island carries, or the battery is empty', () => {
    const loads = [{ name: 'pump', tier: 'critical', w: 6000 }]
    const over = tested({ loads }).mean.fresh
    expect(over.readings.map(({ isOn }) => isOn)).toEqual([false, false, false])
    const module = { usableKwh: 1.5, chargeKw: 2, dischargeKw: 5 }
    // By hand: 0.8 of 1.5 kWh over 2.56 kW is 28 min.
    const small = tested({ stack: { ...STACK, module } }).stated.fresh
    expect(small.readings.map(({ isOn }) => isOn)).toEqual([true, false, false])
  })

  it('refuses a health out of range', () => {
    const prepared = prepare(checkHouse(plainHouse()))
    expect(() => islandTest(prepared, 1, { health: 0 })).toThrow(/health must be/)
  })
})
