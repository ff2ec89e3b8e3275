// All cohorts of one mode. A calm minute moves them together: one offset is all that changes.
//
// Entries lie unsorted in buckets of 1/64 kWh by their base (stored less offset), which the
// offset does not touch. Only the end buckets are looked at for thresholds.

import type { Calm } from '../island/calm.js'
import type { Kind, Waits } from '../island/mode.js'
import type { Cohort } from './cohort.js'

const BUCKETS_A_KWH = 64
/** Entries looked at for an equal one. */
const MOST_LOOKS = 8

/** A kind with its crowds, which differ in their waits, and the calm span they share. */
export interface Room {
  readonly kind: Kind
  readonly calm: Calm
  /** The minute that `calm` was worked out for. */
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
  /** No entry has a lower fuel base. */
  private leastFuel = Number.POSITIVE_INFINITY
  private readonly ring: (Cohort | null)[]
  private readonly mask: number

  /** Set by `enter` before anything else is done. */
  room!: Room
  readonly waits: Waits = { solarUntil: 0, solarTooUntil: 0 }
  /** First minute in which a wait ends. */
  changesAt = Number.POSITIVE_INFINITY

  /** @param capacityKwh  the span that entries can lie in */
  constructor(capacityKwh: number) {
    const size = 2 ** Math.ceil(Math.log2(capacityKwh * BUCKETS_A_KWH + 4))
    this.ring = new Array<Cohort | null>(size).fill(null)
    this.mask = size - 1
  }

  get kind(): Kind {
    return this.room.kind
  }

  /** Joins the crowds of a kind, with all its entries. */
  enter(room: Room, changesAt: number): void {
    this.room = room
    this.changesAt = changesAt
    room.crowds.push(this)
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
    this.leastFuel = Number.POSITIVE_INFINITY
  }

  /**
   * @param meets  whether an equal entry is worth looking for
   * @param safeL  fuel above which no tank is near dry: what differs in it alone may meet. [l]
   * @param longAgo  loads off since before this minute make no difference any more
   */
  insert(cohort: Cohort, meets: boolean, safeL: number, longAgo: number): void {
    const { stored, fuelL } = cohort.state
    cohort.base = stored - this.offset
    cohort.fuelBase = fuelL + this.burnt
    const bucket = Math.floor(cohort.base * BUCKETS_A_KWH)
    if (this.count === 0) {
      this.low = bucket
      this.high = bucket
    } else {
      this.low = Math.min(this.low, bucket)
      this.high = Math.max(this.high, bucket)
    }
    const at = bucket & this.mask
    if (meets) {
      let looks = MOST_LOOKS
      for (let other = this.ring[at] as Cohort | null; other !== null; other = other.next) {
        // Those that differ in a timer alone may be many; not to meet costs time, no truth.
        if (looks-- === 0) break
        if (this.isSame(other, cohort, safeL, longAgo)) {
          other.state.fuelL = other.fuelBase - this.burnt
          other.join(cohort)
          other.fuelBase = other.state.fuelL + this.burnt
          this.leastFuel = Math.min(this.leastFuel, other.fuelBase)
          return
        }
      }
    }
    const after = this.ring[at]!
    cohort.prev = null
    cohort.next = after
    if (after !== null) after.prev = cohort
    this.ring[at] = cohort
    cohort.bucket = at
    cohort.home = this
    this.leastFuel = Math.min(this.leastFuel, cohort.fuelBase)
    this.count++
  }

  private isSame(a: Cohort, b: Cohort, safeL: number, longAgo: number): boolean {
    if (a.base !== b.base || a.timer !== b.timer) return false
    if (a.togetherUntil !== b.togetherUntil) return false
    if (a.onBefore !== b.onBefore && Math.max(a.onBefore, b.onBefore) > longAgo) return false
    return a.fuelBase === b.fuelBase || Math.min(a.fuelBase, b.fuelBase) - this.burnt > safeL
  }

  /**
   * Hands over what the calm span does not cover, with its state put right.
   *
   * @param cansL  fuel that is not in the tank. [l]
   */
  takeRestless(calm: Calm, cansL: number, out: Cohort[]): void {
    if (!(calm.above < calm.below)) {
      this.takeAll(out)
      return
    }
    const above = calm.above - this.offset
    const below = calm.below - this.offset
    const lowEnd = Math.floor(above * BUCKETS_A_KWH)
    if (lowEnd >= this.low) {
      this.takeWhere(this.low, Math.min(lowEnd, this.high), (c) => c.base <= above, out)
    }
    const highEnd = Math.floor(below * BUCKETS_A_KWH)
    if (this.count > 0 && highEnd <= this.high) {
      this.takeWhere(Math.max(highEnd, this.low), this.high, (c) => c.base >= below, out)
    }
    if (calm.litres > 0 && this.leastFuel - this.burnt - calm.litres <= cansL) {
      this.leastFuel = Number.POSITIVE_INFINITY
      const dry = this.burnt + calm.litres + cansL
      this.takeWhere(this.low, this.high, (c) => this.runsDry(c, dry), out)
    }
  }

  private runsDry(cohort: Cohort, dry: number): boolean {
    if (cohort.fuelBase <= dry) return true
    this.leastFuel = Math.min(this.leastFuel, cohort.fuelBase)
    return false
  }

  /** Its entries, their states put right but for their mode. */
  entries(): Cohort[] {
    const found: Cohort[] = []
    for (let bucket = this.low; bucket <= this.high; bucket++) {
      for (let cohort = this.ring[bucket & this.mask] as Cohort | null; cohort !== null; ) {
        cohort.state.stored = cohort.base + this.offset
        cohort.state.fuelL = cohort.fuelBase - this.burnt
        found.push(cohort)
        cohort = cohort.next
      }
    }
    return found
  }

  /** Moves all that is left. */
  move(calm: Calm): void {
    this.offset += calm.delta
    this.burnt += calm.litres
  }

  /** Hands over everything, states put right but for their mode. */
  takeAll(out: Cohort[]): void {
    this.takeWhere(this.low, this.high, () => true, out)
  }

  /** Forgets cohorts for which `gone` holds. */
  drop(gone: (cohort: Cohort) => boolean): void {
    this.takeWhere(this.low, this.high, gone, [])
  }

  private takeWhere(
    from: number,
    to: number,
    wanted: (cohort: Cohort) => boolean,
    out: Cohort[],
  ): void {
    for (let bucket = from; bucket <= to && this.count > 0; bucket++) {
      for (let cohort = this.ring[bucket & this.mask] as Cohort | null; cohort !== null; ) {
        const following: Cohort | null = cohort.next
        if (wanted(cohort)) {
          this.take(cohort)
          out.push(cohort)
        }
        cohort = following
      }
    }
    if (this.count === 0) return
    while (this.ring[this.low & this.mask] === null) this.low++
    while (this.ring[this.high & this.mask] === null) this.high--
  }

  /** Takes one entry out, its state put right but for its mode. */
  take(cohort: Cohort): void {
    const { prev, next } = cohort
    if (prev === null) this.ring[cohort.bucket] = next
    else prev.next = next
    if (next !== null) next.prev = prev
    cohort.prev = null
    cohort.next = null
    cohort.home = null
    cohort.state.stored = cohort.base + this.offset
    cohort.state.fuelL = cohort.fuelBase - this.burnt
    this.count--
  }
}
