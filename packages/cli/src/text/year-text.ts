// The worst of the year as a tired person reads it: the hardest month, two tables, some stories.

import {
  type HourCell,
  type MonthRow,
  monthName,
  type WorstStart,
  type YearAnswer,
} from '@tideover/core'
import { bullets, round, sharePart, table } from './lines.js'
import { ageWords, hoursText, patternWords, percent, startWords } from './ride-text.js'
import { underSky } from './sky-text.js'
import { storyLines } from './story-text.js'
import { wrap } from './wrap.js'

/** @param traceCommand  that lives a start again, but for its start and year */
export function yearText(answer: YearAnswer, traceCommand: string): string {
  const lines: string[] = []
  if (answer.slips.length > 0) {
    lines.push('Look at the file first:', ...bullets(answer.slips), '')
  }
  lines.push(headline(answer), '')
  if (!alwaysLasts(answer)) lines.push(...shareTable(answer), '', ...hoursTable(answer), '')
  lines.push(...worstPart(answer, traceCommand))
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  return lines.join('\n')
}

/** Whether no start of any month ends within the cut. */
function alwaysLasts({ months }: YearAnswer): boolean {
  return months.every(({ figures }) => figures.share === 1)
}

function headline(answer: YearAnswer): string {
  const ground = `under ${underSky(answer, null)}${yearsWords(answer)}, ${startWords(answer)}, battery ${ageWords(answer)}.`
  if (alwaysLasts(answer)) {
    const cut = `a cut of ${round(answer.cutHours)} h`
    return wrap(
      `${answer.house}, ${cut}: it lasts to the end from every minute of the year: ${ground}`,
    )
  }
  const { figures } = answer.months[answer.hardestMonth - 1] as MonthRow
  const month = monthName(answer.hardestMonth)
  const worst =
    figures.worstHours === null
      ? ''
      : `${hoursText(figures.worstHours, figures, true)} at worst and `
  const share =
    figures.share === null
      ? 'an unknown share of such cuts'
      : `${sharePart(figures.share)}${patternWords(figures)}`
  return wrap(
    `${answer.house}, a cut of ${round(answer.cutHours)} h: the hardest month is ${month}. A cut ` +
      `that starts then lasts ${worst}${hoursText(figures.medianHours, figures, true)} in the ` +
      `middle case, and to the end of ${share}: ${ground}${shortestElsewhere(answer, figures.worstHours)}`,
  )
}

/** The hardest month by its share need not have the shortest ride. */
function shortestElsewhere({ months }: YearAnswer, worstHours: number | null): string {
  const shortest = months.toSorted(
    (a, b) => (a.figures.worstHours ?? Infinity) - (b.figures.worstHours ?? Infinity),
  )[0] as MonthRow
  const hours = shortest.figures.worstHours
  if (hours === null || worstHours === null || Math.floor(hours) >= Math.floor(worstHours))
    return ''
  return ` The shortest of the year starts in ${monthName(shortest.month)}: ${hoursText(hours, shortest.figures, true)}.`
}

function yearsWords({ sky, years }: YearAnswer): string {
  if (years === null) return ''
  const kind = sky === 'typical' ? 'synthetic' : 'recorded'
  return `, ${years} ${kind} year${years === 1 ? '' : 's'}`
}

/** Months down, spans of three hours across, and what each month is in all. */
function grid(
  { months }: YearAnswer,
  cell: (of: HourCell, row: MonthRow) => string,
  whole?: (row: MonthRow) => string,
): string[] {
  const spans = months[0]!.byThreeHours.map(({ hours: [from, to] }) => `${from}-${to}`)
  const rows = months.map((row) => [
    monthName(row.month),
    ...row.byThreeHours.map((each) => cell(each, row)),
    ...(whole === undefined ? [] : [whole(row)]),
  ])
  return table([['', ...spans, ...(whole === undefined ? [] : ['month'])], ...rows])
}

function shareTable(answer: YearAnswer): string[] {
  const cut = round(answer.cutHours)
  const whole = (row: MonthRow): string =>
    row.figures.share === null ? '-' : `${percent(row.figures.share)}${mark(row)}`
  return [
    `In 100 cuts of ${cut} h, how many it lasts to the end of, by the clock at the start:`,
    ...grid(answer, ({ share }) => String(Math.floor(100 * share)), whole),
    '',
    wrap(
      'Each figure is that of windy, dull days where it is the lesser. The last column is the ' +
        'share of `ride`: e marks that of 15 to 21 h, w that of windy, dull days.',
    ),
  ]
}

/** Which starts the share of the month is that of; blank for all. */
function mark({ figures }: MonthRow): string {
  const { share, hardest, shareByPattern } = figures
  if (share === shareByPattern.any) return ' '
  return hardest === 'evening' ? 'e' : 'w'
}

function hoursTable(answer: YearAnswer): string[] {
  const short = (hours: number): string =>
    `${Math.floor(hours)}${hours >= answer.horizonHours ? '+' : ''}`
  const cell = ({ worstHours, p05Hours }: HourCell): string => {
    const both = worstHours === null ? [p05Hours] : [worstHours, p05Hours]
    return [...new Set(both.map(short))].join('/')
  }
  const what =
    answer.worst === null
      ? 'in 1 case in 20'
      : 'at worst / in 1 case in 20 (one figure where they are the same)'
  return [wrap(`Hours it lasts ${what}, whole ones:`), ...grid(answer, cell)]
}

function worstPart(answer: YearAnswer, traceCommand: string): string[] {
  const { worst, apartDays, cutHours, horizonHours } = answer
  if (worst === null) {
    return [
      wrap(
        'No worst start is named: one year, or one with its unusual months removed, tells none. ' +
          'Without --sky it is told under a dull sky.',
      ),
    ]
  }
  if (worst.length === 0) {
    return [
      wrap(
        `From no minute of the year it lasts less than ${round(cutHours)} h: ${returnWords(answer)}.`,
      ),
    ]
  }
  const show = { traceCommand, cutHours, horizonHours, years: answer.years }
  return [
    wrap(
      `The worst starts, the shortest first, at least ${apartDays} days apart, ` +
        `${returnWords(answer)}:`,
    ),
    ...worst.flatMap((start: WorstStart, i) => ['', ...storyLines(start, i + 1, show)]),
  ]
}

function returnWords({ sky, spell, years }: YearAnswer): string {
  if (spell === null) return `the worst that these ${years} years hold`
  const how = sky === 'none' ? 'cold' : 'dark'
  return `on days as ${how} for the season as 1 year in ${spell.winters} brings`
}
