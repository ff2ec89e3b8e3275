// Where the rule book does the same to every charge: the span of stored energy within which one
// minute of one mode moves a state by one increment and changes nothing else but its timers.
//
// This says nothing that `step` does not say; it is `step` read for a whole span at once. What
// lies outside is handed to `step` itself. The agreement of the two is tested state by state.

import { TOGETHER_AFTER } from '../load/together.js'
import { GRID_KWH } from '../units/energy-grid.js'
import type { Columns } from './columns.js'
import { type GeneratorRules, isFormedByHand, type Rules } from './rules.js'
import { cansLeftL, type State, setSolar, solarOf } from './state.js'

/**
 * What many states can have in common: all but charge, fuel and the timer of generator or person.
 * Waits of solar and thermostats are the minute they end, for they pass for many at once.
 */
export interface Mode {
  readonly level: number
  /** Charge band at the start of the minute: how many charge edges the stack has reached. */
  readonly band: number
  /** Each group of AC-coupled solar in, held out until the charge falls, or waiting. */
  readonly solar: readonly SolarMode[]
  /** Generator off, being started, within its least run, past it, or out of order. */
  readonly generator: 'off' | 'starting' | 'fresh' | 'settled' | 'out of order'
  /** Somebody is on the way. */
  readonly called: boolean
  /** Thermostats run together up to this minute, -1 where they do not. */
  readonly togetherUntil: number
  /** Nothing in the tank. */
  readonly tankEmpty: boolean
  readonly pours: number
  /** First minute in which a wait of solar ends, or the thermostats; Infinity where none runs. */
  readonly changesAt: number
}

export interface SolarMode {
  readonly is: 'in' | 'held' | 'waits'
  /** `waits`: the last minute out; else 0. */
  readonly until: number
}

/** Strictly between `above` and `below` [kWh] a state moves by `delta` and burns `litres`. */
export interface Calm {
  above: number
  below: number
  delta: number
  litres: number
  /** Groups of solar that trip for all of them, a bit each. */
  trips: number
}

export function newCalm(): Calm {
  return { above: 0, below: 0, delta: 0, litres: 0, trips: 0 }
}

const leastRun = (rules: Rules): number => Math.max(1, rules.generator?.leastMinutes ?? 1)

/** More fillings than this have no room in a key; such states are stepped one by one. */
const MOST_POURS = 3

function isTankEmpty(state: State, rules: Rules): boolean {
  return rules.generator !== null && !(state.fuelL > cansLeftL(state, rules))
}

/** Whether nothing runs in a state that a span cannot carry. */
function canBeCalm(state: State): boolean {
  if (state.grid || state.shedFor > 0 || state.retries !== 0 || state.retryAt >= 0) return false
  return state.pours <= MOST_POURS && state.wakeAt < 0
}

/** The mode of a state after minute `i`; null with the grid there and between retries. */
export function modeOf(state: State, i: number, rules: Rules): Mode | null {
  if (!canBeCalm(state)) return null
  const g = state.generator
  const generator = state.outOfOrder
    ? 'out of order'
    : g === 0
      ? 'off'
      : g < 0
        ? 'starting'
        : g < leastRun(rules)
          ? 'fresh'
          : 'settled'
  return timed(
    {
      level: state.level,
      band: bandOf(state.stored, rules),
      solar: rules.solar.map((_, group) => solarMode(solarOf(state, group), i)),
      generator,
      called: state.personAt >= 0,
      togetherUntil: state.together > 0 ? i + state.together : -1,
      tankEmpty: isTankEmpty(state, rules),
      pours: state.pours,
    },
    rules,
  )
}

/** A mode with the minute in which one of its waits ends; the waits of a dark island rest. */
function timed(mode: Omit<Mode, 'changesAt'>, rules: Rules): Mode {
  let changesAt = mode.togetherUntil < 0 ? Number.POSITIVE_INFINITY : mode.togetherUntil
  if (mode.level !== rules.dark) {
    for (const { is, until } of mode.solar)
      if (is === 'waits') changesAt = Math.min(changesAt, until)
  }
  return { ...mode, changesAt }
}

function solarMode(solar: number, i: number): SolarMode {
  return {
    is: solar === 0 ? 'in' : solar < 0 ? 'held' : 'waits',
    until: solar > 0 ? i + solar : 0,
  }
}

function bandOf(stored: number, rules: Rules): number {
  let band = 0
  while (band < rules.bandEdgesKwh.length && !(stored < rules.bandEdgesKwh[band]!)) band++
  return band
}

/**
 * A number for the mode of a state after minute `i`, -1 where it has none; equal for equal modes
 * that live in the same minute. Nothing is allocated.
 *
 * Waits are shorter than the rings they are counted in: 64 and 128 minutes.
 */
