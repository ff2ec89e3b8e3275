// The generator's part of the rule book: wanted, called, ready, running, out of fuel.

import type { Columns } from './columns.js'
import type { GeneratorRules, Rules } from './rules.js'
import { cansLeftL, Event, hasRunLeast, Runs, SOLAR_IN, type State, solarWaits } from './state.js'

/** Lives the generator's side of minute `i`. Returns whether it gives power in this minute. */
export function stepGenerator(state: State, i: number, columns: Columns, rules: Rules): boolean {
  const set = rules.generator as GeneratorRules
  if (state.outOfOrder) return false
  if (state.level === rules.dark && !rules.wakesOnGenerator) {
    // It may run, but a sleeping inverter does not let it in.
    state.generator = Runs.off
    state.personAt = -1
    return false
  }
  if (state.generator === Runs.running) {
    if (set.canFail && columns.runFails[i] === 1) {
      return fail(state, i, Event.generatorFails, rules)
    }
    return keepRunning(state, i, set, rules)
  }
  if (state.generator === Runs.off) {
    call(state, i, columns, set, rules)
    return false
  }
  if (i < state.generatorFrom) return false
  if (set.canFail && columns.startFails[i] === 1) {
    return fail(state, i, Event.generatorDoesNotStart, rules)
  }
  state.generator = Runs.running
  state.generatorFrom = i
  state.solarUntil = SOLAR_IN
  state.solarTooUntil = SOLAR_IN
  state.events |= Event.generatorOn
  return true
}

/** Out of order until the grid is back. */
function fail(state: State, i: number, event: number, rules: Rules): boolean {
  const ran = state.generator === Runs.running
  state.generator = Runs.off
  state.outOfOrder = true
  if (ran) solarWaits(state, i, rules)
  state.events |= event
  return false
}

function keepRunning(state: State, i: number, set: GeneratorRules, rules: Rules): boolean {
  const dry = isTankEmpty(state, rules)
  if (!dry && (!(state.stored >= set.stopKwh) || !hasRunLeast(state, i, rules))) return true
  state.generator = Runs.off
  solarWaits(state, i, rules)
  state.events |= dry ? Event.fuelOut : Event.generatorOff
  return false
}

/**
 * Wanted at its charge, and by an island whose loads are off; not between the tries after an
 * overload. A tank that ran empty before its time is filled and the set goes on.
 */
function isWanted(state: State, set: GeneratorRules, rules: Rules): boolean {
  const { stored, level, retryAt } = state
  if (stored <= set.startKwh || (level > rules.lastLevel && retryAt < 0)) return true
  return stored < set.stopKwh && isTankEmpty(state, rules)
}

function isTankEmpty(state: State, rules: Rules): boolean {
  return !(state.fuelL > cansLeftL(state, rules))
}

/** Calls for the set where it is wanted; it is being started as soon as somebody has come. */
function call(state: State, i: number, columns: Columns, set: GeneratorRules, rules: Rules): void {
  if (!isWanted(state, set, rules) || !(state.fuelL > 0)) {
    if (state.personAt >= 0) state.events |= Event.generatorCallOff
    state.personAt = -1
    return
  }
  const tankEmpty = isTankEmpty(state, rules)
  if (set.byHand || tankEmpty) {
    if (state.personAt < 0) {
      state.personAt = columns.personAt[i]!
      state.events |= Event.generatorCalled
    }
    if (i < state.personAt) return
    state.personAt = -1
    if (tankEmpty) {
      state.pours++
      state.events |= Event.poured
    }
  } else state.events |= Event.generatorCalled
  state.generator = Runs.starting
  state.generatorFrom = i + set.readyMinutes
}
