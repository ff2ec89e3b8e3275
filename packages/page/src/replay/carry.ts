// Packs what a page carries; for Node, where the page is made.

import { deflateRawSync } from 'node:zlib'
import {
  coldYears,
  DULL_YEARS,
  daysOfCut,
  dullYearsOf,
  type HouseFiles,
  type Prepared,
  type SpellDay,
  typicalOf,
} from '@tideover/core'
import { type Asked, type Carried, type Packed, packedRecord } from './carried.js'

/** Lengths that a person may choose. [h] */
const LENGTHS = [2, 4, 8, 12, 24, 48, 72]
/** Synthetic years of `typical`, of which the middle one of each day is played. */
export const TYPICAL_YEARS = 30

export function carriedOf(prepared: Prepared, files: HouseFiles, asked: Asked): Carried {
  const lengths = [...new Set([...LENGTHS, asked.hours])].sort((a, b) => a - b)
  const pack = (records: HouseFiles['meters']): Carried['meters'] =>
    [...(records ?? [])].map(([name, record]) => [name, packedRecord(record)] as const)
  return {
    house: houseOf(prepared),
    asked,
    lengths,
    years: yearsOf(prepared, asked, [...new Set(lengths.map(daysOfCut))]),
    meters: pack(files.meters),
    outputs: pack(files.outputs),
  }
}

/** The house with what its weather file told; the synthetic skies need no more of it. */
function houseOf({ house, clearness, airC }: Prepared): Carried['house'] {
  const { file: _, ...sky } = house.sky
  return { ...house, sky: { ...sky, clearness: [...clearness], airC: [...airC] } }
}

function yearsOf(prepared: Prepared, { seed, winters }: Asked, days: number[]): Carried['years'] {
  const all = [0, prepared.calendar.days.length + 1] as const
  const winterly = typicalOf(prepared, seed, DULL_YEARS)
  const ordinary = typicalOf(prepared, seed, TYPICAL_YEARS)
  const table = (rows: readonly SpellDay[][]): Record<string, number[]> =>
    Object.fromEntries(rows.map((row, i) => [days[i] as number, row.map(({ year }) => year)]))
  return {
    dull: table(dullYearsOf(prepared, winterly, all, days, winters)),
    // Undercut in one year of two: the middle.
    typical: table(dullYearsOf(prepared, ordinary, all, days, 2)),
    none: table(days.map((length) => coldYears(prepared, winterly, all, length, winters))),
  }
}

export function packed(carried: Carried): Packed {
  return { deflated: deflateRawSync(JSON.stringify(carried), { level: 9 }).toString('base64') }
}
