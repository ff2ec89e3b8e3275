// One cut lived by a house with a generator: what the set burns, when it starts, when somebody has
// to pour, how long the house lasts; and how long it would last had each of its starts failed.

import { firstLoss, type RideLoad } from '../../cut/rides.js'
import { NO_SPELL, Spells } from '../../cut/spells.js'
import { isHopeless } from '../../cut/starts.js'
import { type Columns, NEVER } from '../../island/columns.js'
import type { Compiled } from '../../island/compile.js'
import type { Rules } from '../../island/rules.js'
import { Event, newState, Runs, type State, Used } from '../../island/state.js'
import { step } from '../../island/step.js'

/** A start of the set. */
export interface SetStart {
  /** First minute of power, on the axis of the window. */
  readonly minute: number
  /** When it was asked for: by hand, the minute somebody stands beside it. */
  readonly askedAt: number
  /** Whether the tank was filled from cans for it. */
  readonly pours: boolean
  /** Minutes it then ran within what was followed. */
  readonly runMinutes: number
  /** Minutes the house would have lasted had this start failed; NaN where that was not asked. */
  readonly rideIfFails: number
}

/** What the set did in one cut. */
export interface SetWalk {
  /** Minutes from the start of the cut to the end of the ride; the horizon where it lasts longer. */
  readonly rideMinutes: number
  /** Within the cut. [l] */
  readonly litres: number
  /** Minutes of the cut in which it ran, as minutes of the window. */
  readonly ranIn: readonly number[]
  /** Minutes of those in which the stack was too cold to be charged. */
  readonly tooColdMinutes: number
  /** Every start that was followed, those past the end of the cut too. */
  readonly starts: readonly SetStart[]
  /** Whether tank and cans were empty before the end of the cut. */
  readonly ranDry: boolean
}

/** Where cuts are walked: one window, compiled, with nothing left to luck. */
export interface SetGround {
  readonly columns: Columns
  readonly rules: Rules
  /** [kWh], on the energy grid */
  readonly startKwh: number
  readonly loads: readonly RideLoad[]
  readonly cutMinutes: number
  /** How far rides are told, >= cutMinutes. [min] */
  readonly horizon: number
  /** The longest tolerance, for which a gap open at the horizon is followed. [min] */
  readonly tolerance: number
  /** Set to 1 to make one start fail; else all 0. */
  readonly startFails: Uint8Array
  readonly spells: Spells
}

/** @param starts  minutes of the window in which cuts may begin */
export function setGround(
  { columns, rules }: Compiled,
  given: Pick<SetGround, 'startKwh' | 'loads' | 'cutMinutes' | 'horizon' | 'tolerance'>,
  starts: number,
): SetGround {
  const { generator } = rules
  const startFails = new Uint8Array(columns.n)
  return {
    ...given,
    columns: { ...columns, startFails, runFails: new Uint8Array(columns.n) },
    rules: { ...rules, generator: generator && { ...generator, canFail: true } },
    startFails,
    spells: new Spells(starts, given.horizon),
  }
}

/** A span without supply, [from, to); to is -1 while it is open. */
interface Span {
  readonly from: number
  to: number
}

/** Someone who looks on; told each minute once it was lived. */
type Watch = (minute: number, state: State) => void

/**
 * Lives one cut.
 *
 * @param start     minute of the window
 * @param branches  also live what follows where a start fails, each start once
 */
export function walkSet(ground: SetGround, start: number, branches: boolean): SetWalk {
  const { rules, columns, cutMinutes } = ground
  const state = newState(rules, ground.startKwh)
  const fuelL = state.fuelL
  const spans: Span[] = []
  const starts: { -readonly [K in keyof SetStart]: SetStart[K] }[] = []
  const ranIn: number[] = []
  let litres = 0
  let poured = false
  let before: State | null = null
  const readyMinutes = rules.generator?.readyMinutes ?? 0
  const watch: Watch = (i, now) => {
    if ((now.events & Event.poured) !== 0) poured = true
    if ((now.events & Event.generatorOn) !== 0) {
      const rideIfFails =
        branches && before !== null ? rideWithout(ground, start, i, before, spans) : Number.NaN
      const askedAt = i - readyMinutes
      starts.push({ minute: i, askedAt, pours: poured, runMinutes: 0, rideIfFails })
      poured = false
    }
    if (now.used === Used.generator) {
      starts.at(-1)!.runMinutes++
      if (i < start + cutMinutes) ranIn.push(i)
    }
    if (i < start + cutMinutes) litres = fuelL - now.fuelL
    const isNext = now.generator === Runs.starting && now.generatorFrom === i + 1
    before = isNext ? { ...now } : null
  }
  live(ground, state, start, start + ground.horizon + ground.tolerance, spans, watch)
  return {
    rideMinutes: rideOf(ground, start, spans),
    litres,
    ranIn,
    tooColdMinutes: ranIn.filter((i) => columns.tempLimit[i] === 0).length,
    starts,
    ranDry: rules.generator !== null && !(fuelL - litres > keptL(ground, start)),
  }
}

/** What stays in the cans for want of somebody who pours it. [l] */
function keptL({ columns, rules }: SetGround, start: number): number {
  return columns.personAt[start] === NEVER ? (rules.generator?.cansAfter[0] ?? 0) : 0
}

/** How long the house lasts where the start at minute `i` fails: the set is then out of order. */
function rideWithout(
  ground: SetGround,
  start: number,
  i: number,
  before: State,
  spans: readonly Span[],
): number {
  // The spans as they stood before minute i, which has been lived meanwhile.
  const kept = spans
    .filter(({ from }) => from < i)
    .map(({ from, to }) => ({ from, to: to >= i ? -1 : to }))
  ground.startFails[i] = 1
  live(ground, { ...before }, i, start + ground.horizon + ground.tolerance, kept)
  ground.startFails[i] = 0
  return rideOf(ground, start, kept)
}

/** Lives minutes [from, end) and notes the spans without supply; a hopeless one stays open. */
function live(
  { columns, rules }: SetGround,
  state: State,
  from: number,
  end: number,
  spans: Span[],
  watch?: Watch,
): void {
  for (let i = from; i < end; i++) {
    step(state, i, columns, rules)
    const open = spans.at(-1)?.to === -1
    if (state.level > rules.lastLevel) {
      if (!open) spans.push({ from: i, to: -1 })
    } else if (open) spans.at(-1)!.to = i
    watch?.(i, state)
    if (state.level > rules.lastLevel && isHopeless(state, i, columns, rules)) return
  }
}

/** The fold of `ridesOf` over the spans of one history. */
function rideOf(ground: SetGround, start: number, spans: readonly Span[]): number {
  const { spells, loads, horizon, columns } = ground
  let last = NO_SPELL
  spells.first[start] = NO_SPELL
  for (const { from, to } of spans) {
    const spell = spells.open(from)
    if (to >= 0) spells.close(spell, to)
    if (last === NO_SPELL) spells.first[start] = spell
    else spells.link(last, spell)
    last = spell
  }
  let soonest = Number.POSITIVE_INFINITY
  let minutes = horizon
  for (const load of loads) {
    const end = firstLoss(spells, start, load, columns.from, horizon)
    if (end === null || !(end.at < soonest)) continue
    soonest = end.at
    minutes = end.spellFrom - start
  }
  return minutes
}
