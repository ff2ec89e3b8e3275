// A year of stored energy: between the least and the greatest of each day.

import { type Calendar, monthName, type Prepared } from '@tideover/core'
import type { Figure } from './figure.js'
import { header, sheet } from './header.js'
import { heading } from './panels.js'
import { axisTitle, BAD, BASE_AXIS, GRID, INK, QUIET } from './style.js'
import { type StoredDay, type StoredMinutes, storedDays, storedMonths } from './year-stored-days.js'
import {
  bandTraces,
  clockAt,
  extremeMarks,
  markTrace,
  offTrace,
  storedExtremes,
  withoutPower,
} from './year-stored-traces.js'

export interface YearStoredOptions {
  readonly title?: string
  /** Under what the year was lived. */
  readonly conditions?: string
  /** [kWh] */
  readonly capacityKwh: number
  /** Levels to be drawn, such as the reserve. */
  readonly levels?: readonly { readonly words: string; readonly kwh: number }[]
  /** Minutes of the column that matter, with what they are; each is drawn. */
  readonly marks?: readonly Mark[]
}

const DAY = 1440
const PLOT_PX = 210
const KEY_PX = 22
const KEY_LINE_PX = 17
/** Each mark has its words in a line of its own. */
const MARK_PX = 16
const MARGIN = { l: 42, r: 16, b: 54 }
/** Of the capacity: room over a full battery, and below an empty one. */
const [ABOVE, BELOW] = [1.06, 0.05]

/** Least and greatest of each local day against the year; times without power below. */
export function yearStoredFigure(
  stored: StoredMinutes,
  { calendar }: Pick<Prepared, 'calendar'>,
  options: YearStoredOptions,
): Figure {
  const { title = 'A year of stored energy', conditions = '', capacityKwh } = options
  const { levels = [] } = options
  const marks = inLines(options.marks ?? [], stored.storedKwh.length)
  const head = header(title, conditions)
  const days = storedDays(stored, calendar)
  const key = keyLines(stored, calendar)
  const marksPx = MARK_PX * marks.length
  return {
    data: [
      ...bandTraces(stored, days, calendar),
      ...extremeMarks(stored, calendar),
      ...offTrace(stored, (-BELOW / 2) * capacityKwh),
      ...marks.map(({ minute, words }) => markTrace(stored, minute, words, calendar)),
    ],
    layout: {
      ...sheet(head, PLOT_PX, MARGIN, KEY_PX + KEY_LINE_PX * key.length + marksPx),
      xaxis: timeAxis(days, calendar),
      yaxis: { ...BASE_AXIS, range: [-BELOW * capacityKwh, ABOVE * capacityKwh], nticks: 6 },
      shapes: [...uprights(days, marks), ...levels.map(({ kwh }) => level(kwh))],
      annotations: [
        titleNote(key, marksPx),
        ...levels.map(levelNote),
        ...marks.map(({ minute, words }, i) => markNote(minute + 1, words, i, stored)),
      ],
    },
  }
}

interface Mark {
  readonly minute: number
  readonly words: string
}

/** So that no upright crosses the words of another: they go inwards from it, the outermost on top. */
function inLines(marks: readonly Mark[], n: number): Mark[] {
  const inward = (mark: Mark): number => Math.abs(mark.minute / n - 0.5)
  return [...marks].sort((a, b) => inward(a) - inward(b))
}

/** What the signs mean, with the numbers that they stand for. */
function keyLines(stored: StoredMinutes, calendar: Calendar): string[] {
  const [least, greatest] = storedExtremes(stored)
  if (least === undefined || greatest === undefined) return []
  const said = (row: number): string =>
    `${stored.storedKwh[row]!.toFixed(1)}, ${clockAt(stored, row, calendar)}`
  const spans = withoutPower(stored)
  const minutes = spans.reduce((sum, [from, to]) => sum + to - from, 0)
  const times = spans.length === 1 ? 'once' : `${spans.length} times`
  const off = `<span style="color:${BAD}">|</span> no power ${times}, ${Math.ceil(minutes / 60)} h in all`
  return [
    `▲ least ${said(least)}`,
    `▼ greatest ${said(greatest)}`,
    ...(spans.length === 0 ? [] : [off]),
  ]
}

/** Name, unit and key, over the words of the marks. */
function titleNote(key: readonly string[], raisedPx: number): Record<string, unknown> {
  const words = heading(1, 'Stored energy, least to greatest of each day', 'kWh')
  return { ...words, text: [words.text, ...key].join('<br>'), yshift: raisedPx + 2 }
}

/** Between months, and from minutes that matter to their words. */
function uprights(days: readonly StoredDay[], marks: readonly Mark[]): Record<string, unknown>[] {
  return [
    ...days.filter(startsMonth).map(({ from }) => upright(from, GRID, 1)),
    ...marks.map(({ minute }, i) => upright(minute + 1, BAD, 1 + ((i + 0.9) * MARK_PX) / PLOT_PX)),
  ]
}

function startsMonth(day: StoredDay, i: number, days: readonly StoredDay[]): boolean {
  return i > 0 && day.month !== days[i - 1]!.month
}

/** Names of months in their middle; of less than a week none. */
function timeAxis(days: readonly StoredDay[], { zone }: Calendar): Record<string, unknown> {
  const months = storedMonths(days).filter((month) => month.length >= 7)
  return {
    ...BASE_AXIS,
    title: axisTitle(`local time (${zone.replaceAll('_', ' ')})`),
    range: [0, (days.at(-1)?.to ?? DAY) / DAY],
    tickvals: months.map((month) => (month[0]!.from + month.at(-1)!.to) / 2 / DAY),
    ticktext: months.map((month) => monthName(month[0]!.month).slice(0, 3)),
    tickangle: 0,
    tickfont: { size: 11, color: INK },
    showgrid: false,
  }
}

/** @param top  upper end, as a share of the height of the panel */
function upright(minute: number, color: string, top: number): Record<string, unknown> {
  return {
    type: 'line',
    xref: 'x',
    yref: 'y domain',
    x0: minute / DAY,
    x1: minute / DAY,
    y0: 0,
    y1: top,
    line: { color, width: 1 },
    layer: 'below',
  }
}

function level(kwh: number): Record<string, unknown> {
  const line = { color: QUIET, width: 1.2, dash: 'dot' }
  return { type: 'line', xref: 'paper', yref: 'y', x0: 0, x1: 1, y0: kwh, y1: kwh, line }
}

function levelNote({
  words,
  kwh,
}: {
  readonly words: string
  readonly kwh: number
}): Record<string, unknown> {
  return {
    text: `${words} ${kwh.toFixed(1)}`,
    xref: 'paper',
    yref: 'y',
    x: 0.01,
    y: kwh,
    xanchor: 'left',
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 0,
    font: { size: 11, color: INK, shadow: 'auto' },
  }
}

/** Above the panel, in a line of its own. */
function markNote(
  minute: number,
  words: string,
  line: number,
  { storedKwh }: StoredMinutes,
): Record<string, unknown> {
  return {
    text: words,
    xref: 'x',
    yref: 'paper',
    x: minute / DAY,
    y: 1 + (line * MARK_PX) / PLOT_PX,
    xanchor: minute / storedKwh.length > 0.5 ? 'right' : 'left',
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 1,
    font: { size: 11.5, color: BAD },
  }
}
