// The rule book: one state lives one minute. Walk, trace and every other user go through here.
//
// A minute is decided on what is known at its start, then the stack moves by one increment of
// the columns, cut short where a charge limit or a charge edge says so. Next to nothing is allocated.
//
// Order: grid, generator, empty or back, shed levels, overload, solar, move.

import { TOGETHER_AFTER, TOGETHER_FOR } from '../load/together.js'
import { move } from './charge.js'
import { type Columns, NEVER, newBurning } from './columns.js'
import { stepGenerator } from './generator-step.js'
import { isFormedByHand, type Rules } from './rules.js'
import { groupsIn, takeSolar, tripAtEdge } from './solar-step.js'
import {
  cansLeftL,
  Event,
  hasRunLeast,
  offFor,
  Runs,
  SOLAR_IN,
  type State,
  solarOf,
  solarWaits,
  Used,
} from './state.js'

/** A relay that dropped a load lets it back after so long at the earliest; common practice. */
const RELAY_MINUTES = 5

/** Of the minute that is lived; nothing reads it in the next. */
const burning = newBurning()

/** Lives minute `i` of the window. */
export function step(state: State, i: number, columns: Columns, rules: Rules): void {
  state.events = 0
  if (columns.gridUp[i] === 1) {
    liveWithGrid(state, i, columns, rules)
    return
  }
  if (state.grid) beginCut(state, i, rules)
  const running = rules.generator !== null && stepGenerator(state, i, columns, rules)
  decideLevel(state, i, columns, rules, running)
  state.ranTogether = i <= state.togetherUntil
  if (state.level === rules.dark) {
    liveDark(state, i, columns, rules)
  } else if (running) liveWithGenerator(state, i, columns, rules)
  else liveAlone(state, i, columns, rules)
  noteOff(state, i, rules)
}

/** Time off makes thermostats owe, and ends their running together. */
function noteOff(state: State, i: number, rules: Rules): void {
  if (state.level <= rules.lastLevel) state.offFrom = NEVER
  else {
    if (state.offFrom === NEVER) state.offFrom = i
    state.togetherUntil = -1
  }
}

/** AC-coupled solar drops at every cut and waits out its reconnection. */
function beginCut(state: State, i: number, rules: Rules): void {
  state.grid = false
  solarWaits(state, i, rules)
  state.events |= Event.cutBegins
}

function liveWithGrid(state: State, i: number, columns: Columns, rules: Rules): void {
  if (!state.grid) {
    state.events |= Event.gridReturns
    solarWaits(state, i, rules)
  }
  state.grid = true
  state.level = 0
  state.generator = Runs.off
  state.outOfOrder = false
  state.wakeAt = -1
  state.personAt = -1
  state.retryAt = -1
  state.retries = 0
  state.relayUntil = -1
  state.offFrom = NEVER
  state.togetherUntil = -1
  state.ranTogether = false
  state.used = Used.grid
  state.solarIn = 0
  for (let g = 0; g < rules.solar.length; g++) {
    if (solarOf(state, g) < i) state.solarIn |= 1 << g
  }
  state.delta = columns.deltaGrid[state.solarIn]![i]!
  move(state, i, columns, rules)
}

