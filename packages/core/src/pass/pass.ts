// One sweep through time that carries every start at once, through the very same `step`.
//
// Cohorts of one mode form a crowd that a calm minute moves as a whole; those near a threshold,
// and those whose timers run, are stepped one by one. Cohorts that meet on a charge edge in the
// same state become one. The README of this package tells the whole story.

import { Spells } from '../cut/spells.js'
import { isHopeless } from '../cut/starts.js'
import { type Calm, calmSpan, newCalm } from '../island/calm.js'
import type { Columns } from '../island/columns.js'
import {
  changesAt,
  dueOf,
  type Kind,
  kindCode,
  kindOf,
  nextCode,
  restore,
  timersOf,
  type Waits,
  waitsOf,
} from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import { newState, type State } from '../island/state.js'
import { step } from '../island/step.js'
import { TOGETHER_AFTER } from '../load/together.js'
import { Cohort } from './cohort.js'
import { Crowd, type Room } from './crowd.js'

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
  private readonly rooms = new Map<number, Room>()
  /** All crowds that have entries. */
  private readonly crowds: Crowd[] = []
  private readonly spare: Crowd[] = []
  /** Cohorts in crowds by the minute in which their timer ends; some may have left since. */
  private readonly dues = new Map<number, Cohort[]>()
  private single: Cohort[] = []
  private loose: Cohort[] = []
  private readonly meetings = new Map<string, Cohort>()
  private readonly waits: Waits = { solarUntil: 0, solarTooUntil: 0 }
  private readonly joining: Cohort[] = []
  private readonly changing: { readonly crowd: Crowd; readonly room: Room }[] = []

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
    return this.single.length === 0 && this.crowds.length === 0
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
      const { kind, waits } = cohort.home
      cohort.home.take(cohort)
      restore(cohort.state, kind, waits, cohort, i, this.rules)
      moving.push(cohort)
    }
  }

  /** Moves each crowd as a whole; what is restless joins those that are stepped one by one. */
  private moveCrowds(i: number, moving: Cohort[]): void {
    const { crowds } = this
    // Backwards, for those that leave are replaced by the last.
    for (let at = crowds.length - 1; at >= 0; at--) {
      const crowd = crowds[at]!
      const { kind, waits } = crowd
      const from = moving.length
      const calm = this.calmOf(crowd.room, i)
      crowd.takeRestless(calm, this.rules.generator?.cansAfter[kind.pours] ?? 0, moving)
      for (let taken = from; taken < moving.length; taken++) {
        const cohort = moving[taken]!
        restore(cohort.state, kind, waits, cohort, i, this.rules)
      }
      if (crowd.count === 0) this.retire(at)
      else crowd.move(calm)
    }
    this.changeModes(i)
  }

  /** The calm span of a kind, worked out once a minute for crowds that differ in their waits. */
  private calmOf(room: Room, i: number): Calm {
    if (room.minute !== i) {
      calmSpan(room.calm, room.kind, i, this.columns, this.rules)
      room.minute = i
    }
    return room.calm
  }

  private roomOf(code: number): Room {
    const there = this.rooms.get(code)
    if (there !== undefined) return there
    const fresh = { kind: kindOf(code, this.rules), calm: newCalm(), minute: -1, crowds: [] }
    this.rooms.set(code, fresh)
    return fresh
  }

  /** An empty crowd leaves. */
  private retire(at: number): void {
    const { crowds } = this
    const crowd = crowds[at]!
    crowd.leave()
    crowds[at] = crowds.at(-1)!
    crowds.pop()
    this.spare.push(crowd)
  }

  /** Crowds whose mode changes as a whole after minute `i`. All leave before any enters. */
  private changeModes(i: number): void {
    const { changing } = this
    for (const crowd of this.crowds) {
      const { trips } = crowd.room.calm
      if (i < crowd.changesAt && trips === 0) continue
      crowd.leave()
      const code = nextCode(crowd.kind, crowd.waits, i, trips, this.rules)
      changing.push({ crowd, room: this.roomOf(code) })
    }
    for (const { crowd, room } of changing) this.enter(crowd, room, i)
    changing.length = 0
  }

  /** Where others are in its mode already the smaller crowd joins the larger. */
  private enter(crowd: Crowd, room: Room, i: number): void {
    const there = room.crowds.find((other) => isSameWait(other.waits, crowd.waits))
    crowd.enter(room, changesAt(room.kind, crowd.waits, this.rules))
    if (there === undefined) return
    const [large, small] = crowd.count > there.count ? [crowd, there] : [there, crowd]
    small.takeAll(this.joining)
    this.retire(this.crowds.indexOf(small))
    for (const cohort of this.joining) this.insert(large, cohort, i)
    this.joining.length = 0
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
    const code = kindCode(state, this.rules)
    if (code >= 0) {
      const crowd = this.crowdOf(code, state, i)
      this.setTimer(cohort, crowd.kind, i)
      this.insert(crowd, cohort, i)
      return
    }
    if (this.isOnEdge(cohort) && this.meets(cohort)) return
    this.single.push(cohort)
  }

  private insert(crowd: Crowd, cohort: Cohort, i: number): void {
    crowd.insert(cohort, this.isOnEdge(cohort), this.safeL(crowd.kind.pours), i - TOGETHER_AFTER)
  }

  /** Fuel above which a tank does not run dry in the next minute. [l] */
  private safeL(pours: number): number {
    const { generator } = this.rules
    return generator === null ? 0 : (generator.cansAfter[pours] ?? 0) + generator.mostLitres
  }

  private isSafe({ fuelL, pours }: State): boolean {
    return fuelL > this.safeL(pours)
  }

  private setTimer(cohort: Cohort, kind: Kind, i: number): void {
    timersOf(cohort, cohort.state, i, this.rules)
    cohort.due = dueOf(kind, cohort, this.rules)
    if (cohort.due < 0) return
    const there = this.dues.get(cohort.due)
    if (there === undefined) this.dues.set(cohort.due, [cohort])
    else there.push(cohort)
  }

  private crowdOf(code: number, state: State, i: number): Crowd {
    const room = this.roomOf(code)
    waitsOf(this.waits, state, i)
    for (const crowd of room.crowds) if (isSameWait(crowd.waits, this.waits)) return crowd
    const crowd = this.spare.pop() ?? new Crowd(this.rules.capacityKwh)
    crowd.rest()
    crowd.waits.solarUntil = this.waits.solarUntil
    crowd.waits.solarTooUntil = this.waits.solarTooUntil
    crowd.enter(room, changesAt(room.kind, crowd.waits, this.rules))
    this.crowds.push(crowd)
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
    this.drop(decided, (crowd) => crowd.kind.level > this.rules.lastLevel)
  }

  private dropOld(i: number): void {
    this.drop(
      (cohort) => cohort.youngest + this.horizon <= i,
      () => true,
    )
  }

  private drop(gone: (cohort: Cohort) => boolean, among: (crowd: Crowd) => boolean): void {
    this.single = this.single.filter((cohort) => !gone(cohort))
    for (let at = this.crowds.length - 1; at >= 0; at--) {
      const crowd = this.crowds[at]!
      if (!among(crowd)) continue
      crowd.drop(gone)
      if (crowd.count === 0) this.retire(at)
    }
  }
}

function isSameWait(a: Waits, b: Waits): boolean {
  return a.solarUntil === b.solarUntil && a.solarTooUntil === b.solarTooUntil
}

/** Everything the next minute can depend on. */
function stateKey(s: State): string {
  return `${s.stored} ${s.level} ${s.solar} ${s.solarToo} ${s.generator} ${s.outOfOrder} ${s.wakeAt} ${s.personAt} ${s.retryAt} ${s.retries} ${s.shedFor} ${s.offFor} ${s.together} ${s.fuelL} ${s.pours} ${s.grid}`
}
