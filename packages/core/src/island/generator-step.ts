// The generator's part of the rule book: wanted, called, ready, running, out of fuel.

import type { Columns } from './columns.js'
import type { GeneratorRules, Rules } from './rules.js'
import { cansLeftL, Event, type State, solarWaits } from './state.js'

/** Lives the generator's side of minute `i`. Returns whether it gives power in this minute. */
export function stepGenerator(state: State, i: number, columns: Columns, rules: Rules): boolean {
  const set = rules.generator as GeneratorRules
  if (state.outOfOrder) return false
  if (state.level === rules.dark && !rules.wakesOnGenerator) {
    // It may run, but a sleeping inverter does not let it in.
    state.generator = 0
    state.personAt = -1
    return false
  }
  if (state.generator > 0) {
    if (set.canFail && columns.runFails[i] === 1) return fail(state, Event.generatorFails, rules)
    return keepRunning(state, set, rules)
  }
  if (state.generator < 0) {
    state.generator++
    if (state.generator < 0) return false
  } else if (!called(state, i, columns, set, rules)) return false
  if (state.generator < 0) return false
  if (set.canFail && columns.startFails[i] === 1) {
    return fail(state, Event.generatorDoesNotStart, rules)
  }
  state.generator = 1
  state.solar = 0
  state.solarToo = 0
  state.events |= Event.generatorOn
  return true
}

/** Out of order until the grid is back. */
function fail(state: State, event: number, rules: Rules): boolean {
  const ran = state.generator > 0
  state.generator = 0
  state.outOfOrder = true
  if (ran) solarWaits(state, rules)
  state.events |= event
  return false
}

function keepRunning(state: State, set: GeneratorRules, rules: Rules): boolean {
  const dry = !(state.fuelL > cansLeftL(state, rules))
  if (!dry && (state.generator < set.leastMinutes || !(state.stored >= set.stopKwh))) {
    // Beyond its least run nothing asks how long it has been running.
    state.generator = Math.min(state.generator + 1, Math.max(1, set.leastMinutes))
    return true
  }
  state.generator = 0
  solarWaits(state, rules)
  state.events |= dry ? Event.fuelOut : Event.generatorOff
  return false
}

/**
 * Wanted at its charge, and by an island whose loads are off; not between the tries after an
 * overload. A tank that ran empty before its time is filled and the set goes on.
 */
function isWanted(
  { stored, level, retryAt }: State,
  set: GeneratorRules,
  rules: Rules,
  tankEmpty: boolean,
): boolean {
  if (stored <= set.startKwh || (tankEmpty && stored < set.stopKwh)) return true
  return level > rules.lastLevel && retryAt < 0
}

/** Whether the set is being started; leaves it counting down to ready. */
function called(
  state: State,
  i: number,
  columns: Columns,
  set: GeneratorRules,
  rules: Rules,
): boolean {
  const tankEmpty = !(state.fuelL > cansLeftL(state, rules))
  if (!isWanted(state, set, rules, tankEmpty) || !(state.fuelL > 0)) {
    if (state.personAt >= 0) state.events |= Event.generatorCallOff
    state.personAt = -1
    return false
  }
  if (set.byHand || tankEmpty) {
    if (state.personAt < 0) {
      state.personAt = columns.personAt[i]!
      state.events |= Event.generatorCalled
    }
    if (i < state.personAt) return false
    state.personAt = -1
    if (tankEmpty) {
      state.pours++
      state.events |= Event.poured
    }
  } else state.events |= Event.generatorCalled
  state.generator = -set.readyMinutes
  return true
}
