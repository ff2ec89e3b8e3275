// What many states can have in common: all but charge, fuel and timers of their own.
//
// A mode is a kind and the minutes in which its solar stops waiting. Kinds are few and numbered;
// solar trips for many at once, so its waits belong to the mode. What each began at a minute of its
// own (generator, person, thermostats, loads off) are timers that each state keeps.

import { NEVER } from './columns.js'
import type { Rules } from './rules.js'
import { cansLeftL, Runs, SOLAR_HELD, SOLAR_IN, type State } from './state.js'

/** What a group of AC-coupled solar does: in, held out until the charge falls, or waiting. */
export type SolarIs = (typeof SOLAR_IS)[number]
const SOLAR_IS = ['in', 'held', 'waits'] as const

/**
 * Off, being started, running, kept running at its stop charge or above by its least run, or out
 * of order until the grid is back.
 */
export type GeneratorIs = (typeof GENERATOR_IS)[number]
const GENERATOR_IS = ['off', 'starting', 'running', 'kept running', 'out of order'] as const

export interface Kind {
  readonly code: number
  readonly level: number
  /** Charge band at the start of the minute: how many charge edges the stack has reached. */
  readonly band: number
  /** Each group of AC-coupled solar. */
  readonly solar: readonly SolarIs[]
  readonly generator: GeneratorIs
  /** Nothing in the tank. */
  readonly tankEmpty: boolean
  /** Somebody is on the way. */
  readonly called: boolean
  /** Thermostats run together. */
  readonly together: boolean
  /** Dark after an overload, until it is tried again. */
  readonly retries: boolean
  /** The same, and only charge is wanting. */
  readonly overdue: boolean
  /** Somebody will form the empty island, or is waited for in vain. */
  readonly awaited: boolean
  /** The grid is there. */
  readonly grid: boolean
  readonly pours: number
  /** All that is yes or no, a bit each. */
  readonly flags: number
}

/** What each group of solar does, as a state has it: in, held out, or the last minute it waits. */
export interface Waits {
  solarUntil: number
  solarTooUntil: number
}

/** More fillings than this have no room in a code; such states are stepped one by one. */
const MOST_POURS = 63
const BANDS = 8
const FLAGS = 128

/** Number of the kind of a state with its timers at rest; -1 where it has none. */
export function kindCode(state: State, rules: Rules): number {
  if (state.relayUntil >= 0) return -1
  const retries = state.level === rules.dark && state.retryAt >= 0
  if (!retries && (state.retries !== 0 || state.retryAt >= 0)) return -1
  const fillings = fillingsOf(rules)
  if (state.pours >= fillings) return -1
  const isDry = rules.generator !== null && !(state.fuelL > cansLeftL(state, rules))
  return codeOf(
    state.level * BANDS + bandOf(state, rules),
    solarCode(state.solarUntil),
    solarCode(state.solarTooUntil),
    generatorCode(state, rules),
    flag(retries && state.retryAt === 0, 64) +
      flag(state.grid, 32) +
      flag(state.wakeAt >= 0, 16) +
      flag(retries, 8) +
      flag(isDry, 4) +
      flag(state.personAt >= 0, 2) +
      flag(state.togetherUntil >= 0, 1),
    state.pours,
    fillings,
  )
}

function flag(isSo: boolean, value: number): number {
  return isSo ? value : 0
}

/** One past the greatest number of a kind. */
export function kindCodes(rules: Rules): number {
  return codeOf((rules.dark + 1) * BANDS, 0, 0, 0, 0, 0, fillingsOf(rules))
}

function codeOf(
  levelAndBand: number,
  solar: number,
  solarToo: number,
  generator: number,
  flags: number,
  pours: number,
  fillings: number,
): number {
  const places = ((levelAndBand * 3 + solar) * 3 + solarToo) * GENERATOR_IS.length + generator
  return (places * FLAGS + flags) * fillings + pours
}

/** Fillings of the tank that have room in a code, none included. */
function fillingsOf({ generator }: Rules): number {
  return generator === null ? 1 : Math.min(MOST_POURS + 1, generator.cansAfter.length)
}

