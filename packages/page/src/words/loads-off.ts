// The charge at which everything goes off, warm and at its coldest, as page and card say it.

import { coldestLoadsOffAt, type Equipped, type Prepared } from '@tideover/core'

export interface LoadsOffWords {
  /** `10 %`, or `10 % (20 % when the battery is at its coldest)` */
  readonly at: string
  /** The higher of the two: a house that goes dark well above it was not empty. `20 %` */
  readonly highest: string
}

/** @param said  writes a share as a whole percentage */
export function loadsOffWords(
  prepared: Prepared,
  equipped: Equipped,
  said: (share: number) => string,
): LoadsOffWords {
  const warm = said(equipped.house.inverter.loadsOffAt)
  // Rounded up, so that the charge at which it went dark is never read as one well above.
  const whole = Math.ceil(100 * coldestLoadsOffAt(prepared, equipped) - 1e-9)
  const highest = said(Math.min(1, whole / 100))
  if (highest === warm) return { at: warm, highest }
  return { at: `${warm} (${highest} when the battery is at its coldest)`, highest }
}
