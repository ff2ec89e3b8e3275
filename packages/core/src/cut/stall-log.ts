// A generator that starts and stalls again and again, told as one.

import { Event } from '../island/state.js'
import type { Said } from './event-texts.js'
import type { Tell } from './scene.js'

/** A set that has not stalled for so long has another reason the next time. [min] */
const CALM_MINUTES = 120
/** Stalls from which they are told as one. */
const MANY = 3

const STALL = Event.overload | Event.generatorOverload | Event.generatorOn

interface Line {
  readonly minute: number
  readonly text: string
}

/** Tells the first stall at a start in full; holds back what follows until it knows how many came. */
export class StallLog {
  private run: { from: number; last: number; count: number; held: Line[] } | null = null

  constructor(
    private readonly events: ArrayLike<number>,
    private readonly clock: (minute: number) => string,
    private readonly tell: Tell,
  ) {}

  /** Looks whether stalls are over before minute `i` is told. */
  pass(i: number): void {
    if (this.run !== null && i - this.run.last > CALM_MINUTES) this.end()
  }

  /** Whether it took what was said. */
  takes({ bit, text }: Said, i: number): boolean {
    const stalls = bit === Event.overload && (this.events[i]! & STALL) === STALL
    if (this.run === null) {
      if (stalls) this.run = { from: i, last: i, count: 1, held: [] }
      return false
    }
    const follows = bit === Event.generatorCalled || (bit === Event.goesDark && i === this.run.last)
    if (!stalls && !follows) return false
    if (bit === Event.goesDark && this.run.count === 1) return false
    if (stalls) {
      this.run.last = i
      this.run.count++
    }
    this.run.held.push({ minute: i, text })
    return true
  }

  end(): void {
    const { run } = this
    this.run = null
    if (run === null) return
    if (run.count < MANY) {
      for (const { minute, text } of run.held) this.tell(minute, text)
      return
    }
    this.tell(
      run.last,
      `The generator was started and stalled ${run.count} times from ${this.clock(run.from)} to ` +
        `${this.clock(run.last)}. Whoever starts it would first switch off what stalls it; here ` +
        'nobody does.',
    )
  }
}
