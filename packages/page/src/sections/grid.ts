// A table of figures that stays one on a phone, its cells shaded where that helps to read it.

import { INK } from '@tideover/figures'
import { type Html, html } from '../html/html.js'

/**
 * From all to none, lighter to darker, so that it reads in grey and by people who see few colours.
 * The text of each is told apart from it by 5 to 1 at least.
 */
export const SHADES = [
  { fill: '#ffffff', text: INK },
  { fill: '#dfe9f0', text: INK },
  { fill: '#b5cddd', text: INK },
  { fill: '#86adc8', text: INK },
  { fill: '#2b5f8a', text: '#ffffff' },
  { fill: '#12304d', text: '#ffffff' },
] as const
export type Shade = 0 | 1 | 2 | 3 | 4 | 5

/** Shade of a share: all, from three quarters, a half, a quarter, less, none. */
export function shadeOf(share: number): Shade {
  if (share >= 1) return 0
  if (share >= 0.75) return 1
  if (share >= 0.5) return 2
  if (share >= 0.25) return 3
  return share >= 0.01 ? 4 : 5
}

export interface GridCell {
  readonly text: string
  readonly shade?: Shade
}

/** @param rows  the first cell names its row */
export function grid(
  head: readonly string[],
  rows: readonly (readonly [string, ...GridCell[]])[],
  caption: string,
): Html {
  const isShaded = rows.some(([, ...cells]) => cells.some(({ shade }) => shade !== undefined))
  return html`<table class="grid${isShaded ? ' even' : ''}"><caption class="aside">${caption}</caption><thead><tr>${head.map(
    (name) => html`<th scope="col">${name}</th>`,
  )}</tr></thead><tbody>${rows.map(
    ([name, ...cells]) =>
      html`<tr><th scope="row">${name}</th>${(cells as readonly GridCell[]).map(
        ({ text, shade }) =>
          html`<td${shade === undefined ? null : html` class="shade${shade}"`}>${text}</td>`,
      )}</tr>`,
  )}</tbody></table>`
}

/** What each shade says. @param words  from the lightest on */
export function shadeKey(words: readonly string[]): Html {
  return html`<ul class="key">${words.map(
    (text, i) =>
      html`<li><svg class="swatch" viewBox="0 0 18 12" aria-hidden="true"><rect x="0.5" y="0.5" width="17" height="11" fill="${SHADES[i]!.fill}" stroke="${INK}"/></svg> ${text}</li>`,
  )}</ul>`
}

export const GRID_STYLE = SHADES.map(
  ({ fill, text }, i) => `.shade${i} { background: ${fill}; color: ${text}; }`,
).join('\n')
