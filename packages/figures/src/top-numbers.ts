// Numbers on top of columns, clear of a level that is drawn through them.

import { INK } from './style.js'

/** Height of a number. [px] */
export const NUMBER_PX = 14

export interface NumberedPanel {
  /** plotly's name of the axis. */
  readonly yref: string
  /** Pixels of a unit of it. */
  readonly pxAUnit: number
  /** Levels drawn through the columns. */
  readonly levels: readonly number[]
}

/** Where a number stands on its column: on the line of a level where that would cross it. */
export function overLine(value: number, { pxAUnit, levels }: NumberedPanel): number {
  let at = value
  for (const level of [...levels].sort((a, b) => a - b)) {
    const above = (level - at) * pxAUnit
    if (above > -2 && above < NUMBER_PX) at = level + 2 / pxAUnit
  }
  return at
}

/** @param texts  of columns at 1, 2, 3 and so on. @param values  how high those are; null is 0 */
export function topNumbers(
  texts: readonly string[],
  values: readonly (number | null)[],
  panel: NumberedPanel,
): Record<string, unknown>[] {
  return texts.map((text, i) => ({
    text,
    xref: 'x',
    yref: panel.yref,
    x: i + 1,
    y: overLine(values[i] ?? 0, panel),
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 0,
    font: { size: texts.length > 8 ? 11 : 12, color: INK },
  }))
}
