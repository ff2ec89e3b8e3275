// Autonomy curves as a figure: which share of cuts is still ridden after so many hours.

import { autonomyLabels } from './autonomy-labels.js'
import type { NamedCurve } from './autonomy-rows.js'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { PHONE_PX } from './place-labels.js'
import { axisTitle, BASE_AXIS, INK, type LineLook, lineLooks } from './style.js'

export interface AutonomyFigureOptions {
  readonly title?: string
  /** Under what the curves hold. */
  readonly conditions?: string
  /** Length of cut at which the shares are written out. [h] */
  readonly atHours?: number
  /** The curves are steps of one thing, such as stacks; so are more than four. Default false */
  readonly inOrder?: boolean
}

const TITLE = 'Autonomy curve: still on after so many hours'
const PLOT_PX = 270
const MARGIN = { l: 48, r: 22, b: 54 }

/**
 * The curves against the time since the cut began, each with its name beside it; the first is
 * the one that counts.
 *
 * Between two hours of a curve the later, lower share is drawn: nothing is shown that is not so.
 */
export function autonomyFigure(
  curves: readonly NamedCurve[],
  options: AutonomyFigureOptions = {},
): Figure {
  const { title = TITLE, conditions = '', atHours = null, inOrder = false } = options
  const looks = lineLooks(curves.length, inOrder)
  const lastHours = Math.max(...curves.flatMap(({ curve }) => [...curve.hours]))
  const head = header(title, conditions)
  return {
    data: curves.map((curve, which) => curveTrace(curve, looks[which]!)),
    layout: {
      ...sheet(head, PLOT_PX, MARGIN),
      hovermode: 'x',
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle('time since the power cut began [h]'),
        range: [0, lastHours],
        dtick: tickHours(lastHours),
        ticks: 'outside',
      },
      yaxis: {
        ...BASE_AXIS,
        title: axisTitle('still on [% of cuts]'),
        range: [0, MOST_PERCENT],
        dtick: 25,
      },
      shapes: atHours === null ? [] : [upright(atHours)],
      annotations: autonomyLabels(
        curves,
        {
          widthPx: PHONE_PX,
          heightPx: PLOT_PX,
          xMost: lastHours,
          yMost: MOST_PERCENT,
          yaxis: 'y',
        },
        atHours,
        looks,
      ),
    },
  }
}

/** A little above 100, so that a line along the top is seen. */
const MOST_PERCENT = 103

function curveTrace({ name, curve }: NamedCurve, { color, width, dash }: LineLook): Trace {
  return {
    type: 'scatter',
    mode: 'lines',
    name,
    x: curve.hours,
    y: curve.share.map((share) => Math.round(share * 1e4) / 100),
    line: { color, width, dash, shape: 'vh', simplify: false },
    hovertemplate: `%{x:.1f} h: %{y:.0f} % (${name})<extra></extra>`,
  }
}

function tickHours(last: number): number {
  return [1, 2, 3, 6, 12, 24, 48, 120].find((hours) => last / hours <= 8) ?? 240
}

function upright(hours: number): Record<string, unknown> {
  return {
    type: 'line',
    xref: 'x',
    yref: 'y domain',
    x0: hours,
    x1: hours,
    y0: 0,
    y1: 1,
    line: { color: INK, width: 1, dash: 'dot' },
  }
}
