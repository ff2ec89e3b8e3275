// The rule book: one state lives one minute. Walk, trace and every other user go through here.
//
// A minute is decided on what is known at its start, then the stack moves by one increment of
// the columns, cut short where a charge limit or a charge edge says so. Nothing is allocated.
//
// Order: grid, generator, empty or back, shed levels, overload, solar, move.

import { TOGETHER_AFTER, TOGETHER_FOR } from '../load/together.js'
import type { Columns } from './columns.js'
import { stepGenerator } from './generator-step.js'
import type { Rules } from './rules.js'
import { cansLeftL, Event, type State, Used } from './state.js'

/** A relay that dropped a load lets it back after so long at the earliest; common practice. */
const RELAY_MINUTES = 5

/** Lives minute `i` of the window. */
export function step(state: State, i: number, columns: Columns, rules: Rules): void {
  state.events = 0
  if (columns.gridUp[i] === 1) {
    liveWithGrid(state, i, columns, rules)
    return
  }
  if (state.grid) beginCut(state, rules)
  const running = rules.generator !== null && stepGenerator(state, i, columns, rules)
  decideLevel(state, i, columns, rules, running)
  state.ranTogether = state.together > 0
  if (state.level === rules.dark) {
    liveDark(state, columns.deltaOut[rules.dark]![i]!, columns.tempLimit[i]!, rules)
  } else if (running) liveWithGenerator(state, i, columns, rules)
  else liveAlone(state, i, columns, rules)
  countThermostats(state, rules)
}

/** Time off makes thermostats owe; time on pays. */
function countThermostats(state: State, rules: Rules): void {
  if (state.level > rules.lastLevel) {
    state.offFor = Math.min(TOGETHER_AFTER, state.offFor + 1)
    state.together = 0
  } else {
    state.offFor = 0
    if (state.together > 0) state.together--
  }
}

/** AC-coupled solar drops at every cut and waits out its reconnection. */
function beginCut(state: State, rules: Rules): void {
  state.grid = false
  state.solar = rules.solar?.waitMinutes ?? 0
  state.events |= Event.cutBegins
}

function liveWithGrid(state: State, i: number, columns: Columns, rules: Rules): void {
  if (!state.grid) state.events |= Event.gridReturns
  state.grid = true
  state.level = 0
  state.solar = 0
  state.generator = 0
  state.personAt = -1
  state.retryAt = -1
  state.retries = 0
  state.shedFor = 0
  state.offFor = 0
  state.together = 0
  state.ranTogether = false
  state.used = Used.grid
  move(state, columns.deltaGrid[i]!, columns.tempLimit[i]!, rules)
}

function decideLevel(state: State, i: number, c: Columns, rules: Rules, running: boolean): void {
  const cold = c.coldFloor[i]!
  if (state.shedFor > 0) state.shedFor--
  if ((state.events & Event.cutBegins) !== 0 && c.overload[0]![i] === 1) {
    // The house goes over with all that is running, before anything can be switched off.
    if (!rules.sheds) {
      trip(state, i, c, rules)
      return
    }
    dropComfort(state, rules)
    state.events |= Event.relaySheds
  }
  if (state.level > rules.lastLevel) {
    if (!comesBack(state, i, cold, rules, running)) {
      if (rules.whenEmpty === 'retries') tryAgain(state, i, c, rules)
      return
    }
    form(state, rules, running)
    if (c.together !== null && state.offFor >= TOGETHER_AFTER) {
      state.together = TOGETHER_FOR
      state.events |= Event.thermostats
    }
  } else if (!running && !(state.stored > rules.loadsOffKwh + cold)) {
    goEmpty(state, rules)
    return
  }
  shed(state, rules)
  if (running) {
    if (overGenerator(state, i, c)) {
      dropComfort(state, rules)
      state.events |= Event.generatorOverload
      if (overGenerator(state, i, c)) {
        // It stalls, and the island with it.
        state.generator = 0
        trip(state, i, c, rules)
      }
    }
    return
  }
  if (rules.sheds && state.level < rules.lastLevel && overloaded(state, i, c)) {
    dropComfort(state, rules)
    state.events |= Event.relaySheds
  }
  if (overloaded(state, i, c)) trip(state, i, c, rules)
  else state.retries = 0
}

