// Every start in sum: how many, how long, which load ended how many, and where the rows are.

import { monthName, type StartsAnswer } from '@tideover/core'
import { bullets, round, sharePart, table } from './lines.js'
import { ageWords, hoursText, patternWords, sharesLine, startWords } from './ride-text.js'
import { underSky } from './sky-text.js'
import { wrap } from './wrap.js'

export interface StartsShow {
  /** The command that writes the rows. */
  readonly csvCommand: string
  /** Where they were written; null where they were not. */
  readonly csv: string | null
  /** The same under a dull sky, which goes before a clear one. */
  readonly dull: StartsAnswer | null
}

export function startsText(answer: StartsAnswer, { csvCommand, csv, dull }: StartsShow): string {
  const lines: string[] = []
  if (answer.slips.length > 0) {
    lines.push('Look at the file first:', ...bullets(answer.slips), '')
  }
  if (dull !== null) lines.push(...figuresOf(dull), '', 'The bright case, which is no promise:', '')
  lines.push(...figuresOf(answer), '')
  lines.push(
    csv === null ? 'Every start, a row each minute:' : `Every start, a row each minute: ${csv}`,
  )
  if (csv === null) lines.push(`  ${csvCommand}`)
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  return lines.join('\n')
}

function figuresOf(answer: StartsAnswer): string[] {
  const { figures } = answer
  const hours = [
    ...(figures.worstHours === null ? [] : [`${hoursText(figures.worstHours, figures)} at worst`]),
    `${hoursText(figures.p05Hours, figures)} in 1 case in 20`,
    `${hoursText(figures.medianHours, figures)} in the middle case`,
    `${hoursText(figures.bestHours, figures)} at best`,
  ]
  return [
    wrap(
      `${answer.house}, a cut of ${round(answer.cutHours)} h starting at every minute of ` +
        `${answer.month === null ? 'the year' : monthName(answer.month)}, ` +
        `${figures.starts} starts: it lasts to the end of ` +
        `${figures.share === null ? 'an unknown share of such cuts' : sharePart(figures.share)}` +
        `${patternWords(figures)}: under ${underSky(answer, answer.month)}${yearWords(answer)}, ` +
        `${startWords(answer)}, battery ${ageWords(answer)}.`,
    ),
    '',
    wrap(`It lasts ${hours.join(', ')}.${noWorst(answer)}`),
    wrap(sharesLine(figures)),
    '',
    ...endsTable(answer),
  ]
}

/** Which numbered year was lived, where it is one. */
function yearWords({ spell, sky, lived }: StartsAnswer): string {
  if (spell !== null || sky === 'clear') return ''
  const year = lived[0]!.syntheticYear
  return sky === 'dull' || sky === 'none'
    ? `: winter ${year} of those behind it as it comes, no dark spell`
    : `, year ${year} alone`
}

function noWorst({ figures, sky }: StartsAnswer): string {
  if (figures.worstHours !== null) return ''
  return sky === 'file'
    ? ' A single recorded year, or one with its unusual months removed, tells no worst case.'
    : ' One year tells no worst case: without --sky it is told under a dull sky.'
}

function endsTable({ endedBy, beyond, figures, horizonHours }: StartsAnswer): string[] {
  const row = (name: string, starts: number): string[] => [
    name,
    String(starts),
    `${((100 * starts) / figures.starts).toFixed(1)} %`,
  ]
  return table([
    ['ended by', 'starts', ''],
    ...endedBy.map(({ name, starts }) => row(name, starts)),
    row(`none within ${round(horizonHours)} h`, beyond),
  ])
}
