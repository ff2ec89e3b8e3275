// Starts that have become one: the same state but for fuel in the same minute, so the same future
// until one of them runs dry.
//
// A cohort is a number. What is looked at for many in a row lies in columns with a place a cohort;
// the rest is its state, which is taken over by another when it is gone: a year has half a million
// starts, and a new object for each would cost more than the rule book does.

import type { Rules } from '../island/rules.js'
import { newState, type State } from '../island/state.js'

/** No cohort, crowd, minute or label. */
export const NONE = -1

const FIRST_SIZE = 4096

export class Cohorts {
  /** In a crowd its energy, fuel and solar are out of date: the crowd knows them. */
  readonly state: State[] = []
  /** In a crowd: stored energy less the crowd's offset. [kWh] */
  base: Float64Array = new Float64Array(FIRST_SIZE)
  /** Where two join, and in a crowd: fuel of its driest history, plus what the crowd burnt. [l] */
  fuel: Float64Array = new Float64Array(FIRST_SIZE)
  /** Histories that differ in fuel: the root of their heap. */
  label: Int32Array = new Int32Array(FIRST_SIZE)
  /** The latest of its starts. */
  youngest: Int32Array = new Int32Array(FIRST_SIZE)
  /** 1 while it serves nothing. */
  down: Uint8Array = new Uint8Array(FIRST_SIZE)
  /** First minute of the latest of its open spells. */
  downSince: Int32Array = new Int32Array(FIRST_SIZE)
  /** Number of the crowd it is in, NONE outside of crowds. */
  crowd: Int32Array = new Int32Array(FIRST_SIZE)
  /** Place in the crowd's ring, and neighbours there. */
  bucket: Int32Array = new Int32Array(FIRST_SIZE)
  prev: Int32Array = new Int32Array(FIRST_SIZE)
  next: Int32Array = new Int32Array(FIRST_SIZE)
  /** In a crowd: the minute in which a timer ends, and neighbours in the list of that minute. */
  due: Int32Array = new Int32Array(FIRST_SIZE)
  duePrev: Int32Array = new Int32Array(FIRST_SIZE)
  dueNext: Int32Array = new Int32Array(FIRST_SIZE)

  private free = NONE

  constructor(private readonly rules: Rules) {}

  /** A cohort with a heap of labels, outside of all crowds; its state is that of another. */
  add(label: number, youngest: number): number {
    let id = this.free
    if (id === NONE) {
      id = this.state.length
      if (id === this.base.length) this.grow()
      this.state.push(newState(this.rules, 0))
    } else this.free = this.next[id]!
    this.label[id] = label
    this.youngest[id] = youngest
    this.down[id] = 0
    this.crowd[id] = NONE
    this.due[id] = NONE
    return id
  }

  /** Its number may be given anew. */
  remove(id: number): void {
    this.next[id] = this.free
    this.free = id
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
