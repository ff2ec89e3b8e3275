// The pass at work: every start in a cohort, every cohort in a crowd or on its own.
//
// A minute: what a crowd cannot carry is taken out of it and lives the minute alone; the crowds
// move; those that lived alone are placed where they now belong.

import { Spells } from '../cut/spells.js'
import { isHopeless } from '../cut/starts.js'
import type { Columns } from '../island/columns.js'
import { kindCode } from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import {
  cansLeftL,
  copyState,
  isOnEdge,
  newState,
  restTimers,
  type State,
  stateKey,
} from '../island/state.js'
import { step } from '../island/step.js'
import { NONE } from './cohorts.js'
import { type Crowd, isSafe } from './crowd.js'
import { Crowds, type Watch } from './crowds.js'
import { Histories } from './histories.js'
import { Ids } from './ids.js'

/** How often cohorts are looked through for those whose ride is decided. [min] */
const DECIDED_MINUTES = 60
/** How often in a horizon they are looked through for those that were followed that far. */
const LOOKS_A_HORIZON = 16

/** When a history has been followed far enough, whatever comes later. */
export interface Enough {
  /** Minutes that every start is followed at least: the cut. */
  readonly cutMinutes: number
  /** Minutes off in one go after which every load is lost that can be, by a spell's first. [n] */
  readonly lostAfter: Int32Array
  /** Minutes after which a start is left whose loads are on; the horizon where left out. */
  readonly onAfter?: number
}

export class Sweep {
  readonly spells: Spells
  private readonly histories: Histories
  private readonly crowds: Crowds
  /** Those that no crowd carries through the next minute. */
  private alone = new Ids()
  /** Those that live the minute one by one, and those that have. */
  private moving = new Ids()
  private readonly placing = new Ids()
  private readonly meetings = new Map<string, number>()
  private readonly sweepMinutes: number
  /** What every start begins from, but for its charge. */
  private readonly fresh: State
  /** Reused from cohort to cohort. */
  private readonly before: State

  constructor(
    private readonly columns: Columns,
    private readonly rules: Rules,
    starts: number,
    private readonly horizon: number,
    private readonly enough: Enough | undefined,
    watch: Watch | undefined,
  ) {
    this.spells = new Spells(starts, horizon)
    this.sweepMinutes = Math.max(DECIDED_MINUTES, Math.floor(horizon / LOOKS_A_HORIZON))
    this.histories = new Histories(starts, starts + horizon, this.spells, rules)
    this.crowds = new Crowds(this.histories, columns, rules, watch)
    this.fresh = newState(rules, 0)
    this.before = newState(rules, 0)
  }

  get isDone(): boolean {
    return this.alone.count === 0 && this.crowds.isEmpty
  }

  /** A start begins its cut; it lives its first minute with the next call of `live`. */
  begin(stored: number, start: number): void {
    const id = this.histories.ofStart(start)
    const state = this.histories.cohorts.state[id]!
    copyState(state, this.fresh)
    state.stored = stored
    this.alone.push(id)
  }

  /** Lives minute `i` for every cohort. */
  live(i: number): void {
    const { placing } = this
    const moving = this.takeAlone()
    this.takeDue(i)
    this.crowds.takeRestless(i, moving)
    placing.clear()
    for (let at = 0; at < moving.count; at++) this.liveOne(moving.at(at), i)
    this.crowds.move(i)
    if (this.meetings.size > 0) this.meetings.clear()
    for (let at = 0; at < placing.count; at++) this.place(placing.at(at), i)
    if (i % this.sweepMinutes === 0) this.dropOld(i)
    if (this.enough !== undefined && i % DECIDED_MINUTES === 0) this.dropDecided(i, this.enough)
  }

  /**
   * The state after minute `i` of every history that is still followed, by who waits in it for its
   * next spell: a start by its number, a spell by its own counted on from the last start. For tests.
   */
  statesAfter(i: number): Map<number, State> {
    const { histories, alone, rules } = this
    const { state, crowd } = histories.cohorts
    const found = new Map<number, State>()
    const note = (id: number, after: State): void => {
      restTimers(after, i, rules)
      histories.tell(id, (who, moreL) => {
        found.set(who, { ...after, fuelL: after.fuelL + moreL })
      })
    }
    for (let at = 0; at < alone.count; at++) note(alone.at(at), { ...state[alone.at(at)]! })
    for (const id of this.crowds.entries()) note(id, this.crowds.at(crowd[id]!).stateOf(id))
    return found
  }

