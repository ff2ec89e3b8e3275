// The numbers of stacks side by side as rows of a table.

import type { StacksAnswer } from '@tideover/core'
import type { Ground } from './said.js'
import { hoursSaid } from './stack-hours.js'
import { percentDown } from './words.js'

/** What the figure needs of the answer of `stacks`. */
export type StacksDrawn = Ground &
  Pick<
    StacksAnswer,
    | 'house'
    | 'month'
    | 'cutHours'
    | 'horizonHours'
    | 'stacks'
    | 'shareTarget'
    | 'smallest'
    | 'stepsFrom'
    | 'limits'
  >

/** The numbers of the figure, a stack a row. Hours and shares are rounded down. */
export function stacksRows(answer: StacksDrawn): Record<string, string | number | null>[] {
  const { stacks, cutHours } = answer
  const hours = (value: number | null): string | null =>
    value === null ? null : hoursSaid(value, answer)
  return stacks.map((row) => ({
    modules: row.modules,
    'usable [kWh]': Math.round(100 * row.usableKwh) / 100,
    'at worst [h]': hours(row.worstHours),
    '1 in 20 [h]': hours(row.p05Hours),
    'middle [h]': hours(row.medianHours),
    [`lasts ${cutHours} h [%]`]: percentDown(row.share),
    'adds in the middle [h]': row.addedHours === null ? null : Math.round(10 * row.addedHours) / 10,
    price: row.price,
    'price of an added hour':
      row.pricePerAddedHour === null ? null : Math.round(row.pricePerAddedHour),
    'meets what is asked': row.met === null ? null : row.met ? 'yes' : 'no',
  }))
}
