// The generator by hand: when the cord has to be pulled at the latest, and how far its fuel goes.

import type { HandStart, House, NowAnswer } from '@tideover/core'
import type { Clock } from './clock-text.js'
import { wrap } from './wrap.js'

const DARK = ['dull', 'none'] as const

export function startLines(house: House, { skies }: NowAnswer, clock: Clock): string[] {
  const { generator, person } = house
  if (generator === undefined) return []
  const ends = DARK.filter((sky) => skies[sky].batteryAlone?.givesOutAt != null)
  if (ends.length === 0) {
    return ['', 'Generator: not needed within what was looked at.']
  }
  const starts = ends.map((sky) => skies[sky].start)
  if (starts.includes(null)) {
    return [
      '',
      wrap(
        'Generator: no start by hand saves every critical load; check tells why. Start it all the ' +
          'same where it can run: what is off comes back with its power.',
      ),
    ]
  }
  const earliest = earliestOf(starts as HandStart[])
  const [head, pull] =
    generator.start === 'automatic'
      ? ['if it does not start by itself', 'start it at its own panel']
      : ['by hand', 'pull the cord']
  const takes = Math.ceil(person?.minutes ?? 0)
  const go = takes === 0 ? '' : `, so go ${goText(earliest.at - takes, clock)}`
  const lines = [
    `Generator, ${head}: ${pull} by ${clock(earliest.at)} at the latest${go}. It gives power ` +
      `${earliest.powerAt - earliest.at} min later. That is the very last minute, for a set that ` +
      'starts at the first try: be early.',
  ]
  if (person !== undefined) {
    const found = ends.map((sky) => skies[sky].startInHours).filter((each) => each !== null)
    const hours = `in the hours of the file (${person.from} to ${person.to}, ${person.minutes} min)`
    if (found.length < ends.length) lines.push(`Nobody is there in time ${hours}.`)
    else {
      const inHours = earliestOf(found)
      if (inHours.at < earliest.at) {
        lines.push(
          `By somebody ${hours}: go by ${clock(inHours.goAt)}; then ${afterText(inHours, clock)}.`,
        )
      }
    }
  }
  lines.push(
    `Started at that last minute, ${afterText(earliest, clock)}, if it is tended again. ${fuelText(house, earliest, clock)}`,
  )
  return ['', ...lines.map((line) => wrap(line))]
}

function earliestOf<T extends HandStart>(starts: readonly T[]): T {
  return starts.reduce((a, b) => (b.at < a.at ? b : a))
}

function goText(minute: number, clock: Clock): string {
  return minute <= 0 ? 'now' : `by ${clock(minute)}`
}

function afterText({ nextLossAt }: HandStart, clock: Clock): string {
  return nextLossAt === null
    ? 'nothing is lost as far as was looked'
    : `the next loss is at ${clock(nextLossAt)}`
}

function fuelText({ generator }: House, start: HandStart, clock: Clock): string {
  const { fuelOutAt, fuelLeftL, ranHours, burntL } = start
  const { tankL, cansL } = generator as NonNullable<House['generator']>
  const all = `${Number((tankL + cansL).toFixed(1))} l in tank and cans, full as the file has them`
  const rate = burntL / ranHours
  const carries = Number.isFinite(rate) && rate > 0 ? Math.floor((tankL + cansL) / rate) : null
  const running = carries === null ? '' : `, enough for some ${carries} h of running`
  return fuelOutAt === null
    ? `Fuel: ${all}${running}; ${Math.floor(fuelLeftL)} l are left at the end of what was looked at.`
    : `Fuel: ${all}${running}; it is used up at ${clock(fuelOutAt)}.`
}
