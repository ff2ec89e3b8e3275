// The worst starts of a year: how long each lasts, what gives out, and what would have cured it.

import type { WorstStart, YearAnswer } from '@tideover/core'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { PHONE_PX } from './place-labels.js'
import { type Ground, groundWords } from './said.js'
import { axisTitle, BAD, BASE_AXIS, INK, PARTS, QUIET } from './style.js'
import { durationText, shortened } from './words.js'

/** What the figure needs of the answer of `year`. */
export type WorstDrawn = Ground & Pick<YearAnswer, 'house' | 'cutHours' | 'apartDays' | 'worst'>

export interface WorstFigureOptions {
  readonly title?: string
}

const ROW_PX = 66
const MARGIN = { l: 12, r: 16, b: 50 }
/** Where the bar of a row lies, from its top; the words stand above. */
const BAR = { middle: 0.72, width: 0.34 }

/** A row for each start, the shortest first: how long it lasts, dark, and with its cure, light. */
export function worstFigure(answer: WorstDrawn, options: WorstFigureOptions = {}): Figure {
  const { house, cutHours, apartDays } = answer
  const { title = `${house}, a cut of ${cutHours} h: the worst starts of the year` } = options
  const worst = answer.worst ?? []
  const apart = `At least ${apartDays} days apart; pale: with one thing changed.`
  const head = header(title, `${groundWords(answer, null)}. ${worst.length === 0 ? '' : apart}`)
  const rows = Math.max(1, worst.length)
  return {
    data: worst.length === 0 ? [] : bars(worst, cutHours),
    layout: {
      ...sheet(head, ROW_PX * rows, MARGIN),
      barmode: 'overlay',
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle('time since the power cut began [h]'),
        range: [0, cutHours],
        nticks: 8,
        showgrid: false,
        ticks: 'outside',
      },
      yaxis: { range: [rows, 0], visible: false, fixedrange: true },
      annotations:
        worst.length === 0
          ? [emptyNote(answer)]
          : worst.flatMap((start, row) => rowWords(start, row, answer)),
    },
  }
}

/** The change that cures it; where none does, the one that gives most, if any gives more. */
function bestStep({ tried, cure, rideMinutes }: WorstStart): WorstStart['tried'][number] | null {
  const cured = tried.find(({ id }) => id === cure)
  if (cured !== undefined) return cured
  const most = Math.max(0, ...tried.map((step) => step.rideMinutes))
  if (most <= rideMinutes) return null
  return tried.find((step) => step.rideMinutes === most) ?? null
}

function bars(worst: readonly WorstStart[], cutHours: number): Trace[] {
  const hours = (minutes: number): number => Math.min(cutHours, minutes / 60)
  const y = worst.map((_, row) => row + BAR.middle)
  const best = worst.map((start) => bestStep(start))
  const base = { type: 'bar', orientation: 'h', y, width: BAR.width }
  return [
    {
      ...base,
      name: 'with a change',
      x: best.map((step) => (step === null ? 0 : hours(step.rideMinutes))),
      marker: { color: PARTS[3], line: { color: INK, width: 0.5 } },
      text: best.map((step) => step?.words ?? ''),
      textposition: 'none',
      hovertemplate: '%{text}: %{x:.1f} h<extra></extra>',
    },
    {
      ...base,
      name: 'lasts',
      x: worst.map(({ rideMinutes }) => hours(rideMinutes)),
      marker: { color: PARTS[0], line: { color: INK, width: 0.5 } },
      text: worst.map(({ local, rideMinutes }) => `${local}: ${durationText(rideMinutes)}`),
      textposition: 'none',
      hovertemplate: '%{text}<extra></extra>',
    },
  ]
}

/** Start, length and what was lost, below it the weather; in the bar what would have helped. */
function rowWords(start: WorstStart, row: number, answer: WorstDrawn): Record<string, unknown>[] {
  const { local, rideMinutes, endedBy } = start
  const lasts = `<b>${local}</b>: <b>${durationText(rideMinutes)}</b>`
  const lost = `<span style="color:${BAD}">${shortened(endedBy, MOST_LETTERS)} lost</span>`
  const weather = `<span style="color:${QUIET}">${weatherWords(start, answer)}</span>`
  return [
    {
      ...PLACED,
      text: `${lasts}, ${lost}<br>${weather}`,
      xref: 'paper',
      x: 0,
      y: row + BAR.middle - BAR.width / 2,
      xanchor: 'left',
      yanchor: 'bottom',
      align: 'left',
      font: { size: 12, color: INK },
    },
    helpNote(start, row, answer.cutHours),
  ]
}

const PLACED = { yref: 'y', showarrow: false, borderpad: 0 }
/** Of the name of a load; the table has it whole. */
const MOST_LETTERS = 24
const HELP_SIZE_PX = 11.5

/** In the light part where it has room on a phone, else in the dark one. */
function helpNote(start: WorstStart, row: number, cutHours: number): Record<string, unknown> {
  const text = helpWords(start)
  const share = Math.min(1, start.rideMinutes / 60 / cutHours)
  const isLight = (1 - share) * PHONE_PX >= (text.length + 2) * HELP_SIZE_PX * 0.52 || share < 0.5
  return {
    ...PLACED,
    text,
    xref: 'paper',
    x: isLight ? 0.99 : 0.01,
    y: row + BAR.middle,
    xanchor: isLight ? 'right' : 'left',
    yanchor: 'middle',
    font: { size: HELP_SIZE_PX, color: isLight ? INK : '#ffffff' },
  }
}

function helpWords(start: WorstStart): string {
  const step = bestStep(start)
  if (step === null) return 'nothing tried gives more'
  return `${step.lasts ? 'lasts' : durationText(step.rideMinutes)} with ${step.words}`
}

/** `light 0.7 of usual, air −3 °C (usual 4)`; of a sky without sun the air alone. */
function weatherWords({ weather }: WorstStart, { sky }: WorstDrawn): string {
  const { brightness, airC, monthAirC } = weather
  const light = sky === 'none' ? '' : `light ${brightness.toFixed(1)} of usual, `
  return `${light}air ${degrees(airC)}\u00a0°C (usual ${degrees(monthAirC)})`
}

function degrees(c: number): string {
  return String(Math.round(c) + 0).replace('-', '−')
}

function emptyNote({ worst, cutHours }: WorstDrawn): Record<string, unknown> {
  const text =
    worst === null
      ? 'No worst start is named:<br>one year, or one without its unusual months, tells none.'
      : `From no minute of the year it lasts less than ${cutHours} h.`
  return {
    text,
    xref: 'paper',
    yref: 'paper',
    x: 0.5,
    y: 0.5,
    showarrow: false,
    font: { size: 12.5, color: INK },
  }
}

/** The numbers of the figure, a start a row, and how long each change that was tried makes it. */
export function worstRows(answer: WorstDrawn): Record<string, string | number | null>[] {
  return (answer.worst ?? []).map((start) => ({
    start: start.local,
    'synthetic year': start.syntheticYear,
    lasts: durationText(start.rideMinutes),
    'lost first': start.endedBy,
    'light [of the mean day of the month]': Math.round(100 * start.weather.brightness) / 100,
    'air [°C]': Math.round(10 * start.weather.airC) / 10,
    'air of the month [°C]': start.weather.monthAirC,
    'wind [m/s]': start.weather.windMs === null ? null : Math.round(10 * start.weather.windMs) / 10,
    ...Object.fromEntries(
      start.tried.map(({ words, rideMinutes, lasts }) => [
        words,
        lasts ? `lasts ${answer.cutHours} h` : durationText(rideMinutes),
      ]),
    ),
  }))
}
