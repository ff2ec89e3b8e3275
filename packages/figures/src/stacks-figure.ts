// Every stack of a base side by side: hours, share of cuts that last, price, and what binds.

import { monthName, type StackRow } from '@tideover/core'
import type { Figure, Trace } from './figure.js'
import { header, sheet } from './header.js'
import { heading, type KeyEntry, type Panels, panels } from './panels.js'
import { groundWords } from './said.js'
import { type StackHours, stackHours } from './stack-hours.js'
import type { StacksDrawn } from './stacks-rows.js'
import { AREAS, axisTitle, BAD, BASE_AXIS, INK, levelLine, PARTS } from './style.js'
import { type NumberedPanel, topNumbers } from './top-numbers.js'
import { percentDown } from './words.js'

export interface StacksFigureOptions {
  readonly title?: string
}

const HEIGHTS = { hours: 170, share: 90, price: 70 }
const PANELS = [
  [null, 40],
  ['hours', HEIGHTS.hours],
  [null, 46],
  ['share', HEIGHTS.share],
] as const
const PRICE = [
  [null, 46],
  ['price', HEIGHTS.price],
] as const
const MARGIN = { l: 48, r: 14, b: 66 }
/** Room above the highest number. */
const ABOVE = 1.2

/** Panels above each other, a column for each stack; that of the price only where it is given. */
export function stacksFigure(answer: StacksDrawn, options: StacksFigureOptions = {}): Figure {
  const { house, cutHours, month, shareTarget } = answer
  const { title = `${house}: how many modules for a cut of ${cutHours} h` } = options
  const ground = `${monthName(month)}, ${groundWords(answer, month)}`
  const head = header(title, `${ground}. ${bindsWords(answer)}`)
  const place = panels(hasPrice(answer) ? [...PANELS, ...PRICE] : PANELS)
  const hours = stackHours(answer, ABOVE, HEIGHTS.hours)
  const columns = columnsOf(answer)
  return {
    data: [...hours.data, ...columns.map((column) => columnTrace(answer.stacks, column))],
    layout: {
      ...sheet(head, place.heightPx, MARGIN),
      bargap: 0.25,
      barmode: 'stack',
      ...axes(answer, place, hours.top),
      shapes: [
        ...hours.shapes,
        ...(shareTarget === null ? [] : levelLine(100 * shareTarget, 'y2')),
      ],
      annotations: [
        ...headings(answer, place, hours),
        ...hours.annotations,
        ...columns.flatMap(numbersOf),
      ],
    },
  }
}

function hasPrice({ stacks }: StacksDrawn): boolean {
  return stacks.some(({ price }) => price !== null)
}

/** Share and price; the one only where it is given. */
function columnsOf(answer: StacksDrawn): Column[] {
  const { stacks, shareTarget } = answer
  const share = stacks.map((row) => percentDown(row.share))
  const price = stacks.map((row) => row.price)
  const target = shareTarget === null ? [] : [100 * shareTarget]
  return [
    {
      ...{ name: 'lasts to the end [%]', y: share, yaxis: 'y2', color: PARTS[2] },
      panel: { yref: 'y2', pxAUnit: HEIGHTS.share / (100 * ABOVE), levels: target },
    },
    ...(hasPrice(answer)
      ? [
          {
            ...{ name: 'price', y: price, yaxis: 'y3', color: AREAS.losses },
            panel: { yref: 'y3', pxAUnit: HEIGHTS.price / mostPrice(answer), levels: [] },
          },
        ]
      : []),
  ]
}

/** Upper end of the axis of prices. */
function mostPrice({ stacks }: StacksDrawn): number {
  return 1.35 * Math.max(1, ...stacks.map(({ price }) => price ?? 0))
}

