// Every start of a span, walked one by one.
//
// Starts are taken last first. A walk that comes to a state some later start was in at the same
// minute (on a charge edge, all other latches at rest) shares what that one found, and what it
// found reaches further than this one needs. A dark island that nothing can wake is not walked on.

import { type Columns, NEVER } from '../island/columns.js'
import type { Rules } from '../island/rules.js'
import { HELD, newState, Runs, restTimers, type State } from '../island/state.js'
import { step } from '../island/step.js'
import { NO_SPELL, Spells } from './spells.js'

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
  const met = new Map<number, number>()
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
  met: Map<number, number>,
): void {
  const state = newState(rules, storedKwh)
  const fresh: number[] = []
  let last = NO_SPELL
  let down = false
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
    const key = restingKey(state, i, rules)
    if (key < 0) continue
    const known = met.get(key)
    if (known !== undefined) {
      remember(known)
      return
    }
    fresh.push(key)
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

/** A number for a state on a charge edge with all latches at rest but the solar wait; else -1. */
function restingKey(state: State, minute: number, rules: Rules): number {
  const edge = rules.bandEdgesKwh.indexOf(state.stored)
  if (edge < 0 || state.level !== 0 || state.retries !== 0) return -1
  restTimers(state, minute, rules)
  if (state.generator !== Runs.off || state.relayUntil >= 0 || state.togetherUntil >= 0) return -1
  if (state.personAt >= 0 || state.outOfOrder || state.fuelL !== (rules.generator?.fuelL ?? 0))
    return -1
  const latches = latchOf(state.solarUntil, minute) * 4096 + latchOf(state.solarTooUntil, minute)
  return (minute * rules.bandEdgesKwh.length + edge) * 4096 * 4096 + latches
}

/** 0 held out, 1 in, more while solar waits. */
function latchOf(until: number, minute: number): number {
  return until === HELD ? 0 : Math.max(0, until - minute) + 1
}
