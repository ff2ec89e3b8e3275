// Words of the hardest hours and of the hardest month.

import { hardestMonthOf, monthName, type SkyFigures } from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { casesText, lastsText } from './numbers.js'

/** Which starts the share is of; nothing where it is of all. */
export function hardestWords({ hardest, share, shareByPattern }: SkyFigures): string {
  if (share === shareByPattern.any || hardest === 'any') return ''
  return hardest === 'evening'
    ? 'when it starts from 15 to 21 h, '
    : 'when it starts on a windy, dull day, '
}

/** What a customer is told of the other months; nothing where they were not asked about. */
export function hardestMonthWords({ answer, months }: PageFacts): string {
  if (months.length < 12) return ''
  const month = monthName(answer.month)
  const hardest = hardestMonthOf(months)
  const { figures } = months.find((row) => row.month === hardest)!
  if (figures.share === 1) return 'In every other month it lasts to the end as well.'
  if (hardest === answer.month) return `No month is harder for this house than ${month}.`
  const { worstHours, medianHours, horizonHours, share } = figures
  const worst = worstHours === null ? '' : `${lastsText(worstHours, horizonHours)} at worst, `
  return (
    `${month} is not the hardest month for this house: in ${monthName(hardest)} it lasts ${worst}` +
    `${lastsText(medianHours, horizonHours)} in the middle case; ${hardestWords(figures)}it lasts ` +
    `to the end in ${casesText(share ?? 0)}.`
  )
}
