// Which cohorts in crowds have a timer that ends in which minute.

import { type Cohorts, NONE } from './cohorts.js'

export class Dues {
  /** First of each minute. */
  private readonly first: Int32Array

  /** @param minutes  how many there are; what is due later is not kept */
  constructor(
    private readonly cohorts: Cohorts,
    minutes: number,
  ) {
    this.first = new Int32Array(minutes).fill(NONE)
  }

  /** First of minute `i`, NONE where there is none. */
  firstOf(i: number): number {
    return this.first[i]!
  }

  enter(id: number, minute: number): void {
    const { cohorts, first } = this
    if (minute < 0 || minute >= first.length) return
    const after = first[minute]!
    cohorts.due[id] = minute
    cohorts.duePrev[id] = NONE
    cohorts.dueNext[id] = after
    if (after !== NONE) cohorts.duePrev[after] = id
    first[minute] = id
  }

  leave(id: number): void {
    const { cohorts, first } = this
    const minute = cohorts.due[id]!
    if (minute === NONE) return
    const [prev, next] = [cohorts.duePrev[id]!, cohorts.dueNext[id]!]
    if (prev === NONE) first[minute] = next
    else cohorts.dueNext[prev] = next
    if (next !== NONE) cohorts.duePrev[next] = prev
    cohorts.due[id] = NONE
  }
}
