// The stacks side by side, the smallest that is enough, and which step to take next.

import {
  monthName,
  type NextStep,
  type StackRow,
  type StacksAnswer,
  skyWords,
} from '@tideover/core'
import { bullets, round, sharePart, table } from './lines.js'
import { ARTICLES, defaultLines, hoursText, percent, STARTS, startWords } from './ride-text.js'
import { wrap } from './wrap.js'

export interface StacksShow {
  /** List the defaults used, and what was read. */
  readonly defaults: boolean
  readonly read: readonly string[]
}

export function stacksText(answer: StacksAnswer, show: StacksShow): string {
  const lines: string[] = []
  if (answer.slips.length > 0) lines.push('Look at the file first:', ...bullets(answer.slips), '')
  lines.push(headline(answer), '', ...stackTable(answer), '', wrap(underTable(answer)))
  if (answer.limits.said.length > 0) lines.push('', ...bullets(answer.limits.said))
  lines.push('', ...stepLines(answer))
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions), '')
  lines.push(...defaultLines(answer, show.defaults))
  if (show.defaults && show.read.length > 0) lines.push('', 'Read:', ...bullets(show.read))
  return lines.join('\n').trimEnd()
}

function headline(answer: StacksAnswer): string {
  const { house, cutHours, month, sky, spell, health } = answer
  const aged = health === 1 ? 'new' : `aged to ${Math.round(100 * health)} %`
  return wrap(
    `${house}, a cut of ${round(cutHours)} h starting in ${monthName(month)}: ${verdict(answer)} ` +
      `Under ${ARTICLES[sky]}${skyWords(sky, spell, month)}, ${startWords(answer)}, battery ${aged}.`,
  )
}

function verdict({ shareTarget, smallest, met, stacks, cutHours }: StacksAnswer): string {
  const most = modules(stacks.length)
  if (shareTarget === null) {
    return `1 to ${most} side by side. Which is enough is told with --share.`
  }
  const target = `${round(100 * shareTarget)} in 100 such cuts`
  if (smallest !== null) {
    const { share, hardest } = stacks[smallest - 1]!
    return (
      `${modules(smallest)} ${smallest === 1 ? 'is' : 'are'} enough to last to the end of ${target}: ` +
      `${sharePart(share ?? 0)}${STARTS[hardest]}. The target is met.${notAbove(stacks, smallest)}`
    )
  }
  if (met === null) return 'no share can be told, for no cut of the kind starts in it.'
  const best = stacks.reduce((a, b) => ((b.share ?? 0) > (a.share ?? 0) ? b : a))
  return (
    `no stack of this base does. Wanted is to last to the end of ${target}; the best, ` +
    `${modules(best.modules)}, ${best.modules === 1 ? 'lasts' : 'last'} ${round(cutHours)} h in ` +
    `${sharePart(best.share ?? 0)}${STARTS[best.hardest]}. The target is NOT met.`
  )
}

/** Larger stacks that miss what a smaller one reaches. */
function notAbove(stacks: readonly StackRow[], smallest: number): string {
  const missing = stacks.filter((row) => row.modules > smallest && row.met === false)
  if (missing.length === 0) return ''
  const which = missing.map((row) => row.modules).join(', ')
  return ` Larger is not always better here: with ${which} it is not met.`
}

function stackTable(answer: StacksAnswer): string[] {
  const { stacks, cutHours } = answer
  const hasPrice = stacks.some(({ price }) => price !== null)
  const rows = stacks.map((row) => [
    `${row.modules}${markOf(row, answer)}`,
    row.usableKwh.toFixed(1),
    ...(hasPrice ? [money(row.price)] : []),
    row.worstHours === null ? '-' : narrow(row.worstHours, answer),
    narrow(row.p05Hours, answer),
    narrow(row.medianHours, answer),
    row.share === null ? '-' : percent(row.share),
    added(row, answer),
    ...(hasPrice ? [hourPrice(row, answer)] : []),
  ])
  const head = [
    ...['modules', 'kWh', ...(hasPrice ? ['price'] : []), 'worst', '1 in 20', 'middle'],
    ...[`lasts ${round(cutHours)} h`, 'adds', ...(hasPrice ? ['an hour'] : [])],
  ]
  return table([head, ...rows])
}