export function modeKey(state: State, i: number, rules: Rules): number {
  if (!canBeCalm(state)) return -1
  let key = state.level * 8 + bandOf(state.stored, rules)
  key = (key * 3 + solarCode(state.solar)) * 3 + solarCode(state.solarToo)
  key = (key * 5 + generatorCode(state, rules)) * 2 + (isTankEmpty(state, rules) ? 1 : 0)
  key = (key * 2 + (state.personAt < 0 ? 0 : 1)) * 2 + (state.together > 0 ? 1 : 0)
  key = key * 4 + state.pours
  key = key * 64 + (state.together > 0 ? (i + state.together) & 63 : 0)
  key = key * 128 + (state.solar > 0 ? (i + state.solar) & 127 : 0)
  return key * 128 + (state.solarToo > 0 ? (i + state.solarToo) & 127 : 0)
}

function solarCode(solar: number): number {
  return solar === 0 ? 0 : solar < 0 ? 1 : 2
}

function generatorCode({ outOfOrder, generator: g }: State, rules: Rules): number {
  if (outOfOrder) return 4
  return g === 0 ? 0 : g < 0 ? 1 : g < leastRun(rules) ? 2 : 3
}

/** What of a mode's key its calm span hangs on: all but the times its timers end. */
export function timelessKey(key: number): number {
  return Math.floor(key / (64 * 128 * 128))
}

/**
 * The timer of generator or person after minute `i`: when the set will run, the minute before it
 * first ran, or when the person has done it; -1 where none runs.
 */
export function timerOf(state: State, i: number, rules: Rules): number {
  const { generator: g, personAt } = state
  if (g !== 0 && g < leastRun(rules)) return i - g
  return personAt
}

/** The minute in which a timer ends, which only `step` knows how to do; -1 without one. */
export function dueOf(mode: Mode, timer: number, rules: Rules): number {
  return mode.generator === 'fresh' ? timer + leastRun(rules) : timer
}

/** Loads off: the last minute in which they were on, or one as long ago as makes no difference. */
export function onBefore({ level, offFor }: State, i: number, rules: Rules): number {
  return level > rules.lastLevel ? i - offFor : -1
}

/** Puts a mode's side of a state back, as it stands before minute `i`. */
export function restore(
  state: State,
  mode: Mode,
  { timer, onBefore: on }: { readonly timer: number; readonly onBefore: number },
  i: number,
  rules: Rules,
): void {
  state.level = mode.level
  for (let g = 0; g < mode.solar.length; g++) {
    const { is, until } = mode.solar[g]!
    setSolar(state, g, is === 'in' ? 0 : is === 'held' ? -1 : until - (i - 1))
  }
  state.outOfOrder = mode.generator === 'out of order'
  state.personAt = mode.called ? timer : -1
  state.pours = mode.pours
  state.offFor = mode.level > rules.lastLevel ? Math.min(TOGETHER_AFTER, i - 1 - on) : 0
  state.together = mode.togetherUntil < 0 ? 0 : mode.togetherUntil - (i - 1)
  if (mode.generator === 'off' || state.outOfOrder) state.generator = 0
  else if (mode.generator === 'settled') state.generator = leastRun(rules)
  else state.generator = i - 1 - timer
}

/**
 * The mode after minute `i`, where a wait ends in it or solar trips for all; null where it stays.
 *
 * @param trips  groups of solar, a bit each
 */
export function modeAfter(mode: Mode, i: number, trips: number, rules: Rules): Mode | null {
  if (trips === 0 && i < mode.changesAt) return null
  const moves = mode.level !== rules.dark
  const solar = mode.solar.map((one, g): SolarMode => {
    if ((trips & (1 << g)) !== 0) return { is: 'waits', until: i + rules.solar[g]!.waitMinutes }
    return moves && one.is === 'waits' && i >= one.until ? { is: 'in', until: 0 } : one
  })
  const togetherUntil = i >= mode.togetherUntil ? -1 : mode.togetherUntil
  return timed({ ...mode, solar, togetherUntil }, rules)
}

/**
 * The calm span of a mode in minute `i`, as long as no timer of it ends; empty (above >= below)
 * where there is none.
 */
export function calmSpan(into: Calm, mode: Mode, i: number, columns: Columns, rules: Rules): void {
  into.above = -1
  into.below = Number.POSITIVE_INFINITY
  into.delta = 0
  into.litres = 0
  into.trips = 0
  const stays =
    columns.gridUp[i] === 0 &&
    generatorCalm(into, mode, i, columns, rules) &&
    levelCalm(into, mode, i, columns, rules)
  if (!stays) {
    into.above = Number.POSITIVE_INFINITY
    into.below = Number.NEGATIVE_INFINITY
    return
  }
  const { band } = mode
  const limit = Math.min(rules.bandLimitsKwh[band] ?? 0, columns.tempLimit[i]!)
  const delta = Math.min(limit, supply(into, mode, i, limit, columns, rules))
  into.delta = delta
  // A minute ends at the upper edge of the band, and a band left downwards is another mode.
  const upper = rules.bandEdgesKwh[band]
  if (upper !== undefined) into.below = Math.min(into.below, upper - Math.max(0, delta))
  const lower = band === 0 ? 0 : rules.bandEdgesKwh[band - 1]!
  if (delta < 0) into.above = Math.max(into.above, lower - delta - GRID_KWH)
  if (mode.generator === 'settled') {
    into.below = Math.min(into.below, rules.generator!.stopKwh - Math.max(0, delta))
  }
  if (isRunning(mode)) {
    const burns = mode.togetherUntil < 0 ? columns.litres : columns.together!.litres
    into.litres = burns(mode.level, i, into.delta)
  }
}

