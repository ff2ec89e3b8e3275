// What stands beside the figures of an answer.

import { type UsedDefault, usedDefaults } from '../house/defaults.js'
import type { Prepared } from '../series/prepare.js'
import { cautionsFor } from './cautions.js'
import { meterDoubts } from './meter-doubts.js'
import type { Equipped } from './scenario.js'
import { slipsOf } from './slips.js'
import { untoldTolerances } from './untold-tolerances.js'
import { warningsFor } from './warnings.js'

export interface Beside {
  readonly cautions: readonly string[]
  /** What looks like a slip in the file, to be looked at first. */
  readonly slips: readonly string[]
  readonly warnings: readonly string[]
  readonly defaults: readonly UsedDefault[]
}

/**
 * @param month  the one asked about, 1..12; null for the whole year
 * @param plain  the house as it was read; without it no defaults are listed
 */
export function besideOf(
  prepared: Prepared,
  equipped: Equipped,
  month: number | null,
  plain: unknown,
): Beside {
  const { house, notes } = prepared
  const warnings = [warningsFor(prepared, equipped), untoldTolerances(prepared, plain), notes]
  return {
    cautions: cautionsFor(house),
    slips: slipsOf(prepared).concat(meterDoubts(prepared, month)),
    warnings: warnings.flat(),
    defaults: plain === undefined ? [] : usedDefaults(plain),
  }
}
