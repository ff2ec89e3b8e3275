// How much to store and who must be there, as a tired electrician reads it.

import {
  type FuelFigures,
  monthName,
  type PlanAnswer,
  type PlanCase,
  type SkyKind,
  skyName,
  skyWords,
} from '@tideover/core'
import { DateTime } from 'luxon'
import { bullets, round, table } from './lines.js'
import { wrap } from './wrap.js'

/** @param traceCommand  lives a cut again, but for its start and year */
export function generatorText(answer: PlanAnswer, traceCommand: string): string {
  const lines: string[] = []
  if (answer.slips.length > 0) lines.push('Look at the file first:', ...bullets(answer.slips), '')
  if (answer.supposed) lines.push(...supposedLines(answer), '')
  lines.push(headline(answer), '', ...keepLines(answer), '')
  lines.push(...monthTable(answer), '', ...skyTable(answer), '')
  lines.push('Who must be there, with fuel enough:', ...caseLines(answer, traceCommand), '')
  lines.push(...quietLines(answer), ...failingLines(answer), '', wrap(SAMPLE))
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  return lines.join('\n')
}

const SAMPLE =
  'Counted on cuts that begin at every full hour of the month; shares of lasting on those of ' +
  'every minute. Litres follow the three figures of the data sheet, straight between them; ' +
  'without a data sheet they may be a quarter off.'

function supposedLines({ set, person }: PlanAnswer): string[] {
  const { none, half, full } = set.litresPerHour
  const there = person === null ? '' : `, by somebody who is there ${person.from} to ${person.to}`
  return [
    wrap(
      `There is no generator in this house file. Supposed instead: a petrol set of ${plain(set.ratedKw)} kW, ` +
        `started by hand${there}, that takes ${plain(none)}, ${plain(half)} and ${plain(full)} l an hour at no, ` +
        'half and full load (common practice, no source). Under generator in the file stands the real one; --set gives another size.',
    ),
  ]
}

function days(answer: PlanAnswer): string {
  return answer.days === 1 ? '1 day' : `${round(answer.days)} days`
}

function headline(answer: PlanAnswer): string {
  const { closer, promise, winters } = answer
  const figures = closer.skies[promise] as FuelFigures
  const spell = { winters, days: Math.max(1, Math.ceil(answer.days)) }
  const isSpell = promise === 'dull' || promise === 'none'
  const sky = skyWords(promise, isSpell ? spell : null, closer.month)
  const hour = (value: number): string => `${Math.ceil(value)} h`
  const most = figures.litres.worst
  const worst = most === null ? '' : `, the worst ${up(most)} l`
  return wrap(
    `${answer.house}, a cut of ${days(answer)} starting in ${monthName(closer.month)}, ${sky}: ` +
      `store ${up(figures.litres.oneIn20)} l${thirstiestText(answer)}. 19 cuts in 20 take no more; the mean is ` +
      `${up(figures.litres.mean)} l in ${hour(figures.runHours.mean)} of running${worst}. With the set ` +
      `${lastingText(closer.lasting.share)} to the end${patternText(closer.lasting.hardest)}; ` +
      `without it ${lastingText(closer.withoutSet.share)}.`,
  )
}

/** The sky that takes most, where that is more than the promise's; a clear one never counts. */
function thirstiestText(answer: PlanAnswer): string {
  const more = thirstierSkies(answer)
  const most = Math.max(...more.map(({ litres }) => litres))
  const names = more.filter(({ litres }) => litres === most).map(({ name }) => name)
  return names.length === 0 ? '' : `, or ${most} l to cover ${names.join(' and ')} as well`
}

function lastingText(share: number | null): string {
  if (share === null) return 'an unknown share of cuts lasts'
  if (share === 0) return 'no cut lasts'
  if (share === 1) return 'every cut lasts'
  const hundred = Math.floor(100 * share)
  return hundred === 0 ? 'fewer than 1 in 100 cuts last' : `${hundred} in 100 cuts last`
}

