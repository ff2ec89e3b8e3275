// What many states can have in common: all but charge, fuel and timers of their own.
//
// A mode is a kind and the minutes in which its solar stops waiting. Kinds are few and numbered;
// solar trips for many at once, so its waits belong to the mode. What each began at a minute of its
// own (generator, person, thermostats, loads off) are timers that each state keeps.

import { TOGETHER_AFTER } from '../load/together.js'
import { NEVER } from './columns.js'
import type { Rules } from './rules.js'
import { cansLeftL, type State, setSolar } from './state.js'

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
  readonly pours: number
}

/** Last minute out, of each group of solar that waits; 0 for others. */
export interface Waits {
  solarUntil: number
  solarTooUntil: number
}

/** What a state of a mode began at a minute of its own. */
export interface Timers {
  /**
   * When the set will run, the minute before it first ran (while its least run matters), or when
   * the person has done it; -1 where nothing of it runs.
   */
  timer: number
  /** Last minute in which the thermostats run together; -1 where they do not. */
  togetherUntil: number
  /** Loads off: the last minute in which they were on, or one long enough ago; else -1. */
  onBefore: number
  /** When it is tried again after an overload, -1 where it is not; and how often it was. */
  retryAt: number
  retries: number
}

/** More fillings than this have no room in a code; such states are stepped one by one. */
const MOST_POURS = 3
const BANDS = 8
const FLAGS = 16

const leastRun = (rules: Rules): number => Math.max(1, rules.generator?.leastMinutes ?? 1)

/** Number of the kind of a state, -1 where it has none: with the grid there, say. */
export function kindCode(state: State, rules: Rules): number {
  if (state.grid || state.shedFor > 0) return -1
  const retries = state.level === rules.dark && state.retryAt >= 0
  if (!retries && (state.retries !== 0 || state.retryAt >= 0)) return -1
  if (state.pours > MOST_POURS || state.wakeAt >= 0) return -1
  const isDry = rules.generator !== null && !(state.fuelL > cansLeftL(state, rules))
  return codeOf(
    state.level * BANDS + bandOf(state.stored, rules),
    solarCode(state.solar),
    solarCode(state.solarToo),
    generatorCode(state, rules),
    flagsOf(retries, isDry, state.personAt >= 0, state.together > 0),
    state.pours,
  )
}

function flagsOf(retries: boolean, isDry: boolean, called: boolean, together: boolean): number {
  return (retries ? 8 : 0) + (isDry ? 4 : 0) + (called ? 2 : 0) + (together ? 1 : 0)
}

/** One past the greatest number of a kind. */
export function kindCodes(rules: Rules): number {
  return codeOf((rules.dark + 1) * BANDS, 0, 0, 0, 0, 0)
}

function codeOf(
  levelAndBand: number,
  solar: number,
  solarToo: number,
  generator: number,
  flags: number,
  pours: number,
): number {
  const places = ((levelAndBand * 3 + solar) * 3 + solarToo) * GENERATOR_IS.length + generator
  return (places * FLAGS + flags) * (MOST_POURS + 1) + pours
}

/** The kind of a number that `kindCode` or `nextCode` gave. */
export function kindOf(code: number, rules: Rules): Kind {
  let rest = code
  const digit = (base: number): number => {
    const value = rest % base
    rest = Math.floor(rest / base)
    return value
  }
  const pours = digit(MOST_POURS + 1)
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
    pours,
  }
}

function solarCode(solar: number): number {
  return solar === 0 ? 0 : solar < 0 ? 1 : 2
}

function generatorCode(state: State, rules: Rules): number {
  if (state.outOfOrder) return 4
  const { generator: g } = state
  return g === 0 ? 0 : g < 0 ? 1 : isKeptRunning(state, rules) ? 3 : 2
}

function isKeptRunning({ generator, stored }: State, rules: Rules): boolean {
  return generator > 0 && stored >= rules.generator!.stopKwh
}

function bandOf(stored: number, rules: Rules): number {
  let band = 0
  while (band < rules.bandEdgesKwh.length && !(stored < rules.bandEdgesKwh[band]!)) band++
  return band
}

/** The waits of a state after minute `i`. */
export function waitsOf(into: Waits, { solar, solarToo }: State, i: number): void {
  into.solarUntil = solar > 0 ? i + solar : 0
  into.solarTooUntil = solarToo > 0 ? i + solarToo : 0
}

