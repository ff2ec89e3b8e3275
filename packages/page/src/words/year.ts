// Words of the year by the hour, in the electrician's part.

import { type HourCell, type MonthRow, monthName, skyName } from '@tideover/core'
import type { PageFacts } from '../facts.js'
import { lengthText, percentDown, shortHours } from './numbers.js'
import type { Region } from './region.js'

export type YearWords = ReturnType<typeof yearWords>

export function yearWords(region: Region, { answer, promised, months }: PageFacts) {
  const length = lengthText(answer.cutHours)
  const part = (share: number): string => lengthText(share * answer.cutHours)
  const short = (hours: number): string => shortHours(hours, promised.horizonHours)
  const spans = months[0]?.byThreeHours.map(({ hours: [from, to] }) => `${from}–${to}`) ?? []
  return {
    title: 'Every month, by the hour at which it starts',
    lead:
      `In 100 starts, how many last ${length}: ${skyName(answer.promise)} of each month, everything ` +
      'else as above. Each figure is that of windy, dull days where those are fewer. The darker, the fewer.',
    alt: `How many of 100 starts last ${length}, by month and hour of the start; the numbers stand in the table below.`,
    cell: (month: number, { hours: [from, to], share }: HourCell): string =>
      `${monthName(month)}, ${from} to ${to} h: ${percentDown(share)}`,
    clock: (hour: number): string => `${hour} h`,
    month: (month: number): string => monthName(month).slice(0, 3),
    share: (share: number): string => String(Math.floor(100 * share + 1e-9)),
    hours: short,
    shareKey: ['100 of 100', '75 to 99', '50 to 74', '25 to 49', '1 to 24', '0'],
    sharesTitle: `In 100 starts, how many last ${length}`,
    spans: ['Month', ...spans],
    hoursTitle: 'Hours it lasts in 1 start of 20, or less',
    hoursLead: `By the hour at which ${region.theCut} starts, whole hours.`,
    hoursKey: [
      `${length} and more`,
      `from ${part(0.75)}`,
      `from ${part(0.5)}`,
      `from ${part(0.25)}`,
      'less',
      'next to none',
    ],
    monthsTitle: 'Every month, over all its starts',
    monthHead: ['Month', 'Worst', '1 in 20', 'Middle', 'Best', `Lasts ${answer.cutHours} h`],
    monthRow: ({ figures: f }: MonthRow): string[] => [
      f.worstHours === null ? '–' : short(f.worstHours),
      short(f.p05Hours),
      short(f.medianHours),
      short(f.bestHours),
      f.share === null ? '–' : percentDown(f.share),
    ],
  }
}
