// Where the energy of one cut, or of several, came from and where it went: two bars each.

import { CAME, type EnergyPart, type NamedLedger, partsOf, sumOf, WENT } from './energy-parts.js'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { keyLine } from './panels.js'
import { PHONE_PX } from './place-labels.js'
import { axisTitle, BASE_AXIS, INK, QUIET } from './style.js'

export interface EnergyFigureOptions {
  readonly title?: string
  /** Under what the cuts were lived. */
  readonly conditions?: string
}

const TITLE = 'Where the energy of the cut went'
const ROW_PX = 78
const KEY_PX = 60
const MARGIN = { l: 12, r: 16, b: 50 }
/** Of a row from its top: middles of both bars and how wide they are. */
const BARS = { came: 0.42, went: 0.73, width: 0.28 }
const SIZE_PX = 11.5

/**
 * What came above what went, as long as each other, for each cut.
 *
 * @param cuts  ledgers of `energyLedger(story, minutes)` or of the worst starts of `year`; within
 *              the first cut of a run, for the grid has no part in them
 */
export function energyFigure(
  cuts: readonly NamedLedger[],
  options: EnergyFigureOptions = {},
): Figure {
  const { title = TITLE, conditions = '' } = options
  const head = header(title, conditions)
  const most = Math.max(0.1, ...cuts.map(({ energy }) => sumOf(partsOf(energy, CAME))))
  return {
    data: [
      ...CAME.map((part, which) => piece(cuts, CAME, part, which, BARS.came, most)),
      ...WENT.map((part, which) => piece(cuts, WENT, part, which, BARS.went, most)),
    ],
    layout: {
      ...sheet(head, ROW_PX * cuts.length, MARGIN, KEY_PX),
      barmode: 'overlay',
      xaxis: {
        ...BASE_AXIS,
        title: axisTitle('energy [kWh]'),
        range: [0, most],
        nticks: 7,
        ticks: 'outside',
        showgrid: false,
      },
      yaxis: { range: [cuts.length, 0], visible: false, fixedrange: true },
      annotations: [keyNote(), ...cuts.map(cutName)],
    },
  }
}

/** One part of all cuts. */
function piece(
  cuts: readonly NamedLedger[],
  side: readonly EnergyPart[],
  { short, words, color, ink }: EnergyPart,
  which: number,
  middle: number,
  most: number,
): Trace {
  const parts = cuts.map(({ energy }) => partsOf(energy, side))
  const x = parts.map((kwh) => kwh[which]!)
  const percent = parts.map((kwh) => Math.round((100 * kwh[which]!) / (sumOf(kwh) || 1)))
  return {
    type: 'bar',
    orientation: 'h',
    name: words,
    y: cuts.map((_, row) => row + middle),
    base: parts.map((kwh) => sumOf(kwh.slice(0, which))),
    x,
    width: BARS.width,
    text: x.map((kwh) => fitting(short, kwh, (kwh / most) * PHONE_PX)),
    textposition: 'inside',
    insidetextanchor: 'middle',
    constraintext: 'none',
    textangle: 0,
    textfont: { size: SIZE_PX, color: ink },
    marker: { color, line: { color: '#ffffff', width: 1 } },
    customdata: percent,
    hovertemplate: `${words}: %{x:.2f} kWh, %{customdata} %<extra></extra>`,
  }
}

/** Name and value where they fit on a phone, the value alone, or nothing: the table has it. */
function fitting(short: string, kwh: number, widthPx: number): string {
  const value = kwh.toFixed(1)
  const texts = [`${short} ${value}`, value]
  return texts.find((text) => (text.length + 0.5) * SIZE_PX * 0.56 <= widthPx) ?? ''
}

function cutName({ name, energy }: NamedLedger, row: number): Record<string, unknown> {
  const all = sumOf(partsOf(energy, CAME)).toFixed(1)
  return {
    text: `<b>${name}</b>, <span style="color:${QUIET}">${all} kWh in all</span>`,
    xref: 'paper',
    yref: 'y',
    x: 0,
    y: row + BARS.came - BARS.width / 2,
    xanchor: 'left',
    yanchor: 'bottom',
    showarrow: false,
    borderpad: 0,
    font: { size: 12, color: INK },
  }
}

/** What came in the upper bars, what went in the lower. */
function keyNote(): Record<string, unknown> {
  return {
    text: `<b>came</b> ${keyLine(CAME)}<br><b>went</b> ${keyLine(WENT.slice(0, 3))}<br>${keyLine(WENT.slice(3))}`,
    xref: 'paper',
    yref: 'paper',
    x: 0,
    y: 1,
    xanchor: 'left',
    yanchor: 'bottom',
    xshift: -6,
    yshift: 4,
    align: 'left',
    showarrow: false,
    font: { size: 12, color: INK },
  }
}
