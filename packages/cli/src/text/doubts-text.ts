// How sure an answer is, on one screen: the promise, what moves it most, when it expires.

import {
  type Doubt,
  type DoubtFigures,
  type DoubtsAnswer,
  type Expiry,
  monthName,
  skyWords,
} from '@tideover/core'
import { bullets, round, sharePart, table } from './lines.js'
import { wrap } from './wrap.js'

const CP = 'common practice, no source'

export function doubtsText(answer: DoubtsAnswer): string {
  const lines: string[] = []
  if (answer.slips.length > 0) lines.push('Look at the file first:', ...bullets(answer.slips), '')
  lines.push(headline(answer), '', ...swingTable(answer), '')
  lines.push('When the answer expires:', ...bullets(expiryLines(answer)), '')
  lines.push(`Ranges (* ${CP}):`, ...answer.doubts.flatMap(rangeLines))
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  return lines.join('\n')
}

function headline(answer: DoubtsAnswer): string {
  const { promised, cutHours, month, promise, winters, health } = answer
  const days = Math.max(1, Math.ceil(cutHours / 24))
  const sky = skyWords(promise, promise === 'dull' ? { winters, days } : null, month)
  return wrap(
    `${answer.house}, a cut of ${round(cutHours)} h starting in ${monthName(month)}: it lasts to ` +
      `the end of ${promised.share === null ? 'an unknown share of such cuts' : sharePart(promised.share)}, ${hoursText(promised.medianHours, promised)} in ` +
      `the middle case: ${sky}, ${startWords(answer)}, battery aged to ` +
      `${Math.round(100 * health)} %. What moves that most, one thing at a time:`,
  )
}

function startWords({ startSoc: { kind, value } }: DoubtsAnswer): string {
  if (kind === 'full') return 'started full'
  const share = `${Math.round(100 * value)} %`
  return kind === 'reserve' ? `started at its reserve of ${share}, less 5 points` : `from ${share}`
}

const INDENT = 18

/** The promise on top, then each doubt with its ends; points of share between them last. */
function swingTable({ promised, doubts, cutHours }: DoubtsAnswer): string[] {
  const cells = (figures: DoubtFigures): string[] => [
    figures.share === null ? '-' : `${Math.floor(100 * figures.share)} %`,
    figures.hardest,
    hoursText(figures.medianHours, figures),
    hoursText(figures.p05Hours, figures),
  ]
  const rows = doubts.flatMap(({ name, ends, swingShare }) =>
    ends.map(({ at, figures }, i) => [
      `${(i === 0 ? name : '').padEnd(INDENT)}${at}`,
      ...cells(figures),
      i === 0 ? String(Math.round(100 * swingShare)) : '',
    ]),
  )
  const head = ['', `${round(cutHours)} h`, 'starts', 'middle', '1 in 20', 'points']
  return [
    ...table([head, ['as promised', ...cells(promised), ''], ...rows]),
    '',
    wrap(
      `${round(cutHours)} h: share of cuts that last to the end, the least of starts at any ` +
        'minute, in the evening (15 to 21 h) and on windy, dull days. Points: between the best ' +
        'and the worst of a row and the promise.',
    ),
  ]
}

function hoursText(hours: number, { horizonHours }: DoubtFigures): string {
  if (hours < 1) return `${Math.floor(60 * hours)} min`
  return `${hours >= horizonHours ? 'over ' : ''}${Math.floor(hours)} h`
}

function rangeLines({ name, range, basis }: Doubt): string[] {
  const short = basis === CP ? '*' : basis.replace(CP, '*')
  return bullets([`${name}: ${range} (${short})`])
}

function expiryLines({ expiry, cutHours }: DoubtsAnswer): string[] {
  const { share, metNow, assumedHealth, assumedYear, assumedYearRange, ageingPerYear } = expiry
  const [early, late] = assumedYearRange.map((year) => Math.floor(year))
  const ages =
    `The battery is taken as aged to ${Math.round(100 * assumedHealth)} %: year ` +
    `${Math.floor(assumedYear)} of its life at ${Math.round(100 * ageingPerYear)} % a year in a ` +
    `straight line from new (year ${early} at 3 %, year ${late} at 1 %; ${CP}). Put a date on it.`
  if (share === null || metNow === null) {
    const none =
      'The share that lasts has no 10 points to lose: mend the answer first, or give --share.'
    return [ages, none]
  }
  const from = expiry.shareFrom === 'given' ? 'as asked' : 'ten points less than now'
  const target = `${Math.round(100 * share)} in 100 cuts of ${round(cutHours)} h (${from})`
  if (!metNow) return [ages, `Lasting ${target} is not met as things stand; ${whenNew(expiry)}.`]
  return [
    ages,
    `With nothing else changed, lasting ${target} ${yearText(expiry)}.`,
    `By growth of the loads alone it ${growthText(expiry)}.`,
  ]
}

function whenNew({ lostInYear }: Expiry): string {
  if (lostInYear === 0) return 'a new battery does not meet it either'
  return lostInYear === null
    ? 'a new battery meets it'
    : `a new battery meets it until year ${lostInYear - 1}`
}

function yearText({ lostInYear, mostYears }: Expiry): string {
  return lostInYear === null
    ? `still holds with a battery of ${mostYears} years (other parts give out before)`
    : `is lost in year ${lostInYear} of the battery`
}

function growthText({ lostAtGrowth, mostGrowth }: Expiry): string {
  return lostAtGrowth === null
    ? `still holds when every load draws ${Math.round(100 * mostGrowth)} % more`
    : `is lost once every load draws ${Math.round(100 * lostAtGrowth)} % more`
}
