// The figures of doubts: in words, and as rows of a table.

import type { DoubtFigures, DoubtsAnswer } from '@tideover/core'
import { percentDown } from './words.js'

/** What the figure needs of the answer of `doubts`. */
export type DoubtsDrawn = Pick<
  DoubtsAnswer,
  | 'house'
  | 'month'
  | 'cutHours'
  | 'promise'
  | 'winters'
  | 'startSoc'
  | 'health'
  | 'promised'
  | 'doubts'
  | 'expiry'
>

export type By = 'share' | 'hours'

export const UNITS: Readonly<Record<By, string>> = { share: '%', hours: 'h' }

/** NaN where it is not known. */
export function amountOf({ share, medianHours }: DoubtFigures, by: By): number {
  return by === 'share' ? Math.round(1e6 * (share ?? Number.NaN)) / 1e4 : medianHours
}

export function valueText({ share, medianHours, horizonHours }: DoubtFigures, by: By): string {
  if (by === 'share') return `${percentDown(share) ?? '–'}`
  return `${medianHours >= horizonHours ? '>' : ''}${Math.floor(medianHours)}`
}

/** The numbers of the figure: the promise, then a row for each end of each doubt. */
export function doubtsRows(answer: DoubtsDrawn): Record<string, string | number | null>[] {
  const { promised, doubts, cutHours } = answer
  const told = (figures: DoubtFigures) => ({
    [`lasts ${cutHours} h [%]`]: percentDown(figures.share),
    'middle [h]': valueText(figures, 'hours'),
    '1 in 20 [h]': `${figures.p05Hours >= figures.horizonHours ? '>' : ''}${Math.floor(figures.p05Hours)}`,
  })
  return [
    { doubt: 'as promised', at: '', ...told(promised), range: '', basis: '' },
    ...doubts.flatMap(({ name, range, basis, ends }) =>
      ends.map(({ at, figures }) => ({ doubt: name, at, ...told(figures), range, basis })),
    ),
  ]
}
