import { describe, expect, it } from 'vitest'
import {
  horizonAltitudeDeg,
  horizonFrom,
  skyViewFactor,
} from '../../../packages/core/src/sky/horizon.js'

const RAD = Math.PI / 180

describe('horizon line', () => {
  const hill = horizonFrom([
    [350, 10],
    [90, 0],
    [10, 20],
    [180, 30],
  ])

  it.each([
    [10, 20],
    [90, 0],
    [135, 15],
    [180, 30],
    [50, 10],
    [350, 10],
    [0, 15], // across north
    [360, 15],
    [355, 12.5],
    [265, 20],
  ])('towards %d°: %d°', (azimuth, altitude) => {
    expect(horizonAltitudeDeg(hill, azimuth)).toBeCloseTo(altitude, 12)
  })

  it('one point is a level rim, none is flat ground', () => {
    for (const azimuth of [0, 45, 123.4, 359.9, 360]) {
      expect(horizonAltitudeDeg(horizonFrom([[200, 7]]), azimuth)).toBeCloseTo(7, 12)
      expect(horizonAltitudeDeg(horizonFrom([]), azimuth)).toBe(0)
    }
  })

  it('a line closed at 360 is the same as one that is left open', () => {
    const closed = horizonFrom([
      [0, 5],
      [180, 9],
      [360, 5],
    ])
    expect(horizonAltitudeDeg(closed, 270)).toBeCloseTo(7, 12)
  })

  it('refuses what cannot be: "horizon[1][0] must be an azimuth 0..360 [°], got 400"', () => {
    const second = (azimuth: number, altitude: number) => () =>
      horizonFrom([
        [0, 5],
        [azimuth, altitude],
      ])
    expect(second(400, 5)).toThrow('horizon[1][0] must be an azimuth 0..360 [°], got 400')
    expect(second(90, 91)).toThrow('horizon[1][1] must be an altitude 0..90 [°], got 91')
    expect(second(90, Number.NaN)).toThrow('got NaN')
    expect(second(360, 6)).toThrow('horizon[1][1] must be the 5 given at that azimuth [°], got 6')
  })
})

describe('sky view factor', () => {
  it.each([0, 5, 12.5, 30, 60])('an even rim of %d° leaves a level plane cos² of it', (rim) => {
    const view = skyViewFactor(horizonFrom([[0, rim]]), 0, 180)
    expect(Math.abs(view - Math.cos(rim * RAD) ** 2)).toBeLessThan(5e-4)
  })

  it('flat ground hides nothing from any plane', () => {
    for (const tilt of [0, 35, 90]) {
      expect(skyViewFactor(horizonFrom([]), tilt, 200)).toBeCloseTo(1, 12)
    }
  })

  it('a hill before a wall costs it, the same hill behind costs nothing', () => {
    const southern = horizonFrom([
      [90, 0],
      [91, 25],
      [269, 25],
      [270, 0],
    ])
    expect(skyViewFactor(southern, 90, 180)).toBeLessThan(0.7)
    expect(skyViewFactor(southern, 90, 0)).toBeCloseTo(1, 6)
  })
})
