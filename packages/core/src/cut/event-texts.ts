// What each event of a minute says: what happened, why, with the numbers.

import type { House } from '../house/house.js'
import { type SolarGroup, solarGroups } from '../house/solar-groups.js'
import { limitOf } from '../island/charge.js'
import type { Compiled } from '../island/compile.js'
import { solarKw } from '../island/solar-columns.js'
import { Event, SOLAR_EVENTS } from '../island/state.js'
import type { EventId, Told } from './event-line.js'
import { generatorOver, namesOver, namesShed, whyOver, whyShed } from './over-words.js'
import { backPercent, isInCans, kw, percent, type Scene } from './scene.js'
import { resetAt, tendedAt, whatHelps, whoStarts } from './what-helps.js'

/** One thing that happened in a minute. */
export interface Said {
  /** One bit of `Event`. */
  readonly bit: number
  readonly told: Told
}

/** A bit of `Event`, what it tells, in words, and what else there is to it. */
type Telling = readonly [number, EventId, () => string, (() => Omit<Told, 'id' | 'text'>)?]

/** Sentences of the events of minute `i`, in the order in which they are told. */
export function saidIn(scene: Scene, i: number): Said[] {
  const { trace, house, compiled } = scene
  const events = lasting(trace.events[i]!)
  const { capacityKwh } = compiled.rules
  const charge = `${Math.round((100 * trace.startStoredKwh[i]!) / capacityKwh)} %`
  const load = kw(trace.demandCriticalKw[i]! + trace.demandComfortKw[i]!)
  const texts: readonly Telling[] = [
    [
      Event.cutBegins,
      'cut-begins',
      () => `The grid is gone. Charge ${charge}, load ${load}.${solarOut(house)}`,
      () => ({ names: solarGroups(house).flatMap((group) => group.names) }),
    ],
    [Event.gridReturns, 'grid-back', () => `The grid is back. Charge ${charge}.`],
    [
      Event.comfortOff,
      'comfort-off',
      () => `${comfort(scene, i)} off: charge ${charge}, limit ${dropLimit(scene, i)}.`,
      () => ({ names: switchedNames(scene, i) }),
    ],
    [
      Event.comfortOn,
      'comfort-on',
      () => `Comfort loads on again: charge ${charge}.`,
      () => ({ names: switchedNames(scene, i) }),
    ],
    ...solarGroups(house).flatMap((group, g) => solarTexts(scene, i, group, g, charge)),
    [Event.full, 'battery-full', () => `Battery full: ${trace.storedKwh[i]!.toFixed(1)} kWh.`],
    [
      Event.overload,
      (events & Event.generatorOverload) === 0 ? 'too-much-at-once' : 'generator-stalls',
      () => `Overload. ${whyOver(scene, i)}`,
      () => ({ names: namesOver(scene, i) }),
    ],
    [
      Event.relaySheds,
      'relay-drops',
      () => `Overload. ${whyShed(scene, i)} The relay drops the comfort loads for 5 min at least.`,
      () => ({ names: namesShed(scene, i) }),
    ],
    ...wakingTexts(scene, i, charge),
    ...generatorTexts(scene, i, charge),
    ...darkTexts(scene, i, charge),
  ]
  return texts.flatMap(([bit, id, text, more]) =>
    (events & bit) === 0 ? [] : [{ bit, told: { id, text: text(), ...more?.() } }],
  )
}

/** An island without its loads, and what comes back. */
function darkTexts(scene: Scene, i: number, charge: string): Telling[] {
  const { trace, compiled } = scene
  return [
    [
      Event.empty,
      trace.levels[i] === compiled.rules.holding ? 'holds-on' : 'battery-empty',
      () =>
        `Battery at its lower limit: charge ${charge}, ${emptyLimit(i, compiled)}.` +
        holdsText(scene, i),
    ],
    [
      Event.goesDark,
      'goes-dark',
      () => `Everything is off.${whatHelps(scene, i)}`,
      () => ({ tendedAt: resetAt(scene, i) }),
    ],
    [
      Event.loadsBack,
      isAllBack(scene, i) ? 'all-back' : 'critical-back',
      () =>
        `${isAllBack(scene, i) ? 'All loads' : 'The critical loads'} are on again: charge ${charge}.`,
    ],
    [
      Event.thermostats,
      'thermostats',
      () =>
        'All that switches itself (thermostats, floats) has waited and runs at once, for 40 min.',
    ],
  ]
}

/** An empty island that somebody, or its own clock, forms without its loads. */
function wakingTexts(scene: Scene, i: number, charge: string): Telling[] {
  return [
    [
      Event.triesAgain,
      'tries-again',
      () => `Empty, charge ${charge}: the island forms without loads to let solar in.`,
    ],
    [
      Event.somebodyWakes,
      'somebody-wakes',
      () =>
        `Somebody forms the island without its loads, charge ${charge}, so that the solar ` +
        `inverter finds a grid. Loads back at ${backPercent(scene, i)}.`,
    ],
    [
      Event.putAway,
      'put-away',
      () =>
        `The day's sun is over and the loads are not back: somebody switches the island off ` +
        `again, charge ${charge}.`,
    ],
  ]
}

