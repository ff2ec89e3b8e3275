// All cohorts of one mode. A calm minute moves them together: one offset is all that changes.
//
// Entries lie unsorted in buckets of 1/64 kWh by their base (stored less offset), which the
// offset does not touch. Only the end buckets are looked at for thresholds.

import type { Calm, CalmSpans } from '../island/calm.js'
import type { Kind, Waits } from '../island/mode.js'
import type { Rules } from '../island/rules.js'
import { cansLeftL, restTimers, SOLAR_IN, type State } from '../island/state.js'
import { type Cohorts, NONE } from './cohorts.js'
import { Driest } from './driest.js'
import type { Ids } from './ids.js'

const BUCKETS_A_KWH = 64
/** Entries looked at for an equal one. */
const MOST_LOOKS = 8

/** A kind with its crowds, which differ in their waits, and the calm span they share. */
export interface Room {
  readonly kind: Kind
  readonly spans: CalmSpans
  /** The minute that the span was worked out for. */
  minute: number
  readonly crowds: Crowd[]
}

export class Crowd {
  count = 0
  private offset = 0
  private burnt = 0
  /** No entry lies below or above these buckets. */
  private low = 0
  private high = -1
  /** Entries by fuel, where the generator runs. */
  private readonly driest: Driest
  private burns = false
  /** First entry of each bucket. */
  private readonly ring: Int32Array
  private readonly mask: number

  /** Set by `enter` before anything else is done. */
  room!: Room
  readonly waits: Waits = { solarUntil: SOLAR_IN, solarTooUntil: SOLAR_IN }
  /** First minute in which a wait ends. */
  changesAt = Number.POSITIVE_INFINITY

  /**
   * @param number  its own, by which a cohort knows it
   */
  constructor(
    readonly number: number,
    readonly cohorts: Cohorts,
    private readonly rules: Rules,
  ) {
    const size = 2 ** Math.ceil(Math.log2(rules.capacityKwh * BUCKETS_A_KWH + 4))
    this.ring = new Int32Array(size).fill(NONE)
    this.mask = size - 1
    this.driest = new Driest(cohorts)
  }

  get kind(): Kind {
    return this.room.kind
  }

  /** Joins the crowds of a kind, with all its entries. */
  enter(room: Room, changesAt: number): void {
    this.room = room
    this.changesAt = changesAt
    room.crowds.push(this)
    const { generator } = room.kind
    this.burns = generator === 'running' || generator === 'kept running'
    this.driest.clear()
    if (this.burns) {
      for (const id of this.entries()) this.driest.note(id)
    }
  }

  /** Leaves the crowds of its kind. */
  leave(): void {
    const { crowds } = this.room
    crowds[crowds.indexOf(this)] = crowds.at(-1)!
    crowds.pop()
  }

  /** Forgets what it moved. Only while it has no entries. */
  rest(): void {
    this.offset = 0
    this.burnt = 0
  }

  /** Stored energy of an entry. [kWh] */
  storedOf(id: number): number {
    return this.cohorts.base[id]! + this.offset
  }

  /** A copy of an entry's state. */
  stateOf(id: number): State {
    const state = { ...this.cohorts.state[id]!, ...this.waits }
    return { ...state, stored: this.storedOf(id), fuelL: this.fuelOf(id) }
  }

  /** Least fuel of an entry's histories. [l] */
  fuelOf(id: number): number {
    return this.cohorts.fuel[id]! - this.burnt
  }

  /** Takes in a cohort that is in no crowd. */
  insert(id: number): void {
    const { cohorts, ring } = this
    const base = cohorts.state[id]!.stored - this.offset
    cohorts.base[id] = base
    this.noteFuel(id)
    this.noteDriest(id)
    const bucket = Math.floor(base * BUCKETS_A_KWH)
    if (this.count === 0) {
      this.low = bucket
      this.high = bucket
    } else if (bucket < this.low) this.low = bucket
    else if (bucket > this.high) this.high = bucket
    const at = bucket & this.mask
    const after = ring[at]!
    cohorts.prev[id] = NONE
    cohorts.next[id] = after
    if (after !== NONE) cohorts.prev[after] = id
    ring[at] = id
    cohorts.bucket[id] = at
    cohorts.crowd[id] = this.number
    this.count++
  }

  /**
   * An entry in the same state after minute `i` as one that is in no crowd; NONE where none is
   * found. Where no tank is near dry what differs in fuel alone is the same.
   */
  findSame(state: State, i: number): number {
    if (this.count === 0) return NONE
    const { cohorts, ring } = this
    const base = state.stored - this.offset
    let looks = MOST_LOOKS
    let other = ring[Math.floor(base * BUCKETS_A_KWH) & this.mask]!
    for (; other !== NONE; other = cohorts.next[other]!) {
      // Those that differ in a timer alone may be many; not to meet costs time, no truth.
      if (looks-- === 0) return NONE
      if (cohorts.base[other] !== base || !this.hasSameTimers(other, state, i)) continue
      const fuel = cohorts.fuel[other]! - this.burnt
      if (fuel === state.fuelL) return other
      if (fuel > safeL(state, this.rules) && isSafe(state, this.rules)) return other
    }
    return NONE
  }

