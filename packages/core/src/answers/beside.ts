// What stands beside the figures of an answer.

import { usedDefaults } from '../house/defaults.js'
import type { Prepared } from '../series/prepare.js'
import { cautionsFor } from './cautions.js'
import { meterDoubts } from './meter-doubts.js'
import { type RideAnswer, untoldTolerances } from './ride.js'
import type { Equipped } from './scenario.js'
import { slipsOf } from './slips.js'
import { warningsFor } from './warnings.js'

export type Beside = Pick<RideAnswer, 'cautions' | 'slips' | 'warnings' | 'defaults'>

/**
 * @param month  the one asked about, 1..12
 * @param plain  the house as it was read; without it no defaults are listed
 */
export function besideOf(
  prepared: Prepared,
  equipped: Equipped,
  month: number,
  plain: unknown,
): Beside {
  const { house, notes } = prepared
  const warnings = [warningsFor(prepared, equipped), untoldTolerances(prepared, plain), notes]
  return {
    slips: slipsOf(prepared).concat(meterDoubts(prepared, month)),
    warnings: warnings.flat(),
    cautions: cautionsFor(house),
    defaults: plain === undefined ? [] : usedDefaults(plain),
  }
}