function generatorTexts(scene: Scene, i: number, charge: string): Telling[] {
  const fuel = `${scene.trace.fuelL[i]!.toFixed(1)} l`
  return [
    [
      Event.generatorCallOff,
      'generator-not-wanted',
      () => `The generator is no longer wanted: charge ${charge}.`,
    ],
    [
      Event.generatorCalled,
      isInCans(scene, i) ? 'tank-wants-filling' : 'generator-wanted',
      () =>
        (isInCans(scene, i)
          ? `The tank wants filling: charge ${charge}.`
          : `Generator wanted: charge ${charge}.`) + whoStarts(scene, i),
      () => ({ tendedAt: tendedAt(scene, i) }),
    ],
    [Event.generatorOn, 'generator-runs', () => `Generator runs. Fuel ${fuel}.`],
    [
      Event.generatorOff,
      'generator-stops',
      () => `Generator stops: charge ${charge}. Fuel ${fuel}.`,
    ],
    [
      Event.generatorOverload,
      'generator-spared',
      () => `${generatorOver(scene, i, false)} The comfort loads go off to spare it.`,
    ],
    [Event.fuelOut, 'tank-empty', () => `Generator stops: its tank is empty. ${fuel} in cans.`],
    [Event.poured, 'tank-filled', () => 'Somebody fills the tank from the cans.'],
    [
      Event.generatorDoesNotStart,
      'generator-does-not-start',
      () => 'The generator does not start, and is out of order until the grid is back.',
    ],
    [
      Event.generatorFails,
      'generator-fails',
      () => `The generator fails at charge ${charge}, and is out of order until the grid is back.`,
    ],
  ]
}

/** Loads that came back into an overload were never on. */
function lasting(events: number): number {
  const isOver = (events & Event.overload) !== 0
  if (!isOver) return events
  const never = Event.loadsBack | Event.thermostats | Event.comfortOn
  // A generator that stalls tells its start and what it could not carry in one.
  const stall = Event.generatorOverload | Event.generatorOn
  return events & ~((events & Event.generatorOverload) === 0 ? never : never | stall)
}

function solarTexts(
  scene: Scene,
  i: number,
  group: SolarGroup,
  g: number,
  charge: string,
): Telling[] {
  const { isIn, trips, heldOut } = SOLAR_EVENTS[g]!
  const name = solarName(scene.house, group)
  const limit = `${Math.round(100 * group.inverter.outAbove)} %`
  const who = (): { names: readonly string[] } => ({ names: group.names })
  return [
    [isIn, 'solar-in', () => `${name} has waited out its reconnection and is in.`, who],
    [
      trips,
      'solar-trips',
      () => `${name} trips: it gives more than the island can take. ${surplus(scene, i, g)}`,
      who,
    ],
    [heldOut, 'solar-held-out', () => `${name} goes out: charge ${charge}, limit ${limit}.`, who],
  ]
}

/** `The solar inverter`, or which arrays' where there are two kinds. */
export function solarName(house: House, { names }: SolarGroup): string {
  return solarGroups(house).length < 2 ? 'The solar inverter' : `Solar of ${names.join(', ')}`
}

function solarOut(house: House): string {
  const waits = [...new Set(solarGroups(house).map((group) => group.inverter.reconnectSeconds))]
  if (waits.length === 0) return ''
  return ` Solar on the AC side drops out and waits ${waits.join(' s or ')} s.`
}

function surplus({ trace, compiled }: Scene, i: number, g: number): string {
  const sunKw = solarKw(compiled.window, 1 << g, i)
  const over = sunKw - trace.servedCriticalKw[i]! - trace.servedComfortKw[i]!
  const { plant, rules, columns } = compiled
  const stack = 60 * limitOf(trace.startStoredKwh[i]!, columns.tempLimit[i]!, rules)
  const takes = Math.min(plant.chargeAcKw, stack)
  return (
    `Sun ${kw(sunKw)}, of which ${kw(over)} would have to be stored; ${kw(takes)} can be` +
    `${takes < Math.min(plant.chargeAcKw, 60 * rules.bandLimitsKwh[0]!) ? ', so cold or so full' : ''}.`
  )
}

/** Which comfort loads a new level leaves out. */
function comfort(scene: Scene, i: number): string {
  const names = switchedNames(scene, i)
  return scene.compiled.demand.comfortNames.length < 2 || names.length === 0
    ? 'Comfort loads'
    : `Comfort loads (${names.join(', ')})`
}

/** The comfort loads between the level of the minute before and that of this one. */
function switchedNames({ trace, compiled }: Scene, i: number): string[] {
  const levels = [i === 0 ? 0 : trace.levels[i - 1]!, trace.levels[i]!]
  return compiled.demand.comfortNames.slice(Math.min(...levels), Math.max(...levels)).flat()
}

/** The threshold that the level just reached lies below. */
function dropLimit({ trace, compiled: { rules } }: Scene, i: number): string {
  const step = rules.shed[trace.levels[i]! - 1]
  return step === undefined ? '' : percent(step.dropBelowKwh / rules.capacityKwh)
}

function emptyLimit(i: number, { columns, rules }: Compiled): string {
  const warm = rules.loadsOffKwh / rules.capacityKwh
  const cold = columns.coldFloor[i]! / rules.capacityKwh
  const limit = `limit ${percent(warm + cold)}`
  return cold < 0.005 ? limit : `${limit} in the cold, ${percent(warm)} when warm`
}

/** An island that drops its loads and stays formed says so; one that goes dark has its own line. */
function holdsText(scene: Scene, i: number): string {
  const { trace, compiled } = scene
  const { rules, plant } = compiled
  if (trace.levels[i] !== rules.holding) return ''
  const back = backPercent(scene, i)
  const idleW = Math.round(1000 * (plant.idleKw + plant.standingKw))
  return ` All loads off; the island holds on ${idleW} W of its own until the sun has brought ${back}.`
}

function isAllBack({ trace, compiled }: Scene, i: number): boolean {
  return trace.levels[i] === 0 && compiled.rules.lastLevel > 0
}
