// Words of one power cut: told on the page, and played again in it.

import type { CutView, LoadView, Mood } from '../cut/cut-view.js'
import { eventWords } from './events.js'
import { counted, hoursText, lengthText, percent } from './numbers.js'
import type { Region } from './region.js'

export type CutWords = ReturnType<typeof cutWords>

export const MOOD_ORDER: readonly Mood[] = ['all', 'part', 'must', 'generator', 'off']

const MOODS: Readonly<Record<Mood, string>> = {
  all: 'everything that is switched on has power',
  part: 'some of what runs while it lasts is off',
  must: 'only what must stay on is on',
  generator: 'the generator runs',
  off: 'everything is off',
}

export function cutWords(region: Region) {
  return {
    moods: MOODS,
    night: 'night',
    chargeOfBattery: 'Charge of the battery',
    hourByHour: 'Hour by hour',
    chartTitle: (view: CutView): string =>
      `Charge of the battery from ${view.from}, for ${lengthText(view.minutes / 60)}: from ` +
      `${percent(view.charge[0]!)} at the start to ${percent(view.charge[view.minutes]!)} at the end.`,
    isLost: (name: string): string => `${name} gives out`,
    lasts: (view: CutView): string => lastsSentence(view, region),
    fate: ({ lostLocal }: LoadView): string =>
      lostLocal === null ? 'holds to the end' : `gives out at ${lostLocal}`,
    goes: (from: number, to: number, moods: readonly Mood[]): string =>
      `Charge ${percent(from)} to ${percent(to)}: ${moods.map((mood) => MOODS[mood]).join(', then ')}.`,
    event: eventWords,
  }
}

function lastsSentence(view: CutView, region: Region): string {
  const length = lengthText(view.minutes / 60)
  if (view.loads.length === 0) {
    return 'Nothing that must stay on is switched on, so there is nothing to hold.'
  }
  if (view.lasts !== null && view.first !== null) {
    const least =
      view.lasts < 1 ? 'It does not last at all' : `It lasts ${hoursText(view.lasts / 60)}`
    const dark =
      view.lasts < view.first.lostAt! ? `: everything goes off at ${view.localAt(view.lasts)}` : ''
    return `${least}${dark}. The first to give out is ${view.first.name}, at ${view.first.lostLocal}.`
  }
  if (view.without === 0) return `It lasts the whole of ${region.theCut}, ${length}.`
  return (
    `It lasts the whole of ${region.theCut}, ${length}: everything is off for ` +
    `${counted(view.without, 'minute')} of it, which nothing that must stay on is harmed by.`
  )
}
