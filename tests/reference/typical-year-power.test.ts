// A year of a typical-year file through the whole chain, against a general solar-physics library.
//
// Truth: pvlib 0.16.1, run once; fixtures/typical-year-power.py holds the script and the choices of
// models, which are the same on both sides: Hay & Davies 1980, ASHRAE glass with b0 0.05, Faiman 2008
// with 25 and 6.84, linear coefficient, one efficiency, clipping; solar constant 1361 W/m², distance
// by Spencer 1971, refraction on. Sun by SPA there, by Meeus here.
//
// Three comparisons, from narrow to whole. At one minute an hour the formulas alone meet. Laid out in
// quarters the record goes through the product's own sky `file`, which then holds it evenly, as the
// library does. As the hours it is, sun and cloud alternate within them: what minutes lose to
// clipping and to warm cells, and hourly means hide, is the rest.

import { readFileSync } from 'node:fs'
import {
  arrayDcKw,
  cellTemperatureC,
  checkHouse,
  newScratch,
  type Prepared,
  plainSky,
  prepare,
  solarInverterAcKw,
  type WeatherRecord,
  windowOf,
} from '@tideover/core'
import { readWeather } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { fillPlane } from '../../packages/core/src/sky/plane.js'
import { plainHouse } from '../core/plain-house.js'

const HOURS = 8760
const ARRAYS = [
  { name: 'south', peakKw: 5, tiltDeg: 30, azimuthDeg: 180, inverter: { ratedKw: 3.68 } },
  { name: 'west', peakKw: 3, tiltDeg: 20, azimuthDeg: 255, inverter: { ratedKw: 3 } },
  { name: 'wall', peakKw: 2, tiltDeg: 90, azimuthDeg: 135, inverter: { ratedKw: 2 } },
].map((array) => ({
  ...array,
  lossShare: 0.14,
  perKelvin: -0.0035,
  inverter: { ...array.inverter, efficiency: 0.96 },
}))
type Name = 'south' | 'west' | 'wall'
const NAMES: readonly Name[] = ['south', 'west', 'wall']

/** Monthly Linke turbidity of the place: pvlib 0.16.1, lookup_linke_turbidity. */
const OF_THE_PLACE = [2.65, 2.75, 3.65, 4.05, 4.1, 4.55, 4.5, 5.05, 3.9, 3.2, 3.1, 2.85]

const RECORD = readWeather(
  new URL('../../data-samples/greensboro-tmy3.csv', import.meta.url).pathname,
)
const SITE = {
  latitudeDeg: 36.1,
  longitudeDeg: -79.95,
  elevationM: 273,
  timezone: 'America/New_York',
}

/** The fixture: power of every hour by array, 0 where the file has no row. [W] */
function fixture(reading: 'point' | 'mean'): Record<Name, Float64Array> {
  const path = new URL('./fixtures/typical-year-power.csv', import.meta.url)
  const [head = '', ...rows] = readFileSync(path, 'utf8').trimEnd().split('\n')
  const columns = head.split(',')
  const out = {} as Record<Name, Float64Array>
  for (const name of NAMES) {
    out[name] = new Float64Array(HOURS)
    const at = columns.indexOf(`${name}_${reading}`)
    for (const row of rows) {
      const cells = row.split(',')
      out[name][Number(cells[0])] = Number(cells[at])
    }
  }
  return out
}

function house(record: WeatherRecord, linkeTurbidity: readonly number[]): Prepared {
  const sky = { file: 'w', linkeTurbidity, albedo: new Array(12).fill(0.2) }
  const plain = plainHouse({ site: SITE, sky, arrays: ARRAYS })
  return prepare(checkHouse(plain), { weather: new Map([['w', record]]) })
}

/** Hourly means of AC power through prepare, the sky `file` and windowOf. [W] */
function wholeChain(prepared: Prepared): Record<Name, Float64Array> {
  const { n } = prepared.calendar
  const column = (): Float64Array => new Float64Array(n)
  const arrays = NAMES.map((name) => ({
    name,
    dcCoupled: false,
    poaWm2: column(),
    cellC: column(),
    dcKw: column(),
    acKw: column(),
  }))
  const detail = {
    ghi: column(),
    dni: column(),
    dhi: column(),
    airC: column(),
    windMs: column(),
    arrays,
  }
  windowOf(prepared, plainSky(prepared, 'file'), newScratch(prepared), 0, 0, n, detail)
  const hourlyW = (kw: Float64Array): Float64Array =>
    Float64Array.from({ length: HOURS }, (_, h) => {
      let sum = 0
      for (let i = 60 * h; i < 60 * h + 60; i++) sum += kw[i]!
      return (1000 * sum) / 60
    })
  const [south, west, wall] = arrays.map(({ acKw }) => hourlyW(acKw))
  return { south: south!, west: west!, wall: wall! }
}

interface Difference {
  readonly name: Name
  /** Energy of the year over the truth's, less 1. */
  readonly energy: number
  /** Root mean square and largest difference of an hour, as shares of the rating. */
  readonly rms: number
  readonly most: number
  readonly lit: number
}

