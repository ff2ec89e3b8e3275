// What happens in a cut, in plain words: one sentence for each thing that the log of core knows.

import type { Course, EventId } from '@tideover/core'
import { gapText, grouped, listed, percent } from './numbers.js'

/** One thing that happened, with what the minute shows beside it. */
export interface SeenEvent {
  readonly minute: number
  /** `Tue 14 Jan 16:20` */
  readonly local: string
  readonly id: EventId
  /** Loads or arrays that it concerns. */
  readonly names: readonly string[]
  /** Charge of the battery, 0..1. */
  readonly charge: number
  /** Whether the cold has raised the charge at which everything goes off. */
  readonly isCold: boolean
  /** Fuel in tank and cans. [l] */
  readonly fuelL: number
  /** When somebody will have tended it; null where nobody is there. */
  readonly tendedAt?: string | null | undefined
  /** The load that is lost. */
  readonly lost?: Course | undefined
}

type Sentence = (event: SeenEvent) => string

const EVENTS: Readonly<Record<EventId, Sentence>> = {
  'cut-begins': ({ charge, names }) =>
    `The grid is gone, and the battery (${percent(charge)}) takes over.` +
    (names.length === 0
      ? ''
      : ` The solar on ${listed(names)} goes off with the grid; it comes back by day, where the ` +
        'battery can take what it gives.'),
  'grid-back': () => 'The grid is back.',
  'comfort-off': ({ names }) => `To save charge, this goes off: ${listed(names)}.`,
  'comfort-on': ({ names }) => `There is charge enough again for ${listed(names)}.`,
  'solar-in': ({ names }) => `The solar on ${listed(names)} is back.`,
  'solar-trips': ({ names }) =>
    `The solar on ${listed(names)} gives more than house and battery can take, and switches itself off.`,
  'solar-held-out': ({ names }) =>
    `The battery is nearly full: the solar on ${listed(names)} goes off.`,
  'solar-stays-in': ({ names }) =>
    `The solar on ${listed(names)}, which kept switching off and on, stays on.`,
  'solar-still-trips': ({ names }) => `The solar on ${listed(names)} keeps switching off and on.`,
  'battery-full': () => 'The battery is full.',
  'too-much-at-once': ({ names }) =>
    names.length === 1
      ? `${names[0]} alone is too much for the battery inverter.`
      : `Too much runs or starts at once for the battery inverter${who(names)}.`,
  'relay-drops': ({ names }) =>
    `Too much runs or starts at once${who(names)}: what runs only while the charge lasts goes off for five minutes at least.`,
  'tries-again': () =>
    'The battery inverter tries again with everything switched off, so that the sun can charge the battery.',
  'somebody-wakes': () =>
    'Somebody switches the battery inverter on again, with everything else off, so that the sun can charge the battery.',
  'put-away': () =>
    'The sun has gone before there was charge enough: somebody switches the battery inverter off again.',
  'generator-wanted': ({ charge, tendedAt }) =>
    `The charge is down to ${percent(charge)}: the generator is needed.${whoTends(tendedAt)}`,
  'tank-wants-filling': ({ charge, tendedAt }) =>
    `The tank of the generator wants filling; the battery has ${percent(charge)}.${whoTends(tendedAt)}`,
  'generator-not-wanted': () => 'The generator is no longer needed.',
  'generator-runs': ({ fuelL }) => `The generator runs. In its tank and in cans: ${litres(fuelL)}.`,
  'generator-stops': ({ charge, fuelL }) =>
    `The battery has ${percent(charge)} again, and the generator stops. Left in tank and cans: ${litres(fuelL)}.`,
  'generator-spared': () =>
    'Too much for the generator: what runs only while the charge lasts goes off.',
  'generator-stalls': ({ names }) => `Too much for the generator${who(names)}: it stalls.`,
  'stalls-again': () =>
    'The generator was started again and again, and stalled each time: somebody would first have to switch things off.',
  'tank-empty': ({ fuelL }) =>
    `The tank of the generator is empty, and it stops. In cans: ${litres(fuelL)}.`,
  'tank-filled': () => 'Somebody fills the tank of the generator from the cans.',
  'generator-does-not-start': () => 'The generator does not start.',
  'generator-fails': () => 'The generator breaks down.',
  'battery-empty': (event) => least(event),
  'holds-on': (event) =>
    `${least(event)} Everything goes off but the battery inverter, which waits for the sun.`,
  'goes-dark': ({ tendedAt }) => `Everything is off.${whoResets(tendedAt)}`,
  'critical-back': () => 'What must stay on is on again.',
  'all-back': () => 'Everything is on again.',
  thermostats: () =>
    'All that switches itself on and off, like fridges and pumps, has waited and runs at once.',
  'sun-in-vain': ({ names }) =>
    `The sun shines on ${listed(names)} and cannot be used: a solar inverter needs power to start.`,
  'battery-flat': () =>
    'The battery is flat: what it needs for itself has drained it. Some need a charger or their maker then.',
  'too-cold-to-charge': () =>
    'The battery is too cold to be charged: the generator only carries what is on.',
  'load-lost': ({ names, lost }) => `${listed(names)} gives out${lost ? why(lost) : ''}.`,
}

export function eventWords(event: SeenEvent): string {
  return EVENTS[event.id](event)
}

function least({ charge, isCold }: SeenEvent): string {
  const cold = isCold ? ', more than when it is warm' : ''
  return `The battery is down to the least it may have: ${percent(charge)}${cold}.`
}

function why({ toleratesMinutes, shown }: Course): string {
  if (shown?.unit === 'l') return ': it has run out'
  if (shown?.unit === '°C') return `: it is past ${shown.limit} °C`
  if (toleratesMinutes === 0) return ': it may not be off at all'
  return `: it has been off for longer than ${gapText(toleratesMinutes)}`
}

/** Loads that were too much, as many as a line has room for. */
function who(names: readonly string[]): string {
  return names.length === 0 ? '' : ` (${listed(names.slice(0, MOST_NAMED))})`
}

const MOST_NAMED = 3

/** After an overload, once the tries are spent. */
function whoResets(resetAt: string | null | undefined): string {
  if (resetAt === undefined) return ''
  return (
    ' The battery inverter has tried again three times and waits to be reset: ' +
    (resetAt === null ? 'nobody is there for it.' : `somebody has done it by ${resetAt}.`)
  )
}

function whoTends(tendedAt: string | null | undefined): string {
  if (tendedAt === undefined) return ' It starts by itself.'
  return tendedAt === null
    ? ' Nobody is there for it.'
    : ` Somebody is there for it by ${tendedAt}.`
}

function litres(value: number): string {
  return `${grouped(Math.round(value))} litres`
}
