// Where the rule book does the same to every charge: the span of stored energy within which one
// minute of one mode moves a state by one increment and changes nothing else but its timers.
//
// This says nothing that `step` does not say; it is `step` read for a whole span at once. What
// lies outside is handed to `step` itself. The agreement of the two is tested state by state.

import { GRID_KWH } from '../units/energy-grid.js'
import type { Columns } from './columns.js'
import type { Kind, SolarIs } from './mode.js'
import { type GeneratorRules, isFormedByHand, type Rules } from './rules.js'

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

/**
 * The calm span of a kind in minute `i`, as long as no timer of it ends; empty (above >= below)
 * where there is none.
 */
export function calmSpan(into: Calm, kind: Kind, i: number, columns: Columns, rules: Rules): void {
  into.above = -1
  into.below = Number.POSITIVE_INFINITY
  into.delta = 0
  into.litres = 0
  into.trips = 0
  const stays =
    columns.gridUp[i] === 0 &&
    generatorCalm(into, kind, i, columns, rules) &&
    levelCalm(into, kind, i, columns, rules)
  if (!stays) {
    into.above = Number.POSITIVE_INFINITY
    into.below = Number.NEGATIVE_INFINITY
    return
  }
  const { band } = kind
  const limit = Math.min(rules.bandLimitsKwh[band] ?? 0, columns.tempLimit[i]!)
  const delta = Math.min(limit, supply(into, kind, i, limit, columns, rules))
  into.delta = delta
  // A minute ends at the upper edge of the band, and a band left downwards is another kind.
  const upper = rules.bandEdgesKwh[band]
  if (upper !== undefined) into.below = Math.min(into.below, upper - Math.max(0, delta))
  const lower = band === 0 ? 0 : rules.bandEdgesKwh[band - 1]!
  if (delta < 0) into.above = Math.max(into.above, lower - delta - GRID_KWH)
  if (isRunning(kind)) {
    into.below = Math.min(into.below, rules.generator!.stopKwh - Math.max(0, delta))
    const burns = kind.together ? columns.together!.litres : columns.litres
    into.litres = burns(kind.level, i, into.delta)
  }
}

function isRunning(kind: Kind): boolean {
  return kind.generator === 'running'
}

/** The generator's side: nothing is called, started or stopped. */
function generatorCalm(into: Calm, kind: Kind, i: number, columns: Columns, rules: Rules): boolean {
  if (rules.generator === null || kind.generator === 'out of order') return true
  const set: GeneratorRules = rules.generator
  if (kind.level === rules.dark && !rules.wakesOnGenerator) {
    return kind.generator === 'off' && !kind.called
  }
  if (isRunning(kind) && set.canFail && columns.runFails[i] === 1) return false
  // A minute that would pass the stop charge ends there.
  if (kind.generator === 'starting' || isRunning(kind)) return true
  if (kind.tankEmpty && set.cansAfter[kind.pours] === 0) return !kind.called
  // Wanted up to this charge, itself included.
  const wantedKwh = kind.tankEmpty ? Math.max(set.startKwh, set.stopKwh - GRID_KWH) : set.startKwh
  const on = kind.level <= rules.lastLevel
  if (kind.called) {
    if (on) into.below = Math.min(into.below, wantedKwh + GRID_KWH)
    return true
  }
  into.above = Math.max(into.above, wantedKwh)
  return on
}

/** The level stays. */
function levelCalm(into: Calm, kind: Kind, i: number, columns: Columns, rules: Rules): boolean {
  const cold = columns.coldFloor[i]!
  const { level } = kind
  const running = isRunning(kind)
  if (level > rules.lastLevel) {
    const canReturn = level === rules.holding || rules.wakesOnSun
    if (canReturn) into.below = Math.min(into.below, rules.loadsBackKwh + cold)
    if (rules.whenEmpty === 'retries' && !attemptCalm(kind, i, columns, rules)) return false
    if (isFormedByHand(level, rules) && columns.sunLater[i] !== 1) return false
    return !running
  }
  if (!running) into.above = Math.max(into.above, rules.loadsOffKwh + cold)
  if (level < rules.lastLevel) into.above = Math.max(into.above, rules.shed[level]!.dropBelowKwh)
  if (level > 0) into.below = Math.min(into.below, rules.shed[level - 1]!.returnAtKwh)
  if (!kind.together) {
    return (running ? columns.overGenerator : columns.overload)[level]![i] !== 1
  }
  const together = columns.together!
  return !(running ? together.overGenerator(level, i, false) : together.overload(level, i, false))
}

/** An island that tries again neither begins nor gives up. */
function attemptCalm(kind: Kind, i: number, columns: Columns, rules: Rules): boolean {
  const isTime = columns.attempt[i] === 1
  if (kind.level === rules.dark) return !isTime
  return isTime || columns.delta[groupsOf(kind, 'in')]![kind.level]![i]! > 0
}

/** The increment before charge limits; says where solar trips for all. */
function supply(
  into: Calm,
  kind: Kind,
  i: number,
  limit: number,
  columns: Columns,
  rules: Rules,
): number {
  const { level } = kind
  const together = kind.together ? columns.together : null
  if (isRunning(kind)) return together?.generator(level, i) ?? columns.deltaGenerator[level]![i]!
  if (level === rules.dark) return columns.delta[0]![level]![i]!
  let mask = 0
  for (let g = 0; g < kind.solar.length; g++) {
    const solar = rules.solar[g]!
    const is = kind.solar[g]!
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
function groupsOf(kind: Kind, is: SolarIs): number {
  return kind.solar.reduce((mask, solar, g) => mask | (solar === is ? 1 << g : 0), 0)
}
