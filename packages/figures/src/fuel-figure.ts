// Fuel and generator hours of a cut, month by month: what to store, and how long the set runs.

import { monthName } from '@tideover/core'
import type { Figure } from './figure.js'
import { FUEL_CASES, type FuelDrawn, type FuelQuantity, tankAndCansL } from './fuel-rows.js'
import { header, sheet } from './header.js'
import { monthAxis } from './month-axis.js'
import { type NestedCase, nestedColumns, nestedPieces } from './nested-columns.js'
import { heading, type KeyEntry, keyLine, type Panels, panels } from './panels.js'
import { groundWords } from './said.js'
import { BAD, BASE_AXIS, INK, levelLine, PARTS } from './style.js'
import { NUMBER_PX, type NumberedPanel, topNumbers } from './top-numbers.js'

export interface FuelFigureOptions {
  readonly title?: string
}

const HEIGHTS = { litres: 150, runHours: 110 }
/** From above; gaps hold the headings, the first a line more where levels are named. [px] */
const panelRows = (levels: number): readonly (readonly [string | null, number])[] => [
  [null, levels === 0 ? 40 : 56],
  ['litres', HEIGHTS.litres],
  [null, 42],
  ['runHours', HEIGHTS.runHours],
]
const MARGIN = { l: 42, r: 14, b: 54 }
/** Room over the highest column. */
const ABOVE = 1.18

/** A column a month: mean, what 19 cuts in 20 do not pass, and the worst where it is known. */
export function fuelFigure(answer: FuelDrawn, options: FuelFigureOptions = {}): Figure {
  const { house, days, months } = answer
  const cut = days === 1 ? '1 day' : `${days} days`
  const { title = `${house}, a cut of ${cut}: fuel and generator hours` } = options
  const head = header(title, conditionsOf(answer))
  const [litres, hours] = [casesOf(answer, 'litres'), casesOf(answer, 'runHours')]
  const levels = levelsOf(answer)
  const place = panels(panelRows(levels.length))
  const stored = levels.map((level) => level.litres)
  const panel = {
    litres: panelOf(place, 'litres', 'y', topOf(litres, stored), stored),
    hours: panelOf(place, 'runHours', 'y2', topOf(hours, []), []),
  }
  const x = months.map((_, i) => i + 1)
  const where = months.map(({ month }) => monthName(month))
  return {
    data: [
      ...nestedColumns(x, litres, 'y', where, 'l'),
      ...nestedColumns(x, hours, 'y2', where, 'h'),
    ],
    layout: {
      ...sheet(head, place.heightPx, MARGIN),
      bargap: 0.2,
      barmode: 'stack',
      xaxis: monthAxis(
        months.map(({ month }) => month),
        'y2',
        'month in which the cut starts',
      ),
      yaxis: panel.litres.axis,
      yaxis2: panel.hours.axis,
      shapes: levels.flatMap((level) => levelLine(level.litres, 'y', level)),
      annotations: [
        ...headings(place, litres, levels),
        ...numbers(litres, panel.litres),
        ...numbers(hours, panel.hours),
      ],
    },
  }
}

interface FuelPanel extends NumberedPanel {
  readonly axis: Record<string, unknown>
}

function panelOf(
  place: Panels,
  name: keyof typeof HEIGHTS,
  yref: string,
  top: number,
  levels: readonly number[],
): FuelPanel {
  const axis = { ...BASE_AXIS, domain: place.domain(name), range: [0, top], nticks: 5 }
  return { yref, pxAUnit: HEIGHTS[name] / top, levels, axis }
}

function conditionsOf(answer: FuelDrawn): string {
  const { promise, winters, days, supposed, set, closer } = answer
  const isSpell = promise === 'dull' || promise === 'none'
  const spell = isSpell ? { winters, days: Math.max(1, Math.ceil(days)) } : null
  const what = supposed ? `a supposed set of ${set.ratedKw} kW` : `set of ${set.ratedKw} kW`
  const ground = groundWords({ ...answer, sky: promise, spell }, null)
  const dry =
    closer.dryShare > 0 && !supposed
      ? ` In ${monthName(closer.month)} tank and cans run dry in ${Math.ceil(100 * closer.dryShare)}\u00a0% of cuts.`
      : ''
  return `${ground}; ${what}, filled as often as wanted.${dry}`
}

/** What is stored at home, and what may be. */
interface FuelLevel extends KeyEntry {
  readonly litres: number
  readonly dash: string
}

function levelsOf(answer: FuelDrawn): FuelLevel[] {
  const [stored, rule] = [tankAndCansL(answer), answer.rule]
  const home = { words: `tank and cans, ${stored}`, color: INK, sign: '┅', dash: 'dash' }
  const most = { words: `petrol at home, at most ${rule?.petrolL}`, color: BAD, sign: '┉' }
  return [
    ...(stored === null ? [] : [{ litres: stored, ...home }]),
    ...(rule === null ? [] : [{ litres: rule.petrolL, ...most, dash: 'dot' }]),
  ]
}

const COLORS = { mean: PARTS[0], oneIn20: PARTS[2], worst: PARTS[3] }

/** Rounded up: a litre short is a litre short. */
function casesOf({ months }: FuelDrawn, of: FuelQuantity): NestedCase[] {
  return FUEL_CASES.filter(({ key }) =>
    months.some(({ figures }) => figures[of][key] !== null),
  ).map(({ key, words }) => {
    const ends = months.map(({ figures }) => figures[of][key])
    const said = ends.map((end) => (end === null ? '–' : String(Math.ceil(end - 1e-9))))
    return { words, color: COLORS[key], ends, said }
  })
}

function topOf(cases: readonly NestedCase[], levels: readonly number[]): number {
  const ends = cases.flatMap((each) => each.ends.map((end) => end ?? 0))
  return ABOVE * Math.max(0.5, ...ends, ...levels)
}

function headings(
  place: Panels,
  litres: readonly NestedCase[],
  levels: readonly FuelLevel[],
): Record<string, unknown>[] {
  const top = (name: string): number => place.domain(name)[1]
  const fuel = heading(top('litres'), 'Fuel taken', 'l', litres)
  return [
    { ...fuel, text: [fuel.text, keyLine(levels)].filter((line) => line !== '').join('<br>') },
    heading(top('runHours'), 'Generator runs', 'h'),
  ]
}

/** On each column how far it reaches, and in its middle part what 19 in 20 do not pass. */
function numbers(cases: readonly NestedCase[], panel: NumberedPanel): Record<string, unknown>[] {
  const pieces = nestedPieces(cases)
  const last = cases.at(-1)
  const on =
    last === undefined
      ? []
      : topNumbers(
          last.said,
          pieces.at(-1)!.map(({ to }) => to),
          panel,
        )
  const middle = cases.slice(1, -1).flatMap(({ said }, c) =>
    pieces[c + 1]!.flatMap(({ from, to }, i) => {
      if ((to - from) * panel.pxAUnit < NUMBER_PX) return []
      return [middleNumber(said[i]!, i + 1, (from + to) / 2, panel.yref)]
    }),
  )
  return [...middle, ...on]
}

function middleNumber(text: string, x: number, y: number, yref: string): Record<string, unknown> {
  const font = { size: 11, color: INK }
  return { text, xref: 'x', yref, x, y, yanchor: 'middle', showarrow: false, borderpad: 0, font }
}
