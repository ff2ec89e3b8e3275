// Houses of which papers are made in tests: the three that ship, one of many loads, small ones.

import { fileURLToPath } from 'node:url'
import {
  cautionsFor,
  checkHouse,
  type LoadFigures,
  type Prepared,
  prepare,
  type RideAnswer,
  rideLoads,
  type SkyFigures,
  toleranceOf,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { type PapersInput, papersInput } from '@tideover/page'
import { plainHouse } from '../../core/plain-house.js'

type Plain = Record<string, unknown>

/** Papers of a house that ships. */
export function shipped(name: string): PapersInput {
  const path = fileURLToPath(new URL(`../../../data-samples/${name}.yaml`, import.meta.url))
  const { house, files, plain } = loadHouse(path)
  const prepared = prepare(house, files)
  return papersInput(prepared, inventedRide(prepared), { files, plain })
}

/** Papers of the small house with changes. */
export function small(changes: Plain = {}): PapersInput {
  const plain = plainHouse(changes)
  const prepared = prepare(checkHouse(plain))
  return papersInput(prepared, inventedRide(prepared), { plain })
}

/** A ride whose figures are our own invention: papers only carry them over. */
export function inventedRide(prepared: Prepared, changes: Partial<SkyFigures> = {}): RideAnswer {
  const { house, demand } = prepared
  const loads = rideLoads(demand).map((load, i): LoadFigures => {
    const minutes = toleranceOf(load)
    return {
      name: load.name,
      toleratesMinutes: Number.isFinite(minutes) ? minutes : null,
      toleranceBasis: null,
      share: 0.46,
      keptShare: 0.46,
      wanted: true,
      worstHours: 4.9,
      medianHours: 23.4,
      firstToFail: i === 0,
    }
  })
  const dull: SkyFigures = {
    starts: 44640,
    share: 0.46,
    hardest: 'any',
    shareByPattern: { any: 0.46, evening: 0.5, windy: 0.5 },
    startsByPattern: { any: 44640, evening: 11160, windy: 22000 },
    winters: 10,
    worstHours: 4.9,
    p05Hours: 5.2,
    medianHours: 23.4,
    bestHours: 30,
    worstStart: null,
    worstYear: null,
    worstLoad: null,
    atLeastHours: false,
    horizonHours: 48,
    hoursWithoutMean: 3,
    changeoverLostShare: 0,
    loads,
    ...changes,
  }
  return {
    house: house.house,
    site: house.site,
    month: 1,
    cutHours: 24,
    modules: house.stack.modules,
    startSoc: { kind: 'reserve', value: house.stack.reserve },
    health: house.stack.health,
    years: 1,
    seed: house.seed,
    promise: 'dull',
    patterns: [],
    skies: { dull },
    withoutGenerator: null,
    bright: { share: null, conditions: '' },
    met: null,
    cautions: cautionsFor(house),
    slips: [],
    warnings: [],
    defaults: [],
  }
}

/** Markup, quotes, a family that is one sign, and a word without end. */
export const HOSTILE =
  `<script>alert("x")</script> & 'the' 👩‍👩‍👧‍👦 ` +
  'Rindfleischetikettierungsueberwachung'.repeat(2)

const DC = { peakKw: 1, tiltDeg: 30, azimuthDeg: 180 }
const FLOOR = { ratedKw: 2, onIsland: 'throttles to a floor' }

export const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  cansL: 20,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'by hand',
}

/** Both kinds of solar inverter, DC-coupled arrays, every rule that has a setting. */
export const ALL_SETTINGS: Plain = {
  arrays: [
    { ...DC, name: `a ${HOSTILE}`, inverter: { ratedKw: 2, onIsland: 'trips' } },
    { ...DC, name: `b ${HOSTILE}`, inverter: FLOOR },
    ...['c', 'd', 'e', 'f'].map((letter) => ({ ...DC, name: `${letter} ${HOSTILE}` })),
  ],
  inverter: { ratedKva: 3, whenEmpty: 'retries' },
  loads: [
    { name: 'pump', tier: 'critical', w: 390 },
    { name: 'lamp', tier: 'comfort', w: 10 },
  ],
  generator: GENERATOR,
  person: {},
}

/** As many loads as asked, on as many steps as there may be, all with names that do not fit, too much for the inverter. */
export function crowded(loads = 25): Plain {
  const tierOf = (i: number): string => ['critical', 'comfort', 'gridOnly'][i % 3]!
  return {
    ...ALL_SETTINGS,
    house: HOSTILE,
    loads: Array.from({ length: loads }, (_, i) => ({
      name: `${i} fridge, boiler, router, ${HOSTILE}`,
      tier: tierOf(i),
      w: 100 + i,
      startingMultiple: 10,
      pieces: 2,
      ...(tierOf(i) === 'critical' ? { toleratesMinutes: 60 } : {}),
      ...(tierOf(i) === 'comfort' ? { dropOrder: 1 + (i % 9) } : {}),
    })),
  }
}