function decideLevel(state: State, i: number, c: Columns, rules: Rules, running: boolean): void {
  if ((state.events & Event.cutBegins) !== 0 && overloaded(state, i, c, rules)) {
    // The house goes over with all that is running, before anything can be switched off.
    if (!rules.sheds) {
      trip(state, i, c, rules)
      return
    }
    dropComfort(state, i, rules)
    state.events |= Event.relaySheds
  }
  if (state.level > rules.lastLevel) {
    if (!comesBack(state, i, c, rules, running)) {
      if (rules.whenEmpty === 'retries') tryAgain(state, i, c, rules)
      else if (state.wakeAt >= 0 && i >= state.wakeAt) wake(state, i, c, rules)
      else if (isFormedByHand(state.level, rules) && c.sunLater[i] !== 1)
        putAway(state, i, c, rules)
      return
    }
    form(state, i, rules, running)
    if (c.together !== null && offFor(state, i) >= TOGETHER_AFTER) {
      state.togetherUntil = i + TOGETHER_FOR - 1
      state.events |= Event.thermostats
    }
  } else if (!running && !(state.stored > rules.loadsOffKwh + c.coldFloor[i]!)) {
    goEmpty(state, i, c, rules)
    return
  }
  shed(state, i, rules)
  if (running) {
    if (overGenerator(state, i, c)) {
      dropComfort(state, i, rules)
      state.events |= Event.generatorOverload
      if (overGenerator(state, i, c)) {
        // It stalls, and the island with it.
        state.generator = Runs.off
        trip(state, i, c, rules)
      }
    }
    return
  }
  if (rules.sheds && state.level < rules.lastLevel && overloaded(state, i, c, rules)) {
    dropComfort(state, i, rules)
    state.events |= Event.relaySheds
  }
  if (overloaded(state, i, c, rules)) trip(state, i, c, rules)
  else state.retries = 0
}

/** Where all motors start in this minute, because the island forms in it, they are judged so. */
function overloaded(state: State, i: number, c: Columns, rules: Rules): boolean {
  const { level, togetherUntil, events } = state
  if (i <= togetherUntil) return c.together!.overload(level, i, isFirstTogether(state, i))
  const forms = (events & (rules.motorsStop ? STARTS_ALL : Event.loadsBack)) !== 0
  const missed = forms ? offFor(state, i) : 0
  if (missed > 0 && c.together !== null) return c.together.overForming(level, i, missed)
  return (forms ? c.overForming : c.overload)[level]![i] === 1
}

const STARTS_ALL = Event.loadsBack | Event.cutBegins

/** Whether all thermostats start in this minute. */
function isFirstTogether({ togetherUntil }: State, i: number): boolean {
  return togetherUntil === i + TOGETHER_FOR - 1
}

function overGenerator(state: State, i: number, c: Columns): boolean {
  const { level, togetherUntil, events } = state
  if (i <= togetherUntil) return c.together!.overGenerator(level, i, isFirstTogether(state, i))
  const forms = (events & Event.loadsBack) !== 0
  return (forms ? c.overGeneratorForming : c.overGenerator)[level]![i] === 1
}

/** A relay drops the comfort loads, for five minutes at least. */
function dropComfort(state: State, i: number, rules: Rules): void {
  state.level = rules.lastLevel
  state.relayUntil = i + RELAY_MINUTES
}

/**
 * An empty island that tries again at set times forms without loads, so that solar can come in;
 * it stays formed beyond the set time only while the sun fills the stack.
 */
function tryAgain(state: State, i: number, columns: Columns, rules: Rules): void {
  const isTime = columns.attempt[i] === 1
  if (state.level === rules.dark) {
    if (!isTime || state.retryAt >= 0) return
    if (!canForm(state, i, columns, rules)) return
    formHolding(state, i, rules)
    state.events |= Event.triesAgain
  } else if (!isTime && !(columns.delta[groupsIn(state, i, rules)]![rules.holding]![i]! > 0)) {
    emptyDark(state, i, columns, rules)
  }
}

/** Somebody forms an empty island without its loads, so that solar can come in. */
function wake(state: State, i: number, columns: Columns, rules: Rules): void {
  state.wakeAt = -1
  if (!canForm(state, i, columns, rules)) return
  formHolding(state, i, rules)
  state.events |= Event.somebodyWakes
}

/** The day's sun is over: whoever formed the island puts it away, to spare what is left. */
function putAway(state: State, i: number, columns: Columns, rules: Rules): void {
  state.events |= Event.putAway
  emptyDark(state, i, columns, rules)
}

/** Whether the stack itself has something to form an island with, for this minute at least. */
function canForm(state: State, i: number, columns: Columns, rules: Rules): boolean {
  return state.stored > 0 && state.stored + columns.delta[0]![rules.holding]![i]! > 0
}

