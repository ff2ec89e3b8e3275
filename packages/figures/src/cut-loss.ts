// What is marked over the panels of a cut where the power goes.

import { type Calendar, type Trace as CutTrace, localTime } from '@tideover/core'
import { BAD } from './style.js'
import { durationText } from './words.js'

/** A span of minutes of the trace, [from, to). */
type Span = readonly [number, number]

/** Least share of the width at which the words fit into a span on a phone. */
const WORDS_FIT = 0.16

export function lossLine([from]: Span, yaxis: string): Record<string, unknown> {
  return {
    type: 'line',
    xref: 'x',
    yref: `${yaxis} domain`,
    x0: from / 60,
    x1: from / 60,
    y0: 0,
    y1: 1,
    line: { color: BAD, width: 1.5 },
  }
}

/** When it goes off, and how long after the start, on top of the line. */
export function lossNote(
  [from]: Span,
  { from: start, n }: Pick<CutTrace, 'from' | 'n'>,
  calendar: Calendar,
  yaxis: string,
): Record<string, unknown> {
  const clock = localTime(calendar, start + from)
    .split(' ')
    .at(-1)
  const place = from / n
  return {
    text: `<b>off ${clock}</b>, after ${durationText(from)}`,
    xref: 'x',
    yref: `${yaxis} domain`,
    x: from / 60,
    y: 1,
    xanchor: place < 0.38 ? 'left' : place > 0.62 ? 'right' : 'center',
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 0,
    font: { size: 12.5, color: BAD },
  }
}

/** Words over the longest span without power, where it is wide enough for them. */
export function withoutNote(
  off: readonly Span[],
  n: number,
  yaxis: string,
): Record<string, unknown>[] {
  const [longest] = [...off].sort((a, b) => b[1] - b[0] - (a[1] - a[0]))
  if (longest === undefined || (longest[1] - longest[0]) / n < WORDS_FIT) return []
  return [
    {
      text: 'no power',
      xref: 'x',
      yref: `${yaxis} domain`,
      x: (longest[0] + longest[1]) / 120,
      y: 0.16,
      yanchor: 'bottom',
      showarrow: false,
      // What is hatched below them would make them hard to read.
      bgcolor: 'rgba(255,255,255,0.85)',
      borderpad: 1,
      font: { size: 11, color: BAD },
    },
  ]
}
