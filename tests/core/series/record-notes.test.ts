// What is said of a weather file that does not fit the house: recorded elsewhere, or out of step.

import { checkHouse, prepare, type WeatherRecord } from '@tideover/core'
import { readWeather } from '@tideover/files'
import { expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

const RECORD = readWeather(
  new URL('../../../data-samples/greensboro-tmy3.csv', import.meta.url).pathname,
)
const SITE = { latitudeDeg: 36.1, longitudeDeg: -79.95, elevationM: 273 }

function notes(record: WeatherRecord, site: object = {}, timezone = 'America/New_York'): string {
  const sky = { file: 'w', clearness: new Array(12).fill(0.4), airC: new Array(12).fill(10) }
  const house = checkHouse(plainHouse({ site: { ...SITE, ...site, timezone }, sky }))
  return prepare(house, { weather: new Map([['w', record]]) }).notes.join('\n')
}

it('a file of the place in step with its sun is taken without a word', () => {
  expect(notes(RECORD)).not.toMatch(/km from|comes/)
  // A station in the next county.
  expect(notes(RECORD, { latitudeDeg: 36.6 })).not.toMatch(/km from|comes/)
})

it('stamps taken for starts that are ends are an hour out of step', () => {
  const late = { ...RECORD, startMs: RECORD.startMs + 3_600_000 }
  expect(notes(late)).toMatch(/comes (5\d|6\d) min after the sun of the house: do its stamps/)
})

it('a clock taken for UTC is hours out of step', () => {
  expect(notes({ ...RECORD, utcOffsetMinutes: 0 })).toMatch(
    /comes (29|30)\d min before the sun of the house/,
  )
})

it('a file from Greensboro for a house at Chicago is told its distance', () => {
  // Great circle by haversine: 950 km.
  const far = notes(RECORD, { latitudeDeg: 41.98, longitudeDeg: -87.92 }, 'America/Chicago')
  const km = Number(/recorded at [-\d., ]+, (\d+) km from the house/.exec(far)?.[1])
  expect(Math.abs(km - 950)).toBeLessThan(15)
})

it('the meridian of 180° is no distance', () => {
  const site = { latitudeDeg: -17, longitudeDeg: 179.9, elevationM: 0 }
  const near = { ...RECORD, site: { ...site, longitudeDeg: -179.9 } }
  expect(notes(near, site, 'Pacific/Fiji')).not.toMatch(/km from/)
})

it('a file of less than a year says nothing of its step, and refuses only its own sky', () => {
  const short = { ...RECORD, ghi: RECORD.ghi.subarray(0, 4800) }
  expect(notes({ ...short, startMs: short.startMs + 3_600_000 })).not.toMatch(/comes/)
})
