// The sky and the numbered year that one start sees, chosen as all starts of a month see theirs.

import type { Prepared } from '../series/prepare.js'
import type { Sky, SkyKind } from '../sky/sky.js'
import { hasYear, isSpell, numberedSky, spellYearOf } from './month-sky.js'

export interface SkyQuestion {
  /** Length of the cut. [h], > 0 */
  readonly hours: number
  /** Default `dull`. */
  readonly sky?: SkyKind
  /** Number of the year, for skies that have several; `dull` and `none` choose theirs without. */
  readonly syntheticYear?: number
  /** Synthetic years of `typical`, which follow each other over New Year; default 30. */
  readonly years?: number
  /** Return period of `dull` and `none`; default 10. */
  readonly winters?: number
  readonly seed?: number
}

/**
 * @param minute  of the start, on the axis of the year
 * @param known   skies met before, kept for the next start
 * @throws        InputError where the sky has no such year
 */
export function skyOfStart(
  prepared: Prepared,
  question: SkyQuestion,
  minute: number,
  known: Map<string, Sky> = new Map(),
): { sky: Sky; year: number } {
  const { sky: kind = 'dull', syntheticYear: asked, winters = 10, hours, years = 30 } = question
  const seed = question.seed ?? prepared.house.seed
  const choice = { kind, seed, cutHours: hours, winters }
  const spell = asked === undefined ? spellYearOf(prepared, minute, choice) : null
  if (spell !== null) return spell
  const year = asked ?? 0
  // The winters of `dull` and `none` are the same whichever of them is lived.
  const name = isSpell(kind) ? `${kind} ${seed}` : `${kind} ${seed} ${Math.max(years, year + 1)}`
  const kept = known.get(name)
  const sky =
    kept !== undefined && hasYear(kept, year)
      ? kept
      : numberedSky(prepared, { kind, seed, years, year })
  known.set(name, sky)
  return { sky, year }
}