/** A table has no room for the word. */
function narrow(hours: number, answer: StacksAnswer): string {
  return hoursText(hours, answer).replace('over ', '>')
}

function markOf({ modules: count }: StackRow, { smallest, stepsFrom }: StacksAnswer): string {
  const marks = [...(count === stepsFrom ? ['now'] : []), ...(count === smallest ? ['enough'] : [])]
  return marks.length === 0 ? '' : `, ${marks.join(', ')}`
}

/** What the module adds in the middle case. */
function added({ addedHours, medianHours }: StackRow, { horizonHours }: StacksAnswer): string {
  if (addedHours === null) return '-'
  return `${medianHours >= horizonHours ? '>' : ''}${signed(addedHours)}`
}

function underTable({ stacks, horizonHours }: StacksAnswer): string {
  const price = stacks.some((row) => row.price !== null)
    ? ' "price" is that of the modules alone, "an hour" that of each hour a module adds.'
    : ' The house gives no price of a module (stack.module.price).'
  const lost = stacks.filter(({ changeoverLostShare }) => changeoverLostShare > 0)
  const atOnce =
    lost.length === 0
      ? ''
      : ` Lost at the changeover, more running than can be taken over: ${lost
          .map((row) => `${Math.ceil(1000 * row.changeoverLostShare) / 10} % with ${row.modules}`)
          .join(', ')}.`
  return (
    '"kWh" is what age has left; "lasts" is the least over any minute, 15 to 21 h, and windy, dull ' +
    `days; "adds" is over one module less, in the middle case.${price} Starts were followed for ` +
    `${round(horizonHours)} h.${atOnce}`
  )
}

function stepLines(answer: StacksAnswer): string[] {
  const { nextSteps, stepsFrom, loadsTried } = answer
  const tried = loadsTried > 1 ? `; of ${loadsTried} changes of loads the one that gives most` : ''
  const from = `from ${modules(stepsFrom)}, hours more than now${tried}`
  if (nextSteps.length === 0) return bullets(answer.advice)
  const rows = nextSteps.map((step, i) => [
    `${i + 1}`,
    gain(step, 'worstHours', answer),
    gain(step, 'p05Hours', answer),
    gain(step, 'medianHours', answer),
    step.gained.share === null ? '-' : points(step.gained.share),
    step.price === null ? 'not given' : step.price === 0 ? 'nothing' : money(step.price),
  ])
  return [
    wrap(`Next step for another 24 h (${from}):`),
    ...nextSteps.flatMap(({ what }, i) =>
      wrap(`${i + 1} ${what}`, 76)
        .split('\n')
        .map((line, l) => `  ${l === 0 ? '' : '  '}${line}`),
    ),
    '',
    ...table([['', 'worst', '1 in 20', 'middle', 'lasts', 'price'], ...rows]),
    '',
    ...bullets(answer.advice),
    ...bullets(
      nextSteps.flatMap(({ warnings }, i) => warnings.map((text) => `Step ${i + 1}: ${text}`)),
    ),
  ]
}

/** Where more hours were added than could be followed, the price is a highest one. */
function hourPrice(row: StackRow, { horizonHours }: StacksAnswer): string {
  const most = row.pricePerAddedHour !== null && row.medianHours >= horizonHours
  return `${most ? '<' : ''}${money(row.pricePerAddedHour)}`
}

function gain(
  step: NextStep,
  which: 'worstHours' | 'p05Hours' | 'medianHours',
  { horizonHours }: StacksAnswer,
): string {
  const hours = step.gained[which]
  if (hours === null) return '-'
  return `${(step[which] ?? 0) >= horizonHours ? '>' : ''}${signed(hours)}`
}

/** Whole hours, never more than were gained; under an hour either way is none. */
function signed(hours: number): string {
  const whole = Math.abs(hours) < 1 ? 0 : Math.floor(hours)
  return `${whole > 0 ? '+' : ''}${whole} h`
}

/** Whole points of a hundred, in the same way. */
function points(share: number): string {
  const whole = Math.abs(share) < 0.01 ? 0 : Math.floor(100 * share)
  return `${whole > 0 ? '+' : ''}${whole} %`
}

function money(value: number | null): string {
  if (value === null) return '-'
  return value < 10 ? value.toFixed(2) : String(Math.round(value))
}

function modules(count: number): string {
  return count === 1 ? '1 module' : `${count} modules`
}
