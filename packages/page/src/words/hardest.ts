// Words of the hardest hours, of a sky that is harder than the promise's, and of the hardest month.

import {
  hardestMonthOf,
  type MonthRow,
  monthName,
  type RideAnswer,
  type SkyFigures,
} from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { casesText, lastsText } from './numbers.js'

/** Which starts the share is of; nothing where it is of all. */
export function hardestWords({ hardest, share, shareByPattern }: SkyFigures): string {
  if (share === shareByPattern.any || hardest === 'any') return ''
  return hardest === 'evening'
    ? 'when it starts from 15 to 21 h, '
    : 'when it starts on a windy, dull day, '
}

/** A share that is less by less is the same to whoever reads it. */
const POINT = 0.005

/**
 * Figures under a sky with days as they come, where some of them are harder than the promise's: dull
 * days are not the coldest. Null where none is.
 */
export function harderSky({
  skies,
  promise,
}: Pick<RideAnswer, 'skies' | 'promise'>): SkyFigures | null {
  const promised = skies[promise]
  // Without any sun no day is harder by its light.
  if (promised === undefined || promise === 'none') return null
  const found = (['typical', 'file'] as const)
    .filter((kind) => kind !== promise)
    .flatMap((kind) => skies[kind] ?? [])
    .filter((figures) => lastsFewer(figures, promised) || lastsLess(figures, promised))
  return found.sort((a, b) => (a.worstHours ?? 0) - (b.worstHours ?? 0))[0] ?? null
}

function lastsFewer(a: SkyFigures, b: SkyFigures): boolean {
  return (a.share ?? 1) < (b.share ?? 1) - POINT
}

/** By whole hours at worst. */
function lastsLess(a: SkyFigures, b: SkyFigures): boolean {
  return Math.floor(a.worstHours ?? Infinity) < Math.floor(b.worstHours ?? Infinity)
}

/** What a customer is told of it: what of it is harder, and no more. */
export function harderSkyWords({ answer, promised }: PageFacts): string {
  const harder = harderSky(answer)
  if (harder === null) return ''
  const { worstHours, horizonHours, share } = harder
  const told = [
    ...(worstHours !== null && lastsLess(harder, promised)
      ? [`it lasts ${lastsText(worstHours, horizonHours)} at worst`]
      : []),
    ...(lastsFewer(harder, promised) ? [`it lasts to the end in ${casesText(share ?? 0)}`] : []),
  ]
  return (
    'Of the days as they come some are harder than a dull one (the coldest are often bright, and a ' +
    `cold battery gives less): there ${told.join(', and ')}.`
  )
}

/** What a customer is told of the other months; nothing where they were not asked about. */
export function hardestMonthWords(facts: PageFacts): string {
  const { answer, months } = facts
  if (months.length < 12) return ''
  const month = monthName(answer.month)
  const hardest = hardestMonthOf(months)
  const { figures } = months.find((row) => row.month === hardest)!
  if (figures.share === 1) return 'In every other month it lasts to the end as well.'
  if (hardest === answer.month) {
    return `No month is harder for this house than ${month}.${shortestElsewhere(facts, hardest)}`
  }
  const { worstHours, medianHours, horizonHours, share } = figures
  const worst = worstHours === null ? '' : `${lastsText(worstHours, horizonHours)} at worst, `
  return (
    `${month} is not the hardest month for this house: in ${monthName(hardest)} it lasts ${worst}` +
    `${lastsText(medianHours, horizonHours)} in the middle case; ${hardestWords(figures)}it lasts ` +
    `to the end in ${casesText(share ?? 0)}.${shortestElsewhere(facts, hardest)}`
  )
}

/** Of the months the one with the shortest ride, where that is no month told already. */
function shortestElsewhere({ answer, months }: PageFacts, hardest: number): string {
  const worst = (row: MonthRow): number => row.figures.worstHours ?? Infinity
  const shortest = months.toSorted((a, b) => worst(a) - worst(b))[0] as MonthRow
  const told = months.filter(({ month }) => month === answer.month || month === hardest)
  if (told.some((row) => Math.floor(worst(row)) <= Math.floor(worst(shortest)))) return ''
  const { month, figures } = shortest
  return (
    ` The shortest of the year starts in ${monthName(month)}: ` +
    `${lastsText(worst(shortest), figures.horizonHours)}.`
  )
}
