// One island at one moment: stored energy, every latch and every timer.
//
// Timers are minutes of the window, not counts: a minute in which nothing happens leaves them alone,
// and two states with the same ones go on in the same way.
//
// `used`, `delta` and `events` describe the minute just lived; nothing reads them in the next.

import { TOGETHER_AFTER } from '../load/together.js'
import { NEVER } from './columns.js'
import type { Rules } from './rules.js'

/** What stood beside the inverter in the minute just lived. */
export const Used = { nothing: 0, solar: 1, generator: 2, grid: 3 } as const

/** The generator: off, being started, or running. */
export const Runs = { off: 0, starting: 1, running: 2 } as const

/** AC-coupled solar that waits for nothing. */
export const SOLAR_IN = -1
/** AC-coupled solar that is held out until the charge falls. */
export const SOLAR_HELD = NEVER
/** So long ago that it makes no difference any more. */
export const LONG_AGO = -0x40000000

export interface State {
  /** Energy above empty, at the end of the minute. [kWh], on the grid */
  stored: number
  /** 0..lastLevel, holding or dark. */
  level: number
  /** AC-coupled solar: `SOLAR_IN`, `SOLAR_HELD`, or the last minute that it waits. */
  solarUntil: number
  /** The same for the second group. */
  solarTooUntil: number
  /** One of `Runs`. */
  generator: number
  /** First minute in which the generator runs, is to run, or ran last. */
  generatorFrom: number
  /** Minute at which the called person has done it, -1 while nobody is called. */
  personAt: number
  /** The generator did not start or failed; nobody mends it before the grid is back. */
  outOfOrder: boolean
  /** Minute at which somebody forms the empty island, NEVER where nobody can, -1 uncalled. */
  wakeAt: number
  /** Minute at which a dark island tries again, 0 once it is past; -1 where only energy helps. */
  retryAt: number
  /** Retries used since the last minute that held. */
  retries: number
  /** First minute in which a relay lets the comfort loads back; -1 where none keeps them off. */
  relayUntil: number
  /** First minute without loads; NEVER while they are on. */
  offFrom: number
  /** Last minute in which the thermostats run together; -1 where they do not. */
  togetherUntil: number
  /** Fuel left, in tank and cans. [l] */
  fuelL: number
  /** How often the tank was filled from cans. */
  pours: number
  /** Whether the grid was there in the minute before. */
  grid: boolean
  /** One of `Used`. */
  used: number
  /** Groups of AC-coupled solar that were in, a bit each. */
  solarIn: number
  /** Whether the thermostats ran together in the minute. */
  ranTogether: boolean
  /** Change of `stored` in the minute. [kWh], on the grid */
  delta: number
  /** Bits of `Event`. */
  events: number
}

/** A house with the grid there, all latches at rest. @param stored  [kWh], on the grid */
export function newState(rules: Rules, stored: number): State {
  return {
    stored,
    level: 0,
    solarUntil: SOLAR_IN,
    solarTooUntil: SOLAR_IN,
    generator: Runs.off,
    generatorFrom: LONG_AGO,
    outOfOrder: false,
    wakeAt: -1,
    personAt: -1,
    retryAt: -1,
    retries: 0,
    relayUntil: -1,
    offFrom: NEVER,
    togetherUntil: -1,
    fuelL: rules.generator?.fuelL ?? 0,
    pours: 0,
    grid: true,
    used: Used.nothing,
    solarIn: 0,
    ranTogether: false,
    delta: 0,
    events: 0,
  }
}

/** Where histories meet: on a charge edge, where a generator stops, and empty. */
export function isOnEdge(state: State, rules: Rules): boolean {
  const { generator } = rules
  if (state.stored === 0 || (generator !== null && state.stored === generator.stopKwh)) return true
  return isOnBandEdge(state, rules)
}

/** Whether the charge stands exactly where a charge band ends. */
export function isOnBandEdge({ stored }: State, { bandEdgesKwh }: Rules): boolean {
  return stored >= bandEdgesKwh[0]! && bandEdgesKwh.includes(stored)
}

/** Everything the next minute can depend on, of a state with its timers at rest. */
export function stateKey(s: State): string {
  return `${s.stored} ${s.level} ${s.solarUntil} ${s.solarTooUntil} ${s.generator} ${s.generatorFrom} ${s.outOfOrder} ${s.wakeAt} ${s.personAt} ${s.retryAt} ${s.retries} ${s.relayUntil} ${s.offFrom} ${s.togetherUntil} ${s.fuelL} ${s.pours} ${s.grid}`
}

