// Columns whose parts are cases of one quantity, each reaching further than the one below it.

import type { Trace } from './figure.js'
import { INK } from './style.js'

export interface NestedCase {
  readonly words: string
  readonly color: string
  /** How far it reaches at each place; null where it is not known. */
  readonly ends: readonly (number | null)[]
  /** The same as it is said. */
  readonly said: readonly string[]
}

/** What a case has over the one below it. */
export interface NestedPiece {
  readonly from: number
  readonly to: number
}

/** Of each case, at each place; nothing where a case reaches no further or is not known. */
export function nestedPieces(cases: readonly Pick<NestedCase, 'ends'>[]): NestedPiece[][] {
  let below: readonly number[] = cases[0]?.ends.map(() => 0) ?? []
  return cases.map(({ ends }) => {
    const pieces = ends.map((end, i) => ({ from: below[i]!, to: Math.max(below[i]!, end ?? 0) }))
    below = pieces.map(({ to }) => to)
    return pieces
  })
}

/** For a layout with `barmode: 'stack'`. @param where  how a place is said in the hover text */
export function nestedColumns(
  x: readonly number[],
  cases: readonly NestedCase[],
  yaxis: string,
  where: readonly string[],
  unit: string,
): Trace[] {
  return nestedPieces(cases).map((pieces, c) => {
    const { words, color, said } = cases[c]!
    return {
      type: 'bar',
      name: words,
      x,
      y: pieces.map(({ from, to }) => to - from),
      yaxis,
      text: said.map((text, i) => `${where[i]}, ${words}: ${text} ${unit}`),
      textposition: 'none',
      marker: { color, line: { color: INK, width: 0.5 } },
      hovertemplate: '%{text}<extra></extra>',
    }
  })
}