const PATTERN_WORDS = { any: '', evening: ' (starts 15 to 21 h)', windy: ' (windy, dull days)' }

function patternText(hardest: keyof typeof PATTERN_WORDS): string {
  return PATTERN_WORDS[hardest]
}

/** What the house has against what it takes, and what may be kept. */
function keepLines(answer: PlanAnswer): string[] {
  const { set, closer, promise, rule, supposed, person } = answer
  const need = up((closer.skies[promise] as FuelFigures).litres.oneIn20)
  // What nobody pours stays in the cans.
  const has = set.tankL + (person === null ? 0 : set.cansL)
  const lines: string[] = []
  if (supposed) lines.push(`A tank of ${plain(set.tankL)} l is supposed; the rest stands in cans.`)
  else {
    const dry = Math.ceil(100 * closer.dryShare)
    const short = has >= need ? '' : `, ${plain(need - has)} l short`
    lines.push(
      `The house has ${plain(set.tankL)} l in the tank and ${plain(set.cansL)} l in cans${short}: it is ` +
        `used up before the end in ${dry === 0 ? 'none' : `${dry} in 100`} of these cuts.`,
    )
  }
  if (person === null) {
    lines.push(
      'Nobody is named to fill the tank (person): what is in cans is not counted, and what a cut ' +
        'takes is told as if the tank never ran empty.',
    )
  }
  if (rule === null) {
    lines.push(
      'How much may be kept at home: ask the fire service and the insurer; no rule is known here.',
    )
  } else {
    const most = Math.max(need, has)
    const over = most > rule.petrolL ? `${plain(most)} l is more` : `${plain(most)} l is within it`
    lines.push(
      `If it is petrol: up to ${rule.petrolL} l may be kept at home without notifying the petroleum ` +
        `authority, in cans of at most ${rule.plasticCanL} l plastic or ${rule.metalCanL} l metal; ${over} ` +
        `(${rule.basis}). The file does not tell petrol from diesel, which has rules of its own.`,
    )
  }
  return bullets([...thirstierLines(answer), ...lines])
}

/** Skies of which 1 cut in 20 takes more than under that of the headline. */
function thirstierSkies({ closer, promise }: PlanAnswer): { name: string; litres: number }[] {
  const own = up((closer.skies[promise] as FuelFigures).litres.oneIn20)
  return Object.entries(closer.skies)
    .filter(([kind, { litres }]) => kind !== 'clear' && up(litres.oneIn20) > own)
    .map(([kind, { litres }]) => ({ name: skyName(kind as SkyKind), litres: up(litres.oneIn20) }))
}

function thirstierLines(answer: PlanAnswer): string[] {
  const more = thirstierSkies(answer).map(({ name, litres }) => `${name} ${litres} l`)
  if (more.length === 0) return []
  return [
    `1 cut in 20 takes more under another sky: ${more.join(', ')}. Cold counts as darkness ` +
      'does: a cold battery takes little charge, and the set runs on.',
  ]
}

function fuelCells({ litres: l, runHours, setStarts, pours }: FuelFigures): string[] {
  return [
    `${up(l.mean)} l`,
    `${up(l.oneIn20)} l`,
    `${Math.ceil(runHours.mean)} h`,
    `${Math.ceil(runHours.oneIn20)} h`,
    String(setStarts.oneIn20),
    String(pours.oneIn20),
  ]
}

const HEAD = ['mean', '1 in 20', 'runs', '1 in 20', 'starts', 'pours']

function monthTable(answer: PlanAnswer): string[] {
  const rows = answer.months.map(({ month, figures }) => [monthName(month), ...fuelCells(figures)])
  return table([[skyName(answer.promise), ...HEAD], ...rows])
}

