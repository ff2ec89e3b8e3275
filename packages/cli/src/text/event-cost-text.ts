// One kettle, one shower, one car charge: minutes of ride, or no.

import { EVENING_STARTS, type EventCost, type SwitchOffAnswer } from '@tideover/core'
import { bullets } from './lines.js'
import { wrap } from './wrap.js'

export function eventLines({ events, withGenerator }: SwitchOffAnswer): string[] {
  const lines = ['Once, in the evening:', ...bullets(events.map(eventText))]
  const beside = events.flatMap(besideText)
  const typical = events.some(({ from }) => from === 'typical')
  const ground = `${howText(events, withGenerator)}${typical ? ' Typical ones: read the plate.' : ''}`
  return [...lines, ...beside.map((text) => wrap(text)), wrap(ground.trim())]
}

/** How the minutes were found; nothing where none were. */
function howText(events: readonly EventCost[], withGenerator: boolean | null): string {
  const of = (way: EventCost['by']): string =>
    events
      .filter(({ by }) => by === way)
      .map(({ name }) => name)
      .join(', ')
  const alone = withGenerator === null ? '' : ', the generator left out'
  const ways = [
    of('rides') === ''
      ? ''
      : `Minutes of ${of('rides')} by comparing rides with it and without: cuts from ` +
        `${EVENING_STARTS / 60}:00 on each day of the month${alone}.`,
    of('energy') === ''
      ? ''
      : `Those of ${of('energy')} by energy over the mean draw of the critical loads, for too few ` +
        'of such rides end, or carry it.',
  ]
  return ways.filter((way) => way !== '').join(' ')
}

function eventText(event: EventCost): string {
  const { name, kw, minutes, from } = event
  const whose = from === 'typical' ? 'a typical' : "this house's"
  return `${whose} ${name}, ${Number(kw.toFixed(1))} kW for ${Math.round(minutes)} min: ${answerText(event)}.`
}

function answerText({ carries, costsMinutes, why }: EventCost): string {
  if (carries === 'no') return `no, ${why}`
  if (costsMinutes === null) return '-'
  const minutes = Math.ceil(costsMinutes)
  const cost = minutes <= 0 ? 'it lasts as long' : `it lasts ${durationText(minutes)} less`
  return `${cost}${carries === 'yes' ? '' : ', but not beside all that is on'}`
}

/** What is bad is rounded up. */
function durationText(minutes: number): string {
  return minutes < 120 ? `${minutes} min` : `${Math.ceil(minutes / 60)} h`
}

function besideText({ carries, name, overOn, evenings, roomKva }: EventCost): string[] {
  if (carries !== 'not beside all that is on' || roomKva === null) return []
  return [
    `${name}: at ${overOn} of ${evenings} evenings it would drop loads or take the island down; keep all ` +
      `else below ${(Math.floor(10 * roomKva) / 10).toFixed(1)} kVA while it runs.`,
  ]
}
