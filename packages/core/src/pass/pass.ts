// One sweep through time that carries every start at once, through the very same `step`.
//
// Cohorts of one mode form a crowd that a calm minute moves as a whole; those near a threshold,
// and those whose timers run, are stepped one by one. Cohorts that meet on a charge edge in the
// same state become one. The README of this package tells the whole story.

import { Spells } from '../cut/spells.js'
import { isHopeless } from '../cut/starts.js'
import {
  type Calm,
  calmSpan,
  dueOf,
  type Mode,
  modeAfter,
  modeKey,
  modeOf,
  newCalm,
  onBefore,
  restore,
  timelessKey,
  timerOf,
} from '../island/calm.js'
import type { Columns } from '../island/columns.js'
import type { Rules } from '../island/rules.js'
import { newState, type State } from '../island/state.js'
import { step } from '../island/step.js'
import { TOGETHER_AFTER } from '../load/together.js'
import { Cohort } from './cohort.js'
import { Crowd, type SharedCalm } from './crowd.js'

/** How often cohorts are looked through for those that have been followed far enough. [min] */
const SWEEP_MINUTES = 1440
/** How often they are looked through for those whose ride is decided. [min] */
const DECIDED_MINUTES = 60

/** When a history has been followed far enough, whatever comes later. */
export interface Enough {
  /** Minutes that every start is followed at least: the cut. */
  readonly cutMinutes: number
  /** Minutes off in one go after which every load is lost that can be. */
  readonly lostAfter: number
}

/**
 * Down spells of the starts in the first `starts` minutes of a window, each followed for
 * `horizon` minutes: the same as `walkStarts`, to the minute.
 *
 * @param startKwh  charge at every start, on the energy grid; or a column of it. [starts]
 * @param horizon   minutes; the window must hold starts + horizon of them
 * @param enough    where given, a history is left once its cut is over and its loads are lost;
 *                  its last spell ends there
 */
export function pass(
  columns: Columns,
  rules: Rules,
  starts: number,
  startKwh: number | Float64Array,
  horizon: number,
  enough?: Enough,
): Spells {
  const sweep = new Sweep(columns, rules, starts, horizon, enough)
  for (let i = 0; i < starts + horizon; i++) {
    if (i < starts) {
      const stored = typeof startKwh === 'number' ? startKwh : startKwh[i]!
      sweep.join(Cohort.ofStart(newState(rules, stored), i))
    } else if (sweep.isDone()) break
    sweep.live(i)
  }
  return sweep.spells
}

class Sweep {
  readonly spells: Spells
  private readonly crowds = new Map<number, Crowd>()
  private readonly spare: Crowd[] = []
  /** Cohorts in crowds by the minute in which their timer ends; some may have left since. */
  private readonly dues = new Map<number, Cohort[]>()
  private single: Cohort[] = []
  private loose: Cohort[] = []
  private readonly meetings = new Map<string, Cohort>()
  private readonly calms = new Map<number, SharedCalm>()
  private readonly changed: { readonly crowd: Crowd; readonly next: Mode }[] = []

  constructor(
    private readonly columns: Columns,
    private readonly rules: Rules,
    starts: number,
    private readonly horizon: number,
    private readonly enough: Enough | undefined,
  ) {
    this.spells = new Spells(starts, horizon)
  }

  join(cohort: Cohort): void {
    this.single.push(cohort)
  }

  isDone(): boolean {
    return this.single.length === 0 && this.crowds.size === 0
  }

  /** Lives minute `i` for every cohort. */
  live(i: number): void {
    const moving = this.single
    this.single = this.loose
    this.single.length = 0
    this.takeDue(i, moving)
    this.moveCrowds(i, moving)
    this.meetings.clear()
    for (let at = 0; at < moving.length; at++) {
      const cohort = moving[at]!
      while (cohort.isMixed && !this.isSafe(cohort.state)) moving.push(cohort.partDriest())
      step(cohort.state, i, this.columns, this.rules)
      this.noteSpell(cohort, i)
      this.place(cohort, i)
    }
    this.loose = moving
    if (i % SWEEP_MINUTES === SWEEP_MINUTES - 1) this.dropOld(i)
    if (this.enough !== undefined && i % DECIDED_MINUTES === 0) this.dropDecided(i, this.enough)
  }

