// The pass at work: every start in a cohort, every cohort in a crowd or on its own.

import { Spells } from '../cut/spells.js'
import { isHopeless } from '../cut/starts.js'
import type { Columns } from '../island/columns.js'
import { dueOf, type Kind, kindCode, restore, timersOf } from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import { newState, type State } from '../island/state.js'
import { step } from '../island/step.js'
import { Cohort } from './cohort.js'
import type { Crowd } from './crowd.js'
import { Crowds, isOnEdge, safeL, type Watch } from './crowds.js'

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

export class Sweep {
  readonly spells: Spells
  private readonly crowds: Crowds
  /** Cohorts in crowds by the minute in which their timer ends; some may have left since. */
  private readonly dues: (Cohort[] | undefined)[]
  private single: Cohort[] = []
  private loose: Cohort[] = []
  private readonly meetings = new Map<string, Cohort>()

  constructor(
    private readonly columns: Columns,
    private readonly rules: Rules,
    starts: number,
    private readonly horizon: number,
    private readonly enough: Enough | undefined,
    watch: Watch | undefined,
  ) {
    this.spells = new Spells(starts, horizon)
    this.dues = new Array(starts + horizon + 1)
    this.crowds = new Crowds(columns, rules, watch)
  }

  /** A start begins its cut. */
  begin(stored: number, start: number): void {
    this.single.push(Cohort.ofStart(newState(this.rules, stored), start))
  }

  get isDone(): boolean {
    return this.single.length === 0 && this.crowds.isEmpty
  }

  /** Lives minute `i` for every cohort. */
  live(i: number): void {
    const moving = this.single
    this.single = this.loose
    this.single.length = 0
    this.takeDue(i, moving)
    this.crowds.live(i, moving)
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
    const due = this.dues[i]
    if (due === undefined) return
    this.dues[i] = undefined
    for (const cohort of due) {
      if (cohort.home === null || cohort.due !== i) continue
      const { kind, waits } = cohort.home
      cohort.home.take(cohort)
      restore(cohort.state, kind, waits, cohort, i, this.rules)
      moving.push(cohort)
    }
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
      const crowd = this.crowds.of(code, state, i)
      this.setTimers(cohort, crowd.kind, i)
      this.crowds.insert(crowd, cohort, i)
      return
    }
    if (isOnEdge(state, this.rules) && this.meets(cohort)) return
    this.single.push(cohort)
  }

  private isSafe({ fuelL, pours }: State): boolean {
    return fuelL > safeL(pours, this.rules)
  }

  private setTimers(cohort: Cohort, kind: Kind, i: number): void {
    timersOf(cohort, cohort.state, i, this.rules)
    cohort.due = dueOf(kind, cohort)
    if (cohort.due < 0 || cohort.due >= this.dues.length) return
    const there = this.dues[cohort.due]
    if (there === undefined) this.dues[cohort.due] = [cohort]
    else there.push(cohort)
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
    this.crowds.drop(gone, among)
  }
}

/** Everything the next minute can depend on. */
function stateKey(s: State): string {
  return `${s.stored} ${s.level} ${s.solar} ${s.solarToo} ${s.generator} ${s.outOfOrder} ${s.wakeAt} ${s.personAt} ${s.retryAt} ${s.retries} ${s.shedFor} ${s.offFor} ${s.together} ${s.fuelL} ${s.pours} ${s.grid}`
}
