// Findings as a tired electrician reads them: how many, then each with its numbers, what it rests
// on and what to do; cautions always.

import { type CheckAnswer, type Figure, type Finding, GRADES, type Grade } from '@tideover/core'
import { wrap } from './wrap.js'

const WIDTH = 80
const HEADS: Readonly<Record<Grade, string>> = {
  mend: 'MEND: as it stands this breaks the promise',
  look: 'LOOK: to be looked into on site',
  'good to know': 'GOOD TO KNOW',
}

const COUNTED: Readonly<Record<Grade, string>> = {
  mend: 'to mend',
  look: 'to look at',
  'good to know': 'good to know',
}

export function checkText(answer: CheckAnswer): string {
  const lines = [headline(answer)]
  let number = 0
  for (const grade of GRADES) {
    const found = answer.findings.filter((finding) => finding.grade === grade)
    if (found.length > 0) lines.push('', HEADS[grade])
    for (const finding of found) lines.push('', ...findingLines(finding, ++number))
  }
  if (answer.warnings.length > 0) {
    lines.push('', 'Assumed, or a slip?', ...answer.warnings.flatMap((text) => hung('- ', text)))
  }
  lines.push('', 'Caution:', ...answer.cautions.flatMap((text) => hung('- ', text)))
  return lines.join('\n')
}

function headline({ house, modules, health, findings }: CheckAnswer): string {
  const counts = GRADES.map((grade) => {
    const count = findings.filter((finding) => finding.grade === grade).length
    return `${count === 0 ? 'nothing' : count} ${COUNTED[grade]}`
  })
  return wrap(
    `${house}, ${modules} module${modules === 1 ? '' : 's'} aged to ${Math.round(100 * health)} %: ` +
      `${counts.join(', ')}.`,
    WIDTH,
  )
}

function findingLines({ what, numbers, restsOn, toDo }: Finding, number: number): string[] {
  const indent = '    '
  return [
    ...hung(`${number}.`.padEnd(4), what),
    ...hung(`${indent}Numbers: `, numbers.map(figureText).join('; '), 6),
    ...hung(`${indent}Rests on: `, restsOn, 6),
    ...hung(`${indent}Do: `, toDo, 6),
  ]
}

/** A text behind a mark, its further lines under it. */
function hung(mark: string, text: string, indent = mark.length): string[] {
  const lines = wrap(glued(`${mark}${text}`.trimStart()), WIDTH - indent).split('\n')
  const lead = mark.length - mark.trimStart().length
  return lines.map(
    (line, i) => `${' '.repeat(i === 0 ? lead : indent)}${line.replaceAll(NO_BREAK, ' ')}`,
  )
}

const NO_BREAK = '\u00a0'

/** Keeps a number and its unit on one line. */
function glued(text: string): string {
  return text.replace(/(\d) (?=(?:k?[WVA]+h?|m?s|h|l|min|°C|Hz|%)(?:[^a-z]|$))/gi, `$1${NO_BREAK}`)
}

function figureText({ name, value, unit }: Figure): string {
  const shown = typeof value === 'number' ? numberText(value, unit) : value
  return `${name} ${shown}${unit === '' ? '' : ` ${unit}`}`
}

/** Two decimals at most; hours of a year and minutes whole, a begun one counted. */
function numberText(value: number, unit: string): string {
  if (unit.endsWith('a year')) return String(Math.ceil(value))
  return String(Number(value.toFixed(2)))
}
