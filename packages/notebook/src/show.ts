// A chart in the output of a cell.

import { createHash } from 'node:crypto'
import { type Figure, figureJson } from '@tideover/figures'
import { display } from 'tslab'
import { escapeHtml } from './html.js'

const DEFAULTS = { heightPx: 380 }

export interface ShowOptions {
  /** Height of the chart. [px] */
  readonly heightPx?: number
}

/** Draws a figure; the set-up cell brings the library that does it. */
export function show(figure: Figure, options: ShowOptions = {}): void {
  display.html(figureHtml(figure, options))
}

export function figureHtml(figure: Figure, options: ShowOptions = {}): string {
  const { heightPx } = { ...DEFAULTS, ...options }
  const json = figureJson(figure)
  // Same figure, same name: a notebook that is run again does not change.
  const id = createHash('sha256').update(json).digest('hex').slice(0, 16)
  const label = escapeHtml(figure.layout.title?.text ?? 'chart')
  return [
    `<div data-tideover-figure="${id}" role="img" aria-label="${label}"`,
    ` style="min-height:${heightPx}px">This chart draws once the set-up cell has run.</div>`,
    '<script>(window.tideoverFigures = window.tideoverFigures || [])',
    `.push({ id: '${id}', figure: ${json} })</script>`,
  ].join('')
}
