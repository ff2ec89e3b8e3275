// Month by hour of the day as shaded cells: for the figure, and for a page that draws a table.

import { type HourCell, type MonthRow, monthName, type YearAnswer } from '@tideover/core'
import { type PartLook, partLook } from './part-look.js'
import { percentDown } from './words.js'

/** What the cells tell: the share of cuts that lasts, or hours. */
export type MonthHoursOf = 'share' | 'worstHours' | 'p05Hours' | 'medianHours'

export interface MonthHoursCellsOptions {
  /** Default `share`. */
  readonly of?: MonthHoursOf
  /** Hours of the clock in one cell, default 3. */
  readonly spanHours?: 1 | 3
}

/** What is needed of the answer of `year`. */
export type YearMonths = Pick<YearAnswer, 'months' | 'cutHours' | 'horizonHours'>

export interface ShadedCell extends PartLook {
  /** First hour of the clock at the start of the cut, and one past the last; null for all. */
  readonly hours: readonly [number, number] | null
  /** Of the share whole per cent, of hours whole ones, rounded down; null where not known. */
  readonly value: number | null
  /** `46`, `26`, `48+` where it was followed no further, `–`. */
  readonly text: string
}

export interface ShadedMonth {
  /** 1..12 */
  readonly month: number
  readonly name: string
  readonly cells: readonly ShadedCell[]
  /** Of all starts of the month, as `ride` tells them: a share is that of the hardest pattern. */
  readonly whole: ShadedCell
}

/** A month a row, January first; cells from midnight. */
export function monthHoursCells(
  answer: YearMonths,
  options: MonthHoursCellsOptions = {},
): ShadedMonth[] {
  const { of = 'share', spanHours = 3 } = options
  return answer.months.map((row: MonthRow) => {
    const spans: readonly HourCell[] = spanHours === 1 ? row.byHour : row.byThreeHours
    return {
      month: row.month,
      name: monthName(row.month),
      cells: spans.map((cell) => shaded(cell.hours, cell[of], of, answer)),
      whole: shaded(null, row.figures[of], of, answer),
    }
  })
}

function shaded(
  hours: ShadedCell['hours'],
  exact: number | null,
  of: MonthHoursOf,
  { cutHours, horizonHours }: YearMonths,
): ShadedCell {
  if (exact === null || Number.isNaN(exact)) {
    return { hours, value: null, text: '–', ...partLook(null) }
  }
  if (of === 'share') {
    const value = percentDown(exact)
    return { hours, value, text: String(value), ...partLook(exact) }
  }
  const value = Math.floor(exact)
  const text = exact >= horizonHours ? `${Math.floor(horizonHours)}+` : String(value)
  return { hours, value, text, ...partLook(exact / cutHours) }
}
