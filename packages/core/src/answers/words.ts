// How skies and months are said, wherever an answer is read.

import { monthName } from '../axis/calendar.js'
import type { SkyKind } from '../sky/sky.js'

const SKY_NAMES: Readonly<Record<SkyKind, string>> = {
  dull: 'dull sky',
  none: 'no sun',
  typical: 'typical skies',
  clear: 'clear sky',
  file: 'weather file',
}

export function skyName(sky: SkyKind): string {
  return SKY_NAMES[sky]
}

/** The spell behind the skies `dull` and `none`. */
export interface Spell {
  /** Return period. */
  readonly winters: number
  /** Days of the cut over which it is ranked. */
  readonly days: number
}

/** `dull sky (a day as dark as 1 January in 10 brings)`. @param month 1..12 */
export function skyWords(sky: SkyKind, spell: Spell | null, month: number): string {
  if (spell === null) return skyName(sky)
  const days = spell.days === 1 ? 'a day' : `${spell.days} days`
  const how = sky === 'none' ? 'cold' : 'dark'
  return `${skyName(sky)} (${days} as ${how} as 1 ${monthName(month)} in ${spell.winters} brings)`
}
