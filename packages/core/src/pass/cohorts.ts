// Starts that have become one: the same state but for fuel in the same minute, so the same future
// until one of them runs dry.
//
// They are columns with an index a cohort: a year has half a million starts, each goes through a
// dozen hands, and objects for them cost more than the rule book does.

import type { Timers, Waits } from '../island/mode.js'

/** All of them at rest. */
export function noTimers(): Timers {
  return { timer: -1, togetherUntil: -1, onBefore: -1, retryAt: -1, retries: 0 }
}

/** No cohort, crowd, minute or label. */
export const NONE = -1

/** The kind of a start that has yet to live its first minute. */
export const FRESH = -2

const FIRST_SIZE = 4096

export class Cohorts {
  /** In a crowd: stored energy less the crowd's offset; else stored energy. [kWh] */
  base: Float64Array = new Float64Array(FIRST_SIZE)
  /** In a crowd: fuel plus what the crowd burnt; else fuel. Of its driest history. [l] */
  fuel: Float64Array = new Float64Array(FIRST_SIZE)
  /** Histories that differ in fuel: the root of their heap. */
  label: Int32Array = new Int32Array(FIRST_SIZE)
  /** The latest of its starts. */
  youngest: Int32Array = new Int32Array(FIRST_SIZE)
  /** 1 while it serves nothing. */
  down: Uint8Array = new Uint8Array(FIRST_SIZE)
  /** First minute of the latest of its open spells. */
  downSince: Int32Array = new Int32Array(FIRST_SIZE)
  /** Number of the crowd it is in. */
  crowd: Int32Array = new Int32Array(FIRST_SIZE)
  /** Place in the crowd's ring, NONE outside of crowds, and neighbours there. */
  bucket: Int32Array = new Int32Array(FIRST_SIZE)
  prev: Int32Array = new Int32Array(FIRST_SIZE)
  next: Int32Array = new Int32Array(FIRST_SIZE)
  /**
   * The kind it was of when it was placed, and its waits: NONE where none describes it, FRESH for a
   * start that has yet to live its first minute.
   */
  code: Int32Array = new Int32Array(FIRST_SIZE)
  solarUntil: Int32Array = new Int32Array(FIRST_SIZE)
  solarTooUntil: Int32Array = new Int32Array(FIRST_SIZE)
  /** Timers of its own, as `Timers` has them. */
  timer: Int32Array = new Int32Array(FIRST_SIZE)
  togetherUntil: Int32Array = new Int32Array(FIRST_SIZE)
  onBefore: Int32Array = new Int32Array(FIRST_SIZE)
  retryAt: Int32Array = new Int32Array(FIRST_SIZE)
  retries: Int32Array = new Int32Array(FIRST_SIZE)
  /** In a crowd: the minute in which a timer ends, and neighbours in the list of that minute. */
  due: Int32Array = new Int32Array(FIRST_SIZE)
  duePrev: Int32Array = new Int32Array(FIRST_SIZE)
  dueNext: Int32Array = new Int32Array(FIRST_SIZE)

  private used = 0
  private free = NONE

  /** A cohort with a heap of labels, outside of all crowds. */
  add(label: number, youngest: number): number {
    let id = this.free
    if (id === NONE) {
      if (this.used === this.base.length) this.grow()
      id = this.used++
    } else this.free = this.next[id]!
    this.label[id] = label
    this.youngest[id] = youngest
    this.down[id] = 0
    this.code[id] = FRESH
    this.bucket[id] = NONE
    this.due[id] = NONE
    return id
  }

  /** Its number may be given anew. */
  remove(id: number): void {
    this.next[id] = this.free
    this.free = id
  }

  timersOf(id: number, into: Timers): Timers {
    into.timer = this.timer[id]!
    into.togetherUntil = this.togetherUntil[id]!
    into.onBefore = this.onBefore[id]!
    into.retryAt = this.retryAt[id]!
    into.retries = this.retries[id]!
    return into
  }

  setTimers(id: number, timers: Timers): void {
    this.timer[id] = timers.timer
    this.togetherUntil[id] = timers.togetherUntil
    this.onBefore[id] = timers.onBefore
    this.retryAt[id] = timers.retryAt
    this.retries[id] = timers.retries
  }

  waitsOf(id: number, into: Waits): Waits {
    into.solarUntil = this.solarUntil[id]!
    into.solarTooUntil = this.solarTooUntil[id]!
    return into
  }

  setWaits(id: number, waits: Waits): void {
    this.solarUntil[id] = waits.solarUntil
    this.solarTooUntil[id] = waits.solarTooUntil
  }

  private grow(): void {
    this.base = doubled(this.base)
    this.fuel = doubled(this.fuel)
    this.label = doubled(this.label)
    this.youngest = doubled(this.youngest)
    this.down = doubled(this.down)
    this.downSince = doubled(this.downSince)
    this.crowd = doubled(this.crowd)
    this.bucket = doubled(this.bucket)
    this.prev = doubled(this.prev)
    this.next = doubled(this.next)
    this.code = doubled(this.code)
    this.solarUntil = doubled(this.solarUntil)
    this.solarTooUntil = doubled(this.solarTooUntil)
    this.timer = doubled(this.timer)
    this.togetherUntil = doubled(this.togetherUntil)
    this.onBefore = doubled(this.onBefore)
    this.retryAt = doubled(this.retryAt)
    this.retries = doubled(this.retries)
    this.due = doubled(this.due)
    this.duePrev = doubled(this.duePrev)
    this.dueNext = doubled(this.dueNext)
  }
}

/** The same column with room for twice as many. */
export function doubled<T extends Float64Array | Int32Array | Uint8Array>(column: T): T {
  const wider = new (column.constructor as new (n: number) => T)(2 * column.length)
  wider.set(column)
  return wider
}
