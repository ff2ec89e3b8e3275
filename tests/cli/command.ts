// The built command as a child process, and small houses for it to read.

import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll } from 'vitest'

const MAIN = fileURLToPath(new URL('../../packages/cli/dist/main.js', import.meta.url))
export const SAMPLES = fileURLToPath(new URL('../../data-samples/', import.meta.url))

export interface Ended {
  readonly status: number | null
  readonly out: string
  readonly err: string
}

/** Runs `tideover` with arguments. */
export function tideover(...args: string[]): Promise<Ended> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [MAIN, ...args], { stdio: ['ignore', 'pipe', 'pipe'] })
    let [out, err] = ['', '']
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      out += text
    })
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      err += text
    })
    child.on('error', reject)
    child.on('close', (status) => resolve({ status, out, err }))
  })
}

/**
 * A house of 5 kWh at 0.8 health that empties in hours: 390 W of load, 60 W of losses, indoors.
 * From the reserve of 0.5, less the reading's 0.05, to 0.1: 1.4 kWh. Fifteen degrees put another
 * 0.04 out of reach: 1.24 kWh, which last 165.3 minutes.
 */
export const SMALL_HOUSE = `house: Small
site: { latitudeDeg: 58.2, longitudeDeg: -6.4, elevationM: 25, timezone: Europe/London }
sky:
  clearness: [0.28, 0.33, 0.38, 0.42, 0.45, 0.44, 0.42, 0.41, 0.39, 0.34, 0.29, 0.26]
  airC: [4.5, 4.4, 5.5, 7.2, 9.4, 11.6, 13.2, 13.4, 12.0, 9.5, 6.8, 5.2]
arrays:
  - { name: roof, peakKw: 2, tiltDeg: 35, azimuthDeg: 180, inverter: { ratedKw: 2, onIsland: throttles } }
inverter: { ratedKva: 3, idleW: 50, roundTrip: 1 }
stack:
  module: { usableKwh: 5, chargeKw: 2, dischargeKw: 3 }
  modules: 1
  modulesMax: 3
  place: house
  electronicsW: 10
  selfDischargePerMonth: 0
loads:
  - { name: pump, tier: critical, w: 390 }
`

/** A folder that goes when the tests of a file are over. */
export function folder(): { path: string; write: (name: string, text: string) => string } {
  const path = mkdtempSync(join(tmpdir(), 'tideover-'))
  afterAll(() => rmSync(path, { recursive: true, force: true }))
  return {
    path,
    write(name, text) {
      const file = join(path, name)
      writeFileSync(file, text)
      return file
    },
  }
}

/** Rows of a comma-separated text without quotes, by column. */
export function columnsOf(csv: string): { header: string[]; rows: string[][] } {
  const [header, ...rows] = csv
    .trimEnd()
    .split(/\r?\n/)
    .map((line) => line.split(','))
  return { header: header!, rows }
}
