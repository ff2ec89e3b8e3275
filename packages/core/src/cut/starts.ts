// Every start of a span, walked one by one.
//
// Starts are taken last first. A walk that comes, on an edge, to a state in which some later start
// was in the same minute shares what that one found, and what it found reaches further than this
// one needs. A dark island that nothing can wake is not walked on.

import { type Columns, NEVER } from '../island/columns.js'
import type { Rules } from '../island/rules.js'
import { isOnEdge, newState, restTimers, type State, stateKey } from '../island/state.js'
import { step } from '../island/step.js'
import { NO_SPELL, Spells } from './spells.js'

/** How often those that stay on an edge may meet there. [min] */
const MEET_EVERY = 16
/** States remembered at most: not to meet costs time, no truth. */
const MOST_MET = 2e6

/**
 * Down spells of the starts in the first `starts` minutes of a window, each followed for
 * `horizon` minutes.
 *
 * @param storedKwh   at the start, on the energy grid
 * @param horizon     minutes; the window must hold starts + horizon of them
 */
export function walkStarts(
  columns: Columns,
  rules: Rules,
  starts: number,
  storedKwh: number,
  horizon: number,
): Spells {
  const spells = new Spells(starts, horizon)
  const met = new Map<string, number>()
  for (let start = starts - 1; start >= 0; start--) {
    follow(columns, rules, start, storedKwh, spells, met)
  }
  return spells
}

function follow(
  columns: Columns,
  rules: Rules,
  start: number,
  storedKwh: number,
  spells: Spells,
  met: Map<string, number>,
): void {
  const state = newState(rules, storedKwh)
  const fresh: string[] = []
  let last = NO_SPELL
  let down = false
  let stays = false
  const remember = (spell: number): void => {
    if (last === NO_SPELL) spells.first[start] = spell
    else spells.link(last, spell)
    for (const key of fresh) met.set(key, spell)
    fresh.length = 0
  }
  for (let i = start; i < start + spells.horizon; i++) {
    step(state, i, columns, rules)
    if (state.level > rules.lastLevel) {
      if (!down) {
        const spell = spells.open(i)
        remember(spell)
        last = spell
        down = true
      }
      if (isHopeless(state, i, columns, rules)) return
      continue
    }
    if (down) spells.close(last, i)
    down = false
    const arrives = !stays
    stays = isOnEdge(state, rules)
    if (!stays || (!arrives && i % MEET_EVERY !== 0)) continue
    restTimers(state, i, rules)
    const key = `${i} ${stateKey(state)}`
    const known = met.get(key)
    if (known !== undefined) {
      remember(known)
      return
    }
    if (met.size < MOST_MET) fresh.push(key)
  }
  // Earlier starts are followed less far, so "nothing further" holds for them too.
  for (const key of fresh) met.set(key, NO_SPELL)
}

/** Dark for good after minute `i`: no grid, person, sun or generator can change it. */
export function isHopeless(state: State, i: number, columns: Columns, rules: Rules): boolean {
  if (i < columns.lastGrid) return false
  if (state.level !== rules.dark || rules.wakesOnSun) return false
  if (state.retryAt >= 0 && state.retryAt !== NEVER) return false
  if (state.wakeAt >= 0 && state.wakeAt !== NEVER) return false
  if (rules.whenEmpty === 'retries' && state.stored > 0) return false
  return !rules.wakesOnGenerator || state.outOfOrder || !(state.fuelL > 0)
}
