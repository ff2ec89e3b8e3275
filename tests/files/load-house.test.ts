// A house with its records: which column of a file, and by which clock.

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { prepare } from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { plainHouse } from '../core/plain-house.js'
import { refusal } from './problems.js'

const METER = 'two.csv'
const PUMP = { name: 'pump', tier: 'gridOnly', file: METER, column: 'heat_pump_kw' }
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'records-'))
  const hours = Array.from({ length: 72 }, (_, i) => {
    const day = String(1 + Math.floor(i / 24)).padStart(2, '0')
    const clock = `2025-07-${day} ${String(i % 24).padStart(2, '0')}:00`
    // From the grid 0.5 kW but at noon, when the roof of 2 kW gives 1.5 kW back.
    return i % 24 === 12 ? `${clock},0,1.5,2,0.1` : `${clock},0.5,0,0,0.1`
  })
  const head = 'time,import_kw,export_kw,solar_kw,heat_pump_kw'
  writeFileSync(join(folder, METER), [head, ...hours].join('\n'))
})
afterAll(() => {
  rmSync(folder, { recursive: true })
})

function load(changes: object) {
  const path = join(folder, 'house.json')
  writeFileSync(path, JSON.stringify(plainHouse({ ...changes })))
  return loadHouse(path)
}

const roof = {
  ...{ name: 'roof', peakKw: 3, tiltDeg: 30, azimuthDeg: 180, inverter: { ratedKw: 3 } },
  file: METER,
}
const whole = { name: 'whole', tier: 'critical', file: METER, column: 'import_kw' }

it('one file may hold the meter, the log of the array and an appliance', () => {
  const { house, files } = load({
    arrays: [roof],
    loads: [{ ...whole, contains: ['pump'] }, PUMP],
  })
  const { demand } = prepare(house, files)
  // 0.5 kW all the time, of which 0.1 kW is the pump.
  expect(demand.criticalKw.every((kw) => Math.abs(kw - 0.4) < 1e-5)).toBe(true)
  expect(demand.gridOnlyKw[0]).toBeCloseTo(0.1, 5)
})

it('a meter that keeps winter time is read by its own clock', () => {
  const site = { latitudeDeg: 52, longitudeDeg: 0, elevationM: 0, timezone: 'Europe/London' }
  const at = (zone?: string): number => {
    const given = zone === undefined ? PUMP : { ...PUMP, zone }
    const { files } = load({ site, loads: [{ name: 'light', tier: 'critical', w: 9 }, given] })
    return [...files.meters!.values()][0]!.startMs
  }
  expect(at()).toBe(Date.UTC(2025, 5, 30, 23))
  expect(at('UTC')).toBe(Date.UTC(2025, 6, 1))
  expect(at('UTC+1')).toBe(Date.UTC(2025, 5, 30, 23))
})

it.each([
  [{ ...PUMP, zone: 'GMT summer' }, 'zone .* must be an IANA time zone, or UTC\\+1 and the like'],
  [{ ...PUMP, column: 'pump' }, 'a header with the column "pump", got time, import_kw'],
  [{ name: 'tv', tier: 'comfort', w: 9, column: 'x' }, 'column .* left out where no meter file'],
])('refuses %j', (given, message) => {
  const loads = [{ name: 'light', tier: 'critical', w: 9 }, given]
  expect(refusal(() => load({ loads }))).toMatch(new RegExp(message))
})
