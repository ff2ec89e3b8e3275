// Conditions under which figures of an answer hold, in words.

import { READING_ERROR, type SkyKind, skyName, skyWords } from '@tideover/core'

/** The spell behind the skies `dull` and `none`. */
type Spell = { readonly winters: number; readonly days: number } | null

/** `dull sky (a day as dark for the season as 1 year in 10 brings)` */
export function yearSkyWords(sky: SkyKind, spell: Spell): string {
  if (spell === null) return skyName(sky)
  const days = spell.days === 1 ? 'a day' : `${spell.days} days`
  const how = sky === 'none' ? 'cold' : 'dark'
  return `${skyName(sky)} (${days} as ${how} for the season as 1 year in ${spell.winters} brings)`
}

/** What of an answer tells the ground it stands on. */
export interface Ground {
  readonly sky: SkyKind
  readonly spell: Spell
  readonly startSoc: { readonly kind: 'reserve' | 'full' | 'share'; readonly value: number }
  readonly health: number
}

/** Sky, charge at the start and age. @param month  1..12; null for the whole year */
export function groundWords(
  { sky, spell, startSoc, health }: Ground,
  month: number | null,
): string {
  const under = month === null ? yearSkyWords(sky, spell) : skyWords(sky, spell, month)
  const aged = health === 1 ? 'new' : `aged to ${Math.round(100 * health)}\u00a0%`
  return `${under}; ${startText(startSoc)}, battery ${aged}`
}

function startText({ kind, value }: Ground['startSoc']): string {
  if (kind === 'full') return 'started full'
  const percent = `${Math.round(100 * value)}\u00a0%`
  if (kind === 'share') return `started at ${percent}`
  const points = Math.round(100 * READING_ERROR)
  return `started at the reserve of ${percent} less ${points} points`
}