function overloaded({ level, together }: State, i: number, c: Columns): boolean {
  if (together === 0) return c.overload[level]![i] === 1
  return c.together!.overload(level, i, together === TOGETHER_FOR)
}

function overGenerator({ level, together }: State, i: number, c: Columns): boolean {
  return together === 0 ? c.overGenerator[level]![i] === 1 : c.together!.overGenerator(level, i)
}

/** A relay drops the comfort loads, for five minutes at least. */
function dropComfort(state: State, rules: Rules): void {
  state.level = rules.lastLevel
  state.shedFor = RELAY_MINUTES
}

/**
 * An empty island that tries again at set times forms without loads, so that solar can come in;
 * it stays formed beyond the set time only while the sun fills the stack.
 */
function tryAgain(state: State, i: number, columns: Columns, rules: Rules): void {
  const isTime = columns.attempt[i] === 1
  if (state.level === rules.dark) {
    if (!isTime || state.retryAt >= 0) return
    if (!(state.stored + columns.deltaOut[rules.holding]![i]! > 0)) return
    state.level = rules.holding
    state.solar = rules.solar?.waitMinutes ?? 0
    state.events |= Event.triesAgain
  } else if (!isTime && !(state.solar === 0 && columns.deltaIn[rules.holding]![i]! > 0)) {
    goDark(state, rules)
  }
}

/** Whether an island that is off comes back in this minute. */
function comesBack(state: State, i: number, cold: number, rules: Rules, running: boolean): boolean {
  if (running) return true
  if (state.level === rules.dark && state.retryAt >= 0) {
    return i >= state.retryAt && state.stored > rules.loadsOffKwh + cold
  }
  if (state.level === rules.dark && !rules.wakesOnSun) return false
  return state.stored >= rules.loadsBackKwh + cold
}

/** The island forms with its critical loads; comfort returns by its own threshold. */
function form(state: State, rules: Rules, running: boolean): void {
  if (state.level === rules.dark && !running) state.solar = rules.solar?.waitMinutes ?? 0
  state.level = rules.lastLevel
  state.retryAt = -1
  state.events |= Event.loadsBack
}

function goEmpty(state: State, rules: Rules): void {
  state.events |= Event.empty
  state.retryAt = -1
  if (rules.whenEmpty === 'holds') state.level = rules.holding
  else goDark(state, rules)
}

function goDark(state: State, rules: Rules): void {
  state.level = rules.dark
  state.solar = 0
  state.shedFor = 0
  state.events |= Event.goesDark
}

function shed(state: State, rules: Rules): void {
  const before = state.level
  while (state.level < rules.lastLevel && !(state.stored > rules.shed[state.level]!.dropBelowKwh)) {
    state.level++
  }
  if (state.shedFor === 0) {
    while (state.level > 0 && state.stored >= rules.shed[state.level - 1]!.returnAtKwh) {
      state.level--
    }
  }
  if (state.level > before) state.events |= Event.comfortOff
  if (state.level < before) state.events |= Event.comfortOn
}

/** The inverter gives up: it tries again a minute later, and after its retries waits for somebody. */
function trip(state: State, i: number, columns: Columns, rules: Rules): void {
  state.events |= Event.overload
  goDark(state, rules)
  state.retries++
  state.retryAt = state.retries <= rules.retries ? i + 1 : columns.personAt[i]!
}

function liveDark(state: State, delta: number, limit: number, rules: Rules): void {
  state.used = Used.nothing
  move(state, delta, limit, rules)
}

function liveWithGenerator(state: State, i: number, columns: Columns, rules: Rules): void {
  state.used = Used.generator
  const { level } = state
  const { together } = columns
  const own = state.ranTogether ? together!.generator(level, i) : columns.deltaGenerator[level]![i]!
  move(state, own, columns.tempLimit[i]!, rules)
  const burns = state.ranTogether ? together!.litres : columns.litres
  state.fuelL = Math.max(cansLeftL(state, rules), state.fuelL - burns(level, i, state.delta))
}

