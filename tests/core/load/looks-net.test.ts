// Solar behind a meter that counts import alone, told by the hours around noon.
//
// Truth: a house in France without solar, metered all 2008. G. Hebrail and A. Berard, Individual
// Household Electric Power Consumption, UCI Machine Learning Repository, data set 235, CC BY 4.0.
// An array of our own takes from it what it would have; its sun is half a wave over a day of 8 h in
// December and 16 h in June (roughly 49 N, by memory), every third day dull.

import { readFileSync } from 'node:fs'
import { calendarOf, checkHouse, demandOf } from '@tideover/core'
import { expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

const YEAR = calendarOf(2008, 'UTC')
const url = new URL('../../../data-samples/household-2008-15min.csv', import.meta.url)
const rows = readFileSync(url, 'utf8').trim().split('\n').slice(1)
const LOAD = Float64Array.from(rows, (row) => Number(row.split(',')[1]))
const DAY = 96

function solarKw(i: number, peakKw: number): number {
  const season = Math.cos((2 * Math.PI * (Math.floor(i / DAY) - 172)) / 366)
  const hours = 12 + 4 * season
  const wave = Math.sin((Math.PI * ((i % DAY) / 4 - 12 + hours / 2)) / hours)
  const high = peakKw * (0.5 + 0.25 * season) * (Math.floor(i / DAY) % 3 === 0 ? 0.25 : 1)
  return Math.abs((i % DAY) / 4 - 12) < hours / 2 ? Math.max(0, high * wave) : 0
}

function verdict(
  kw: Float64Array,
  changes: { south?: boolean; load?: object; from?: number } = {},
) {
  const array = { name: 'roof', peakKw: 4, tiltDeg: 30, azimuthDeg: 180, inverter: { ratedKw: 4 } }
  const loads = [{ name: 'whole', tier: 'critical', file: 'm.csv', ...changes.load }]
  const latitudeDeg = changes.south === true ? -49 : 49
  const site = { latitudeDeg, longitudeDeg: 0, elevationM: 0, timezone: 'UTC' }
  const house = checkHouse(plainHouse({ year: 2008, site, arrays: [array], loads }))
  const startMs = YEAR.startMs + (changes.from ?? 0) * 86_400_000
  const record = { name: 'm.csv', startMs, stepMinutes: 15, kw, notes: [] }
  return demandOf(house, YEAR, { meters: new Map([['m.csv', record]]) }).grounds[0]!.looksNet
}

/** What a meter that counts import alone shows. */
const imported = (peakKw: number): Float64Array =>
  LOAD.map((kw, i) => Math.max(0, kw - solarKw(i, peakKw)))

it('finds nothing in the house as it was, all the year and in each of its seasons', () => {
  expect(verdict(LOAD)).toBeNull()
  expect(verdict(LOAD, { south: true })).toBeNull()
  for (const from of [0, 90, 180, 270]) {
    expect(verdict(LOAD.subarray(from * DAY, (from + 60) * DAY), { from })).toBeNull()
  }
})

it('sees an array by noons without any draw', () => {
  expect(verdict(imported(4))).toMatch(/^nothing is drawn in \d\d % of the time around noon/)
})

it('sees it in one summer month alone', () => {
  const june = imported(4).subarray(152 * DAY, 182 * DAY)
  expect(verdict(june, { from: 152 })).toContain('nothing is drawn')
})

it('sees it in the south by the summer of the south', () => {
  const half = 183 * DAY
  const turned = Float64Array.from(LOAD, (kw, i) =>
    Math.max(0, kw - solarKw((i + half) % LOAD.length, 4)),
  )
  expect(verdict(turned, { south: true })).toContain('nothing is drawn')
})

it('sees an array that throttles instead of giving: noons far below those of winter', () => {
  // A control that leaves 0.1 kW from the grid whatever the sun.
  const kept = LOAD.map((kw, i) => Math.max(Math.min(kw, 0.1), kw - solarKw(i, 4)))
  expect(verdict(kept)).toMatch(/the hours around noon draw in summer only \d\d % of/)
})

it('asks nothing where the record is older than every array', () => {
  expect(verdict(imported(4), { load: { beforeArrays: ['roof'] } })).toBeNull()
})
