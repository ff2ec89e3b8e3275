// The story of one bad start: what gave out, where the energy went, the weather, what cures it.

import { monthName, type Tried, type WorstStart } from '@tideover/core'
import { hoursText } from './ride-text.js'
import { wrap } from './wrap.js'

export interface StoryShow {
  readonly traceCommand: string
  readonly cutHours: number
  readonly horizonHours: number
  /** Numbered years looked at; null where each day lives a spell of its own. */
  readonly years: number | null
}

export function storyLines(start: WorstStart, number: number, show: StoryShow): string[] {
  const hours = (minutes: number): string => hoursText(minutes / 60, show)
  const parts = [
    `${start.local}${show.years === null ? '' : ` of year ${start.syntheticYear}`}: it lasts ` +
      `${hours(start.rideMinutes)}; the first to be lost is the ${start.endedBy}.${overloadWords(start)}`,
    energyWords(start),
    weatherWords(start),
    cureWords(start, hours),
  ]
  const [first, ...rest] = parts.flatMap((part) => wrap(part, 76).split('\n'))
  return [
    `${number}. ${first}`,
    ...rest.map((line) => `   ${line}`),
    `   ${show.traceCommand} --start ${start.start} --hours ${show.cutHours} --synthetic-year ${start.syntheticYear}`,
  ]
}

/** As many names as a line has room for. */
const MOST_NAMED = 3

function overloadWords({ tooMuch }: WorstStart): string {
  if (tooMuch.length === 0) return ''
  return ` Too much at once ended it: ${tooMuch.slice(0, MOST_NAMED).join(', ')}.`
}

function energyWords({ energy, tooMuch }: WorstStart): string {
  const kwh = (value: number): string => `${value.toFixed(1)} kWh`
  const into = [
    `${kwh(energy.startKwh)} in the battery`,
    `${kwh(energy.solarKwh)} of sun`,
    ...(energy.generatorKwh > 0 ? [`${kwh(energy.generatorKwh)} of generator`] : []),
  ]
  const out = [
    `${kwh(energy.criticalKwh)} to what must stay on`,
    ...(energy.comfortKwh >= 0.05 ? [`${kwh(energy.comfortKwh)} to comfort loads`] : []),
    `${kwh(energy.standingKwh)} to the battery inverter and battery themselves`,
    ...(energy.conversionKwh >= 0.05 ? [`${kwh(energy.conversionKwh)} lost on the way`] : []),
    `${kwh(energy.leftKwh)} left${tooMuch.length === 0 ? ' that cannot be used' : ''}`,
  ]
  return `Of ${into.join(' and ')}: ${out.join(', ')}.`
}

function weatherWords({ weather, month }: WorstStart): string {
  const { days, brightness, airC, monthAirC, windMs } = weather
  const these = days === 1 ? 'That day' : `Those ${days} days`
  const wind = windMs === null ? '' : `, wind ${windMs.toFixed(1)} m/s`
  return (
    `${these}: ${Math.round(100 * brightness)} % of the light of a mean ${monthName(month)} day, ` +
    `air ${airC.toFixed(1)} °C (mean ${monthAirC.toFixed(1)} °C)${wind}.`
  )
}

function cureWords({ tried, cure }: WorstStart, hours: (minutes: number) => string): string {
  const told = ({ words, rideMinutes, lasts }: Tried): string =>
    `${words}: ${lasts ? 'lasts' : hours(rideMinutes)}`
  const list = tried.map(told).join('; ')
  const found = tried.find(({ id }) => id === cure)
  const verdict =
    found === undefined
      ? 'None of the steps tried lasts this cut.'
      : `The smallest step that lasts this cut: ${found.words}.`
  return `${verdict} Tried on this very start: ${list}.`
}
