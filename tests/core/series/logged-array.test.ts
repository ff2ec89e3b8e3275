// An array whose AC output was logged goes before every model.

import { fileURLToPath } from 'node:url'
import {
  checkHouse,
  dullYears,
  loggedArray,
  loggedDay,
  type MeterRecord,
  newScratch,
  plainSky,
  prepare,
  typicalOf,
  windowOf,
  withoutLight,
} from '@tideover/core'
import { loadHouse, readMeter } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { folder } from '../../cli/command.js'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const DAY = 1440

/** A log of whole days of 2024 in UTC; day d gives level(d) kW from ten to two. */
function log(firstDay: number, days: number, level: (day: number) => number): MeterRecord {
  const kw = new Float64Array(days * 24)
  for (let d = 0; d < days; d++) {
    for (let h = 10; h < 14; h++) kw[d * 24 + h] = level(d)
  }
  const startMs = Date.UTC(2024, 0, 1 + firstDay)
  return { name: 'log.csv', startMs, stepMinutes: 60, kw, notes: [] }
}

const ROOF = {
  name: 'roof',
  peakKw: 3,
  tiltDeg: 30,
  azimuthDeg: 180,
  file: 'log.csv',
  inverter: { ratedKw: 3, onIsland: 'throttles' },
}

function prepared(record: MeterRecord) {
  const house = checkHouse(plainHouse({ arrays: [ROOF] }))
  return prepare(house, { outputs: new Map([['log.csv', record]]) })
}

describe('a log of a year', () => {
  // Levels come in runs of seven, 0 to 6 hundred watts: each season holds every level.
  const record = log(0, 366, (d) => (d % 7) / 10)
  const house = prepared(record)

  it('gives a synthetic day the logged day of its season at the same rank', () => {
    const typical = typicalOf(house, 1, 3)
    const { acKw } = windowOf(house, typical, newScratch(house), 1, 0, 60 * DAY)
    const got = Array.from({ length: 60 }, (_, d) => acKw[0]![d * DAY + 720]!)
    const ranks = got.map((_, d) => typical.dayRank!(1, d))
    for (const [d, rank] of ranks.entries()) {
      // 31 days of a season, sorted: four or five of each level.
      expect(Math.abs(got[d]! * 10 - rank * 7 + 0.5), `day ${d}`).toBeLessThan(1.1)
    }
    expect(new Set(got.map((kw) => Math.round(kw * 10))).size).toBe(7)
  })

  it('is at its brightest under a clear sky, and nothing without light', () => {
    const noon = (sky: Parameters<typeof windowOf>[1]): number =>
      windowOf(house, sky, newScratch(house), 0, 100 * DAY, 101 * DAY).acKw[0]![720]!
    expect(noon(plainSky(house, 'clear'))).toBeCloseTo(0.6, 5)
    expect(noon(withoutLight(plainSky(house, 'clear')))).toBe(0)
  })

  it('ranks the winters of a dull spell by what was logged', () => {
    const typical = typicalOf(house, 1, 200)
    const [spell] = dullYears(house, typical, [20, 21], 1, 10)
    expect(typical.dayRank!(spell!.year, 20)).toBeLessThan(0.2)
  })

  it('keeps the clock on the wall, minute by minute', () => {
    const clear = plainSky(house, 'clear')
    const { acKw } = windowOf(house, clear, newScratch(house), 0, 10 * DAY, 11 * DAY)
    expect([599, 600, 839, 840].map((minute) => acKw[0]![minute]! > 0)).toEqual([
      false,
      true,
      true,
      false,
    ])
  })
})

describe('a log of some weeks', () => {
  it('is heeded near in season, and the model stands in elsewhere', () => {
    const record = log(0, 20, () => 0.4)
    const house = prepared(record)
    const clear = plainSky(house, 'clear')
    const noon = (day: number): number =>
      windowOf(house, clear, newScratch(house), 0, day * DAY, (day + 1) * DAY).acKw[0]![720]!
    expect(noon(5)).toBeCloseTo(0.4, 5)
    expect(noon(19)).toBeCloseTo(0.4, 5)
    // From here on fewer than sixteen of the thirty-one days around it.
    expect(noon(20)).toBeGreaterThan(0.5)
    expect(loggedArray(record, UTC_2025).covered).toBe(20)
    expect(house.notes.join(' ')).toContain('On 345 days of the year too few are near')
  })

  it('of a bright week gives no dull day: only its own dates, to a record of the weather', () => {
    const record = log(40, 7, () => 3)
    const logged = loggedArray(record, UTC_2025)
    expect(loggedDay(logged, 42, 0)).toBeNull()
    expect(loggedDay(logged, 42, 1)).toBeNull()
    expect(loggedDay(logged, 42, undefined)![720]).toBe(3)
    expect(loggedDay(logged, 47, undefined)).toBeNull()
    expect(prepared(record).notes.join(' ')).toContain(
      'roof: 7 whole days were logged, too few to stand for the array',
    )
  })

  it('leaves out days with a gap', () => {
    const record = log(0, 20, () => 0.4)
    record.kw[3 * 24 + 5] = Number.NaN
    expect(loggedArray(record, UTC_2025).days).toBe(19)
  })

  it('is refused where it holds no whole day', () => {
    expect(() => prepared(log(0, 0, () => 1))).toThrow(
      'log.csv must be a log of at least one whole local day, got "less than that"',
    )
  })
})

describe('a real log', () => {
  const files = folder()
  const array = fileURLToPath(
    new URL('../../../data-samples/array-2022-03-18-two-days-1min.csv', import.meta.url),
  )

  it('is read beside the house file, the night draw of its inverter taken as nothing', () => {
    const path = files.write(
      'house.yaml',
      JSON.stringify(
        plainHouse({
          site: {
            ...{ latitudeDeg: 39.742, longitudeDeg: -105.18, elevationM: 1829 },
            timezone: 'America/Denver',
          },
          arrays: [{ ...ROOF, file: array }],
        }),
      ),
    )
    const loaded = loadHouse(path)
    const house = prepare(loaded.house, loaded.files)
    // Whole local days of the record: 19 March, and too few for a rank.
    const log = house.arrays[0]!.log!
    expect([log.days, log.covered]).toEqual([1, 0])
    const kwh = loggedDay(log, 77, undefined)!.reduce((sum, kw) => sum + kw / 60, 0)
    const recorded = readMeter(array, 'America/Denver', { output: true })
    const first = (Date.UTC(2022, 2, 19, 6) - recorded.startMs) / 60000
    const day = recorded.kw.subarray(first, first + DAY)
    expect(kwh).toBeCloseTo(
      day.reduce((sum, kw) => sum + kw / 60, 0),
      3,
    )
  })

  it('is sought before the load where a file has both; gaps of days stay gaps', () => {
    const rows = ['time,load_kw,pv_kw']
    for (let h = 0; h < 96; h++) {
      const stamp = new Date(Date.UTC(2024, 5, 1, h)).toISOString()
      if (h < 24 || h >= 72) rows.push(`${stamp},0.5,1.5`)
    }
    const path = files.write('both.csv', rows.join('\n'))
    const record = readMeter(path, 'UTC', { output: true })
    expect(record.kw[0]).toBe(1.5)
    expect(record.kw[30]).toBeNaN()
    expect(readMeter(path, 'UTC').notes.join(' ')).toContain('1 gap over 2 h')
  })
})
