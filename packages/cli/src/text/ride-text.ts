// The answer as a tired person reads it: one sentence, four skies, what fails first, cautions.

import {
  type Branch,
  monthName,
  type Pattern,
  READING_ERROR,
  type RideAnswer,
  type SkyFigures,
  type SkyKind,
  skyName,
  skyWords,
} from '@tideover/core'
import { DateTime } from 'luxon'
import { bullets, round, sharePart, table, toleranceText } from './lines.js'
import { wrap } from './wrap.js'

export interface RideShow {
  /** List the defaults used, and what was read. */
  readonly defaults: boolean
  /** What the readers understood of the files. */
  readonly read: readonly string[]
  /** The command that lives the worst start again, but for its start and year. */
  readonly traceCommand: string
}

export function rideText(answer: RideAnswer, show: RideShow): string {
  const lines: string[] = []
  if (answer.slips.length > 0) {
    lines.push('Look at the file first:', ...bullets(answer.slips), '')
  }
  lines.push(headline(answer), '', ...skyTable(answer), '')
  lines.push(...details(answer, show.traceCommand))
  if (answer.warnings.length > 0) lines.push('', 'Look at:', ...bullets(answer.warnings))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  lines.push('', ...defaultLines(answer, show.defaults))
  if (show.defaults) lines.push('', ...patternLines(answer))
  if (show.defaults && show.read.length > 0) lines.push('', 'Read:', ...bullets(show.read))
  return lines.join('\n')
}

function headline(answer: RideAnswer): string {
  const promised = answer.skies[answer.promise] as SkyFigures
  const middle = `${hoursText(promised.medianHours, promised, true)} in the middle case`
  const lasts =
    promised.worstHours === null
      ? `lasts ${middle}`
      : `lasts ${hoursText(promised.worstHours, promised, true)} at worst and ${middle}`
  const share =
    promised.share === null
      ? 'an unknown share of such cuts'
      : `${sharePart(promised.share)}${patternWords(promised)}`
  const target =
    answer.met === null ? '' : answer.met ? ' The target is met.' : ' The target is NOT met.'
  return wrap(
    `${answer.house}, a cut of ${round(answer.cutHours)} h starting in ${monthName(answer.month)}: ` +
      `it ${lasts}. It lasts to the end of ${share}: under ` +
      `${promiseWords(answer)}, ${startWords(answer)}, battery ${ageWords(answer)}.${target}`,
  )
}

export const STARTS: Readonly<Record<Pattern, string>> = {
  any: '',
  evening: ', of those that begin from 15 to 21 h',
  windy: ', of those that begin on a windy, dull day',
}

/** Which starts a share is of; nothing where it is the share of all. */
export function patternWords({ hardest, share, shareByPattern }: SkyFigures): string {
  return share === shareByPattern.any ? '' : STARTS[hardest]
}

export const ARTICLES: Readonly<Record<SkyKind, string>> = {
  dull: 'a ',
  none: '',
  typical: '',
  clear: 'a ',
  file: 'the ',
}

function promiseWords(answer: RideAnswer): string {
  const { dull } = answer.skies
  const days = Math.max(1, Math.ceil(answer.cutHours / 24))
  const isDull = answer.promise === 'dull' && dull?.winters !== undefined
  const words = skyWords(
    answer.promise,
    isDull ? { winters: dull.winters, days } : null,
    answer.month,
  )
  return `${ARTICLES[answer.promise]}${words}`
}

export function startWords(answer: Pick<RideAnswer, 'startSoc'>): string {
  const { kind, value } = answer.startSoc
  if (kind === 'full') return 'started full'
  const share = `${Math.round(value * 100)} %`
  if (kind !== 'reserve') return `started at ${share}`
  const points = Math.round(100 * READING_ERROR)
  return `started at its reserve of ${share} (less ${points} points, for a reading may flatter)`
}

export function ageWords(answer: Pick<RideAnswer, 'modules' | 'health'>): string {
  const modules = `of ${answer.modules} module${answer.modules === 1 ? '' : 's'}`
  return answer.health === 1
    ? `new, ${modules}`
    : `aged to ${Math.round(answer.health * 100)} %, ${modules}`
}

