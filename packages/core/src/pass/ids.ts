// A list that is filled and emptied every minute, for which an array of the language is too dear:
// it gives its room back when it is emptied.

import { doubled } from './cohorts.js'

export class Ids {
  count = 0
  private ids = new Int32Array(64)

  at(place: number): number {
    return this.ids[place]!
  }

  push(id: number): void {
    if (this.count === this.ids.length) this.ids = doubled(this.ids)
    this.ids[this.count++] = id
  }

  clear(): void {
    this.count = 0
  }
}