  /** All that are alone, who from now on are no more. */
  private takeAlone(): Ids {
    const taken = this.alone
    this.alone = this.moving
    this.alone.clear()
    this.moving = taken
    return taken
  }

  /** Takes out those whose timer ends in this minute. */
  private takeDue(i: number): void {
    const { dues, cohorts } = this.histories
    for (let id = dues.firstOf(i); id !== NONE; id = dues.firstOf(i)) {
      dues.leave(id)
      this.crowds.at(cohorts.crowd[id]!).take(id)
      this.moving.push(id)
    }
  }

  private liveOne(id: number, i: number): void {
    const { histories, rules } = this
    const state = histories.cohorts.state[id]!
    histories.dues.leave(id)
    if (histories.isMixed(id) && !isSafe(state, rules)) {
      this.liveMixed(id, state, i)
      return
    }
    step(state, i, this.columns, rules)
    this.settle(id, state, i)
  }

  /** Fuel is near its end, and differs: whoever runs dry goes its own way. */
  private liveMixed(id: number, state: State, i: number): void {
    const { before, histories, columns, rules } = this
    copyState(before, state)
    step(state, i, columns, rules)
    while (histories.isMixed(id) && !(state.fuelL > cansLeftL(state, rules))) {
      const { driest, more } = histories.partDriest(id)
      this.settle(driest, histories.cohorts.state[driest]!, i)
      before.fuelL += more
      copyState(state, before)
      step(state, i, columns, rules)
    }
    this.settle(id, state, i)
  }

  /** Notes what a cohort has become in minute `i`, and that it is to be placed. */
  private settle(id: number, state: State, i: number): void {
    const { histories, rules } = this
    const down = state.level > rules.lastLevel
    if (down !== (histories.cohorts.down[id] === 1)) {
      if (down) histories.goDown(id, i)
      else histories.comeUp(id, i)
    }
    if (isHopeless(state, i, this.columns, rules)) {
      histories.forget(id)
      return
    }
    restTimers(state, i, rules)
    this.placing.push(id)
  }

  /** Where a cohort waits for the next minute: in a crowd, or on its own. */
  private place(id: number, i: number): void {
    const state = this.histories.cohorts.state[id]!
    const code = kindCode(state, this.rules)
    if (code >= 0 && this.crowds.place(id, code, i)) return
    if (code < 0 && isOnEdge(state, this.rules) && this.meets(id, state)) return
    this.alone.push(id)
  }

  /** Whether an equal state was placed in this minute, which then takes the cohort over. */
  private meets(id: number, state: State): boolean {
    const key = stateKey(state)
    const other = this.meetings.get(key)
    if (other === undefined) {
      this.meetings.set(key, id)
      return false
    }
    const { fuel } = this.histories.cohorts
    fuel[id] = state.fuelL
    fuel[other] = state.fuelL
    this.histories.join(other, id)
    return true
  }

  /** Leaves cohorts that are off, past their cuts and have lost a load. */
  private dropDecided(i: number, { cutMinutes, lostAfter }: Enough): void {
    const { cohorts } = this.histories
    const decided = (id: number): boolean => {
      if (cohorts.down[id] === 0 || cohorts.youngest[id]! + cutMinutes > i) return false
      const since = cohorts.downSince[id]!
      if (since + lostAfter[since]! > i) return false
      this.histories.comeUp(id, i + 1)
      return true
    }
    this.drop(decided, (crowd) => crowd.kind.level > this.rules.lastLevel)
  }

  private dropOld(i: number): void {
    const { youngest, down } = this.histories.cohorts
    const onAfter = this.enough?.onAfter ?? this.horizon
    this.drop(
      (id) => youngest[id]! + (down[id] === 1 ? this.horizon : onAfter) <= i,
      () => true,
    )
  }

  private drop(gone: (id: number) => boolean, among: (crowd: Crowd) => boolean): void {
    const moving = this.takeAlone()
    for (let at = 0; at < moving.count; at++) {
      const id = moving.at(at)
      if (!gone(id)) this.alone.push(id)
      else this.histories.forget(id)
    }
    this.crowds.drop(gone, among)
  }
}
