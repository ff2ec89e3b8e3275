// What an answer hangs on: how far each doubt swings it, about the line of what is promised.

import { type DoubtFigures, daysOfCut, monthName } from '@tideover/core'
import { BAR_PX, type DoubtRow, rowsOf, TOP_PX } from './doubts-layout.js'
import { amountOf, type By, type DoubtsDrawn, UNITS, valueText } from './doubts-rows.js'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { groundWords } from './said.js'
import { AREAS, axisTitle, BAD, BASE_AXIS, INK, PARTS } from './style.js'

export interface DoubtsFigureOptions {
  readonly title?: string
  /** Default the share of cuts that last; hours where no doubt moves that. */
  readonly by?: 'share' | 'hours'
}

const MARGIN = { l: 16, r: 18, b: 50 }

/** A row for each doubt, what moves the answer most first; dark is worse than promised. */
export function doubtsFigure(answer: DoubtsDrawn, options: DoubtsFigureOptions = {}): Figure {
  const { house, month, cutHours, promised } = answer
  const by = promised.share === null ? 'hours' : (options.by ?? usualOf(answer))
  const { title = `${house}, a cut of ${cutHours} h in ${monthName(month)}: how sure?` } = options
  const head = header(title, conditionsOf(answer))
  const rows = rowsOf(answer, by)
  const heightPx = rows.at(-1)?.toPx ?? TOP_PX
  const at = amountOf(promised, by)
  const most = by === 'share' ? 100 : Math.max(1, at, ...rows.flatMap(({ values }) => values))
  return {
    data: [
      bar(rows, 'worse', ({ values }) => [Math.min(at, ...values), at], PARTS[0]),
      bar(rows, 'better', ({ values }) => [at, Math.max(at, ...values)], PARTS[3]),
      endMarks(rows, by),
    ],
    layout: {
      ...sheet(head, heightPx, MARGIN),
      barmode: 'overlay',
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle(AXIS[by](cutHours)),
        range: [0, most],
        nticks: 6,
        ticks: 'outside',
        showgrid: false,
      },
      yaxis: { range: [heightPx, 0], visible: false, fixedrange: true },
      shapes: rows.map(({ barPx }) => promiseLine(at, barPx)),
      annotations: [...rows.map(rowWords), promiseNote(at, most, by, promised)],
    },
  }
}

const AXIS: Readonly<Record<By, (cutHours: number) => string>> = {
  share: (cutHours) => `cuts of ${cutHours} h that last [%]`,
  hours: () => 'lasts in the middle case [h]',
}

function usualOf({ doubts }: DoubtsDrawn): By {
  return doubts.some(({ swingShare }) => swingShare > 0) ? 'share' : 'hours'
}

function conditionsOf(answer: DoubtsDrawn): string {
  const { promise, winters, cutHours, month, expiry } = answer
  const isSpell = promise === 'dull' || promise === 'none'
  const spell = isSpell ? { winters, days: daysOfCut(cutHours) } : null
  const { share, metNow, lostInYear } = expiry
  const ends =
    share !== null && metNow === true && lostInYear !== null
      ? ` With age alone ${Math.round(100 * share)} in 100 are no longer met in year ${lostInYear}.`
      : ''
  return `Promised: ${groundWords({ ...answer, sky: promise, spell }, month)}.${ends}`
}

function bar(
  rows: readonly DoubtRow[],
  name: string,
  span: (row: DoubtRow) => [number, number],
  color: string,
): Trace {
  const spans = rows.map(span)
  return {
    type: 'bar',
    orientation: 'h',
    name,
    y: rows.map(({ barPx }) => barPx),
    base: spans.map(([from]) => from),
    x: spans.map(([from, to]) => to - from),
    width: BAR_PX,
    marker: { color, line: { color: INK, width: 0.5 } },
    hoverinfo: 'skip',
  }
}

/** A mark for each end. */
function endMarks(rows: readonly DoubtRow[], by: By): Trace {
  const marks = rows.flatMap(({ doubt, barPx }) =>
    doubt.ends.map(({ at, figures }) => ({
      x: amountOf(figures, by),
      y: barPx,
      text: `${doubt.name}, ${at}: ${valueText(figures, by)} ${UNITS[by]}`,
    })),
  )
  return {
    type: 'scatter',
    mode: 'markers',
    name: 'ends',
    x: marks.map(({ x }) => x),
    y: marks.map(({ y }) => y),
    text: marks.map(({ text }) => text),
    marker: { symbol: 'circle', size: 7.5, color: AREAS.sun, line: { color: INK, width: 1 } },
    cliponaxis: false,
    hovertemplate: '%{text}<extra></extra>',
  }
}

function rowWords({ lines, fromPx }: DoubtRow): Record<string, unknown> {
  return {
    text: lines.join('<br>'),
    xref: 'paper',
    yref: 'y',
    x: 0,
    y: fromPx,
    xanchor: 'left',
    yanchor: 'top',
    align: 'left',
    showarrow: false,
    borderpad: 0,
    font: { size: 11.5, color: INK },
  }
}

function promiseLine(at: number, barPx: number): Record<string, unknown> {
  return {
    type: 'line',
    xref: 'x',
    yref: 'y',
    x0: at,
    x1: at,
    y0: barPx - BAR_PX / 2 - 3,
    y1: barPx + BAR_PX / 2 + 3,
    line: { color: BAD, width: 3 },
  }
}

/** Over all rows, at the line. */
function promiseNote(
  at: number,
  most: number,
  by: By,
  promised: DoubtFigures,
): Record<string, unknown> {
  const place = at / most
  return {
    text: `<b>┃ promised: ${valueText(promised, by)} ${UNITS[by]}</b>`,
    xref: 'x',
    yref: 'y',
    x: at,
    y: 0,
    xanchor: place > 0.6 ? 'right' : 'left',
    yanchor: 'top',
    showarrow: false,
    borderpad: 0,
    font: { size: 12, color: BAD },
  }
}