  private hasSameTimers(id: number, b: State, i: number): boolean {
    const a = this.cohorts.state[id]!
    restTimers(a, i, this.rules)
    if (a.generatorFrom !== b.generatorFrom || a.personAt !== b.personAt) return false
    if (a.togetherUntil !== b.togetherUntil || a.offFrom !== b.offFrom) return false
    if (a.wakeAt !== b.wakeAt) return false
    return a.retryAt === b.retryAt && a.retries === b.retries
  }

  /** The fuel of a cohort as it would be had it been in the crowd from the first. */
  noteFuel(id: number): void {
    const { cohorts } = this
    cohorts.fuel[id] = cohorts.state[id]!.fuelL + this.burnt
  }

  /** The least fuel of an entry has become less. */
  noteDriest(id: number): void {
    if (this.burns) this.driest.note(id)
  }

  /** Takes out what a calm span does not cover. */
  takeRestless(calm: Calm, out: Ids): void {
    if (!(calm.above < calm.below)) {
      this.takeAll(out)
      return
    }
    if ((calm.above - this.offset) * BUCKETS_A_KWH >= this.low) this.takeBelow(calm, out)
    if ((calm.below - this.offset) * BUCKETS_A_KWH < this.high + 1) this.takeAbove(calm, out)
    if (this.burns) this.takeDry(calm, out)
  }

  /** Takes out entries below a span. */
  private takeBelow(calm: Calm, out: Ids): void {
    const { cohorts, ring, mask } = this
    const base = calm.above - this.offset
    const to = Math.min(Math.floor(base * BUCKETS_A_KWH), this.high)
    for (let bucket = this.low; bucket <= to; bucket++) {
      for (let id = ring[bucket & mask]!; id !== NONE; ) {
        const following = cohorts.next[id]!
        if (cohorts.base[id]! <= base) this.takeOut(id, out)
        id = following
      }
    }
    this.narrow()
  }

  /** Takes out entries above a span. */
  private takeAbove(calm: Calm, out: Ids): void {
    if (this.count === 0) return
    const { cohorts, ring, mask } = this
    const base = calm.below - this.offset
    const from = Math.max(Math.floor(base * BUCKETS_A_KWH), this.low)
    for (let bucket = from; bucket <= this.high; bucket++) {
      for (let id = ring[bucket & mask]!; id !== NONE; ) {
        const following = cohorts.next[id]!
        if (cohorts.base[id]! >= base) this.takeOut(id, out)
        id = following
      }
    }
    this.narrow()
  }

  /** Takes out entries whose tank is dry by the end of a minute. */
  private takeDry(calm: Calm, out: Ids): void {
    const { driest, cohorts } = this
    if (driest.isEmpty) return
    const fuel = this.burnt + calm.litres + cansLeftL(this.kind, this.rules)
    if (driest.fuel > fuel) return
    while (!driest.isEmpty && driest.fuel <= fuel) {
      const { id, fuel: noted } = driest
      driest.drop()
      // It may have left meanwhile.
      if (cohorts.crowd[id] !== this.number) continue
      if (cohorts.fuel[id] === noted) this.takeOut(id, out)
    }
    this.narrow()
  }

  /** Takes out everything. */
  takeAll(out: Ids): void {
    this.takeWhere(() => true, out)
  }

  /** Takes out what is wanted. */
  takeWhere(wanted: (id: number) => boolean, out: Ids): void {
    const { cohorts, ring, mask } = this
    for (let bucket = this.low; bucket <= this.high && this.count > 0; bucket++) {
      for (let id = ring[bucket & mask]!; id !== NONE; ) {
        const following = cohorts.next[id]!
        if (wanted(id)) this.takeOut(id, out)
        id = following
      }
    }
    this.narrow()
  }

  /** Its entries. */
  entries(): number[] {
    const found: number[] = []
    for (let bucket = this.low; bucket <= this.high; bucket++) {
      let id = this.ring[bucket & this.mask]!
      for (; id !== NONE; id = this.cohorts.next[id]!) found.push(id)
    }
    return found
  }

  /** Moves all that is left. */
  move(calm: Calm): void {
    this.offset += calm.delta
    this.burnt += calm.litres
  }

  private takeOut(id: number, out: Ids): void {
    this.take(id)
    out.push(id)
  }

  /** Takes one entry out, its state put right. */
  take(id: number): void {
    const { cohorts } = this
    const [prev, next] = [cohorts.prev[id]!, cohorts.next[id]!]
    if (prev === NONE) this.ring[cohorts.bucket[id]!] = next
    else cohorts.next[prev] = next
    if (next !== NONE) cohorts.prev[next] = prev
    const state = cohorts.state[id]!
    state.stored = cohorts.base[id]! + this.offset
    state.fuelL = cohorts.fuel[id]! - this.burnt
    state.solarUntil = this.waits.solarUntil
    state.solarTooUntil = this.waits.solarTooUntil
    cohorts.crowd[id] = NONE
    this.count--
  }

  private narrow(): void {
    if (this.count === 0) return
    const { ring, mask } = this
    while (ring[this.low & mask] === NONE) this.low++
    while (ring[this.high & mask] === NONE) this.high--
  }
}

/** Whether no tank runs dry in the next minute. */
export function isSafe(state: State, rules: Rules): boolean {
  return state.fuelL > safeL(state, rules)
}

/** Fuel above which that is so. [l] */
function safeL(state: State, rules: Rules): number {
  return cansLeftL(state, rules) + (rules.generator?.mostLitres ?? 0)
}