function formHolding(state: State, i: number, rules: Rules): void {
  state.level = rules.holding
  solarWaits(state, i, rules)
}

/** Whether an island that is off comes back in this minute. */
function comesBack(state: State, i: number, c: Columns, rules: Rules, running: boolean): boolean {
  if (running) return true
  const cold = c.coldFloor[i]!
  if (state.level === rules.dark && state.retryAt >= 0) {
    return i >= state.retryAt && state.stored > rules.loadsOffKwh + cold
  }
  if (state.level === rules.dark && !rules.wakesOnSun) return false
  return state.stored >= rules.loadsBackKwh + cold
}

/** The island forms with its critical loads; comfort returns by its own threshold. */
function form(state: State, i: number, rules: Rules, running: boolean): void {
  if (state.level === rules.dark && !running) solarWaits(state, i, rules)
  state.level = rules.lastLevel
  state.retryAt = -1
  state.wakeAt = -1
  state.events |= Event.loadsBack
}

function goEmpty(state: State, i: number, columns: Columns, rules: Rules): void {
  state.events |= Event.empty
  state.retryAt = -1
  if (rules.whenEmpty === 'holds') state.level = rules.holding
  else emptyDark(state, i, columns, rules)
}

/** Dark for want of energy: somebody may be called to form the island once the sun is there. */
function emptyDark(state: State, i: number, columns: Columns, rules: Rules): void {
  goDark(state, rules)
  if (rules.wakesOnPerson) state.wakeAt = columns.wakeAt[i]!
}

function goDark(state: State, rules: Rules): void {
  state.level = rules.dark
  state.solarUntil = SOLAR_IN
  state.solarTooUntil = SOLAR_IN
  state.wakeAt = -1
  state.relayUntil = -1
  state.events |= Event.goesDark
}

function shed(state: State, i: number, rules: Rules): void {
  const before = state.level
  while (state.level < rules.lastLevel && !(state.stored > rules.shed[state.level]!.dropBelowKwh)) {
    state.level++
  }
  if (i >= state.relayUntil) {
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

function liveDark(state: State, i: number, columns: Columns, rules: Rules): void {
  state.used = Used.nothing
  state.delta = columns.delta[0]![rules.dark]![i]!
  move(state, i, columns, rules)
}

function liveWithGenerator(state: State, i: number, columns: Columns, rules: Rules): void {
  state.used = Used.generator
  const { level } = state
  const { together } = columns
  if (state.ranTogether) state.delta = together!.generator(level, i)
  else state.delta = columns.deltaGenerator[level]![i]!
  stopInTime(state, i, rules)
  move(state, i, columns, rules)
  burning.delta = state.delta
  if (state.ranTogether) together!.burn(level, i, burning)
  else columns.burn(level, i, burning)
  state.fuelL = Math.max(cansLeftL(state, rules), state.fuelL - burning.litres)
}

/** A set past its least run fills the stack to its stop charge and no further within the minute. */
function stopInTime(state: State, i: number, rules: Rules): void {
  const { stored } = state
  const { stopKwh } = rules.generator!
  if (stored < stopKwh && hasRunLeast(state, i + 1, rules)) {
    state.delta = Math.min(state.delta, stopKwh - stored)
  }
}

function liveAlone(state: State, i: number, columns: Columns, rules: Rules): void {
  const mask = rules.solar.length === 0 ? 0 : takeSolar(state, i, columns, rules)
  state.solarIn = mask
  state.used = mask === 0 ? Used.nothing : Used.solar
  const { level } = state
  if (state.ranTogether) state.delta = columns.together!.delta(mask, level, i)
  else state.delta = columns.delta[mask]![level]![i]!
  if (!(state.stored + state.delta >= 0)) {
    // Nothing left to hold the island for this minute.
    state.events |= Event.empty
    emptyDark(state, i, columns, rules)
    liveDark(state, i, columns, rules)
    return
  }
  move(state, i, columns, rules)
  if ((mask & rules.tripMask) !== 0) tripAtEdge(state, i, mask, columns, rules)
}
