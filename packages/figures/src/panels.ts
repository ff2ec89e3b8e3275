// Panels above each other, laid out in pixels, with a heading that names what is drawn and its
// unit.

import { INK } from './style.js'

export interface Panels {
  /** All of them together. [px] */
  readonly heightPx: number
  /** Lower and upper end, as shares of the height from below. */
  domain(name: string): [number, number]
}

/** @param rows  name and height [px] of each panel from above; null is a gap */
export function panels(rows: readonly (readonly [string | null, number])[]): Panels {
  const heightPx = rows.reduce((sum, [, height]) => sum + height, 0)
  const domains = new Map<string | null, [number, number]>()
  let above = 0
  for (const [name, height] of rows) {
    domains.set(name, [1 - (above + height) / heightPx, 1 - above / heightPx])
    above += height
  }
  return { heightPx, domain: (name) => domains.get(name) as [number, number] }
}

/** One entry of a heading's key. */
export interface KeyEntry {
  readonly words: string
  readonly color: string
  /** Default a square. */
  readonly sign?: string
}

/**
 * Name and unit above a panel, and below them the areas in the order in which they are stacked,
 * the lowest first.
 *
 * @param top  upper end of the panel's domain
 */
export function heading(
  top: number,
  words: string,
  unit: string,
  key: readonly KeyEntry[] = [],
): Record<string, unknown> {
  return {
    text: [`<b>${words}</b> [${unit}]`, keyLine(key)].filter((line) => line !== '').join('<br>'),
    xref: 'paper',
    yref: 'paper',
    x: 0,
    y: top,
    xanchor: 'left',
    yanchor: 'bottom',
    xshift: -36,
    align: 'left',
    showarrow: false,
    font: { size: 12.5, color: INK },
  }
}

/** `■ sun  ■ battery`, each sign in its colour. */
export function keyLine(key: readonly KeyEntry[]): string {
  const entries = key.map(
    ({ words, color, sign = '■' }) => `<span style="color:${color}">${sign}</span> ${words}`,
  )
  return entries.join('  ')
}