/** Field by field, which engines do several times faster than a copy by name. */
export function copyState(into: State, from: State): void {
  into.stored = from.stored
  into.level = from.level
  into.solarUntil = from.solarUntil
  into.solarTooUntil = from.solarTooUntil
  into.generator = from.generator
  into.generatorFrom = from.generatorFrom
  into.outOfOrder = from.outOfOrder
  into.wakeAt = from.wakeAt
  into.personAt = from.personAt
  into.retryAt = from.retryAt
  into.retries = from.retries
  into.relayUntil = from.relayUntil
  into.offFrom = from.offFrom
  into.togetherUntil = from.togetherUntil
  into.fuelL = from.fuelL
  into.pours = from.pours
  into.grid = from.grid
  into.used = from.used
  into.solarIn = from.solarIn
  into.ranTogether = from.ranTogether
  into.delta = from.delta
  into.events = from.events
}

/** What a group of AC-coupled solar does: in, held out, or the last minute that it waits. */
export function solarOf(state: State, group: number): number {
  return group === 0 ? state.solarUntil : state.solarTooUntil
}

export function setSolar(state: State, group: number, until: number): void {
  if (group === 0) state.solarUntil = until
  else state.solarTooUntil = until
}

/** All AC-coupled solar goes out and waits, from minute `i` on. */
export function solarWaits(state: State, i: number, rules: Rules): void {
  const { solar } = rules
  if (solar.length > 0) state.solarUntil = i + solar[0]!.waitMinutes - 1
  if (solar.length > 1) state.solarTooUntil = i + solar[1]!.waitMinutes - 1
}

/** Minutes in a row without loads before minute `i`, up to where more makes no difference. */
export function offFor({ offFrom }: State, i: number): number {
  return offFrom >= i ? 0 : Math.min(TOGETHER_AFTER, i - offFrom)
}

/** Sets timers that are over after minute `i` to rest: equal states are then equal field by field. */
export function restTimers(state: State, i: number, rules: Rules): void {
  if (state.solarUntil <= i) state.solarUntil = SOLAR_IN
  if (state.solarTooUntil <= i) state.solarTooUntil = SOLAR_IN
  if (state.relayUntil <= i) state.relayUntil = -1
  if (state.retryAt >= 0 && state.retryAt <= i) state.retryAt = 0
  if (state.togetherUntil <= i) state.togetherUntil = -1
  if (state.offFrom <= i + 1 - TOGETHER_AFTER) state.offFrom = LONG_AGO
  if (state.generator === Runs.off || hasRunLeast(state, i + 1, rules)) {
    state.generatorFrom = LONG_AGO
  }
}

/** Whether the generator may stop in minute `i` for all that its least run says. */
export function hasRunLeast({ generator, generatorFrom }: State, i: number, rules: Rules): boolean {
  return generator === Runs.running && i - generatorFrom >= rules.generator!.leastMinutes
}

/** Litres still in cans, after so many fillings of the tank. */
export function cansLeftL({ pours }: Pick<State, 'pours'>, rules: Rules): number {
  return rules.generator?.cansAfter[pours] ?? 0
}

/** What happened in a minute, one bit each. */
export const Event = {
  cutBegins: 1 << 0,
  gridReturns: 1 << 1,
  comfortOff: 1 << 2,
  comfortOn: 1 << 3,
  solarIn: 1 << 4,
  solarTrips: 1 << 5,
  solarHeldOut: 1 << 6,
  empty: 1 << 7,
  loadsBack: 1 << 8,
  overload: 1 << 9,
  generatorCalled: 1 << 10,
  generatorOn: 1 << 11,
  generatorOff: 1 << 12,
  fuelOut: 1 << 13,
  full: 1 << 14,
  goesDark: 1 << 15,
  generatorOverload: 1 << 16,
  relaySheds: 1 << 17,
  triesAgain: 1 << 18,
  thermostats: 1 << 19,
  poured: 1 << 20,
  solarTooIn: 1 << 21,
  solarTooTrips: 1 << 22,
  solarTooHeldOut: 1 << 23,
  generatorDoesNotStart: 1 << 24,
  generatorFails: 1 << 25,
  somebodyWakes: 1 << 26,
  generatorCallOff: 1 << 27,
  putAway: 1 << 28,
} as const

/** Events of each group of AC-coupled solar. */
export const SOLAR_EVENTS = [
  { isIn: Event.solarIn, trips: Event.solarTrips, heldOut: Event.solarHeldOut },
  { isIn: Event.solarTooIn, trips: Event.solarTooTrips, heldOut: Event.solarTooHeldOut },
] as const

/** The island's states by name, as a trace shows them. */
export const STATE_NAMES = [
  'grid',
  'island',
  'island, comfort in part',
  'island, critical only',
  'island, generator',
  'loads off, holding',
  'off, empty',
  'off, overload',
] as const
export type StateName = (typeof STATE_NAMES)[number]

/** Name of the minute just lived. */
export function stateName(state: State, rules: Rules): StateName {
  if (state.used === Used.grid) return 'grid'
  if (state.level === rules.dark) return state.retryAt >= 0 ? 'off, overload' : 'off, empty'
  if (state.level === rules.holding) return 'loads off, holding'
  if (state.used === Used.generator) return 'island, generator'
  if (state.level === 0) return 'island'
  return state.level < rules.lastLevel ? 'island, comfort in part' : 'island, critical only'
}
