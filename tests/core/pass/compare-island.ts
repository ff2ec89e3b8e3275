// The pass against walking every start: all starts, whole lists of down spells, to the minute; and
// the state in which each start ends.
//
// The walk is the plain reading of the rule book, one start at a time; it is the truth here. It
// shares what later starts have found from the same state in the same minute, so some starts are
// stepped besides with nothing shared at all.

import {
  type Compiled,
  newState,
  onGrid,
  pass,
  restTimers,
  type Spells,
  type State,
  Sweep,
  step,
  walkStarts,
} from '@tideover/core'
import { randomIsland } from './random-island.js'

/** Starts of which one is stepped with nothing shared. */
const STEPPED_OF = 97

export interface Comparison {
  readonly about: string
  readonly starts: number
  /** Down spells that the pass found. */
  readonly spells: number
  /** Starts stepped with nothing shared, and ends compared. */
  readonly stepped: number
  readonly ends: number
  /** One sentence each; none where pass, walk and step agree. */
  readonly differences: readonly string[]
}

/**
 * @param number    of the random island; starts and horizon in minutes
 * @param walksAll  false: only those are looked at that are stepped with nothing shared
 */
export function compareIsland(
  number: number,
  starts: number,
  horizon: number,
  walksAll = true,
): Comparison {
  const island = randomIsland(number, starts + horizon)
  const { columns, rules } = island.compiled
  const startKwh = onGrid(island.startShare * rules.capacityKwh)
  const carried = pass(columns, rules, starts, startKwh, horizon)
  const walked = walksAll ? walkStarts(columns, rules, starts, startKwh, horizon) : null
  const differences: string[] = []
  const differ = (start: number, what: string, a: string, b: string): void => {
    if (a !== b) differences.push(`start ${start}, ${what}: ${a} in the pass, not ${b}`)
  }
  for (let start = 0; start < starts; start++) {
    const own = spellsOf(carried, start, horizon).join()
    if (walked !== null) differ(start, 'walked', own, spellsOf(walked, start, horizon).join())
    if (start % STEPPED_OF !== 0) continue
    differ(start, 'stepped', own, stepped(island.compiled, startKwh, start, horizon).join())
  }
  return {
    about: island.about,
    starts,
    spells: carried.length,
    stepped: Math.ceil(starts / STEPPED_OF),
    ends: compareEnds(island.compiled, startKwh, Math.min(starts, horizon), differ),
    differences,
  }
}

/** Spells of one start within its horizon; -1 where one is open there. */
function spellsOf(spells: Spells, start: number, horizon: number): number[] {
  const out: number[] = []
  for (let s = spells.first[start]!; s >= 0; s = spells.next(s)) {
    if (spells.from(s) >= start + horizon) break
    const to = spells.to(s)
    out.push(spells.from(s), to < 0 || to >= start + horizon ? -1 : to)
  }
  return out
}

/** The same by stepping a state of its own, with nothing shared. */
function stepped(
  { columns, rules }: Compiled,
  startKwh: number,
  start: number,
  horizon: number,
): number[] {
  const state = newState(rules, startKwh)
  const out: number[] = []
  for (let i = start; i < start + horizon; i++) {
    step(state, i, columns, rules)
    const down = state.level > rules.lastLevel
    if (down !== (out.length % 2 === 1)) out.push(i)
  }
  if (out.length % 2 === 1) out.push(-1)
  return out
}

type Differ = (start: number, what: string, a: string, b: string) => void

/**
 * Everybody's state after the minute in which the last start begins, against a state of its own.
 *
 * @returns  how many were compared; a start that is dark for good is not followed any more
 */
function compareEnds(
  { columns, rules }: Compiled,
  startKwh: number,
  starts: number,
  differ: Differ,
): number {
  const sweep = new Sweep(columns, rules, starts, starts, undefined, undefined)
  for (let i = 0; i < starts; i++) {
    sweep.begin(startKwh, i)
    sweep.live(i)
  }
  const ends = sweep.statesAfter(starts - 1)
  let compared = 0
  for (let start = 0; start < starts; start += STEPPED_OF) {
    const found = ends.get(whoWaits(sweep.spells, start, starts))
    if (found === undefined) continue
    const state = newState(rules, startKwh)
    for (let i = start; i < starts; i++) step(state, i, columns, rules)
    restTimers(state, starts - 1, rules)
    differ(start, 'at the end', endOf(found), endOf(state))
    compared++
  }
  return compared
}

/** Who waits for a start's next spell: itself, or its latest spell. */
function whoWaits(spells: Spells, start: number, starts: number): number {
  let last = -1
  for (let s = spells.first[start]!; s >= 0; s = spells.next(s)) last = s
  return last < 0 ? start : starts + last
}

/** All that the next minute can depend on. */
function endOf(state: State): string {
  const { used: _, solarIn: __, ranTogether: ___, delta: ____, events: _____, ...rest } = state
  return JSON.stringify(rest)
}
