// Reserve by month: how much of the battery ordinary days may not touch, and which cuts then last.

import { monthName } from '@tideover/core'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { monthAxis } from './month-axis.js'
import { heading, type KeyEntry, panels } from './panels.js'
import { AREAS, BAD, BASE_AXIS, INK, levelLine, PARTS } from './style.js'
import { topNumbers } from './top-numbers.js'
import { percentDown } from './words.js'

/** One month's reserve; whoever asks makes them. */
export interface MonthReserve {
  /** 1..12 */
  readonly month: number
  /** Share of capacity, 0..1; null where none is enough. */
  readonly reserve: number | null
  /** Share of cuts that last with it, 0..1; null where it is not known. */
  readonly share: number | null
}

export interface ReserveFigureOptions {
  readonly title?: string
  /** Under what the shares hold. */
  readonly conditions?: string
  /** What the house holds back now, 0..1. */
  readonly now?: number
  /** Share of cuts that is to last, 0..1. */
  readonly target?: number
}

const HEIGHTS = { reserve: 150, share: 90 }
const PANELS = [
  [null, 42],
  ['reserve', HEIGHTS.reserve],
  [null, 46],
  ['share', HEIGHTS.share],
] as const
const MARGIN = { l: 42, r: 14, b: 54 }
/** Room for numbers over 100 %. */
const ABOVE = 120

/** A column a month above the share that it gives. */
export function reserveFigure(
  months: readonly MonthReserve[],
  options: ReserveFigureOptions = {},
): Figure {
  const { title = 'Reserve by month', conditions = '', now, target } = options
  const head = header(title, conditions)
  const place = panels(PANELS)
  const axis = { ...BASE_AXIS, range: [0, ABOVE], tickvals: [0, 25, 50, 75, 100] }
  const top = (name: string): number => place.domain(name)[1]
  const held = months.map(({ reserve }) => percentUp(reserve))
  const lasting = months.map(({ share }) => percentDown(share))
  const [nows, targets] = [percents(now), percents(target)]
  return {
    data: [columns(months, 'reserve', held, 'y'), columns(months, 'share', lasting, 'y2')],
    layout: {
      ...sheet(head, place.heightPx, MARGIN),
      bargap: 0.2,
      xaxis: monthAxis(
        months.map(({ month }) => month),
        'y2',
        'month',
      ),
      yaxis: { ...axis, domain: place.domain('reserve') },
      yaxis2: { ...axis, domain: place.domain('share'), tickvals: [0, 50, 100] },
      shapes: [
        ...nows.flatMap((level) => levelLine(level, 'y')),
        ...targets.flatMap((level) => levelLine(level, 'y2')),
      ],
      annotations: [
        heading(top('reserve'), 'Held back', '% of charge', key('now', nows)),
        heading(top('share'), 'Cuts that last with it', '%', key('asked for', targets)),
        ...numbers(held, 'y', HEIGHTS.reserve, nows),
        ...numbers(lasting, 'y2', HEIGHTS.share, targets),
      ],
    },
  }
}

const LOOKS = { reserve: AREAS.intoBattery, share: PARTS[2] } as const

function columns(
  months: readonly MonthReserve[],
  name: keyof typeof LOOKS,
  percent: readonly (number | null)[],
  yaxis: string,
): Trace {
  return {
    type: 'bar',
    name,
    x: months.map((_, i) => i + 1),
    y: percent.map((value) => value ?? 0),
    yaxis,
    text: percent.map(said),
    textposition: 'none',
    marker: { color: LOOKS[name], line: { color: INK, width: 0.5 } },
    customdata: months.map(({ month }) => monthName(month)),
    hovertemplate: `%{customdata}: ${name} %{text} %<extra></extra>`,
  }
}

function said(percent: number | null): string {
  return percent === null ? '–' : String(percent)
}

/** What is held back is rounded up. */
function percentUp(share: number | null): number | null {
  return share === null || Number.isNaN(share) ? null : Math.ceil(100 * share - 1e-9)
}

/** Of a share that may be left out. */
function percents(share: number | undefined): number[] {
  return share === undefined ? [] : [Math.round(1000 * share) / 10]
}

function key(words: string, levels: readonly number[]): KeyEntry[] {
  return levels.map((level) => ({ words: `${words}: ${level}`, color: BAD, sign: '┅' }))
}

function numbers(
  percent: readonly (number | null)[],
  yref: string,
  heightPx: number,
  levels: readonly number[],
): Record<string, unknown>[] {
  return topNumbers(percent.map(said), percent, { yref, pxAUnit: heightPx / ABOVE, levels })
}

/** The numbers of the figure, a month a row: reserves rounded up, shares down. */
export function reserveRows(
  months: readonly MonthReserve[],
): Record<string, string | number | null>[] {
  return months.map(({ month, reserve, share }) => ({
    month: monthName(month),
    'held back [% of charge]': percentUp(reserve),
    'cuts that last [%]': percentDown(share),
  }))
}