function skyTable(answer: RideAnswer): string[] {
  const rows = Object.entries(answer.skies).map(([kind, figures]) => [
    skyName(kind as SkyKind),
    figures.worstHours === null ? '-' : hoursText(figures.worstHours, figures),
    hoursText(figures.p05Hours, figures),
    hoursText(figures.medianHours, figures),
    hoursText(figures.bestHours, figures),
    figures.share === null ? '-' : percent(figures.share),
  ])
  const head = ['', 'worst', '1 in 20', 'middle', 'best', `lasts ${round(answer.cutHours)} h`]
  return table([head, ...rows])
}

function details(answer: RideAnswer, traceCommand: string): string[] {
  const promised = answer.skies[answer.promise] as SkyFigures
  return [
    wrap(sharesLine(promised)),
    '',
    ...loadTable(promised, answer.cutHours),
    '',
    ...worstLines(answer, promised, traceCommand),
    ...besideLines(answer, promised).map((line) => wrap(line)),
  ]
}

function worstLines(answer: RideAnswer, promised: SkyFigures, traceCommand: string): string[] {
  if (promised.worstStart === null) return []
  const year = promised.winters === undefined ? ` --synthetic-year ${promised.worstYear}` : ''
  const { words, option } = WORST_LIVED[promised.failedStarts?.worst ?? 'drawn']
  const start = localText(promised.worstStart, answer.site.timezone)
  return [
    wrap(`Worst start: ${start}, ${words}${promised.worstLoad} gives out. To see it:`),
    `  ${traceCommand} --start ${promised.worstStart} --hours ${answer.cutHours}${year}${option}`,
  ]
}

/** How a generator that starts by chance did so in the worst ride, and what a trace is told of it. */
const WORST_LIVED: Readonly<Record<Branch, { words: string; option: string }>> = {
  drawn: { words: '', option: '' },
  starts: { words: 'the generator starts each time, ', option: ' --start-fails 0' },
  fails: { words: 'the generator does not start, ', option: ' --start-fails 1' },
}

/** What stands beside the promise: the time without power, the hand figure, brighter cases. */
function besideLines(answer: RideAnswer, promised: SkyFigures): string[] {
  const lines = [
    `Without power within the cut: ${promised.hoursWithoutMean.toFixed(1)} h on average. ` +
      `By hand, no sun and a warm battery: ${Math.floor(promised.withoutSunHours ?? 0)} h.`,
  ]
  if (promised.changeoverLostShare > 0) {
    lines.push(
      `Lost at the changeover: ${percentUp(promised.changeoverLostShare)} of starts find more ` +
        'running than the battery inverter can take over.',
    )
  }
  lines.push(...failedStartLines(promised))
  const { withoutGenerator } = answer
  if (withoutGenerator !== null) {
    lines.push(
      `Without the generator: ${hoursText(withoutGenerator.medianHours, withoutGenerator)} in the ` +
        `middle case${worstPart(withoutGenerator)}; to the end of ${sharePart(withoutGenerator.share ?? 0)}.`,
    )
  }
  const { share } = answer.bright
  if (share !== null) {
    lines.push(`On a good day (${answer.bright.conditions}): to the end of ${sharePart(share)}.`)
  }
  if (darkerLasts(answer)) {
    lines.push(
      'More light is not always a longer ride here: it moves the hour at which the battery runs low ' +
        'and the generator is wanted, or trips the solar. Trace one of each to see it.',
    )
  }
  const typical = answer.skies.typical
  if (typical?.shareLow != null && typical.shareHigh != null) {
    lines.push(
      `${answer.years} synthetic years pin the typical share to ` +
        `${Math.round(100 * typical.shareLow)}-${Math.round(100 * typical.shareHigh)} %; the climate is not known that well.`,
    )
  }
  return lines
}

/** What of the loss is the generator's, where it may not start. */
function failedStartLines({ share, failedStarts }: SkyFigures): string[] {
  if (failedStarts === undefined || share === null) return []
  const { chance, shareIfStarts, shareIfFails, lostShare } = failedStarts
  const tries = `a generator that does not start (${Number((100 * chance).toFixed(1))} of 100 tries)`
  const lost = lostShare ?? 0
  if (lost === 0) return [`Lost to ${tries}: none of such cuts.`]
  const hundred = Math.ceil(Number((100 * lost).toFixed(6)))
  const many = lost < 0.01 ? 'fewer than 1 is' : `${hundred} ${hundred === 1 ? 'is' : 'are'}`
  return [
    `Of the ${100 - Math.floor(100 * share)} in 100 such cuts that do not last, ${many} lost to ` +
      `${tries}. If each start succeeds it lasts to the end of ${sharePart(shareIfStarts ?? 0)}; ` +
      `where the first fails, to the end of ${sharePart(shareIfFails ?? 0)}.`,
  ]
}

