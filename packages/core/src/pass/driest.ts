// Which cohort of a crowd runs dry first: a heap by fuel, in which what has left is passed over
// when it comes to the top.

import { type Cohorts, doubled } from './cohorts.js'

export class Driest {
  private count = 0
  private ids = new Int32Array(16)
  private fuels = new Float64Array(16)

  constructor(private readonly cohorts: Cohorts) {}

  clear(): void {
    this.count = 0
  }

  get isEmpty(): boolean {
    return this.count === 0
  }

  /** The one with the least fuel, and its fuel as it was noted. Only if there is one. */
  get id(): number {
    return this.ids[0]!
  }

  get fuel(): number {
    return this.fuels[0]!
  }

  note(id: number): void {
    const fuel = this.cohorts.fuel[id]!
    if (this.count === this.ids.length) {
      this.ids = doubled(this.ids)
      this.fuels = doubled(this.fuels)
    }
    const { ids, fuels } = this
    let at = this.count++
    while (at > 0) {
      const above = (at - 1) >> 1
      if (!(fuel < fuels[above]!)) break
      ids[at] = ids[above]!
      fuels[at] = fuels[above]!
      at = above
    }
    ids[at] = id
    fuels[at] = fuel
  }

  /** Passes over the first. Only if there is one. */
  drop(): void {
    const { ids, fuels } = this
    const last = --this.count
    const [id, fuel] = [ids[last]!, fuels[last]!]
    let at = 0
    for (;;) {
      let below = 2 * at + 1
      if (below >= last) break
      if (below + 1 < last && fuels[below + 1]! < fuels[below]!) below++
      if (!(fuels[below]! < fuel)) break
      ids[at] = ids[below]!
      fuels[at] = fuels[below]!
      at = below
    }
    ids[at] = id
    fuels[at] = fuel
  }
}
