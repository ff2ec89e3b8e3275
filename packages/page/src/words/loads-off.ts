// The charges at which everything goes off and comes back, warm and at the coldest, as page and card
// say them.

import { coldestLoadsOffAt, type Equipped, type Prepared } from '@tideover/core'

export interface LoadsOffWords {
  /** `10 %`, or `10 % (20 % when the battery is at its coldest)` */
  readonly at: string
  /** The higher of the two: a house that goes dark well above it was not empty. `20 %` */
  readonly highest: string
  /** Where loads come back, said as `at` is. */
  readonly back: string
  /** The higher of the two. */
  readonly backHighest: string
}

/** @param said  writes a share as a whole percentage */
export function loadsOffWords(
  prepared: Prepared,
  equipped: Equipped,
  said: (share: number) => string,
): LoadsOffWords {
  const { loadsOffAt, loadsBackAt } = equipped.house.inverter
  const coldest = coldestLoadsOffAt(prepared, equipped)
  const off = warmAndCold(said, loadsOffAt, coldest)
  const back = warmAndCold(said, loadsBackAt, loadsBackAt + coldest - loadsOffAt)
  return { at: off.words, highest: off.highest, back: back.words, backHighest: back.highest }
}

function warmAndCold(
  said: (share: number) => string,
  warm: number,
  cold: number,
): { words: string; highest: string } {
  // Rounded up, so that the charge at which it went dark is never read as one well above.
  const highest = said(Math.min(1, Math.ceil(100 * cold - 1e-9) / 100))
  if (highest === said(warm)) return { words: highest, highest }
  return { words: `${said(warm)} (${highest} when the battery is at its coldest)`, highest }
}
