// Words that differ by country; figures never do.

import type { House } from '@tideover/core'

export interface PaperWords {
  /** A loss of the public supply, with its article. */
  readonly aCut: string
  /** The board with the protective devices. */
  readonly board: string
  /** Who runs the wires in the street. */
  readonly operator: string
  /** The rod or plate in the ground. */
  readonly electrode: string
  readonly bond: string
  /** A number that reaches the operator from everywhere; empty where none is known. */
  readonly dial: string
}

const NEUTRAL: PaperWords = {
  aCut: 'a power cut',
  board: 'distribution board',
  operator: 'network operator',
  electrode: 'earth electrode',
  bond: 'neutral-earth bond',
  dial: '',
}

const GREAT_BRITAIN: PaperWords = {
  ...NEUTRAL,
  board: 'consumer unit',
  dial: '105',
}

const UNITED_STATES: PaperWords = {
  aCut: 'an outage',
  board: 'panel',
  operator: 'utility',
  electrode: 'ground rod',
  bond: 'neutral-ground bond',
  dial: '',
}

const SOUTHERN: PaperWords = { ...NEUTRAL, board: 'switchboard', operator: 'network company' }

/** By time zone and grid code of the site; neutral words where neither tells. */
export function wordsFor({ site }: House): PaperWords {
  if (site.timezone === 'Europe/London') return GREAT_BRITAIN
  if (site.gridCode === 'IEEE1547') return UNITED_STATES
  return site.gridCode === 'AS4777' ? SOUTHERN : NEUTRAL
}