function differences(
  ours: Record<Name, Float64Array>,
  truth: Record<Name, Float64Array>,
): Difference[] {
  return NAMES.map((name, which) => {
    const ratedW = 1000 * ARRAYS[which]!.inverter.ratedKw
    let [sum, whole, squares, most, lit] = [0, 0, 0, 0, 0]
    for (let h = 0; h < HOURS; h++) {
      const difference = ours[name][h]! - truth[name][h]!
      sum += ours[name][h]!
      whole += truth[name][h]!
      squares += difference ** 2
      most = Math.max(most, Math.abs(difference))
      if (truth[name][h]! > 0) lit++
    }
    const rms = Math.sqrt(squares / HOURS) / ratedW
    return { name, energy: sum / whole - 1, rms, most: most / ratedW, lit }
  })
}

function report(title: string, rows: readonly Difference[]): void {
  const percent = (share: number): string => `${(100 * share).toFixed(2)} %`
  const lines = rows.map(
    ({ name, energy, rms, most, lit }) =>
      `${name.padEnd(6)} year ${percent(energy)}, hourly RMS ${percent(rms)} of rated, ` +
      `most ${percent(most)}, ${lit} hours with power`,
  )
  console.log(`${title}\n${lines.join('\n')}`)
}

describe('power of three arrays at Greensboro against pvlib', () => {
  it('the fixture has every hour with sun', () => {
    for (const reading of ['point', 'mean'] as const) {
      const truth = fixture(reading)
      for (const name of NAMES) {
        const lit = truth[name].filter((watts) => watts > 0).length
        expect(lit).toBeGreaterThan(4400)
        expect(lit).toBeLessThan(4700)
        expect(truth[name].every((watts) => watts >= 0)).toBe(true)
      }
    }
    // The inverter of the south roof is at its rating for some part of the year.
    expect(fixture('point').south.filter((watts) => watts === 3680).length).toBeGreaterThan(50)
  })

  it('formulas, one minute an hour: 0.1 % of the year, 0.1 % of rated RMS', () => {
    const prepared = house(RECORD, OF_THE_PLACE)
    const { n } = prepared.calendar
    const sky = {
      ghi: new Float64Array(n),
      dni: new Float64Array(n),
      dhi: new Float64Array(n),
      dniExtra: prepared.sun.dniExtra,
    }
    for (let h = 0; h < HOURS; h++) {
      sky.ghi[60 * h + 30] = RECORD.ghi[h]!
      sky.dni[60 * h + 30] = RECORD.dni![h]!
      sky.dhi[60 * h + 30] = RECORD.dhi![h]!
    }
    const poa = new Float64Array(n)
    const ours = { south: [], west: [], wall: [] } as Record<Name, number[]>
    for (const { input, geometry, peakKw } of prepared.arrays) {
      fillPlane(poa, 0, n, sky, geometry, 0.2)
      for (let h = 0; h < HOURS; h++) {
        const light = poa[60 * h + 30]!
        const cellC = cellTemperatureC(light, RECORD.airC![h]!, RECORD.windMs![h]!)
        const dc = arrayDcKw(light, cellC, peakKw, input.perKelvin)
        const { efficiency, ratedKw } = input.inverter!
        ours[input.name as Name].push(1000 * solarInverterAcKw(dc, efficiency, ratedKw))
      }
    }
    const columns = {
      south: Float64Array.from(ours.south),
      west: Float64Array.from(ours.west),
      wall: Float64Array.from(ours.wall),
    }
    const found = differences(columns, fixture('point'))
    report('formulas, one minute an hour', found)
    for (const { energy, rms, most } of found) {
      expect(Math.abs(energy)).toBeLessThan(0.001)
      expect(rms).toBeLessThan(0.001)
      expect(most).toBeLessThan(0.05)
    }
  })

  it('whole chain, hours held evenly: 1 % of the year, 3 % of rated RMS', () => {
    const four = (column: Float64Array | null): Float64Array =>
      Float64Array.from({ length: 4 * HOURS }, (_, i) => column![i >> 2]!)
    const quarters: WeatherRecord = {
      ...RECORD,
      stepMinutes: 15,
      ghi: four(RECORD.ghi),
      dni: four(RECORD.dni),
      dhi: four(RECORD.dhi),
      airC: four(RECORD.airC),
      windMs: four(RECORD.windMs),
    }
    const found = differences(wholeChain(house(quarters, OF_THE_PLACE)), fixture('mean'))
    report('whole chain, hours held evenly', found)
    for (const { energy, rms } of found) {
      expect(Math.abs(energy)).toBeLessThan(0.01)
      expect(rms).toBeLessThan(0.03)
    }
  })

  it.each([
    { which: 'of the place', haze: OF_THE_PLACE },
    { which: '3 all year', haze: new Array(12).fill(3) as number[] },
  ])('whole chain as it is, turbidity $which: 1 % of the year, 3 % of rated RMS', (row) => {
    const { which, haze } = row
    const found = differences(wholeChain(house(RECORD, haze)), fixture('mean'))
    report(`whole chain as it is, turbidity ${which}`, found)
    for (const { energy, rms } of found) {
      expect(Math.abs(energy)).toBeLessThan(0.01)
      expect(rms).toBeLessThan(0.03)
    }
  })
})
