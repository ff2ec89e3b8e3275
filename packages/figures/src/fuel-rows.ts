// The numbers of fuel and generator hours as rows of a table.

import { type FuelFigures, monthName, type PlanAnswer } from '@tideover/core'

/** What is needed of the answer of `generator`. */
export type FuelDrawn = Pick<
  PlanAnswer,
  | 'house'
  | 'days'
  | 'winters'
  | 'promise'
  | 'startSoc'
  | 'health'
  | 'supposed'
  | 'set'
  | 'months'
  | 'closer'
  | 'rule'
>

export type FuelQuantity = Exclude<keyof FuelFigures, 'starts'>

/** From the least to the most. */
export const FUEL_CASES = [
  { key: 'mean', words: 'mean' },
  { key: 'oneIn20', words: '19 in 20 take no more' },
  { key: 'worst', words: 'worst' },
] as const

/** What is at home; null where the set is only supposed. [l] */
export function tankAndCansL({
  supposed,
  set,
}: Pick<FuelDrawn, 'supposed' | 'set'>): number | null {
  return supposed ? null : set.tankL + (set.cansL ?? 0)
}

const COLUMNS = [
  { of: 'litres', words: 'fuel', unit: 'l' },
  { of: 'runHours', words: 'running', unit: 'h' },
  { of: 'setStarts', words: 'starts', unit: '' },
  { of: 'pours', words: 'cans poured', unit: '' },
] as const

/** A row a month: fuel and hours to a tenth, rounded up; starts of the set, and cans poured. */
export function fuelRows({
  months,
}: Pick<FuelDrawn, 'months'>): Record<string, string | number | null>[] {
  return months.map(({ month, figures }) => ({
    month: monthName(month),
    ...Object.fromEntries(
      COLUMNS.flatMap(({ of, words, unit }) =>
        FUEL_CASES.map(({ key, words: which }) => [
          `${words}, ${which}${unit === '' ? '' : ` [${unit}]`}`,
          tenthsUp(figures[of][key]),
        ]),
      ),
    ),
  }))
}

function tenthsUp(value: number | null): number | null {
  return value === null ? null : Math.ceil(10 * value - 1e-6) / 10
}
