// One island at one moment: stored energy, every latch and every timer.
//
// `used`, `delta` and `events` describe the minute just lived; nothing reads them in the next.

import type { Rules } from './rules.js'

/** What stood beside the inverter in the minute just lived. */
export const Used = { nothing: 0, solar: 1, generator: 2, grid: 3 } as const

export interface State {
  /** Energy above empty, at the end of the minute. [kWh], on the grid */
  stored: number
  /** 0..lastLevel, holding or dark. */
  level: number
  /** AC-coupled solar: 0 in, k > 0 still waiting k minutes, -1 held out until the charge falls. */
  solar: number
  /** The same for the second group. */
  solarToo: number
  /** Generator: 0 off, k > 0 running for k minutes, k < 0 ready after -k. */
  generator: number
  /** Minute at which the called person has done it, -1 while nobody is called. */
  personAt: number
  /** The generator did not start or failed; nobody mends it before the grid is back. */
  outOfOrder: boolean
  /** Minute at which somebody forms the empty island, NEVER where nobody can, -1 uncalled. */
  wakeAt: number
  /** Minute at which a dark island tries again, -1 where only energy helps. */
  retryAt: number
  /** Retries used since the last minute that held. */
  retries: number
  /** Minutes for which a relay still keeps the comfort loads off. */
  shedFor: number
  /** Minutes without loads, counted up to where more makes no difference. */
  offFor: number
  /** Minutes for which the thermostats still run together. */
  together: number
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
    solar: 0,
    solarToo: 0,
    generator: 0,
    outOfOrder: false,
    wakeAt: -1,
    personAt: -1,
    retryAt: -1,
    retries: 0,
    shedFor: 0,
    offFor: 0,
    together: 0,
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

/** Field by field, which engines do several times faster than a copy by name. */
export function copyState(into: State, from: State): void {
  into.stored = from.stored
  into.level = from.level
  into.solar = from.solar
  into.solarToo = from.solarToo
  into.generator = from.generator
  into.outOfOrder = from.outOfOrder
  into.wakeAt = from.wakeAt
  into.personAt = from.personAt
  into.retryAt = from.retryAt
  into.retries = from.retries
  into.shedFor = from.shedFor
  into.offFor = from.offFor
  into.together = from.together
  into.fuelL = from.fuelL
  into.pours = from.pours
  into.grid = from.grid
  into.used = from.used
  into.solarIn = from.solarIn
  into.ranTogether = from.ranTogether
  into.delta = from.delta
  into.events = from.events
}

/** What a group of AC-coupled solar does: 0 in, k > 0 waits k minutes, -1 held out. */
export function solarOf(state: State, group: number): number {
  return group === 0 ? state.solar : state.solarToo
}

export function setSolar(state: State, group: number, value: number): void {
  if (group === 0) state.solar = value
  else state.solarToo = value
}

/** All AC-coupled solar goes out and waits. */
export function solarWaits(state: State, rules: Rules): void {
  for (let g = 0; g < rules.solar.length; g++) setSolar(state, g, rules.solar[g]!.waitMinutes)
}

/** Litres still in cans. */
export function cansLeftL(state: State, rules: Rules): number {
  return rules.generator?.cansAfter[state.pours] ?? 0
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
