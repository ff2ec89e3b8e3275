import { describe, expect, it } from 'vitest'
import {
  clearSky,
  clearSkySite,
  type Irradiance,
} from '../../../packages/core/src/sky/clear-sky.js'
import { extraterrestrialNormal } from '../../../packages/core/src/sky/extraterrestrial.js'
import { horizonFrom } from '../../../packages/core/src/sky/horizon.js'
import {
  fillPlane,
  type Plane,
  planeGeometry,
  type SkyColumns,
} from '../../../packages/core/src/sky/plane.js'
import { type SunColumns, sunColumns } from '../../../packages/core/src/sky/sun.js'
import type { SkyModel } from '../../../packages/core/src/sky/transposition.js'

const MODELS: readonly SkyModel[] = ['hay-davies', 'isotropic', 'perez']
const RAD = Math.PI / 180

/** One clear day, from its first UTC minute. */
function clearDay(date: string, latitude: number, longitude: number) {
  const sun = sunColumns(Date.parse(date), 1440, latitude, longitude)
  const site = clearSkySite(0)
  const [ghi, dni, dhi] = [0, 0, 0].map(() => new Float64Array(1440)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const dniExtra = Float64Array.of(extraterrestrialNormal(100))
  const out: Irradiance = { ghi: 0, dni: 0, dhi: 0 }
  for (let i = 0; i < 1440; i++) {
    clearSky(site, sun.altitudeDeg[i]!, dniExtra[0]!, 3, out)
    ghi[i] = out.ghi
    dni[i] = out.dni
    dhi[i] = out.dhi
  }
  return { sun, sky: { ghi, dni, dhi, dniExtra } }
}

function onPlane(
  day: { sun: SunColumns; sky: SkyColumns },
  plane: Plane,
  model?: SkyModel,
  albedo = 0.2,
) {
  const into = new Float64Array(1440).fill(-1)
  fillPlane(into, 0, 1440, day.sky, planeGeometry(day.sun, plane), albedo, model)
  return into
}

const sum = (values: Float64Array) => values.reduce((a, b) => a + b, 0)

describe.each(MODELS)('a plane under %s', (model) => {
  const june = clearDay('2025-06-21', 54, -2)

  it('level and without glass gives the global back', () => {
    const level = onPlane(june, { tiltDeg: 0, azimuthDeg: 180, b0: 0 }, model)
    for (let i = 0; i < 1440; i++) {
      // Below 1° (Hay & Davies) and 5° (Perez) the circumsolar ratio is held.
      if (june.sun.altitudeDeg[i]! > 5 || june.sun.altitudeDeg[i]! <= 0) {
        expect(Math.abs(level[i]! - june.sky.ghi[i]!)).toBeLessThan(1e-9)
      }
    }
  })

  it('is finite, never negative, and exactly zero with the sun down', () => {
    for (const tiltDeg of [0, 35, 90]) {
      for (const azimuthDeg of [0, 90, 180, 270]) {
        const light = onPlane(june, { tiltDeg, azimuthDeg }, model)
        for (let i = 0; i < 1440; i++) {
          expect(light[i]!).toBeGreaterThanOrEqual(0)
          if (june.sun.altitudeDeg[i]! <= 0) expect(light[i]).toBe(0)
        }
      }
    }
  })

  it('a wall that faces away sees sky and ground but no beam', () => {
    const december = clearDay('2025-12-21', 54, -2)
    const north = onPlane(december, { tiltDeg: 90, azimuthDeg: 0 }, model)
    const south = onPlane(december, { tiltDeg: 90, azimuthDeg: 180 }, model)
    expect(sum(north)).toBeGreaterThan(0)
    expect(sum(north)).toBeLessThan(0.25 * sum(south))
  })

  it('polar night gives zero all day', () => {
    const night = clearDay('2025-12-21', 72, 20)
    expect(sum(onPlane(night, { tiltDeg: 35, azimuthDeg: 180 }, model))).toBe(0)
  })

  it('midnight sun shines on a north wall at midnight', () => {
    const day = clearDay('2025-06-21', 70, 20)
    const north = onPlane(day, { tiltDeg: 90, azimuthDeg: 0 }, model)
    const midnight = 22 * 60 + 30
    expect(day.sky.dni[midnight]!).toBeGreaterThan(20)
    expect(north[midnight]!).toBeGreaterThan(0.9 * day.sky.dni[midnight]!)
  })

  it('in the south a plane to the north beats one to the south', () => {
    const day = clearDay('2025-06-21', -46, 168)
    const north = sum(onPlane(day, { tiltDeg: 45, azimuthDeg: 0 }, model))
    const south = sum(onPlane(day, { tiltDeg: 45, azimuthDeg: 180 }, model))
    expect(north).toBeGreaterThan(5 * south)
  })

  it('on the equator at equinox noon it does not matter where a shallow plane faces', () => {
    const day = clearDay('2025-03-20', 0, 0)
    const noon = 12 * 60 + 7
    const faces = [0, 90, 180, 270].map(
      (azimuthDeg) => onPlane(day, { tiltDeg: 10, azimuthDeg }, model)[noon]!,
    )
    expect(Math.max(...faces) - Math.min(...faces)).toBeLessThan(0.01 * Math.max(...faces))
  })

  it('NaN in the sky is NaN on the plane', () => {
    const dhi = Float64Array.from(june.sky.dhi)
    dhi[720] = Number.NaN
    const day = { sun: june.sun, sky: { ...june.sky, dhi } }
    const light = onPlane(day, { tiltDeg: 35, azimuthDeg: 180 }, model)
    expect(light[720]).toBeNaN()
    expect(light[721]).not.toBeNaN()
  })
})

describe('models beside each other', () => {
  it('on a plane to the sun Hay & Davies and Perez give more than the even sky', () => {
    const day = clearDay('2025-12-21', 54, -2)
    const [hayDavies, isotropic, perez] = MODELS.map((model) =>
      sum(onPlane(day, { tiltDeg: 60, azimuthDeg: 180 }, model)),
    )
    expect(hayDavies).toBeGreaterThan(isotropic!)
    expect(perez).toBeGreaterThan(isotropic!)
    expect(Math.abs(perez! / hayDavies! - 1)).toBeLessThan(0.1)
  })

  it('Hay & Davies is the default', () => {
    const day = clearDay('2025-06-21', 54, -2)
    const plane = { tiltDeg: 35, azimuthDeg: 180 }
    expect(onPlane(day, plane)).toEqual(onPlane(day, plane, 'hay-davies'))
  })

  it('snow on the ground helps the wall', () => {
    const day = clearDay('2025-12-21', 54, -2)
    const wall = { tiltDeg: 90, azimuthDeg: 180 }
    const more =
      sum(onPlane(day, wall, 'isotropic', 0.6)) - sum(onPlane(day, wall, 'isotropic', 0.2))
    expect(more / sum(day.sky.ghi)).toBeCloseTo(0.4 * 0.5 * 0.95, 9)
  })
})

describe('what stands before the sun', () => {
  const day = clearDay('2025-12-21', 54, -2)
  const noon = 12 * 60 + 8 // 12.5° high

  it('a hill of 20° leaves the diffuse light of the open sky, and no beam', () => {
    const horizon = horizonFrom([[0, 20]])
    const level = onPlane(day, { tiltDeg: 0, azimuthDeg: 180, b0: 0, horizon }, 'isotropic')
    const expected = day.sky.dhi[noon]! * Math.cos(20 * RAD) ** 2
    expect(Math.abs(level[noon]! / expected - 1)).toBeLessThan(1e-3)
  })

  it('a hill of 5° takes the early sun and leaves the noon', () => {
    const horizon = horizonFrom([[0, 5]])
    const { beamShare, altitudeDeg } = planeGeometry(day.sun, {
      tiltDeg: 35,
      azimuthDeg: 180,
      horizon,
    })
    for (let i = 0; i < 1440; i++) {
      expect(beamShare[i]! > 0, `minute ${i}`).toBe(altitudeDeg[i]! >= 5)
    }
  })
})

describe('low sun', () => {
  // One minute at 3°: an hour's beam divided by a small sine.
  const sun = { altitudeDeg: Float64Array.of(3), azimuthDeg: Float64Array.of(180) }
  const sine = Math.sin(3 * RAD)
  const sky = {
    ghi: Float64Array.of(60),
    dni: Float64Array.of(50 / sine),
    dhi: Float64Array.of(10),
    dniExtra: Float64Array.of(1361),
  }
  const wall: Plane = { tiltDeg: 90, azimuthDeg: 180, b0: 0 }
  const light = (columns: SkyColumns, plane = wall) => {
    const into = new Float64Array(1)
    fillPlane(into, 0, 1, columns, planeGeometry(sun, plane), 0, 'isotropic')
    return into[0]!
  }

  it('the beam is held at the clear beam, and what is cut off becomes diffuse', () => {
    const cut = 50 / sine - 200
    expect(light(sky)).toBeCloseTo((50 / sine) * Math.cos(3 * RAD) + 5, 9)
    const held = light({ ...sky, dniClear: Float64Array.of(200) })
    expect(held).toBeCloseTo(200 * Math.cos(3 * RAD) + (10 + cut * sine) / 2, 9)
  })

  it('so a level plane keeps the global', () => {
    const level = { ...wall, tiltDeg: 0 }
    expect(light({ ...sky, dniClear: Float64Array.of(200) }, level)).toBeCloseTo(60, 9)
  })

  it('light recorded with the sun down is taken as even', () => {
    const down = { altitudeDeg: Float64Array.of(-0.5), azimuthDeg: Float64Array.of(180) }
    const into = new Float64Array(1)
    const dusk = {
      ...sky,
      ghi: Float64Array.of(4),
      dni: Float64Array.of(90),
      dhi: Float64Array.of(4),
    }
    fillPlane(into, 0, 1, dusk, planeGeometry(down, wall), 0.5)
    expect(into[0]).toBeCloseTo(4 / 2 + (4 * 0.5) / 2, 12)
  })
})

describe('ranges and refusals', () => {
  const day = clearDay('2025-06-21', 54, -2)
  const geometry = planeGeometry(day.sun, { tiltDeg: 35, azimuthDeg: 180 })

  it('fills [from, to) and touches nothing else', () => {
    const into = new Float64Array(1440).fill(-1)
    fillPlane(into, 700, 710, day.sky, geometry, 0.2)
    expect(into[699]).toBe(-1)
    expect(into[700]).toBeGreaterThan(0)
    expect(into[709]).toBeGreaterThan(0)
    expect(into[710]).toBe(-1)
  })

  it('refuses a tilt of 91°, a short column, a missing day', () => {
    expect(() => planeGeometry(day.sun, { tiltDeg: 91, azimuthDeg: 0 })).toThrow(
      'tiltDeg must be a number 0..90 [°], got 91',
    )
    expect(() => planeGeometry(day.sun, { tiltDeg: 30, azimuthDeg: Number.NaN })).toThrow(
      'azimuthDeg must be a number 0..360 [°], got NaN',
    )
    expect(() => fillPlane(new Float64Array(9), 0, 10, day.sky, geometry, 0.2)).toThrow(
      'into must be a column of at least 10 minutes, got 9',
    )
    const dniExtra = new Float64Array(0)
    expect(() =>
      fillPlane(new Float64Array(1440), 0, 1440, { ...day.sky, dniExtra }, geometry, 0.2),
    ).toThrow('dniExtra')
  })
})
