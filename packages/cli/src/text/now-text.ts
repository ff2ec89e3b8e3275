// From this minute on, as somebody reads it in the dark: how long, what comes, what to do.

import {
  aloneTooMuch,
  equip,
  type Lasts,
  monthName,
  NOW_SKIES,
  type NowAnswer,
  type NowSwitch,
  type Prepared,
  skyName,
  skyWords,
} from '@tideover/core'
import { type Show, withEnds } from './answer-ends.js'
import { type Clock, clockOf } from './clock-text.js'
import { startLines } from './hand-start-text.js'
import { bullets, round, table } from './lines.js'
import { ageWords, hoursText } from './ride-text.js'
import { wrap } from './wrap.js'

export interface NowShow extends Show {
  /** Whether the time was given; else the machine's clock told it. */
  readonly hasTime: boolean
}

/** Lines of the log that are shown at most. */
const MOST_LINES = 14

export function nowText(prepared: Prepared, answer: NowAnswer, show: NowShow): string {
  const clock = clockOf(prepared, answer)
  return withEnds(
    answer,
    [
      wrap(headline(prepared, answer, clock)),
      '',
      ...skyTable(prepared, answer, clock),
      '',
      ...comes(prepared, answer, clock),
      '',
      ...switchLines(prepared, answer),
      ...startLines(prepared.house, answer, clock),
      '',
      ...groundLines(prepared, answer, show).map((line) => wrap(line)),
    ],
    show,
  )
}

/** What is asked first: a set that starts by itself is counted on, one with a cord is not. */
function first({ house }: Prepared, { skies }: NowAnswer, sky: keyof NowAnswer['skies']): Lasts {
  const { lasts, batteryAlone } = skies[sky]
  return house.generator?.start === 'automatic' ? lasts : (batteryAlone ?? lasts)
}

function headline(prepared: Prepared, answer: NowAnswer, clock: Clock): string {
  const lasts = first(prepared, answer, 'dull')
  const { generator } = prepared.house
  const start =
    `${answer.house}, ${clock(0)}, off, battery at ${percent(answer.soc)} (counted as ` +
    `${percent(answer.takenSoc)}, for a reading may flatter by 5 points): `
  const tended = tendedWords(generator?.start) + aloneText(prepared, answer, clock)
  if (lasts.givesOutAt === null || lasts.first === null) {
    return `${start}it lasts over ${round(answer.hours)} hours${tended}.${darkerText(prepared, answer, clock)}`
  }
  const until =
    lasts.givesOutAt === 0 ? 'it gives out at once' : `it lasts ${untilText(lasts, answer, clock)}`
  const darker = darkerText(prepared, answer, clock)
  return (
    `${start}${until}${tended}.${darker} First to give out: ${lasts.first.name}, lost at ` +
    `${clock(lasts.first.lostAt)}.`
  )
}

function tendedWords(start: 'automatic' | 'by hand' | undefined): string {
  if (start === undefined) return ''
  return start === 'automatic'
    ? ', if the generator starts by itself'
    : ', if nobody starts the generator'
}

/** Snow on the roof, or solar that stays off, where it makes the ride shorter. */
function darkerText(prepared: Prepared, answer: NowAnswer, clock: Clock): string {
  const none = first(prepared, answer, 'none')
  const { hours } = first(prepared, answer, 'dull')
  return none.hours < hours ? ` With no sun, in the cold: ${untilText(none, answer, clock)}.` : ''
}

function untilText({ hours, givesOutAt }: Lasts, answer: NowAnswer, clock: Clock): string {
  const length = hoursText(hours, { horizonHours: answer.hours }, true)
  return givesOutAt === null ? length : `${length}, until ${clock(givesOutAt)}`
}

/** Beside an automatic start: what is left where it fails. */
function aloneText({ house }: Prepared, answer: NowAnswer, clock: Clock): string {
  const { batteryAlone } = answer.skies.dull
  if (house.generator?.start !== 'automatic' || batteryAlone === null) return ''
  return batteryAlone.givesOutAt === null
    ? '; without it as long'
    : `; without it ${untilText(batteryAlone, answer, clock)}`
}