/** Hours are over all starts, a share is that of the hardest kind of start. */
export function sharesLine({ shareByPattern, hardest }: SkyFigures): string {
  const parts = [
    ['any minute', shareByPattern.any],
    ['15 to 21 h', shareByPattern.evening],
    ['windy, dull days', shareByPattern.windy],
  ].flatMap(([name, share]) => (typeof share === 'number' ? [`${name} ${percent(share)}`] : []))
  const least = hardest === 'any' ? '' : '; the least is the headline'
  return `Hours are over all starts. Shares by when it begins: ${parts.join(', ')}${least}.`
}

/** What each load bears, for how long it is on, and how often to the end; the first to fail named. */
function loadTable(promised: SkyFigures, cutHours: number): string[] {
  const rows = promised.loads.map((load) => [
    load.name,
    toleranceText(load.toleratesMinutes),
    ...(load.wanted
      ? [
          load.worstHours === null ? '-' : hoursText(load.worstHours, promised),
          hoursText(load.medianHours, promised),
          load.keptShare === null ? '-' : percent(load.keptShare),
        ]
      : ['not on', '', '']),
    load.firstToFail ? ' first to give out' : '',
  ])
  const head = ['', 'may be off', 'on, worst', 'on, middle', `kept ${round(cutHours)} h`, '']
  const kept = promised.loads.flatMap(({ name, toleranceBasis }) =>
    toleranceBasis === null ? [] : [wrap(`${name}: ${toleranceBasis}.`)],
  )
  return [
    ...table([head, ...rows]),
    wrap(
      'On: until its power goes for longer than it bears. Kept: not lost when the cut ends and the ' +
        'grid is back.',
    ),
    ...kept,
  ]
}

/** Whether a darker sky rides more cuts than a brighter one. */
function darkerLasts({ skies }: RideAnswer): boolean {
  const [none, dull, clear] = [skies.none?.share, skies.dull?.share, skies.clear?.share]
  if (none == null || dull == null || clear == null) return false
  return none > dull || dull > clear
}

function worstPart(figures: SkyFigures): string {
  return figures.worstHours === null ? '' : `, ${hoursText(figures.worstHours, figures)} at worst`
}

export function defaultLines(answer: Pick<RideAnswer, 'defaults'>, all: boolean): string[] {
  const { defaults } = answer
  if (defaults.length === 0) return []
  if (!all)
    return [`${defaults.length} defaults were used; --defaults lists them, and what was read.`]
  return [
    'Defaults used:',
    ...defaults.map(({ path, value, basis }) => `  ${path} = ${value} (${basis})`),
  ]
}

/** What each kind of start counts, and what that rests on. */
function patternLines({ patterns }: RideAnswer): string[] {
  return [
    'Shares, by when a cut begins:',
    ...bullets(patterns.map(({ counts, restsOn }) => `${counts} (ground: ${restsOn})`)),
  ]
}

/** Whole hours, rounded down; at least a few minutes are said as minutes. */
export function hoursText(
  hours: number,
  figures: Pick<SkyFigures, 'horizonHours'>,
  words = false,
): string {
  const unit = words ? ' hours' : ' h'
  if (hours < 1) return `${Math.floor(hours * 60)} min`
  const whole = Math.floor(hours)
  // A ride of the whole horizon was not seen to end.
  const beyond = hours >= figures.horizonHours
  return `${beyond ? 'over ' : ''}${whole}${words && whole === 1 ? ' hour' : unit}`
}

/** What is bad is rounded up. */
function percentUp(share: number): string {
  return share < 0.01 ? 'fewer than 1 in 100' : `${Math.ceil(share * 100)} %`
}

export function percent(share: number): string {
  return `${Math.floor(share * 100)} %`
}

function localText(iso: string, zone: string): string {
  return DateTime.fromISO(iso, { zone }).setLocale('en-GB').toFormat('ccc d LLL HH:mm')
}
