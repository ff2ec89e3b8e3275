// The latest minute in which pulling the generator's cord still saves every critical load.
//
// The set stands still until somebody pulls the cord: a walk with it out of order. From each of its
// minutes, backwards from the first loss, the set is started and the walk goes on by the rules: the
// first minute from which nothing is lost, neither where it would have been nor while the set takes
// over, is the latest. What comes later (an empty tank, the next night) is told beside it.

import type { RideLoad } from '../../cut/rides.js'
import type { Compiled } from '../../island/compile.js'
import type { Rules } from '../../island/rules.js'
import { Event, Runs, type State } from '../../island/state.js'
import { step } from '../../island/step.js'
import { firstOf, lossesOf } from '../losses.js'

/** A set that two days earlier did not save the loads will not. [min] */
const LOOK_BACK_MINUTES = 2880

export interface HandStart {
  /** Minute of the window in which the cord is pulled at the latest. */
  readonly at: number
  /** First minute with its power. */
  readonly powerAt: number
  /** First later loss, with whoever tends it in their hours; null where none is seen. */
  readonly nextLossAt: number | null
  /** Minute in which it stops with nothing left in tank and cans; null where none is. */
  readonly fuelOutAt: number | null
  readonly fuelLeftL: number
  /** Running hours and litres they took. */
  readonly ranHours: number
  readonly burntL: number
}

export interface Stood {
  readonly compiled: Compiled
  readonly loads: readonly RideLoad[]
  /** State before each minute while nobody starts the set. */
  readonly states: readonly State[]
  /** Shed level lived in each minute. */
  readonly levels: Uint8Array
  /** First minute in which a critical load is lost; null where none is within the window. */
  readonly lossAt: number | null
}

/** Lives the window with the generator standing still; it starts when asked, once it is. */
export function standStill(compiled: Compiled, now: State, loads: readonly RideLoad[]): Stood {
  const { columns } = compiled
  const rules = thatStarts(compiled.rules)
  const state = { ...now, outOfOrder: true }
  const states: State[] = []
  const levels = new Uint8Array(columns.n)
  for (let i = 0; i < columns.n; i++) {
    states.push({ ...state })
    step(state, i, columns, rules)
    levels[i] = state.level
  }
  const lossAt = firstOf(lossesOf(levels, rules, loads, columns.from))?.at ?? null
  return { compiled: { ...compiled, rules }, loads, states, levels, lossAt }
}

/** Chance left out: how late is safe is asked of a set that starts. */
function thatStarts(rules: Rules): Rules {
  const { generator } = rules
  return generator === null ? rules : { ...rules, generator: { ...generator, canFail: false } }
}

/**
 * @param allowed  whether somebody can pull the cord in a minute
 * @returns        null where no allowed minute saves them, or nothing is lost
 */
export function latestHandStart(
  stood: Stood,
  allowed: (minute: number) => boolean = () => true,
): HandStart | null {
  const { lossAt } = stood
  if (lossAt === null || stood.compiled.rules.generator === null) return null
  const last = Math.min(lossAt, stood.levels.length - 1)
  for (let at = last; at >= Math.max(0, last - LOOK_BACK_MINUTES); at--) {
    if (allowed(at) && isSaved(stood, at)) return startedAt(stood, at)
  }
  return null
}

/** Whether a start in a minute saves every critical load from the loss there would be. */
export function isSaved({ compiled, loads, states, levels, lossAt }: Stood, at: number): boolean {
  const { columns, rules } = compiled
  const set = rules.generator!
  const until = Math.min(
    columns.n,
    Math.max((lossAt ?? 0) + 1, at + set.readyMinutes + set.leastMinutes + 1),
  )
  const lived = levels.slice(0, until)
  let ran = false
  walkStarted(compiled, states[at]!, at, until, (i, state) => {
    lived[i] = state.level
    if ((state.events & Event.generatorOn) !== 0) ran = true
  })
  if (!ran || lived[until - 1]! > rules.lastLevel) return false
  return firstOf(lossesOf(lived, rules, loads, columns.from)) === null
}

/** What follows a start, to the end of the window. */
function startedAt({ compiled, loads, states, levels }: Stood, at: number): HandStart {
  const { columns, rules } = compiled
  const { n } = columns
  const lived = levels.slice()
  let powerAt = -1
  let fuelOutAt: number | null = null
  let [ranMinutes, fuelLeftL] = [0, states[at]!.fuelL]
  walkStarted(compiled, states[at]!, at, n, (i, state) => {
    lived[i] = state.level
    const runs = state.generator === Runs.running
    if (runs) ranMinutes++
    if (runs && powerAt < 0) powerAt = i
    if ((state.events & Event.fuelOut) !== 0 && !(state.fuelL > 0)) fuelOutAt = i
    fuelLeftL = state.fuelL
  })
  const loss = firstOf(lossesOf(lived, rules, loads, columns.from))
  return {
    at,
    powerAt,
    nextLossAt: loss?.at ?? null,
    fuelOutAt,
    fuelLeftL,
    ranHours: ranMinutes / 60,
    burntL: states[at]!.fuelL - fuelLeftL,
  }
}

/** The cord is pulled in minute `at`, as by somebody called who has come. */
function walkStarted(
  { columns, rules }: Compiled,
  before: State,
  at: number,
  until: number,
  seen: (i: number, state: State) => void,
): void {
  const state = { ...before, outOfOrder: false, personAt: -1, generator: Runs.starting }
  state.generatorFrom = at + rules.generator!.readyMinutes
  for (let i = at; i < until; i++) {
    step(state, i, columns, rules)
    seen(i, state)
  }
}