function skyTable(prepared: Prepared, answer: NowAnswer, clock: Clock): string[] {
  const at = (minute: number | null): string => (minute === null ? '-' : clock(minute))
  const rows = NOW_SKIES.map((sky) => {
    const lasts = first(prepared, answer, sky)
    const hours = hoursText(lasts.hours, { horizonHours: answer.hours })
    return [
      skyName(sky),
      hours,
      at(lasts.givesOutAt),
      at(lasts.comfortOffAt),
      lasts.sunAt === 0 ? 'now' : at(lasts.sunAt),
      lasts.sunCarriesAt === 0 ? 'now' : at(lasts.sunCarriesAt),
    ]
  })
  return table([['', 'lasts', 'until', 'comfort off', 'sun from', 'enough from'], ...rows])
}

/** The log of the dull sky up to the first loss. */
function comes(prepared: Prepared, answer: NowAnswer, clock: Clock): string[] {
  const { events } = first(prepared, answer, 'dull')
  if (events.length === 0) return ['Nothing changes in that time under the dull sky.']
  const lines = events.slice(0, MOST_LINES).map(({ minute, text }) => `${clock(minute)}: ${text}`)
  const more = events.length > MOST_LINES ? ['and so on; trace shows all of it.'] : []
  return ['What comes, under the dull sky:', ...bullets([...lines, ...more])]
}

function switchLines(prepared: Prepared, answer: NowAnswer): string[] {
  const { switchOff, allThatMayGo } = answer
  const alone = prepared.house.generator === undefined ? '' : ', the generator standing still'
  const best = switchOff.filter(({ tier, addsHours }) => tier === 'comfort' && addsHours > 0)
  const stay = switchOff.filter(({ tier, addsHours }) => tier === 'critical' && addsHours > 0)
  const together =
    allThatMayGo === null || !(allThatMayGo.addsHours > 0)
      ? []
      : [`all that may go, together: ${addsText(allThatMayGo)}`]
  const never = tooMuchLines(prepared, answer)
  const shown = [...best.slice(0, 3).map((each) => `${each.name}: ${addsText(each)}`), ...together]
  const lines =
    shown.length === 0
      ? ['Nothing that may go off adds anything from here: it is off by then, or draws nothing.']
      : [`Switch off now (dull sky${alone}), each alone:`, ...bullets(shown)]
  if (stay.length > 0) {
    const words = stay.slice(0, 3).map((each) => `${each.name} ${addsText(each)}`)
    lines.push(wrap(`Must stay on, for your decision only: ${words.join(', ')} for the others.`))
  }
  return [...never, ...lines]
}

/** What blacks the house out by itself. */
function tooMuchLines(prepared: Prepared, { modules, health }: NowAnswer): string[] {
  const names = aloneTooMuch(prepared, equip(prepared, { modules, health }))
    .filter(({ critical }) => !critical)
    .map(({ name }) => name)
  if (names.length === 0) return []
  return [wrap(`Never use now: ${names.join(', ')}: too much for the battery inverter even alone.`)]
}

function addsText({ addsHours, beyond }: Pick<NowSwitch, 'addsHours' | 'beyond'>): string {
  const over = beyond ? 'over ' : ''
  const minutes = Math.round(60 * addsHours)
  return minutes < 120 ? `${over}${minutes} min more` : `${over}${Math.floor(addsHours)} h more`
}

function groundLines({ calendar }: Prepared, answer: NowAnswer, show: NowShow): string[] {
  const { month, day } = calendar.days[calendar.dayOf[answer.minute]!]!
  const lines = [
    `Looked ahead ${round(answer.hours)} h under a ${skyWords('dull', answer.spell, month)}, no sun in the ` +
      `cold, and a clear sky; battery ${ageWords(answer)}. All loads are taken as the file has them.`,
  ]
  if (answer.otherYear) {
    lines.push(
      `${day} ${monthName(month)} is lived as that of ${calendar.year}, the house's year, with its weekday.`,
    )
  }
  if (!show.hasTime) lines.push("The time is that of this machine's clock; --at gives another.")
  return lines
}

function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`
}
