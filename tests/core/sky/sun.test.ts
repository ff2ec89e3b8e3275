import { getPosition } from 'suncalc'
import { describe, expect, it } from 'vitest'
import { sunColumns } from '../../../packages/core/src/sky/sun.js'

const YEAR = 525_600
const START = Date.UTC(2025, 0, 1)
const RAD = Math.PI / 180

describe('the hourly shortcut against suncalc itself', () => {
  // Everyday places, both sides of the equator and the poles, where azimuth is a convention.
  const PLACES = [
    [54, -2],
    [0, 0],
    [23.4, 77],
    [-33.9, 151.2],
    [70, 20],
    [-78, 166],
    [89.9, 0],
    [-90, 10],
    [40, 255],
  ] as const

  it.each(PLACES)('a year at %d, %d: within 0.0001°, horizon and zenith included', (lat, lon) => {
    const sun = sunColumns(START, YEAR, lat, lon)
    let altitudeError = 0
    let directionError = 0
    let compared = 0
    for (let i = 0; i < YEAR; i += 7) {
      const truth = getPosition(new Date(START + (i + 0.5) * 60_000), lat, lon)
      const turn = ((sun.azimuthDeg[i]! - truth.azimuth + 540) % 360) - 180
      const across = Math.abs(turn) * Math.cos(truth.altitude * RAD)
      altitudeError = Math.max(altitudeError, Math.abs(sun.altitudeDeg[i]! - truth.altitude))
      directionError = Math.max(directionError, across)
      compared++
    }
    expect(compared).toBe(Math.ceil(YEAR / 7))
    expect(altitudeError).toBeLessThan(1e-4)
    expect(directionError).toBeLessThan(1e-4)
  })
})

describe('sun columns', () => {
  it('take the middle of the minute, whatever the start and the length', () => {
    const long = sunColumns(START, 3000, 54, -2)
    const late = sunColumns(START + 61 * 60_000, 100, 54, -2)
    for (let i = 0; i < 100; i++) {
      expect(Math.abs(late.altitudeDeg[i]! - long.altitudeDeg[61 + i]!)).toBeLessThan(1e-5)
    }
    expect(sunColumns(START, 0, 54, -2).altitudeDeg).toHaveLength(0)
    expect(sunColumns(START, 61, 54, -2).altitudeDeg).toHaveLength(61)
  })

  it('polar night keeps the sun down, midnight sun keeps it up, a whole day long', () => {
    const night = sunColumns(Date.UTC(2025, 11, 21), 1440, 72, 20)
    expect(Math.max(...night.altitudeDeg)).toBeLessThan(0)
    const day = sunColumns(Date.UTC(2025, 5, 21), 1440, 72, 20)
    expect(Math.min(...day.altitudeDeg)).toBeGreaterThan(0)
  })

  it('north of the tropic noon is in the south, south of it in the north', () => {
    const azimuthAtNoon = (latitude: number) => {
      const { altitudeDeg, azimuthDeg } = sunColumns(Date.UTC(2025, 2, 1), 1440, latitude, 0)
      return azimuthDeg[altitudeDeg.indexOf(Math.max(...altitudeDeg))]!
    }
    expect(Math.abs(azimuthAtNoon(50) - 180)).toBeLessThan(1)
    const south = azimuthAtNoon(-50)
    expect(Math.min(south, 360 - south)).toBeLessThan(1)
  })

  it('azimuth stays within 0..360 and turns one way, through east, except near the zenith', () => {
    const { azimuthDeg } = sunColumns(START, 1440, 54, -2)
    for (let i = 1; i < 1440; i++) {
      expect(azimuthDeg[i]!).toBeGreaterThanOrEqual(0)
      expect(azimuthDeg[i]!).toBeLessThan(360)
      expect((azimuthDeg[i]! - azimuthDeg[i - 1]! + 360) % 360).toBeLessThan(1)
    }
  })

  it('refuses a place that is none: "latitudeDeg must be a number -90..90 [°], got 91"', () => {
    expect(() => sunColumns(START, 1, 91, 0)).toThrow(
      'latitudeDeg must be a number -90..90 [°], got 91',
    )
    expect(() => sunColumns(START, 1, Number.NaN, 0)).toThrow('got NaN')
    expect(() => sunColumns(START, 1, 0, 400)).toThrow('longitudeDeg')
    expect(() => sunColumns(START, 1.5, 0, 0)).toThrow('n must be a whole number >= 0, got 1.5')
    expect(() => sunColumns(Number.NaN, 1, 0, 0)).toThrow('startMs')
  })
})
