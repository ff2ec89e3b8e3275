// Places and planes at the edge, through the whole chain: polar night, midnight sun, the far south,
// the equator, walls, flat roofs and roofs that face away.

import {
  checkHouse,
  newScratch,
  type Prepared,
  plainSky,
  prepare,
  type Sky,
  typicalOf,
  windowOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

interface Roof {
  readonly tiltDeg: number
  readonly azimuthDeg: number
}

/** A house in UTC with one array of 1 kW: no losses, an inverter that never clips. */
function houseAt(latitudeDeg: number, longitudeDeg: number, roof: Roof): Prepared {
  return prepare(
    checkHouse(
      plainHouse({
        site: { latitudeDeg, longitudeDeg, elevationM: 0, timezone: 'UTC' },
        arrays: [
          {
            name: 'roof',
            peakKw: 1,
            lossShare: 0,
            ...roof,
            inverter: { ratedKw: 5, efficiency: 1 },
          },
        ],
      }),
    ),
  )
}

/** AC power of the minutes of one day, numbered from 1. [kW] */
function dayKw(prepared: Prepared, dayOfYear: number, sky = plainSky(prepared, 'clear')) {
  const from = (dayOfYear - 1) * 1440
  return windowOf(prepared, sky, newScratch(prepared), 0, from, from + 1440).acKw[0]!
}

function kwh(kw: Float64Array): number {
  return kw.reduce((sum, value) => sum + value / 60, 0)
}

const SOUTH = { tiltDeg: 35, azimuthDeg: 180 }
const NORTH = { tiltDeg: 35, azimuthDeg: 0 }
const FLAT = { tiltDeg: 0, azimuthDeg: 180 }
const JUNE_21 = 172
const DECEMBER_21 = 355
const MARCH_20 = 79

describe('inside the polar circle', () => {
  const wall = houseAt(72, 20, { tiltDeg: 90, azimuthDeg: 0 })
  const skies: [string, (prepared: Prepared) => Sky][] = [
    ['clear', (prepared) => plainSky(prepared, 'clear')],
    ['typical', (prepared) => typicalOf(prepared, 1, 3)],
  ]

  it.each(skies)('polar night gives exactly nothing under the sky %s', (_, sky) => {
    expect(dayKw(wall, DECEMBER_21, sky(wall)).every((kw) => kw === 0)).toBe(true)
  })

  it.each(skies)('midnight sun gives at midnight under the sky %s', (_, sky) => {
    // Solar midnight at 20° E is 22:42 UTC. In every minute of the day there is some light.
    const day = dayKw(wall, JUNE_21, sky(wall))
    expect(day.every((kw) => kw > 0)).toBe(true)
    if (sky(wall).kind === 'clear') expect(day[22 * 60 + 42]!).toBeGreaterThan(0.1)
  })

  it('the days around its ends are finite, and grow from nothing', () => {
    const sky = plainSky(wall, 'clear')
    const january = Array.from({ length: 45 }, (_, d) => kwh(dayKw(wall, 1 + d, sky)))
    expect(january[0]).toBe(0)
    expect(january.at(-1)).toBeGreaterThan(0)
    for (let d = 1; d < january.length; d++) {
      expect(january[d]!).toBeGreaterThanOrEqual(january[d - 1]!)
    }
  })
})

describe('in the south', () => {
  // Latitude as a mirror: the 35° roof to the north at 46° S in June is that to the south at 46° N
  // in December, but for the distance of the sun, 6.6 % in the square.
  it('the sun goes through the north: a roof to the north does what one to the south does here', () => {
    const south = kwh(dayKw(houseAt(-46, 0, NORTH), JUNE_21))
    const north = kwh(dayKw(houseAt(46, 0, SOUTH), DECEMBER_21))
    expect(Math.abs(north / south / 1.066 - 1)).toBeLessThan(0.02)
  })

  it('a roof to the south has a fifth of it in winter, all of it diffuse', () => {
    const away = kwh(dayKw(houseAt(-46, 0, SOUTH), JUNE_21))
    const towards = kwh(dayKw(houseAt(-46, 0, NORTH), JUNE_21))
    expect(away / towards).toBeGreaterThan(0.05)
    expect(away / towards).toBeLessThan(0.25)
  })
})

describe('on the equator', () => {
  it('at equinox noon a flat roof gives some nameplate, whichever way it is said to face', () => {
    const noon = 12 * 60 + 7
    const power = [0, 90, 180, 270].map(
      (azimuthDeg) => dayKw(houseAt(0, 0, { ...FLAT, azimuthDeg }), MARCH_20)[noon]!,
    )
    for (const kw of power) expect(kw).toBeCloseTo(power[0]!, 9)
    // 1000 W/m² at 10 °C of air and 1 m/s make cells of 41 °C: 0.94 of nameplate.
    expect(power[0]).toBeGreaterThan(0.85)
    expect(power[0]).toBeLessThan(1.05)
  })

  it('in June the roof to the north has more, in December the one to the south', () => {
    const [north, south] = [houseAt(0, 0, NORTH), houseAt(0, 0, SOUTH)]
    expect(kwh(dayKw(north, JUNE_21))).toBeGreaterThan(1.5 * kwh(dayKw(south, JUNE_21)))
    expect(kwh(dayKw(south, DECEMBER_21))).toBeGreaterThan(1.5 * kwh(dayKw(north, DECEMBER_21)))
  })
})

describe('walls and roofs', () => {
  it('a wall to the south beats a flat roof in a northern winter, and loses in summer', () => {
    const wall = houseAt(54, -2, { tiltDeg: 90, azimuthDeg: 180 })
    const flat = houseAt(54, -2, FLAT)
    expect(kwh(dayKw(wall, DECEMBER_21))).toBeGreaterThan(2 * kwh(dayKw(flat, DECEMBER_21)))
    expect(kwh(dayKw(wall, JUNE_21))).toBeLessThan(0.7 * kwh(dayKw(flat, JUNE_21)))
  })

  it('a steep roof that faces away gets no beam all winter day, and still something', () => {
    const away = dayKw(houseAt(54, -2, { tiltDeg: 50, azimuthDeg: 0 }), DECEMBER_21)
    expect(kwh(away)).toBeGreaterThan(0)
    // Diffuse light of a clear winter noon: some 40 W/m².
    expect(Math.max(...away)).toBeLessThan(0.08)
  })

  it('east and west roofs have the same day, mirrored at noon, on the equinox', () => {
    const east = kwh(dayKw(houseAt(40, 0, { tiltDeg: 35, azimuthDeg: 90 }), MARCH_20))
    const west = kwh(dayKw(houseAt(40, 0, { tiltDeg: 35, azimuthDeg: 270 }), MARCH_20))
    expect(Math.abs(east / west - 1)).toBeLessThan(0.02)
  })
})
