// What to switch off as a tired person reads it: one sentence, one table, then the kettle.

import {
  monthName,
  READING_ERROR,
  type RideHours,
  type SwitchedLoad,
  type SwitchOffAnswer,
  skyWords,
} from '@tideover/core'
import { type Show, withEnds } from './answer-ends.js'
import { eventLines } from './event-cost-text.js'
import { round, table } from './lines.js'
import { ageWords, hoursText, startWords } from './ride-text.js'
import { wrap } from './wrap.js'

export function switchOffText(answer: SwitchOffAnswer, show: Show): string {
  return withEnds(
    answer,
    [
      wrap(`${advice(answer)} ${baseText(answer)}`),
      '',
      ...loadTable(answer),
      '',
      ...notes(answer).map((note) => wrap(note)),
      '',
      ...eventLines(answer),
    ],
    show,
  )
}

/** What to do, in one or two sentences. */
function advice(answer: SwitchOffAnswer): string {
  const { loads, base, horizonHours, comfortOffBelow } = answer
  const first = loads.find(({ tier, place }) => tier === 'comfort' && place !== null)
  if (first?.adds != null) return `Switch off ${first.name} first: ${firstAdds(answer, first)}.`
  if (comfortOffBelow === null) {
    return 'Nothing on the island may go off: all of it must stay on.'
  }
  const least = base.worstHours ?? base.p05Hours
  if (least >= horizonHours) {
    return (
      `With everything on it lasts over ${horizonHours} hours: nothing has to go off` +
      `${answer.withGenerator === true ? ', as long as the generator starts (--without-generator leaves it out)' : ''}.`
    )
  }
  return 'Nothing of what may go off adds anything by itself.'
}

function firstAdds(answer: SwitchOffAnswer, { adds, lasts }: SwitchedLoad): string {
  const { medianHours, p05Hours } = adds as RideHours
  const isBeyond = lasts!.medianHours >= answer.horizonHours
  const hours = (value: number): string => hoursText(value, { horizonHours: Infinity }, true)
  if (medianHours > 0) {
    return `it adds ${isBeyond ? 'over ' : ''}${hours(medianHours)} in the middle case`
  }
  if (p05Hours > 0) {
    return `it adds nothing to the middle case and ${hours(p05Hours)} to the case of 1 in 20`
  }
  return 'it adds a little to the worst case only'
}

function baseText(answer: SwitchOffAnswer): string {
  const { base, house, month, cutHours, sky, spell } = answer
  const worst =
    base.worstHours === null ? '' : `${hoursText(base.worstHours, answer, true)} at worst, `
  return (
    `${house}, cuts of ${round(cutHours)} h starting in ${monthName(month)}: with everything on it ` +
    `lasts ${worst}${hoursText(base.p05Hours, answer, true)} in 1 case of 20 and ` +
    `${hoursText(base.medianHours, answer, true)} in the middle case, under ` +
    `${sky === 'dull' ? 'a ' : ''}${skyWords(sky, spell, month)}, ${startWords(answer)}, ` +
    `battery ${ageWords(answer)}${generatorWords(answer)}.`
  )
}

function generatorWords({ withGenerator }: SwitchOffAnswer): string {
  if (withGenerator === null) return ''
  return withGenerator ? ', with the generator as it is tended' : ', the generator left out'
}

const CASES = ['middle', '1 in 20', 'worst']

function loadTable(answer: SwitchOffAnswer): string[] {
  const row = ({ place, name, kwhADay, alone, aloneLasts, lasts }: SwitchedLoad): string[] => [
    `${place === null ? '  ' : `${place}`.padStart(2)} ${name}`,
    kwhADay.toFixed(2),
    ...casesOf(alone, (hours, key) => addedText(hours, aloneLasts?.[key] ?? 0, answer)),
    ...casesOf(lasts, (hours) => hoursText(hours, answer)),
  ]
  const mayGo = answer.loads.filter(({ tier }) => tier === 'comfort')
  const stay = answer.loads.filter(({ tier }) => tier === 'critical')
  const [head, ...rows] = table([
    ['', 'a day', ...CASES, ...CASES],
    ...[...mayGo, ...stay].map(row),
  ])
  return [
    headOver(head!),
    head!,
    ...rows.slice(0, mayGo.length),
    '   must stay on: for your decision only',
    ...rows.slice(mayGo.length),
  ]
}

/** What the cases are of, set over each three. */
function headOver(cases: string): string {
  const kwh = cases.indexOf('a day') + 'a day'.length
  const over = (text: string, end: number, line: string): string =>
    line + text.padStart(end - line.length)
  const alone = cases.indexOf('worst') + 'worst'.length
  return over('off down to here', cases.length, over('off alone adds', alone, over('kWh', kwh, '')))
}

function casesOf(
  hours: RideHours | null,
  text: (hours: number, key: keyof RideHours) => string,
): string[] {
  if (hours === null) return ['', '', '']
  const keys = ['medianHours', 'p05Hours', 'worstHours'] as const
  return keys.map((key) => {
    const value = hours[key]
    return value === null ? '-' : text(value, key)
  })
}

/** Rounded to the cautious side; more than what was followed is `over`. */
function addedText(
  hours: number,
  lasts: number,
  { horizonHours }: Pick<SwitchOffAnswer, 'horizonHours'>,
): string {
  if (hours === 0) return '0'
  const over = hours > 0 && lasts >= horizonHours ? 'over ' : ''
  const minutes = Math.round(60 * hours)
  if (Math.abs(minutes) < 60) return `${over}${minutes} min`
  return `${over}${Math.floor(hours)} h`
}

function notes(answer: SwitchOffAnswer): string[] {
  const { loads, comfortOffBelow, base, horizonHours } = answer
  const said = [
    'In this order each adds most, given all above it off; beside it how long the house then ' +
      'lasts. Figures of a load that must stay on are ' +
      'those of the others without it: what it keeps is lost.',
  ]
  const unseen = base.medianHours >= horizonHours
  if (comfortOffBelow !== null && !unseen) {
    said.push(
      `Below ${Math.round(100 * comfortOffBelow)} % of charge comfort loads go off by themselves` +
        `${startsBelow(answer) ? ', and these cuts start at or below it: off by hand they save what the sun or the generator would bring back on' : ': what they add is what they would have drawn before'}.`,
    )
  }
  if (loads.some(({ alone }) => alone !== null && alone.medianHours < 0)) {
    said.push(
      'Less load is not always a longer ride: it moves the hour at which the battery runs low, ' +
        'comfort loads go off or the generator is wanted.',
    )
  } else if (answer.withGenerator === true) {
    said.push(
      'With a generator that somebody tends, hours jump with the hour at which the battery runs low; ' +
        '--without-generator shows the battery alone.',
    )
  }
  return said
}

function startsBelow({ startSoc, comfortOffBelow }: SwitchOffAnswer): boolean {
  const taken = startSoc.kind === 'reserve' ? startSoc.value - READING_ERROR : startSoc.value
  return comfortOffBelow !== null && taken <= comfortOffBelow
}
