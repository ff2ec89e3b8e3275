// How a sky is said beside figures of a month or of the whole year.

import { type SkyKind, skyName, skyWords } from '@tideover/core'

/** What of an answer tells its sky. */
export interface SkySaid {
  readonly sky: SkyKind
  readonly spell: { readonly winters: number; readonly days: number } | null
}

/**
 * `a dull sky (a day as dark as 1 January in 10 brings)`; of the whole year, as its own season.
 *
 * @param month  1..12; null for the year
 */
export function underSky({ sky, spell }: SkySaid, month: number | null): string {
  const article = sky === 'dull' || sky === 'clear' ? 'a ' : sky === 'file' ? 'the ' : ''
  if (spell === null || month !== null) return `${article}${skyWords(sky, spell, month ?? 1)}`
  const days = spell.days === 1 ? 'a day' : `${spell.days} days`
  const how = sky === 'none' ? 'cold' : 'dark'
  return (
    `${article}${skyName(sky)} (${days} as ${how} for the season as 1 year in ${spell.winters} ` +
    'brings)'
  )
}
