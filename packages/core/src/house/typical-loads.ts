// What a load that names its kind takes from the table of typical loads.
//
// Whatever is stated wins, field by field. Fields that exclude each other are one matter: who says
// how a load runs takes nothing of it from the table.

import { distance } from 'fastest-levenshtein'
import { CONSEQUENCES, type LoadInput } from './house.js'
import { SURVEY_ONLY } from './survey-faults.js'
import { TYPICAL_KINDS, TYPICAL_ROWS, type TypicalKind, type TypicalRow } from './typical-rows.js'

type Plain = Record<string, unknown>

/** Fields of which one tells the gap that does no harm. */
const GAPS = ['toleratesMinutes', ...CONSEQUENCES]

/** Fields of a row that are left when these are stated. */
const GIVES_WAY: Readonly<Record<string, readonly string[]>> = {
  ...Object.fromEntries(GAPS.map((gap) => [gap, GAPS])),
  w: ['byAir'],
  at: ['events'],
  cycle: ['events', 'charging', 'byAir'],
  events: ['cycle', 'charging', 'byAir', 'at'],
  charging: ['cycle', 'events', 'byAir'],
  byAir: ['w', 'cycle', 'events', 'charging'],
  motorHp: ['startingMultiple'],
  file: [...SURVEY_ONLY, 'runs', 'startingMultiple'],
  profile: [...SURVEY_ONLY, 'runs', 'startingMultiple'],
}

/** The row of a kind; null where the table has none. */
export function typicalRow(kind: unknown): TypicalRow | null {
  const known = typeof kind === 'string' && Object.hasOwn(TYPICAL_ROWS, kind)
  return known ? (TYPICAL_ROWS[kind as TypicalKind] as unknown as TypicalRow) : null
}

/** Fields that a load takes from its row; none without a known kind. */
export function takenFrom(load: Plain): string[] {
  const row = typicalRow(load.like)
  if (row === null) return []
  const stated = Object.keys(load).filter((field) => load[field] !== undefined)
  const left = new Set([...stated, ...stated.flatMap((field) => GIVES_WAY[field] ?? [])])
  return Object.keys(row.load).filter((field) => !left.has(field))
}

/** A plain house with its loads filled from the table; anything else as it came. */
export function withTypicalLoads(plain: unknown): unknown {
  const loads = (plain as Plain | null)?.loads
  if (!Array.isArray(loads)) return plain
  return { ...(plain as Plain), loads: loads.map(filled) }
}

function filled(load: unknown): unknown {
  if (typeof load !== 'object' || load === null) return load
  const row = typicalRow((load as Plain).like)
  if (row === null) return load
  const fields = takenFrom(load as Plain).map((field) => [field, (row.load as Plain)[field]])
  return { ...load, ...Object.fromEntries(fields) }
}

const MOST_NEAR = 3
/** Share of its letters by which a word may be off. */
const NEAR_SHARE = 0.4

/** What is needed of a kind, with those that are spelt alike. */
export function kindNeed(came: unknown): string {
  const word = String(came ?? '').toLowerCase()
  const away = (kind: string): number =>
    kind.split(' ').some((part) => word.split(' ').includes(part)) ? 0 : distance(word, kind)
  const near = TYPICAL_KINDS.filter((kind) => away(kind) <= NEAR_SHARE * kind.length)
    .sort((a, b) => away(a) - away(b))
    .slice(0, MOST_NEAR)
  const mean = near.length === 0 ? '' : `did you mean ${near.join(', ')}? `
  return `a kind of the table of typical loads (${mean}load --kinds lists them)`
}

/** What is said of loads that rest on the table. */
export function typicalNotes(loads: readonly LoadInput[]): string[] {
  const taken = loads.filter(({ taken }) => taken !== undefined && taken.length > 0)
  if (taken.length === 0) return []
  const names = (some: readonly LoadInput[]): string => some.map(({ name }) => name).join(', ')
  const off = taken.filter(({ tier, taken }) => tier === 'gridOnly' && taken?.includes('tier'))
  const notes = [
    `${names(taken)}: typical values where the house names none; load marks them. Read the plates.`,
  ]
  if (off.length > 0) {
    notes.unshift(
      `${names(off)}: taken off the island, as is usual for the kind; off in a cut unless tier ` +
        'says otherwise.',
    )
  }
  return notes
}
