// What a check of the installation finds: a sentence, its numbers, what it rests on, what to do.

import type { Prepared } from '../../series/prepare.js'
import type { Equipped } from '../scenario.js'

/** Most serious first: breaks the promise; has to be looked into on site; worth knowing. */
export const GRADES = ['mend', 'look', 'good to know'] as const
export type Grade = (typeof GRADES)[number]

export interface Figure {
  readonly name: string
  readonly value: number | string
  /** Empty for a count, a share or a text. */
  readonly unit: string
}

export interface Finding {
  /** The same word for the same finding, for scripts. */
  readonly id: string
  readonly grade: Grade
  readonly what: string
  readonly numbers: readonly Figure[]
  readonly restsOn: string
  readonly toDo: string
}

/** Looks at a house with its stack and says what it finds; most find nothing. */
export type Look = (prepared: Prepared, equipped: Equipped) => Finding[]

export const CP = 'Common practice, no source.'

export function figure(name: string, value: number | string, unit = ''): Figure {
  return { name, value, unit }
}

/** `3.68`, `5`: at most so many decimals, none that say nothing. */
export function short(value: number, decimals = 1): string {
  return String(Number(value.toFixed(decimals)))
}

/** `the pump`, `the pump and the router`, `the pump, the router and 3 more`. */
export function named(names: readonly string[], most = 3): string {
  const shown = names.slice(0, names.length > most ? most - 1 : most)
  const more = names.length - shown.length
  const parts = more > 0 ? [...shown, `${more} more`] : shown
  const last = parts.at(-1) ?? ''
  return parts.length < 2 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`
}