function isRunning(mode: Mode): boolean {
  return mode.generator === 'fresh' || mode.generator === 'settled'
}

/** The generator's side: nothing is called, started or stopped. */
function generatorCalm(into: Calm, mode: Mode, i: number, columns: Columns, rules: Rules): boolean {
  if (rules.generator === null || mode.generator === 'out of order') return true
  const set: GeneratorRules = rules.generator
  if (mode.level === rules.dark && !rules.wakesOnGenerator) {
    return mode.generator === 'off' && !mode.called
  }
  if (isRunning(mode) && set.canFail && columns.runFails[i] === 1) return false
  if (mode.generator === 'starting' || mode.generator === 'fresh') return true
  // A minute that would pass its stop charge ends there.
  if (mode.generator === 'settled') return true
  if (mode.tankEmpty && set.cansAfter[mode.pours] === 0) return !mode.called
  // Wanted up to this charge, itself included.
  const wantedKwh = mode.tankEmpty ? Math.max(set.startKwh, set.stopKwh - GRID_KWH) : set.startKwh
  const on = mode.level <= rules.lastLevel
  if (mode.called) {
    if (on) into.below = Math.min(into.below, wantedKwh + GRID_KWH)
    return true
  }
  into.above = Math.max(into.above, wantedKwh)
  return on
}

/** The level stays. */
function levelCalm(into: Calm, mode: Mode, i: number, columns: Columns, rules: Rules): boolean {
  const cold = columns.coldFloor[i]!
  const { level } = mode
  const running = isRunning(mode)
  if (level > rules.lastLevel) {
    const canReturn = level === rules.holding || rules.wakesOnSun
    if (canReturn) into.below = Math.min(into.below, rules.loadsBackKwh + cold)
    if (rules.whenEmpty === 'retries' && !attemptCalm(mode, i, columns, rules)) return false
    if (isFormedByHand(level, rules) && columns.sunLater[i] !== 1) return false
    return !running
  }
  if (!running) into.above = Math.max(into.above, rules.loadsOffKwh + cold)
  if (level < rules.lastLevel) into.above = Math.max(into.above, rules.shed[level]!.dropBelowKwh)
  if (level > 0) into.below = Math.min(into.below, rules.shed[level - 1]!.returnAtKwh)
  if (mode.togetherUntil < 0) {
    return (running ? columns.overGenerator : columns.overload)[level]![i] !== 1
  }
  const together = columns.together!
  return !(running ? together.overGenerator(level, i, false) : together.overload(level, i, false))
}

/** An island that tries again neither begins nor gives up. */
function attemptCalm(mode: Mode, i: number, columns: Columns, rules: Rules): boolean {
  const isTime = columns.attempt[i] === 1
  if (mode.level === rules.dark) return !isTime
  return isTime || columns.delta[groupsOf(mode, 'in')]![mode.level]![i]! > 0
}

/** The increment before charge limits; says where solar trips for all. */
function supply(
  into: Calm,
  mode: Mode,
  i: number,
  limit: number,
  columns: Columns,
  rules: Rules,
): number {
  const { level } = mode
  const together = mode.togetherUntil < 0 ? null : columns.together
  if (isRunning(mode)) return together?.generator(level, i) ?? columns.deltaGenerator[level]![i]!
  if (level === rules.dark) return columns.delta[0]![level]![i]!
  let mask = 0
  for (let g = 0; g < mode.solar.length; g++) {
    const solar = rules.solar[g]!
    const { is } = mode.solar[g]!
    if (is === 'held') into.above = Math.max(into.above, solar.backKwh)
    if (is !== 'in') continue
    if (solar.heldOut) into.below = Math.min(into.below, solar.offKwh)
    mask |= 1 << g
  }
  const canTrip = mask & rules.tripMask
  if (canTrip !== 0) {
    const forced = together?.forced(mask, level, i) ?? columns.forced[mask]![level]![i]!
    if (forced > limit) {
      into.trips = canTrip
      mask &= ~canTrip
    }
  }
  return together?.delta(mask, level, i) ?? columns.delta[mask]![level]![i]!
}

/** Groups of solar that are in a state, a bit each. */
function groupsOf(mode: Mode, is: SolarMode['is']): number {
  return mode.solar.reduce((mask, solar, g) => mask | (solar.is === is ? 1 << g : 0), 0)
}
