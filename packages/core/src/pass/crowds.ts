// All crowds of a pass: which there are, how a minute moves them, where a cohort finds its own.

import { type Calm, CalmSpans } from '../island/calm.js'
import { type Columns, NEVER } from '../island/columns.js'
import { changesAt, dueOf, kindCodes, kindOf, nextCode, type Waits } from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import { cansLeftL, isOnEdge, type State } from '../island/state.js'
import { oncePer } from '../units/once.js'
import { NONE } from './cohorts.js'
import { Crowd, type Room } from './crowd.js'
import type { Histories } from './histories.js'
import { Ids } from './ids.js'

/** For a wait as short as this one no crowd is founded: to step a cohort costs less. [min] */
const SHORT_WAIT = 5

/** Looks on as a pass goes: what tests use to hold it to its word. */
export interface Watch {
  /** A crowd is about to move as a whole in minute `i`. */
  moves(crowd: Crowd, calm: Calm, i: number): void
}

export class Crowds {
  /** By the number of their kind, in a table of places: lookups are many. It may hold old ones. */
  private readonly rooms: Room[] = []
  private readonly roomAt: Int16Array
  /** All there ever were, by their number. */
  private readonly all: Crowd[] = []
  /** All that have entries. */
  private readonly list: Crowd[] = []
  private readonly spare: Crowd[] = []
  private readonly joining = new Ids()
  private readonly changing: { readonly crowd: Crowd; readonly room: Room }[] = []

  constructor(
    private readonly histories: Histories,
    private readonly columns: Columns,
    private readonly rules: Rules,
    private readonly watch: Watch | undefined,
  ) {
    this.roomAt = tableOf(rules)
  }

  get isEmpty(): boolean {
    return this.list.length === 0
  }

  /** By its number. */
  at(number: number): Crowd {
    return this.all[number]!
  }

  /** Takes out what minute `i` does not move as a whole, to be stepped one by one. */
  takeRestless(i: number, moving: Ids): void {
    for (const crowd of this.list) {
      crowd.takeRestless(this.spanOf(crowd.room, i), moving)
    }
  }

  /** Crowds of a kind that differ in their waits share the span. */
  private spanOf(room: Room, i: number): Calm {
    if (room.minute !== i) {
      room.spans.at(i)
      room.minute = i
    }
    return room.spans.now
  }

  /** Moves each crowd as a whole through minute `i`. */
  move(i: number): void {
    const { list } = this
    // Backwards, for those that leave are replaced by the last.
    for (let at = list.length - 1; at >= 0; at--) {
      const crowd = list[at]!
      if (crowd.count === 0) this.retire(at)
      else {
        const calm = crowd.room.spans.now
        this.watch?.moves(crowd, calm, i)
        crowd.move(calm)
      }
    }
    this.changeModes(i)
  }

  /**
   * Takes in a cohort of a kind after minute `i`: to an equal one, if there is.
   *
   * @returns  whether it did; else the cohort lives the next minute on its own
   */
  place(id: number, code: number, i: number): boolean {
    const room = this.roomOf(code)
    const state = this.histories.cohorts.state[id]!
    const onEdge = isOnEdge(state, this.rules)
    if (!onEdge && !this.isCalm(room, state, i + 1)) return false
    const crowd = this.of(room, state) ?? this.found(room, state, i, onEdge)
    if (crowd === null) return false
    if (onEdge && this.joinsEqual(crowd, id, i)) return true
    crowd.insert(id)
    const due = dueOf(room.kind, state, this.rules)
    if (due !== NEVER) this.histories.dues.enter(id, Math.max(due, i + 1))
    return true
  }

  /** Whether a crowd carries a state of its kind through minute `i`. */
  private isCalm(room: Room, state: State, i: number): boolean {
    if (i >= this.columns.n) return false
    const { above, below, litres } = this.spanOf(room, i)
    if (!(above < state.stored && state.stored < below)) return false
    if (litres > 0 && !(state.fuelL > litres + cansLeftL(state, this.rules))) return false
    return dueOf(room.kind, state, this.rules) > i
  }