function axes(answer: StacksDrawn, place: Panels, mostHours: number): Record<string, unknown> {
  const { stacks } = answer
  const price = {
    ...{ ...BASE_AXIS, range: [0, mostPrice(answer)], nticks: 3, tickformat: ',.0f' },
    domain: place.domain('price'),
  }
  return {
    xaxis: {
      ...BASE_AXIS,
      title: axisTitle('modules'),
      range: [0.4, stacks.length + 0.6],
      tickvals: stacks.map(({ modules }) => modules),
      ticktext: stacks.map((row) => tickText(row, answer)),
      tickfont: { size: 12, color: INK },
      anchor: hasPrice(answer) ? 'y3' : 'y2',
      showgrid: false,
    },
    yaxis: { ...BASE_AXIS, domain: place.domain('hours'), range: [0, mostHours], nticks: 5 },
    yaxis2: { ...BASE_AXIS, domain: place.domain('share'), range: [0, 100 * ABOVE], dtick: 50 },
    ...(hasPrice(answer) ? { yaxis3: price } : {}),
  }
}

function headings(
  answer: StacksDrawn,
  place: Panels,
  hours: Pick<StackHours, 'key'>,
): Record<string, unknown>[] {
  const top = (name: string): number => place.domain(name)[1]
  const lasts = `Lasts ${answer.cutHours} h to the end`
  const price = hasPrice(answer)
    ? [heading(top('price'), 'Price of all modules', 'money of the house file')]
    : []
  return [
    heading(top('hours'), 'Lasts', 'h', hours.key),
    heading(top('share'), lasts, '% of cuts', shareKey(answer)),
    ...price,
  ]
}

/** `2<br>now`, `3<br>enough` */
function tickText({ modules }: StackRow, { stepsFrom, smallest }: StacksDrawn): string {
  const marks = [
    ...(modules === stepsFrom ? ['now'] : []),
    ...(modules === smallest ? ['enough'] : []),
  ]
  return [String(modules), ...marks.map((mark) => `<b>${mark}</b>`)].join('<br>')
}

/** What no module mends, in a few words; the answer has the sentences. */
function bindsWords({ limits: { stopsAt, binding }, stacks }: StacksDrawn): string {
  const most = stacks.length
  const binds = binding.map(({ limit }) => (limit === 'inverter' ? 'inverter rating' : limit))
  const stops =
    stopsAt === null ? '' : `From ${stopsAt} on, no larger stack lasts more of these cuts.`
  if (binds.length === 0) return stops
  const limit = binds.map((name) => (name === 'inverter rating' ? name : `${name} limit`))
  return `With ${most}, it is the ${limit.join(' and the ')} that ends cuts. ${stops}`.trim()
}

interface Column {
  readonly name: string
  readonly y: readonly (number | null)[]
  readonly yaxis: string
  readonly color: string
  readonly panel: NumberedPanel
}

function textsOf({ y }: Column): string[] {
  return y.map((value) => (value === null ? '–' : value.toLocaleString('en-GB')))
}

function columnTrace(stacks: readonly StackRow[], column: Column): Trace {
  const { name, y, yaxis, color } = column
  return {
    type: 'bar',
    name,
    x: stacks.map(({ modules }) => modules),
    y,
    yaxis,
    text: textsOf(column),
    textposition: 'none',
    marker: { color, line: { color: INK, width: 0.5 } },
    hovertemplate: `%{x} modules: %{text}<extra>${name}</extra>`,
  }
}

/** More columns than this leave no room for numbers of many digits over them on a phone. */
const MOST_NUMBERS = 7

function numbersOf(column: Column): Record<string, unknown>[] {
  const texts = textsOf(column)
  const isWide = texts.some((text) => text.length > 3)
  if (isWide && texts.length > MOST_NUMBERS) return []
  return topNumbers(texts, column.y, column.panel)
}

function shareKey({ shareTarget }: StacksDrawn): KeyEntry[] {
  if (shareTarget === null) return []
  return [{ words: `asked for: ${Math.round(1000 * shareTarget) / 10}`, color: BAD, sign: '┅' }]
}
