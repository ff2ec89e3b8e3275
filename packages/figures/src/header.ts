// Title of a figure and, below it in small, the conditions under which it holds.

import { BASE_LAYOUT, QUIET } from './style.js'
import { wrapped } from './words.js'

const PAD_PX = 12
/** How much plotly raises a title of several lines. [px] */
const RAISED_PX = 11
const TITLE = { letters: 48, sizePx: 15, linePx: 20 }
const CONDITIONS = { letters: 62, sizePx: 12, linePx: 16 }

export interface Header {
  readonly title: { readonly text: string; readonly [attribute: string]: unknown }
  /** Margin that it needs above the panels. [px] */
  readonly topPx: number
}

/** Lines are broken so that they fit a phone. */
export function header(title: string, conditions: string): Header {
  const [text, below] = [wrapped(title, TITLE.letters), wrapped(conditions, CONDITIONS.letters)]
  return {
    title: {
      text,
      x: 0,
      xanchor: 'left',
      y: 1,
      yref: 'container',
      yanchor: 'top',
      pad: { l: 6, t: lines(text) > 1 ? PAD_PX + RAISED_PX : PAD_PX },
      font: { size: TITLE.sizePx },
      subtitle: { text: below, font: { size: CONDITIONS.sizePx, color: QUIET } },
    },
    topPx: 2 * PAD_PX + TITLE.linePx * lines(text) + CONDITIONS.linePx * lines(below),
  }
}

/**
 * What every layout begins with: the title, and as much height as it and the plot need.
 *
 * @param plotPx  height between the margins. [px]
 * @param keyPx   room for what stands between title and plot. [px]
 */
export function sheet(
  { title, topPx }: Header,
  plotPx: number,
  margin: { readonly l: number; readonly r: number; readonly b: number },
  keyPx = 0,
): typeof BASE_LAYOUT & { readonly title: Header['title']; readonly [attribute: string]: unknown } {
  const t = topPx + keyPx
  return { ...BASE_LAYOUT, title, height: t + plotPx + margin.b, margin: { ...margin, t } }
}

function lines(text: string): number {
  return text === '' ? 0 : text.split('<br>').length
}
