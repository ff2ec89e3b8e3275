// The pass against stepping, for a whole house under its own sky: a seeded sample of the starts of a
// window is stepped with nothing shared; whole lists of down spells, and states in the end.

import { fileURLToPath } from 'node:url'
import {
  type Compiled,
  compile,
  equip,
  luck,
  MINUTE_MS,
  monthRange,
  newScratch,
  type Prepared,
  pass,
  prepare,
  type Scenario,
  skyOfYears,
  spellYearOf,
  windowOf,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { compareEnds, spellsOf, stepped } from './compare-starts.js'

/** The houses of `data-samples`. */
export const DEMO_HOUSES = ['croft', 'surgery', 'bungalow'] as const

/**
 * Skies and stacks in which the houses are lived: as they stand under the sky of the promise, and
 * with so little that they go down and come back at every season.
 */
export const DEMO_CASES = [
  { sky: 'dull', scenario: {} },
  { sky: 'typical', scenario: { modules: 1 } },
  { sky: 'typical', scenario: { modules: 1, generator: false } },
] as const satisfies readonly Pick<HouseSpan, 'sky' | 'scenario'>[]

export function demoHouse(name: string): Prepared {
  const path = fileURLToPath(new URL(`../../../data-samples/${name}.yaml`, import.meta.url))
  const { house, files } = loadHouse(path)
  return prepare(house, files)
}

export interface HouseSpan {
  /** 1..12 */
  readonly month: number
  readonly sky: 'dull' | 'typical'
  readonly scenario: Scenario
  readonly seed: number
  /** Consecutive starts that the pass carries, from a seeded minute of the month on. */
  readonly starts: number
  /** How far each is followed. [min] */
  readonly horizon: number
  /** How many of them are stepped with nothing shared. */
  readonly stepped: number
}

export interface HouseComparison {
  readonly about: string
  readonly stepped: number
  /** Down spells of the starts that were stepped. */
  readonly spells: number
  readonly ends: number
  /** One sentence each; none where pass and step agree. */
  readonly differences: readonly string[]
}

/** Years of the typical sky, of which one is lived. */
const YEARS = 30
const WINDOW_STREAM = 901
const YEAR_STREAM = 902
const SAMPLE_STREAM = 903

export function compareMonth(prepared: Prepared, span: HouseSpan): HouseComparison {
  const { month, seed, starts, horizon } = span
  const [first, end] = monthRange(prepared.calendar, month)
  const from = first + drawn(seed, WINDOW_STREAM, month, end - first - starts)
  const { compiled, startKwh, year } = lived(prepared, span, from)
  const carried = pass(compiled.columns, compiled.rules, starts, startKwh, horizon)
  const about = `${prepared.house.house}, month ${month}, ${span.sky} sky, year ${year}`
  const differences: string[] = []
  const differ = (start: number, what: string, a: string, b: string): void => {
    if (a === b) return
    const at = new Date(prepared.calendar.startMs + (from + start) * MINUTE_MS).toISOString()
    differences.push(`${about}, start ${at}, ${what}: ${a} in the pass, not ${b}`)
  }
  let spells = 0
  for (let k = 0; k < span.stepped; k++) {
    const start = drawn(seed, SAMPLE_STREAM, 1000 * month + k, starts)
    const alone = stepped(compiled, startKwh, start, horizon)
    spells += alone.length / 2
    differ(start, 'stepped', spellsOf(carried, start, horizon).join(), alone.join())
  }
  const every = Math.ceil(starts / span.stepped)
  const ends = compareEnds(compiled, startKwh, Math.min(starts, horizon), every, differ)
  return { about, stepped: span.stepped, spells, ends, differences }
}

function drawn(seed: number, stream: number, index: number, below: number): number {
  return Math.floor(luck(seed, stream, index) * below)
}

/** The island of a window, under the year that the answer of its first start would live. */
function lived(
  prepared: Prepared,
  { month, sky: kind, seed, starts, horizon, scenario }: HouseSpan,
  from: number,
): { compiled: Compiled; startKwh: number; year: number } {
  const { sky, year } = spellYearOf(prepared, from, { kind, seed, cutHours: 24, winters: 10 }) ?? {
    sky: skyOfYears(prepared, kind, seed, YEARS),
    year: drawn(seed, YEAR_STREAM, month, YEARS),
  }
  const window = windowOf(prepared, sky, newScratch(prepared), year, from, from + starts + horizon)
  const { house, plant, rules, startKwh } = equip(prepared, scenario)
  const { calendar, demand } = prepared
  return { compiled: compile(house, calendar, demand, plant, rules, window), startKwh, year }
}