function skyTable({ closer }: PlanAnswer): string[] {
  const rows = Object.entries(closer.skies).map(([kind, figures]) => [
    skyName(kind as SkyKind),
    ...fuelCells(figures),
  ])
  return [
    ...table([[monthName(closer.month), ...HEAD], ...rows]),
    '',
    'Starts and pours: no more than so many in 19 of 20 cuts.',
  ]
}

function caseLines(answer: PlanAnswer, traceCommand: string): string[] {
  const { middle, worst } = answer.closer
  if (worst === null) return bullets([caseText('In the middle cut', middle, answer)])
  return bullets([
    caseText('In the middle cut', middle, answer),
    caseText('In the worst', worst, answer),
  ]).concat(
    `  ${traceCommand} --start ${worst.start} --hours ${24 * answer.days}` +
      (answer.promise === 'dull' || answer.promise === 'none'
        ? ''
        : ` --synthetic-year ${worst.year}`),
  )
}

function caseText(name: string, each: PlanCase, { site }: PlanAnswer): string {
  const at = (iso: string): string =>
    DateTime.fromISO(iso, { zone: site.timezone }).setLocale('en-GB').toFormat('ccc d LLL HH:mm')
  const cold =
    each.tooColdHours < 1
      ? ''
      : `, ${Math.floor(each.tooColdHours)} h of them with a battery too cold to charge, the set carrying the loads alone`
  const head = `${name}, ${at(each.start)}: ${up(each.litres)} l in ${Math.ceil(each.runHours)} h${cold}`
  if (each.visits.length === 0) return `${head}; the set is not wanted.`
  const visits = each.visits.map(({ time, starts, pours }) => {
    const does =
      starts === 'by hand' ? (pours ? 'pour and start' : 'start') : pours ? 'pour' : 'by itself'
    return `${at(time)} ${does}`
  })
  return `${head}; ${visits.join(', ')}.`
}

function quietLines({ closer: { quiet }, set }: PlanAnswer): string[] {
  if (quiet === null) return []
  const { from, to, runHours, heldBack } = quiet
  const counted =
    `Quiet from ${from} to ${to}: ${hour1(runHours.mean)} of running fall into it in the mean cut, ` +
    `${hour1(runHours.oneIn20)} in 1 in 20.`
  if (heldBack === null)
    return [wrap(`${counted} What holding it back would do, no rule tells.`), '']
  const who =
    set.start === 'by hand' ? 'Started only outside it' : 'Let start by a clock only outside it'
  return [
    wrap(
      `${counted} ${who}, a run that has begun going on to its end: ${lastingText(heldBack.share)} ` +
        `to the end${patternText(heldBack.hardest)}, with ${hour1(heldBack.runHours.mean)} still in it in the mean cut.`,
    ),
    '',
  ]
}

function failingLines({ closer: { failing } }: PlanAnswer): string[] {
  const percent = (share: number): string => `${Number((100 * share).toFixed(2))} %`
  const rows = failing.map(({ name, startFailsShare, hoursBetweenFailures, share, lostShare }) => [
    name,
    percent(startFailsShare),
    hoursBetweenFailures === null ? '-' : `${round(hoursBetweenFailures)} h`,
    lostShare === null
      ? '-'
      : lostShare > 0 && lostShare < 0.01
        ? 'below 1 %'
        : `${Math.ceil(100 * lostShare)} %`,
    share === null ? '-' : `${Math.floor(100 * share)} %`,
  ])
  const basis = failing.map((row) => `${row.name}: ${row.basis}.`)
  return [
    ...table([['if it may fail', 'starts', 'between', 'cuts lost by it', 'last'], ...rows]),
    ...bullets(basis),
  ]
}

function hour1(hours: number): string {
  return `${hours.toFixed(1)} h`
}

/** What is to be stored is rounded up. */
function up(value: number): number {
  return Math.ceil(value)
}

/** `4`, `0.68` */
function plain(value: number): string {
  return String(Number(value.toFixed(2)))
}