  /** Takes out those whose timer ends in this minute. */
  private takeDue(i: number, moving: Cohort[]): void {
    const due = this.dues.get(i)
    if (due === undefined) return
    this.dues.delete(i)
    for (const cohort of due) {
      if (cohort.home === null || cohort.due !== i) continue
      const { mode } = cohort.home
      cohort.home.take(cohort)
      restore(cohort.state, mode, cohort, i, this.rules)
      moving.push(cohort)
    }
  }

  /** Moves each crowd as a whole; what is restless joins those that are stepped one by one. */
  private moveCrowds(i: number, moving: Cohort[]): void {
    for (const crowd of this.crowds.values()) {
      const from = moving.length
      const calm = this.calmOf(crowd, i)
      crowd.takeRestless(calm, this.rules.generator?.cansAfter[crowd.mode.pours] ?? 0, moving)
      for (let at = from; at < moving.length; at++) {
        const cohort = moving[at]!
        restore(cohort.state, crowd.mode, cohort, i, this.rules)
      }
      if (crowd.count === 0) this.retire(crowd)
      else {
        crowd.move(calm)
        const next = modeAfter(crowd.mode, i, calm.trips, this.rules)
        if (next !== null) this.changed.push({ crowd, next })
      }
    }
    for (const { crowd } of this.changed) this.crowds.delete(crowd.key)
    for (const { crowd, next } of this.changed) this.changeMode(crowd, next, i)
    this.changed.length = 0
  }

  /** The calm span of a crowd's mode, worked out once a minute for modes that differ in timers. */
  private calmOf(crowd: Crowd, i: number): Calm {
    const { shared } = crowd
    if (shared.minute !== i) {
      calmSpan(shared.calm, crowd.mode, i, this.columns, this.rules)
      shared.minute = i
    }
    return shared.calm
  }

  private sharedOf(key: number): SharedCalm {
    const timeless = timelessKey(key)
    const known = this.calms.get(timeless)
    if (known !== undefined) return known
    const fresh = { calm: newCalm(), minute: -1 }
    this.calms.set(timeless, fresh)
    return fresh
  }

  private retire(crowd: Crowd): void {
    this.crowds.delete(crowd.key)
    this.spare.push(crowd)
  }

  /** A crowd whose mode changed as a whole; where others are in that mode the smaller one joins. */
  private changeMode(crowd: Crowd, next: Mode, i: number): void {
    const sample = crowd.sample()
    restore(sample.state, next, sample, i + 1, this.rules)
    const key = modeKey(sample.state, i, this.rules)
    crowd.become(next, key, this.sharedOf(key))
    const there = this.crowds.get(key)
    if (there === undefined) {
      this.crowds.set(key, crowd)
      return
    }
    const [large, small] = crowd.count > there.count ? [crowd, there] : [there, crowd]
    this.crowds.set(key, large)
    const joining: Cohort[] = []
    small.takeAll(joining)
    for (const cohort of joining) this.insert(large, cohort, i)
    this.spare.push(small)
  }

  /** Where histories meet: on a charge edge, where a generator stops, and empty. */
  private isOnEdge({ state: { stored } }: Cohort): boolean {
    const { bandEdgesKwh, generator } = this.rules
    return stored === 0 || stored === generator?.stopKwh || bandEdgesKwh.includes(stored)
  }

  private noteSpell(cohort: Cohort, i: number): void {
    const down = cohort.state.level > this.rules.lastLevel
    if (down && !cohort.down) cohort.goDown(i, this.spells)
    else if (!down && cohort.down) cohort.comeUp(i, this.spells)
  }