/** The kind of a number that `kindCode` or `nextCode` gave. */
export function kindOf(code: number, rules: Rules): Kind {
  let rest = code
  const digit = (base: number): number => {
    const value = rest % base
    rest = Math.floor(rest / base)
    return value
  }
  const pours = digit(fillingsOf(rules))
  const flags = digit(FLAGS)
  const generator = GENERATOR_IS[digit(GENERATOR_IS.length)]!
  const solarToo = SOLAR_IS[digit(3)]!
  const solar = SOLAR_IS[digit(3)]!
  const band = digit(BANDS)
  // Written out, not spread: engines give each spread object a shape of its own.
  return {
    code,
    level: rest,
    band,
    solar: [solar, solarToo].slice(0, rules.solar.length),
    generator,
    tankEmpty: (flags & 4) !== 0,
    called: (flags & 2) !== 0,
    together: (flags & 1) !== 0,
    retries: (flags & 8) !== 0,
    awaited: (flags & 16) !== 0,
    grid: (flags & 32) !== 0,
    overdue: (flags & 64) !== 0,
    pours,
    flags,
  }
}

function solarCode(until: number): number {
  return until === SOLAR_IN ? 0 : until === SOLAR_HELD ? 1 : 2
}

function generatorCode(state: State, rules: Rules): number {
  if (state.outOfOrder) return 4
  if (state.generator !== Runs.running) return state.generator
  return state.stored >= rules.generator!.stopKwh ? 3 : 2
}

function bandOf({ stored }: State, rules: Rules): number {
  let band = 0
  while (band < rules.bandEdgesKwh.length && !(stored < rules.bandEdgesKwh[band]!)) band++
  return band
}

/** First minute in which a wait of solar ends; Infinity where none runs. */
export function changesAt({ solarUntil, solarTooUntil }: Waits): number {
  return Math.min(endOf(solarUntil), endOf(solarTooUntil))
}

function endOf(until: number): number {
  return until === SOLAR_IN || until === SOLAR_HELD ? Number.POSITIVE_INFINITY : until
}

/**
 * The kind after minute `i`, in which a wait ends or solar trips for all; the waits go on with it.
 *
 * @param trips  groups of solar, a bit each
 */
export function nextCode(kind: Kind, waits: Waits, i: number, trips: number, rules: Rules): number {
  waits.solarUntil = untilAfter(i, 0, waits.solarUntil, trips, rules)
  waits.solarTooUntil = untilAfter(i, 1, waits.solarTooUntil, trips, rules)
  return codeOf(
    kind.level * BANDS + kind.band,
    solarCode(waits.solarUntil),
    solarCode(waits.solarTooUntil),
    GENERATOR_IS.indexOf(kind.generator),
    kind.flags,
    kind.pours,
    fillingsOf(rules),
  )
}

function untilAfter(i: number, group: number, until: number, trips: number, rules: Rules): number {
  if ((trips & (1 << group)) !== 0) return i + rules.solar[group]!.waitMinutes
  return i < until ? until : SOLAR_IN
}

/** First minute in which a timer of a state ends, which only `step` knows how to do; else NEVER. */
export function dueOf(kind: Kind, state: State, rules: Rules): number {
  return Math.min(
    kind.together ? state.togetherUntil : NEVER,
    kind.retries && !kind.overdue ? state.retryAt : NEVER,
    // An island that tries again by itself waits for nobody.
    kind.awaited && rules.whenEmpty !== 'retries' ? state.wakeAt : NEVER,
    kind.called ? state.personAt : generatorDue(kind, state, rules),
  )
}

function generatorDue({ generator }: Kind, { generatorFrom }: State, rules: Rules): number {
  if (generator === 'starting') return generatorFrom
  // The end of a least run changes nothing below the stop charge, and no calm span reaches it.
  if (generator !== 'kept running') return NEVER
  return generatorFrom + Math.max(1, rules.generator!.leastMinutes)
}
