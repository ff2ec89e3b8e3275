// A month of many synthetic years side by side: what the sun brings, and in its darkest days.

import type { MonthYield } from '@tideover/core'
import type { Figure } from './figure.js'
import { header, sheet } from './header.js'
import { AREAS, axisTitle, BAD, BASE_AXIS, INK } from './style.js'

export interface YearsFigureOptions {
  /** `thirty Januaries` */
  readonly title: string
  /** Under what they hold. */
  readonly conditions?: string
  /** What the house needs. [kWh a day] */
  readonly needKwh?: number
  /** Days in a row of the dark spells. */
  readonly days: number
}

const PLOT_PX = 270
const MARGIN = { l: 48, r: 22, b: 54 }

/** Bars from the dullest month to the brightest, each with the mean of its darkest days. */
export function yearsFigure(months: readonly MonthYield[], options: YearsFigureOptions): Figure {
  const { title, conditions = '', needKwh, days } = options
  const rising = [...months].sort((a, b) => a.meanKwh - b.meanKwh || a.year - b.year)
  const key = `Bars: mean of the month; dark lines: mean of its darkest ${days} days in a row.`
  const head = header(title, conditions === '' ? key : `${conditions}. ${key}`)
  const ranks = rising.map((_, i) => i + 1)
  const top = 1.15 * Math.max(...rising.map(({ meanKwh }) => meanKwh), needKwh ?? 0)
  return {
    data: [
      {
        type: 'bar',
        name: 'mean of the month',
        x: ranks,
        y: rising.map(({ meanKwh }) => rounded(meanKwh)),
        marker: { color: AREAS.sun, line: { color: INK, width: 0.5 } },
        customdata: rising.map(({ year }) => year),
        hovertemplate: 'year %{customdata}: %{y:.2f} kWh a day<extra></extra>',
      },
      {
        type: 'scatter',
        mode: 'markers',
        name: 'its darkest days',
        x: ranks,
        y: rising.map(({ darkestKwh }) => rounded(darkestKwh)),
        marker: { color: INK, symbol: 'line-ew', size: 7, line: { color: INK, width: 2.5 } },
        hovertemplate: `darkest ${days} days: %{y:.2f} kWh a day<extra></extra>`,
      },
    ],
    layout: {
      ...sheet(head, PLOT_PX, MARGIN),
      bargap: 0.15,
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle('synthetic years, the dullest first'),
        range: [0.4, months.length + 0.6],
        tickvals: [1, months.length],
        ticktext: ['dullest', 'brightest'],
        showgrid: false,
      },
      yaxis: { ...BASE_AXIS, title: axisTitle('solar [kWh a day]'), range: [0, top] },
      shapes: needKwh === undefined ? [] : [level(needKwh)],
      annotations: needKwh === undefined ? [] : [needLabel(needKwh)],
    },
  }
}

/** The numbers of the figure, the dullest year first. */
export function yearsRows(months: readonly MonthYield[]): Record<string, number>[] {
  return [...months]
    .sort((a, b) => a.meanKwh - b.meanKwh || a.year - b.year)
    .map(({ year, meanKwh, darkestKwh, darkestFrom }) => ({
      year,
      'mean [kWh a day]': rounded(meanKwh),
      'darkest days [kWh a day]': rounded(darkestKwh),
      'from day of the month': darkestFrom,
    }))
}

function rounded(kwh: number): number {
  return Math.round(kwh * 1000) / 1000
}

function needLabel(kwh: number): Record<string, unknown> {
  return {
    text: `needed: ${kwh.toFixed(1)} kWh a day`,
    xref: 'paper',
    yref: 'y',
    x: 0.02,
    y: kwh,
    xanchor: 'left',
    yanchor: 'bottom',
    showarrow: false,
    font: { size: 12, color: BAD },
  }
}

function level(kwh: number): Record<string, unknown> {
  const line = { color: BAD, width: 1.5, dash: 'dash' }
  return { type: 'line', xref: 'paper', yref: 'y', x0: 0, x1: 1, y0: kwh, y1: kwh, line }
}