function liveAlone(state: State, i: number, columns: Columns, rules: Rules): void {
  const limit = columns.tempLimit[i]!
  const solarIn = rules.solar !== null && takeSolar(state, i, columns, rules)
  state.used = solarIn ? Used.solar : Used.nothing
  const delta = increment(state, i, columns, solarIn)
  if (!(state.stored + delta >= 0)) {
    // Nothing left to hold the island for this minute.
    state.events |= Event.empty
    goDark(state, rules)
    liveDark(state, columns.deltaOut[rules.dark]![i]!, limit, rules)
    return
  }
  move(state, delta, limit, rules)
  if (solarIn && rules.solar!.canTrip) tripAtEdge(state, i, columns, rules)
}

function increment({ level, ranTogether }: State, i: number, c: Columns, solarIn: boolean): number {
  if (!ranTogether) return (solarIn ? c.deltaIn : c.deltaOut)[level]![i]!
  return solarIn ? c.together!.in(level, i) : c.together!.out(level, i)
}

function forcedBySolar({ level, ranTogether }: State, i: number, c: Columns): number {
  return ranTogether ? c.together!.forced(level, i) : c.forced[level]![i]!
}

/** Whether AC-coupled solar is in during this minute; moves its latch and its wait. */
function takeSolar(state: State, i: number, columns: Columns, rules: Rules): boolean {
  const solar = rules.solar!
  if (state.solar < 0) {
    if (!(state.stored <= solar.backKwh)) return false
    state.solar = solar.waitMinutes
  }
  if (state.solar > 0) {
    state.solar--
    if (state.solar === 0) state.events |= Event.solarIn
    return false
  }
  if (!solar.canTrip) return true
  if (solar.heldOut && state.stored >= solar.offKwh) {
    state.solar = -1
    state.events |= Event.solarHeldOut
    return false
  }
  if (forcedBySolar(state, i, columns) <= limitOf(state.stored, columns.tempLimit[i]!, rules)) {
    return true
  }
  // Nobody knows what a dead array would give, so it tries, fails and waits again.
  state.solar = solar.waitMinutes
  state.events |= Event.solarTrips
  return false
}

/** A minute that ended at a charge edge whose next band does not take the array: it trips there. */
function tripAtEdge(state: State, i: number, columns: Columns, rules: Rules): void {
  if (!(state.delta > 0) || !rules.bandEdgesKwh.includes(state.stored)) return
  if (forcedBySolar(state, i, columns) <= limitOf(state.stored, columns.tempLimit[i]!, rules))
    return
  state.solar = rules.solar!.waitMinutes
  state.events |= Event.solarTrips
}

/** Most the stack may gain in a minute from where it stands; 0 when full. [kWh] */
function limitOf(stored: number, tempLimit: number, rules: Rules): number {
  const edges = rules.bandEdgesKwh
  for (let band = 0; band < edges.length; band++) {
    if (stored < edges[band]!) return Math.min(rules.bandLimitsKwh[band]!, tempLimit)
  }
  return 0
}

/** Moves the stack; charging never passes a charge edge within the minute. */
function move(state: State, delta: number, tempLimit: number, rules: Rules): void {
  let gain = delta
  if (gain > 0) {
    const edges = rules.bandEdgesKwh
    let band = 0
    while (band < edges.length && !(state.stored < edges[band]!)) band++
    if (band === edges.length) gain = 0
    else {
      gain = Math.min(gain, rules.bandLimitsKwh[band]!, tempLimit)
      if (state.stored + gain >= edges[band]!) {
        gain = edges[band]! - state.stored
        if (band === edges.length - 1 && gain > 0) state.events |= Event.full
      }
    }
  }
  state.delta = Math.max(gain, -state.stored)
  state.stored += state.delta
}