  /** All that are in a crowd. */
  entries(): number[] {
    return this.list.flatMap((crowd) => crowd.entries())
  }

  /** Forgets cohorts for which `gone` holds. */
  drop(gone: (id: number) => boolean, among: (crowd: Crowd) => boolean): void {
    const found = new Ids()
    for (let at = this.list.length - 1; at >= 0; at--) {
      const crowd = this.list[at]!
      if (!among(crowd)) continue
      crowd.takeWhere(gone, found)
      if (crowd.count === 0) this.retire(at)
    }
    for (let at = 0; at < found.count; at++) this.histories.forget(found.at(at))
  }

  /** Whether an equal one in the crowd has taken a cohort over that is on an edge. */
  private joinsEqual(crowd: Crowd, id: number, i: number): boolean {
    const { histories } = this
    const same = crowd.findSame(histories.cohorts.state[id]!, i)
    if (same === NONE) return false
    crowd.noteFuel(id)
    const { fuel } = histories.cohorts
    const isLess = fuel[id]! < fuel[same]!
    histories.join(same, id)
    if (isLess) crowd.noteDriest(same)
    return true
  }

  /** The crowd of a kind whose solar waits as that of a state. */
  private of(room: Room, waits: Waits): Crowd | null {
    for (const crowd of room.crowds) if (isSameWait(crowd.waits, waits)) return crowd
    return null
  }

  /** Founds a crowd for a state after minute `i`; null where it is not worth the while. */
  private found(room: Room, waits: Waits, i: number, onEdge: boolean): Crowd | null {
    const until = changesAt(waits)
    if (!onEdge && until - i <= SHORT_WAIT) return null
    const crowd = this.spare.pop() ?? this.another()
    crowd.rest()
    crowd.waits.solarUntil = waits.solarUntil
    crowd.waits.solarTooUntil = waits.solarTooUntil
    crowd.enter(room, until)
    this.list.push(crowd)
    return crowd
  }

  private another(): Crowd {
    const { all, histories, rules } = this
    const crowd = new Crowd(all.length, histories.cohorts, rules)
    all.push(crowd)
    return crowd
  }

  private roomOf(code: number): Room {
    const there = this.rooms[this.roomAt[code]!]
    if (there !== undefined && there.kind.code === code) return there
    const kind = kindOf(code, this.rules)
    const spans = new CalmSpans(kind, this.columns, this.rules)
    const fresh = { kind, spans, minute: -1, crowds: [] }
    this.roomAt[code] = this.rooms.length
    this.rooms.push(fresh)
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
      const { trips } = crowd.room.spans.now
      if (i < crowd.changesAt && trips === 0) continue
      crowd.leave()
      const code = nextCode(crowd.kind, crowd.waits, i, trips, this.rules)
      changing.push({ crowd, room: this.roomOf(code) })
    }
    if (changing.length === 0) return
    for (const { crowd, room } of changing) this.enter(crowd, room, i)
    changing.length = 0
  }

  /** Where others are in its mode already the smaller crowd joins the larger. */
  private enter(crowd: Crowd, room: Room, i: number): void {
    const there = room.crowds.find((other) => isSameWait(other.waits, crowd.waits))
    crowd.enter(room, changesAt(crowd.waits))
    if (there === undefined) return
    const [large, small] = crowd.count > there.count ? [crowd, there] : [there, crowd]
    small.takeAll(this.joining)
    this.retire(this.list.indexOf(small))
    for (let at = 0; at < this.joining.count; at++) {
      const id = this.joining.at(at)
      const state = this.histories.cohorts.state[id]!
      if (!isOnEdge(state, this.rules) || !this.joinsEqual(large, id, i)) large.insert(id)
    }
    this.joining.clear()
  }
}

/** Places of rooms by kind, shared by all passes under the same rules. */
const tableOf = oncePer((rules: Rules) => new Int16Array(kindCodes(rules)))

function isSameWait(a: Waits, b: Waits): boolean {
  return a.solarUntil === b.solarUntil && a.solarTooUntil === b.solarTooUntil
}
