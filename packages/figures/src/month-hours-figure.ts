// Month by hour of the day: how cuts that start then fare. Dark is where they end early.

import { monthName, type YearAnswer } from '@tideover/core'
import type { Figure } from './figure.js'
import { GRID_ROW_PX, gridAxes, gridMarks, gridText } from './grid-marks.js'
import { header, sheet } from './header.js'
import {
  type MonthHoursCellsOptions,
  type MonthHoursOf,
  monthHoursCells,
  type ShadedCell,
  type YearMonths,
} from './month-hours-cells.js'
import { heading } from './panels.js'
import { partKey } from './part-look.js'
import { type Ground, groundWords } from './said.js'

export interface MonthHoursOptions extends MonthHoursCellsOptions {
  readonly title?: string
}

/** What the figure needs of the answer of `year`. */
export type MonthHoursAnswer = YearMonths & Ground & Pick<YearAnswer, 'house' | 'site'>

const KEY_PX = 40
const MARGIN = { l: 42, r: 14, b: 54 }
const LEAST = ' Last column: all, evening or windy starts, whichever is least.'
/** Where the column of the whole month stands. [h] */
const WHOLE = [24.6, 27.6] as const
const TICKS: readonly (readonly [number, string])[] = [
  ...[0, 6, 12, 18, 24].map((hour): [number, string] => [hour, String(hour)]),
  [(WHOLE[0] + WHOLE[1]) / 2, '<b>all</b>'],
]

const WORDS: Readonly<Record<MonthHoursOf, { title: string; heading: string; unit: string }>> = {
  share: { title: 'which cuts last', heading: 'Lasts to the end', unit: '% of cuts' },
  worstHours: { title: 'how long cuts last at worst', heading: 'Lasts at worst', unit: 'h' },
  p05Hours: { title: 'how long all but 1 cut in 20 last', heading: 'Lasts, 1 in 20', unit: 'h' },
  medianHours: { title: 'how long cuts last', heading: 'Lasts in the middle case', unit: 'h' },
}

/**
 * Months down, the clock at the start of the cut across, and a column for all starts of the
 * month; the number stands in its cell where cells are three hours wide.
 */
export function monthHoursFigure(
  answer: MonthHoursAnswer,
  options: MonthHoursOptions = {},
): Figure {
  const { of = 'share', spanHours = 3 } = options
  const months = monthHoursCells(answer, { of, spanHours })
  const words = WORDS[of]
  const { title = `${answer.house}, a cut of ${answer.cutHours} h: ${words.title}` } = options
  const head = header(title, `${groundWords(answer, null)}.${of === 'share' ? LEAST : ''}`)
  const rows = months.map(({ cells }) => cells)
  const wholes = months.map(({ whole }) => [whole])
  const edges = Array.from({ length: 24 / spanHours + 1 }, (_, i) => i * spanHours)
  const hover = (row: number, cell: ShadedCell): string =>
    `${monthName(months[row]!.month)}, ${whenWords(cell, of)}: ${cell.text} ${words.unit}`
  const whole = of === 'share' ? 100 : answer.cutHours
  const zone = answer.site.timezone.replaceAll('_', ' ')
  return {
    data: [
      gridMarks(words.heading, edges, rows, hover),
      gridMarks(`${words.heading}, month`, WHOLE, wholes, hover),
      gridText(edges, spanHours === 1 ? rows.map(() => []) : rows),
      gridText(WHOLE, wholes),
    ],
    layout: {
      ...sheet(head, GRID_ROW_PX * months.length, MARGIN, KEY_PX),
      ...gridAxes(
        { title: `clock at the start (${zone}) [h]`, end: WHOLE[1], ticks: TICKS },
        months.map(({ name }) => name.slice(0, 3)),
      ),
      annotations: [{ ...heading(1, words.heading, words.unit, partKey(whole)), yshift: 2 }],
    },
  }
}

function whenWords({ hours }: ShadedCell, of: MonthHoursOf): string {
  if (hours !== null) return `starts ${hours[0]} to ${hours[1]} h`
  return of === 'share' ? 'the hardest of all, evening and windy starts' : 'all starts'
}

/**
 * The numbers of the figure, a month a row. [%] of cuts or [h], rounded down; `48+` where cuts
 * were followed no further
 */
export function monthHoursRows(
  answer: YearMonths,
  options: MonthHoursCellsOptions = {},
): Record<string, string | number | null>[] {
  const unit = (options.of ?? 'share') === 'share' ? '%' : 'h'
  const named = ({ hours }: ShadedCell): string =>
    hours === null ? `month [${unit}]` : `${hours[0]} to ${hours[1]} h [${unit}]`
  return monthHoursCells(answer, options).map(({ name, cells, whole }) => ({
    month: name,
    ...Object.fromEntries([...cells, whole].map((cell) => [named(cell), toldIn(cell)])),
  }))
}

function toldIn({ value, text }: ShadedCell): string | number | null {
  return text.endsWith('+') ? text : value
}
