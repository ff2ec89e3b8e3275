// A plain tolerance: a budget of minutes that gaps use up and supply refills.

import type { Consequence } from './consequence.js'

/** @param toleratesMinutes  longest gap that does no harm. [min], >= 0 */
export function plainGap(toleratesMinutes: number): Consequence {
  return {
    basis: null,
    rest: 0,
    beginsAtOnce: false,
    afterGap: (used, minutes) => used + minutes,
    afterSupply: (used, minutes) => Math.max(0, used - minutes),
    lostIn: (used) => toleratesMinutes - used,
    shown: null,
  }
}
