// What each event of a minute says: what happened, why, with the numbers.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import { type SolarGroup, solarGroups } from '../house/solar-groups.js'
import { limitOf } from '../island/charge.js'
import { NEVER } from '../island/columns.js'
import type { Compiled } from '../island/compile.js'
import { solarKw } from '../island/solar-columns.js'
import { Event, SOLAR_EVENTS } from '../island/state.js'
import { hardestNames, type IslandLoad } from '../load/island-loads.js'
import { TOGETHER_AFTER } from '../load/together.js'
import { generatorOverText, type OverloadMinute, overloadText } from './overload-text.js'
import type { Trace } from './trace.js'

/** All that a sentence may need. */
export interface Scene {
  readonly trace: Trace
  readonly house: House
  readonly calendar: Calendar
  readonly compiled: Compiled
  /** The loads one by one, worked out when first asked for. */
  readonly loads: () => readonly IslandLoad[]
}

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
      () =>
        `Overload. ${overloadText(compiled, overloadMinute(scene, i, 0, false))} The relay drops the comfort loads ` +
        'for 5 min at least.',
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

function whyOver(scene: Scene, i: number): string {
  const { trace, compiled } = scene
  const { rules, columns } = compiled
  const events = trace.events[i]!
  if ((events & Event.generatorOverload) !== 0) {
    const starts = (events & Event.generatorOn) === 0 ? '' : 'starts and '
    return `The generator ${starts}stalls, and the island with it. ${generatorOver(scene, i, true)}`
  }
  const isFirst = (events & Event.cutBegins) !== 0
  const forms = (events & Event.loadsBack) !== 0 || (isFirst && rules.motorsStop)
  const over = forms ? columns.overForming : columns.overload
  const before = i === 0 || isFirst ? 0 : Math.min(trace.levels[i - 1]!, rules.lastLevel)
  // An island that formed with all its loads, or with the critical ones only.
  const level = forms && !isFirst && over[rules.lastLevel]![i] === 1 ? rules.lastLevel : before
  return overloadText(compiled, overloadMinute(scene, i, over[level]![i] === 1 ? level : 0, forms))
}

/** What the generator could not carry: with what was on, or with the critical loads alone. */
function generatorOver(scene: Scene, i: number, only: boolean): string {
  const { trace, compiled } = scene
  const { rules } = compiled
  const forms = (trace.events[i]! & Event.loadsBack) !== 0
  const before = i === 0 ? 0 : Math.min(trace.levels[i - 1]!, rules.lastLevel)
  const level = only ? rules.lastLevel : before
  return generatorOverText(compiled, scene.house, overloadMinute(scene, i, level, forms))
}

function overloadMinute(scene: Scene, i: number, level: number, forms: boolean): OverloadMinute {
  const { trace, compiled, loads } = scene
  const { rules, demand, window } = compiled
  let offFor = 0
  while (offFor < Math.min(i, TOGETHER_AFTER) && trace.levels[i - 1 - offFor]! > rules.lastLevel) {
    offFor++
  }
  const at = (i + window.from) % demand.n
  const only = level === rules.lastLevel && level > 0
  const waitedFor = !forms ? null : offFor < TOGETHER_AFTER ? offFor : 'all'
  return { minute: i, level, forms, offFor, names: hardestNames(loads(), at, only, waitedFor) }
}

/** Whether the tank is empty: nothing is left but the cans. */
function isInCans({ trace, compiled: { rules } }: Scene, i: number): boolean {
  return rules.generator?.cansAfter.includes(trace.fuelL[i]!) === true
}

function whoStarts(scene: Scene, i: number): string {
  const { trace, house, calendar, compiled } = scene
  // An automatic set needs somebody only where its tank is empty.
  if (house.generator?.start !== 'by hand' && !isInCans(scene, i)) return ''
  const at = compiled.columns.personAt[i]!
  if (at === NEVER) return ' Nobody is there to tend it.'
  return ` Somebody is called (${personWords(house)}) and will have tended it at ${localTime(calendar, trace.from + at)}.`
}

function personWords({ person }: House): string {
  return `${person?.minutes} min, ${person?.from} to ${person?.to}`
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

/** The charge at which the loads return. */
function backPercent({ compiled: { rules, columns } }: Scene, i: number): string {
  return percent((rules.loadsBackKwh + columns.coldFloor[i]!) / rules.capacityKwh)
}

function backWords({ trace, compiled }: Scene, i: number): string {
  return trace.levels[i] === 0 && compiled.rules.lastLevel > 0
    ? 'All loads are on again'
    : 'The critical loads are on again'
}

/** What brings a dark island back. */
function whatHelps(scene: Scene, i: number): string {
  return scene.trace.states[i] === 'off, overload' ? whoResets(scene, i) : whatWakes(scene, i)
}

/** After an overload the inverter tries by itself; then somebody has to reset it. */
function whoResets({ trace, house, calendar, compiled }: Scene, i: number): string {
  let next = i + 1
  while (next < trace.n && (trace.events[next]! & (Event.loadsBack | Event.gridReturns)) === 0) {
    next++
  }
  if (next === i + 1 && next < trace.n) return ' The inverter tries again in a minute.'
  let tries = 1
  while (tries <= i && (trace.events[i - tries]! & Event.overload) !== 0) tries++
  if (tries <= compiled.rules.retries) {
    if (next >= trace.n) return ' It has not come back by the end.'
    const comes = (trace.events[next]! & Event.overload) === 0 ? 'comes back' : 'tries again'
    return ` It ${comes} at ${localTime(calendar, trace.from + next)}.`
  }
  const spent = ' It has tried three times and waits to be reset.'
  if (house.person === undefined)
    return `${spent} Nobody is named who could; the grid brings it back.`
  const when =
    next < trace.n && (trace.events[next]! & Event.loadsBack) !== 0
      ? ` and will have done it at ${localTime(calendar, trace.from + next)}`
      : ''
  return `${spent} Somebody is called (${personWords(house)})${when}.`
}

function whatWakes(scene: Scene, i: number): string {
  const { house, calendar, trace, compiled } = scene
  const { rules, columns } = compiled
  if (rules.wakesOnSun) return ' The sun on the DC side can wake the battery.'
  const failed = rules.generator !== null && trace.events.subarray(0, i + 1).some(isFailure)
  const hasFuel = trace.fuelL[i]! > 0 && (house.person !== undefined || !isInCans(scene, i))
  const helpers =
    rules.wakesOnGenerator && hasFuel && !failed ? 'the grid or the generator' : 'the grid'
  const sun = rules.solar.length > 0 ? ' Sunshine alone will not: nothing forms a grid for it.' : ''
  if (!rules.wakesOnPerson) return ` Only ${helpers} brings it back.${sun}`
  const at = columns.wakeAt[i]!
  return at === NEVER
    ? ` Somebody is called (${personWords(house)}), but has no sun to start with.${sun}`
    : ` Somebody is called (${personWords(house)}) and forms it at ${localTime(calendar, trace.from + at)}, with the sun there.`
}

function isFailure(events: number): boolean {
  return (events & (Event.generatorDoesNotStart | Event.generatorFails)) !== 0
}

export function kw(value: number): string {
  return `${value.toFixed(2)} kW`
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}