  /** Where a cohort waits for the next minute: in a crowd, on its own, or nowhere any more. */
  private place(cohort: Cohort, i: number): void {
    const { state } = cohort
    if (isHopeless(state, i, this.columns, this.rules)) return
    const key = modeKey(state, i, this.rules)
    if (key >= 0) {
      const crowd = this.crowdOf(key, state, i)
      this.setTimer(cohort, crowd.mode, i)
      this.insert(crowd, cohort, i)
      return
    }
    if (this.isOnEdge(cohort) && this.meets(cohort)) return
    this.single.push(cohort)
  }

  private insert(crowd: Crowd, cohort: Cohort, i: number): void {
    crowd.insert(cohort, this.isOnEdge(cohort), this.safeL(crowd.mode.pours), i - TOGETHER_AFTER)
  }

  /** Fuel above which a tank does not run dry in the next minute. [l] */
  private safeL(pours: number): number {
    const { generator } = this.rules
    return generator === null ? 0 : (generator.cansAfter[pours] ?? 0) + generator.mostLitres
  }

  private isSafe({ fuelL, pours }: State): boolean {
    return fuelL > this.safeL(pours)
  }

  private setTimer(cohort: Cohort, mode: Mode, i: number): void {
    cohort.timer = timerOf(cohort.state, i, this.rules)
    cohort.onBefore = onBefore(cohort.state, i, this.rules)
    cohort.due = cohort.timer < 0 ? -1 : dueOf(mode, cohort.timer, this.rules)
    if (cohort.due < 0) return
    const there = this.dues.get(cohort.due)
    if (there === undefined) this.dues.set(cohort.due, [cohort])
    else there.push(cohort)
  }

  private crowdOf(key: number, state: State, i: number): Crowd {
    const there = this.crowds.get(key)
    if (there !== undefined) return there
    const crowd = this.spare.pop() ?? new Crowd(this.rules.capacityKwh)
    crowd.reuse(modeOf(state, i, this.rules) as Mode, key, this.sharedOf(key))
    this.crowds.set(key, crowd)
    return crowd
  }

  /** Whether an equal state was placed in this minute, which then takes the cohort over. */
  private meets(cohort: Cohort): boolean {
    const key = stateKey(cohort.state)
    const other = this.meetings.get(key)
    if (other === undefined) this.meetings.set(key, cohort)
    else other.join(cohort)
    return other !== undefined
  }

  /** Leaves cohorts that are off, past their cuts and have lost a load. */
  private dropDecided(i: number, { cutMinutes, lostAfter }: Enough): void {
    const decided = (cohort: Cohort): boolean => {
      if (!cohort.down || cohort.youngest + cutMinutes > i) return false
      if (cohort.downSince + lostAfter > i) return false
      cohort.comeUp(i + 1, this.spells)
      return true
    }
    this.drop(decided, (crowd) => crowd.mode.level > this.rules.lastLevel)
  }

  private dropOld(i: number): void {
    this.drop(
      (cohort) => cohort.youngest + this.horizon <= i,
      () => true,
    )
  }

  private drop(gone: (cohort: Cohort) => boolean, among: (crowd: Crowd) => boolean): void {
    this.single = this.single.filter((cohort) => !gone(cohort))
    for (const crowd of this.crowds.values()) {
      if (!among(crowd)) continue
      crowd.drop(gone)
      if (crowd.count === 0) this.retire(crowd)
    }
  }
}

/** Everything the next minute can depend on. */
function stateKey(s: State): string {
  return `${s.stored} ${s.level} ${s.solar} ${s.solarToo} ${s.generator} ${s.outOfOrder} ${s.wakeAt} ${s.personAt} ${s.retryAt} ${s.retries} ${s.shedFor} ${s.offFor} ${s.together} ${s.fuelL} ${s.pours} ${s.grid}`
}
