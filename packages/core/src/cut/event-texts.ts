// What each event of a minute says: what happened, why, with the numbers.

import type { House } from '../house/house.js'
import { type SolarGroup, solarGroups } from '../house/solar-groups.js'
import { limitOf } from '../island/charge.js'
import type { Compiled } from '../island/compile.js'
import { solarKw } from '../island/solar-columns.js'
import { Event, SOLAR_EVENTS } from '../island/state.js'
import { generatorOver, whyOver, whyShed } from './over-words.js'
import { backPercent, kw, percent, type Scene } from './scene.js'
import { whatHelps, whoStarts } from './what-helps.js'

/** One thing that happened in a minute. */
export interface Said {
  /** One bit of `Event`. */
  readonly bit: number
  readonly text: string
}

/** Sentences of the events of minute `i`, in the order in which they are told. */
export function saidIn(scene: Scene, i: number): Said[] {
  const { trace, house, compiled } = scene
  const events = lasting(trace.events[i]!)
  const { capacityKwh } = compiled.rules
  const charge = `${Math.round((100 * trace.startStoredKwh[i]!) / capacityKwh)} %`
  const load = kw(trace.demandCriticalKw[i]! + trace.demandComfortKw[i]!)
  const fuel = `${trace.fuelL[i]!.toFixed(1)} l`
  const texts: readonly (readonly [number, () => string])[] = [
    [Event.cutBegins, () => `The grid is gone. Charge ${charge}, load ${load}.${solarOut(house)}`],
    [Event.gridReturns, () => `The grid is back. Charge ${charge}.`],
    [
      Event.comfortOff,
      () => `${comfort(scene, i)} off: charge ${charge}, limit ${dropLimit(scene, i)}.`,
    ],
    [Event.comfortOn, () => `Comfort loads on again: charge ${charge}.`],
    ...solarGroups(house).flatMap((group, g) => solarTexts(scene, i, group, g, charge)),
    [Event.full, () => `Battery full: ${trace.storedKwh[i]!.toFixed(1)} kWh.`],
    [Event.overload, () => `Overload. ${whyOver(scene, i)}`],
    [
      Event.relaySheds,
      () => `Overload. ${whyShed(scene, i)} The relay drops the comfort loads for 5 min at least.`,
    ],
    [
      Event.triesAgain,
      () => `Empty, charge ${charge}: the island forms without loads to let solar in.`,
    ],
    [
      Event.somebodyWakes,
      () =>
        `Somebody forms the island without its loads, charge ${charge}, so that the solar ` +
        `inverter finds a grid. Loads back at ${backPercent(scene, i)}.`,
    ],
    [
      Event.putAway,
      () =>
        `The day's sun is over and the loads are not back: somebody switches the island off ` +
        `again, charge ${charge}.`,
    ],
    [Event.generatorCallOff, () => `The generator is no longer wanted: charge ${charge}.`],
    [Event.generatorCalled, () => `Generator wanted: charge ${charge}.${whoStarts(scene, i)}`],
    [Event.generatorOn, () => `Generator runs. Fuel ${fuel}.`],
    [Event.generatorOff, () => `Generator stops: charge ${charge}. Fuel ${fuel}.`],
    [
      Event.generatorOverload,
      () => `${generatorOver(scene, i, false)} The comfort loads go off to spare it.`,
    ],
    [Event.fuelOut, () => `Generator stops: its tank is empty. ${fuel} in cans.`],
    [Event.poured, () => 'Somebody fills the tank from the cans.'],
    [
      Event.generatorDoesNotStart,
      () => 'The generator does not start, and is out of order until the grid is back.',
    ],
    [
      Event.generatorFails,
      () => `The generator fails at charge ${charge}, and is out of order until the grid is back.`,
    ],
    [
      Event.empty,
      () =>
        `Battery at its lower limit: charge ${charge}, ${emptyLimit(i, compiled)}.` +
        holdsText(scene, i),
    ],
    [Event.goesDark, () => `Everything is off.${whatHelps(scene, i)}`],
    [Event.loadsBack, () => `${backWords(scene, i)}: charge ${charge}.`],
    [
      Event.thermostats,
      () =>
        'All that switches itself (thermostats, floats) has waited and runs at once, for 40 min.',
    ],
  ]
  return texts.flatMap(([bit, text]) => ((events & bit) === 0 ? [] : [{ bit, text: text() }]))
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
): [number, () => string][] {
  const { isIn, trips, heldOut } = SOLAR_EVENTS[g]!
  const name = solarName(scene.house, group)
  const limit = `${Math.round(100 * group.inverter.outAbove)} %`
  return [
    [isIn, () => `${name} has waited out its reconnection and is in.`],
    [trips, () => `${name} trips: it gives more than the island can take. ${surplus(scene, i, g)}`],
    [heldOut, () => `${name} goes out: charge ${charge}, limit ${limit}.`],
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
function comfort({ trace, compiled }: Scene, i: number): string {
  const { comfortNames } = compiled.demand
  const before = i === 0 ? 0 : trace.levels[i - 1]!
  const steps = comfortNames.slice(Math.min(before, trace.levels[i]!), trace.levels[i]!)
  return comfortNames.length < 2 || steps.length === 0
    ? 'Comfort loads'
    : `Comfort loads (${steps.flat().join(', ')})`
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

function backWords({ trace, compiled }: Scene, i: number): string {
  return trace.levels[i] === 0 && compiled.rules.lastLevel > 0
    ? 'All loads are on again'
    : 'The critical loads are on again'
}