/**
 * First minute in which a wait of solar ends; Infinity where none runs. They rest on a dark island.
 */
export function changesAt(kind: Kind, waits: Waits, rules: Rules): number {
  let at = Number.POSITIVE_INFINITY
  if (kind.level === rules.dark) return at
  if (kind.solar[0] === 'waits') at = Math.min(at, waits.solarUntil)
  if (kind.solar[1] === 'waits') at = Math.min(at, waits.solarTooUntil)
  return at
}

/**
 * The kind after minute `i`, in which a wait ends or solar trips for all; the waits go on with it.
 *
 * @param trips  groups of solar, a bit each
 */
export function nextCode(kind: Kind, waits: Waits, i: number, trips: number, rules: Rules): number {
  const moves = kind.level !== rules.dark
  const after = (g: number, until: number): number => {
    if ((trips & (1 << g)) !== 0) return i + rules.solar[g]!.waitMinutes
    return kind.solar[g] === 'waits' && !(moves && i >= until) ? until : 0
  }
  waits.solarUntil = after(0, waits.solarUntil)
  waits.solarTooUntil = after(1, waits.solarTooUntil)
  return codeOf(
    kind.level * BANDS + kind.band,
    kind.solar[0] === 'held' ? 1 : waits.solarUntil > 0 ? 2 : 0,
    kind.solar[1] === 'held' ? 1 : waits.solarTooUntil > 0 ? 2 : 0,
    GENERATOR_IS.indexOf(kind.generator),
    flagsOf(kind.retries, kind.tankEmpty, kind.called, kind.together),
    kind.pours,
  )
}

/** The timers of a state after minute `i`. */
export function timersOf(into: Timers, state: State, i: number, rules: Rules): void {
  const { generator: g, together } = state
  const counts = g !== 0 && (g < leastRun(rules) || isKeptRunning(state, rules))
  into.timer = counts ? i - g : state.personAt
  into.togetherUntil = together > 0 ? i + together : -1
  into.onBefore = state.level > rules.lastLevel ? i - state.offFor : -1
  into.retryAt = state.retryAt
  into.retries = state.retries
}

/** First minute in which a timer ends, which only `step` knows how to do; -1 without one. */
export function dueOf(kind: Kind, timers: Timers, rules: Rules): number {
  const soonest = Math.min(
    timers.togetherUntil < 0 ? NEVER : timers.togetherUntil,
    timers.retryAt < 0 ? NEVER : timers.retryAt,
    generatorDue(kind, timers, rules),
  )
  return soonest === NEVER ? -1 : soonest
}

function generatorDue({ generator }: Kind, { timer }: Timers, rules: Rules): number {
  // The end of a least run changes nothing below the stop charge, and no calm span reaches it.
  if (timer < 0 || generator === 'running') return NEVER
  return generator === 'kept running' ? timer + leastRun(rules) + 1 : timer
}

/** Puts a mode's side of a state back, as it stands before minute `i`. */
export function restore(
  state: State,
  kind: Kind,
  waits: Waits,
  { timer, togetherUntil, onBefore, retryAt, retries }: Timers,
  i: number,
  rules: Rules,
): void {
  const { level, solar, generator } = kind
  state.grid = false
  state.retryAt = retryAt
  state.retries = retries
  state.wakeAt = -1
  state.shedFor = 0
  state.level = level
  for (let g = 0; g < solar.length; g++) {
    const until = g === 0 ? waits.solarUntil : waits.solarTooUntil
    setSolar(state, g, solar[g] === 'in' ? 0 : solar[g] === 'held' ? -1 : until - (i - 1))
  }
  state.outOfOrder = generator === 'out of order'
  state.personAt = kind.called ? timer : -1
  state.pours = kind.pours
  state.offFor = level > rules.lastLevel ? Math.min(TOGETHER_AFTER, i - 1 - onBefore) : 0
  state.together = kind.together ? togetherUntil - (i - 1) : 0
  if (generator === 'off' || state.outOfOrder) state.generator = 0
  else if (generator === 'starting') state.generator = i - 1 - timer
  else state.generator = timer < 0 ? leastRun(rules) : Math.min(leastRun(rules), i - 1 - timer)
}
