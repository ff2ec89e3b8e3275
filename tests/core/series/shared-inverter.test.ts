// Several arrays on one solar inverter: their DC power together is cut off at its rating.

import {
  checkHouse,
  newScratch,
  plainSky,
  prepare,
  seriesColumns,
  solarGroups,
  solarRatedKw,
  windowOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse } from '../plain-house.js'

const INVERTER = { ratedKw: 3.68, efficiency: 0.96, onIsland: 'throttles' }
const roof = (name: string, azimuthDeg: number, more: object) => ({
  ...{ name, peakKw: 3, tiltDeg: 30, azimuthDeg, lossShare: 0 },
  ...more,
})
const EAST = roof('east', 90, { inverter: INVERTER })
const JUNE = 170 * 1440

function dayOf(arrays: object[]) {
  const prepared = prepare(checkHouse(plainHouse({ arrays })))
  const clear = plainSky(prepared, 'clear')
  const { acKw } = windowOf(prepared, clear, newScratch(prepared), 0, JUNE, JUNE + 1440)
  return { acKw: acKw[0]!, columns: seriesColumns(prepared, clear, 0, JUNE, JUNE + 1440) }
}

describe('east and west on one inverter', () => {
  const shared = dayOf([EAST, roof('west', 270, { onInverterOf: 'east' })])
  const apart = dayOf([EAST, roof('west', 270, { inverter: INVERTER })])

  it('are clipped together: 0.96 of both, 3.68 kW at most', () => {
    const [east, west] = shared.columns.arrays
    let clipped = 0
    for (let i = 0; i < 1440; i++) {
      const dc = east!.dcKw[i]! + west!.dcKw[i]!
      expect(Math.abs(shared.acKw[i]! - Math.min(3.68, 0.96 * dc))).toBeLessThan(1e-5)
      if (0.96 * dc > 3.68) clipped++
    }
    expect(clipped).toBeGreaterThan(60)
    expect(Math.max(...apart.acKw)).toBeGreaterThan(3.7)
  })

  it('tell each its part of what goes out', () => {
    const [east, west] = shared.columns.arrays
    for (let i = 0; i < 1440; i += 7) {
      expect(Math.abs(east!.acKw[i]! + west!.acKw[i]! - shared.acKw[i]!)).toBeLessThan(1e-5)
      const crossed = east!.acKw[i]! * west!.dcKw[i]! - west!.acKw[i]! * east!.dcKw[i]!
      expect(Math.abs(crossed)).toBeLessThan(1e-5)
    }
  })

  it('count as one inverter of 3.68 kW and one group', () => {
    const house = checkHouse(
      plainHouse({ arrays: [EAST, roof('west', 270, { onInverterOf: 'east' })] }),
    )
    expect(solarRatedKw(house.arrays)).toBe(3.68)
    expect(solarGroups(house).map(({ names }) => names)).toEqual([['east', 'west']])
  })
})

describe('what an array may not share', () => {
  it.each([
    [{ onInverterOf: 'north' }, 'arrays[1].onInverterOf must be the name of another array with'],
    [{ onInverterOf: 'west' }, 'arrays[1].onInverterOf must be the name of another array with'],
    [
      { onInverterOf: 'east', inverter: INVERTER },
      "arrays[1].inverter must be left out beside onInverterOf: it is the other array's",
    ],
    [{ file: 'log.csv' }, 'arrays[1].inverter must be given, for an array whose AC output was'],
  ])('%j', (more, message) => {
    const arrays = [EAST, roof('west', 270, more)]
    expect(refusal(() => checkHouse(plainHouse({ arrays })))).toContain(message)
  })

  it('an inverter whose output is logged: the log holds all of it', () => {
    const arrays = [{ ...EAST, file: 'log.csv' }, roof('west', 270, { onInverterOf: 'east' })]
    expect(refusal(() => checkHouse(plainHouse({ arrays })))).toContain(
      'arrays[1] must be left out: the log of east holds it already',
    )
  })
})
