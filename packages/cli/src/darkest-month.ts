// The month that is asked about where none is named.

import type { Prepared } from '@tideover/core'

const JANUARY = 1
const JULY = 7

/** The darkest of the year: January north of the equator, July south of it. */
export function darkestMonth({ house }: Prepared): number {
  return house.site.latitudeDeg >= 0 ? JANUARY : JULY
}

/** A question with its month settled. */
export function monthAsked<T extends { readonly month?: number | undefined }>(
  prepared: Prepared,
  asked: T,
): T & { readonly month: number } {
  return { ...asked, month: asked.month ?? darkestMonth(prepared) }
}
