// How a part of a whole is shaded: five steps of lightness, the darker the less of it there is.
//
// Steps, not a slide, so that a cell can be told from the key; the words in it say the rest.

import type { KeyEntry } from './panels.js'
import { INK, PARTS, QUIET } from './style.js'

export interface PartLook {
  /** Which of the steps, 0 the least; null where the part is not known. */
  readonly step: number | null
  readonly fill: string
  /** For words on it. */
  readonly ink: string
}

/** Upper ends of all steps but the last, which is the whole. */
const ENDS = [0.25, 0.5, 0.75, 1]

/** From this step on words are dark. */
const FIRST_LIGHT = 2

/** @param part  0..1, more counts as 1; null or NaN where it is not known */
export function partLook(part: number | null): PartLook {
  if (part === null || Number.isNaN(part)) return { step: null, fill: '#ffffff', ink: QUIET }
  const under = ENDS.findIndex((end) => part < end)
  const step = under < 0 ? ENDS.length : under
  return { step, fill: PARTS[step]!, ink: step < FIRST_LIGHT ? '#ffffff' : INK }
}

/** From where on each step holds. @param whole  what the whole is, in the unit of the figure */
export function partKey(whole: number): KeyEntry[] {
  const said = (part: number): string => String(Number((part * whole).toPrecision(3)))
  return [0, ...ENDS].map((from, step) =>
    step === ENDS.length
      ? { words: said(from), color: QUIET, sign: '□' }
      : { words: `${step === 0 ? 'from ' : ''}${said(from)}`, color: PARTS[step]! },
  )
}

/** Steps of colour for a heat map whose values are the steps. */
export function partScale(): [number, string][] {
  return PARTS.flatMap((fill, step): [number, string][] => [
    [step / PARTS.length, fill],
    [(step + 1) / PARTS.length, fill],
  ])
}
