// Where a month's starts are lived: one batch a year of the sky, for `dull` one a day.

import { monthRange } from '../axis/calendar.js'
import { type DullDay, daysOfCut, dullYears } from '../series/dull.js'
import { DULL_YEARS, type Prepared, plainSky, typicalOf } from '../series/prepare.js'
import type { Sky, SkyKind } from '../sky/sky.js'

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
  /** Return period of `dull`. */
  readonly winters: number
  readonly seed: number
}

/** The sky of a choice and the batches of the month's starts under it. */
export function monthSky(prepared: Prepared, choice: SkyChoice): MonthSky {
  const [from, to] = monthRange(prepared.calendar, choice.month)
  if (choice.kind === 'dull') return dullMonth(prepared, choice, from, to)
  const sky =
    choice.kind === 'typical'
      ? typicalOf(prepared, choice.seed, choice.years)
      : plainSky(prepared, choice.kind)
  return { sky, batches: Array.from({ length: sky.years }, (_, year) => ({ year, from, to })) }
}

function dullMonth(prepared: Prepared, choice: SkyChoice, from: number, to: number): MonthSky {
  const { dayOf } = prepared.calendar
  const sky = typicalOf(prepared, choice.seed, DULL_YEARS)
  const days = [dayOf[from]!, dayOf[to - 1]! + 2] as const
  const length = daysOfCut(choice.cutHours)
  const chosen = dullYears(prepared, sky, days, length, choice.winters)
  return {
    sky: { ...sky, kind: 'dull' },
    batches: chosen.flatMap((dull) => noonToNoon(prepared, dull, from, to)),
  }
}

/** The starts whose first noon is that of a spell's first day. */
function noonToNoon(prepared: Prepared, dull: DullDay, from: number, to: number): Batch[] {
  const a = Math.max(from, noonOf(prepared, dull.day - 1))
  const b = Math.min(to, noonOf(prepared, dull.day))
  return a < b ? [{ year: dull.year, from: a, to: b }] : []
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

/** The numbered year that a single start sees under `dull`. */
export function dullYearOf(
  prepared: Prepared,
  minute: number,
  cutHours: number,
  winters: number,
  seed: number,
): { sky: Sky; year: number } {
  const sky = typicalOf(prepared, seed, DULL_YEARS)
  const today = prepared.calendar.dayOf[minute]!
  const day = minute < noonOf(prepared, today) ? today : today + 1
  const [chosen] = dullYears(prepared, sky, [day, day + 1], daysOfCut(cutHours), winters)
  return { sky: { ...sky, kind: 'dull' }, year: (chosen as DullDay).year }
}
