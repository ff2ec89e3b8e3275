// Down spells of single starts, and their states in the end, told so that two ways of living them can
// be compared.

import {
  type Compiled,
  type isHopeless,
  newState,
  restTimers,
  type Spells,
  type State,
  Sweep,
  step,
} from '@tideover/core'

/** Spells of one start within its horizon; -1 where one is open there. */
export function spellsOf(spells: Spells, start: number, horizon: number): number[] {
  const out: number[] = []
  for (let s = spells.first[start]!; s >= 0; s = spells.next(s)) {
    if (spells.from(s) >= start + horizon) break
    const to = spells.to(s)
    out.push(spells.from(s), to < 0 || to >= start + horizon ? -1 : to)
  }
  return out
}

/** Whether one start has the same spells in both, without writing them down. */
export function isSame(a: Spells, b: Spells, start: number, horizon: number): boolean {
  const end = start + horizon
  const from = (of: Spells, s: number): number => (s < 0 ? end : Math.min(end, of.from(s)))
  const to = (of: Spells, s: number): number => (of.to(s) < 0 ? end : Math.min(end, of.to(s)))
  let [inA, inB] = [a.first[start]!, b.first[start]!]
  while (from(a, inA) < end || from(b, inB) < end) {
    if (from(a, inA) !== from(b, inB) || to(a, inA) !== to(b, inB)) return false
    inA = a.next(inA)
    inB = b.next(inB)
  }
  return true
}

/**
 * The same by stepping a state of its own, with nothing shared.
 *
 * @param isOver  where given, a state that is off is left where it holds
 */
export function stepped(
  { columns, rules }: Compiled,
  startKwh: number,
  start: number,
  horizon: number,
  isOver?: typeof isHopeless,
): number[] {
  const state = newState(rules, startKwh)
  const out: number[] = []
  for (let i = start; i < start + horizon; i++) {
    step(state, i, columns, rules)
    const down = state.level > rules.lastLevel
    if (down !== (out.length % 2 === 1)) out.push(i)
    if (down && isOver?.(state, i, columns, rules)) break
  }
  if (out.length % 2 === 1) out.push(-1)
  return out
}

/** Told what is compared; the first in the pass, the second by stepping alone. */
export type Differ = (start: number, what: string, a: string, b: string) => void

/**
 * Everybody's state after the minute in which the last start begins, against a state of its own.
 *
 * @param every  one start in so many
 * @returns      how many were compared; a start that is dark for good is not followed any more
 */
export function compareEnds(
  { columns, rules }: Compiled,
  startKwh: number,
  starts: number,
  every: number,
  differ: Differ,
): number {
  const sweep = new Sweep(columns, rules, starts, starts, undefined, undefined)
  for (let i = 0; i < starts; i++) {
    sweep.begin(startKwh, i)
    sweep.live(i)
  }
  const ends = sweep.statesAfter(starts - 1)
  let compared = 0
  for (let start = 0; start < starts; start += every) {
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
