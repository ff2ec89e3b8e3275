// Where a month's starts are lived: one batch a year of the sky, for `dull` and `none` one a day.

import { monthRange } from '../axis/calendar.js'
import { InputError } from '../house/problem.js'
import { coldYears, daysOfCut, dullYears, type SpellDay } from '../series/dull.js'
import { DULL_YEARS, type Prepared, plainSky, typicalOf } from '../series/prepare.js'
import { withoutLight } from '../sky/clear.js'
import type { Sky, SkyKind } from '../sky/sky.js'
import type { TypicalSky } from '../sky/typical.js'

/** Consecutive starts that see the same numbered year. */
export interface Batch {
  readonly year: number
  /** First start and one past the last, on the axis of the year. */
  readonly from: number
  readonly to: number
}

export interface MonthSky {
  readonly sky: Sky
  readonly batches: readonly Batch[]
}

export interface SkyChoice {
  readonly kind: SkyKind
  /** 1..12 */
  readonly month: number
  /** Length of the cut. [h] */
  readonly cutHours: number
  /** Synthetic years of `typical`. */
  readonly years: number
  /** Return period of `dull` and `none`. */
  readonly winters: number
  readonly seed: number
  /** Lives this numbered year alone; `dull` and `none` then choose no spell. */
  readonly year?: number
}

/** The sky of a choice and the batches of the month's starts under it. */
export function monthSky(prepared: Prepared, choice: SkyChoice): MonthSky {
  const [from, to] = monthRange(prepared.calendar, choice.month)
  if (choice.year !== undefined) {
    const sky = numberedSky(prepared, { ...choice, year: choice.year })
    return { sky, batches: [{ year: choice.year, from, to }] }
  }
  if (isSpell(choice.kind)) return spellMonth(prepared, choice, from, to)
  const sky = skyOfYears(prepared, choice.kind, choice.seed, choice.years)
  return { sky, batches: Array.from({ length: sky.years }, (_, year) => ({ year, from, to })) }
}

/**
 * The sky that has a numbered year, as a trace of that year takes it.
 *
 * @throws  InputError where it has none of that number
 */
export function numberedSky(
  prepared: Prepared,
  { kind, seed, years, year }: Pick<SkyChoice, 'kind' | 'seed' | 'years'> & { year: number },
): Sky {
  const sky = skyOfYears(prepared, kind, seed, Math.max(years, year + 1))
  if (!hasYear(sky, year)) {
    throw new InputError('synthetic-year', `a whole number 0..${sky.years - 1}`, year)
  }
  return sky
}

export function hasYear(sky: Sky, year: number): boolean {
  return Number.isInteger(year) && year >= 0 && year < sky.years
}

/** Skies that live a spell of its own for each day a start may meet first. */
export function isSpell(kind: SkyKind): boolean {
  return kind === 'dull' || kind === 'none'
}

function spellMonth(prepared: Prepared, choice: SkyChoice, from: number, to: number): MonthSky {
  const { dayOf } = prepared.calendar
  const days = [dayOf[from]!, dayOf[to - 1]! + 2] as const
  const { sky, chosen } = spellsOf(prepared, choice, days)
  return { sky, batches: chosen.flatMap((spell) => noonToNoon(prepared, spell, from, to)) }
}

function spellsOf(
  prepared: Prepared,
  { kind, seed, cutHours, winters }: Pick<SkyChoice, 'kind' | 'seed' | 'cutHours' | 'winters'>,
  days: readonly [number, number],
): { sky: Sky; chosen: SpellDay[] } {
  const typical = typicalOf(prepared, seed, DULL_YEARS)
  const years = kind === 'dull' ? dullYears : coldYears
  return {
    sky: spellSky(typical, kind),
    chosen: years(prepared, typical, days, daysOfCut(cutHours), winters),
  }
}

/** The winters of `dull` and `none`, as they are lived. */
function spellSky(typical: TypicalSky, kind: SkyKind): Sky {
  return kind === 'dull' ? { ...typical, kind } : withoutLight(typical)
}

/** The starts whose first noon is that of a spell's first day. */
function noonToNoon(prepared: Prepared, spell: SpellDay, from: number, to: number): Batch[] {
  const a = Math.max(from, noonOf(prepared, spell.day - 1))
  const b = Math.min(to, noonOf(prepared, spell.day))
  return a < b ? [{ year: spell.year, from: a, to: b }] : []
}

/** Noon of the clock on the wall; days before and after the year take the middle of the day. */
function noonOf(prepared: Prepared, day: number): number {
  const { days, wallMinute, n } = prepared.calendar
  if (day < 0) return -720
  const found = days[day]
  if (found === undefined) return n + 720
  let minute = found.start
  while (wallMinute[minute]! < 720) minute++
  return minute
}

/** A sky of which one year is named: no winters are ranked. @param years  of `typical` */
export function skyOfYears(prepared: Prepared, kind: SkyKind, seed: number, years: number): Sky {
  if (isSpell(kind)) return spellSky(typicalOf(prepared, seed, DULL_YEARS), kind)
  if (kind === 'typical') return typicalOf(prepared, seed, years)
  return plainSky(prepared, kind as 'clear' | 'file')
}

/** The numbered year that a single start sees under `dull` or `none`; null under other skies. */
export function spellYearOf(
  prepared: Prepared,
  minute: number,
  choice: Pick<SkyChoice, 'kind' | 'seed' | 'cutHours' | 'winters'>,
): { sky: Sky; year: number } | null {
  if (!isSpell(choice.kind)) return null
  const day = firstNoonDay(prepared, minute)
  const { sky, chosen } = spellsOf(prepared, choice, [day, day + 1])
  return { sky, year: chosen[0]!.year }
}

/** Index of the day whose noon a start meets first; one past the last after the year's last noon. */
export function firstNoonDay(prepared: Prepared, minute: number): number {
  const today = prepared.calendar.dayOf[minute]!
  return minute < noonOf(prepared, today) ? today : today + 1
}
