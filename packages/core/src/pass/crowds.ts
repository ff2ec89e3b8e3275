// All crowds of a pass: which there are, how a minute moves them, where a cohort finds its own.

import { type Calm, calmSpan, newCalm } from '../island/calm.js'
import type { Columns } from '../island/columns.js'
import { changesAt, kindOf, nextCode, restore, type Waits, waitsOf } from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import type { State } from '../island/state.js'
import { TOGETHER_AFTER } from '../load/together.js'
import type { Cohort } from './cohort.js'
import { Crowd, type Room } from './crowd.js'

/** Looks on as a pass goes: what tests use to hold it to its word. */
export interface Watch {
  /** A crowd is about to move as a whole in minute `i`. */
  moves(crowd: Crowd, calm: Calm, i: number): void
}

export class Crowds {
  private readonly rooms = new Map<number, Room>()
  /** All that have entries. */
  private readonly list: Crowd[] = []
  private readonly spare: Crowd[] = []
  private readonly waits: Waits = { solarUntil: 0, solarTooUntil: 0 }
  private readonly joining: Cohort[] = []
  private readonly changing: { readonly crowd: Crowd; readonly room: Room }[] = []

  constructor(
    private readonly columns: Columns,
    private readonly rules: Rules,
    private readonly watch: Watch | undefined,
  ) {}

  get isEmpty(): boolean {
    return this.list.length === 0
  }

  /** Moves each crowd as a whole; what is restless is handed over to be stepped one by one. */
  live(i: number, moving: Cohort[]): void {
    const { list } = this
    // Backwards, for those that leave are replaced by the last.
    for (let at = list.length - 1; at >= 0; at--) {
      const crowd = list[at]!
      const { kind, waits } = crowd
      const from = moving.length
      const calm = this.calmOf(crowd.room, i)
      crowd.takeRestless(calm, this.rules.generator?.cansAfter[kind.pours] ?? 0, moving)
      for (let taken = from; taken < moving.length; taken++) {
        const cohort = moving[taken]!
        restore(cohort.state, kind, waits, cohort, i, this.rules)
      }
      if (crowd.count === 0) this.retire(at)
      else {
        this.watch?.moves(crowd, calm, i)
        crowd.move(calm)
      }
    }
    this.changeModes(i)
  }

  /** The crowd of a kind that a state belongs to after minute `i`. */
  of(code: number, state: State, i: number): Crowd {
    const room = this.roomOf(code)
    waitsOf(this.waits, state, i)
    for (const crowd of room.crowds) if (isSameWait(crowd.waits, this.waits)) return crowd
    const crowd = this.spare.pop() ?? new Crowd(this.rules.capacityKwh)
    crowd.rest()
    crowd.waits.solarUntil = this.waits.solarUntil
    crowd.waits.solarTooUntil = this.waits.solarTooUntil
    crowd.enter(room, changesAt(room.kind, crowd.waits, this.rules))
    this.list.push(crowd)
    return crowd
  }

  insert(crowd: Crowd, cohort: Cohort, i: number): void {
    const meets = isOnEdge(cohort.state, this.rules)
    crowd.insert(cohort, meets, safeL(crowd.kind.pours, this.rules), i - TOGETHER_AFTER)
  }

  /** Forgets cohorts for which `gone` holds. */
  drop(gone: (cohort: Cohort) => boolean, among: (crowd: Crowd) => boolean): void {
    for (let at = this.list.length - 1; at >= 0; at--) {
      const crowd = this.list[at]!
      if (!among(crowd)) continue
      crowd.drop(gone)
      if (crowd.count === 0) this.retire(at)
    }
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
    const { list } = this
    const crowd = list[at]!
    crowd.leave()
    list[at] = list.at(-1)!
    list.pop()
    this.spare.push(crowd)
  }

  /** Crowds whose mode changes as a whole after minute `i`. All leave before any enters. */
  private changeModes(i: number): void {
    const { changing } = this
    for (const crowd of this.list) {
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
    this.retire(this.list.indexOf(small))
    for (const cohort of this.joining) this.insert(large, cohort, i)
    this.joining.length = 0
  }
}

function isSameWait(a: Waits, b: Waits): boolean {
  return a.solarUntil === b.solarUntil && a.solarTooUntil === b.solarTooUntil
}

/** Where histories meet: on a charge edge, where a generator stops, and empty. */
export function isOnEdge({ stored }: State, { bandEdgesKwh, generator }: Rules): boolean {
  return stored === 0 || stored === generator?.stopKwh || bandEdgesKwh.includes(stored)
}

/** Fuel above which a tank does not run dry in the next minute. [l] */
export function safeL(pours: number, { generator }: Rules): number {
  return generator === null ? 0 : (generator.cansAfter[pours] ?? 0) + generator.mostLitres
}
