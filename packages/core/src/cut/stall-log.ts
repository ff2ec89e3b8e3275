// A generator that starts and stalls again and again, told as one.

import { Event } from '../island/state.js'
import type { Tell, Told } from './event-line.js'
import type { Said } from './event-texts.js'

/** A set that has not stalled for so long has another reason the next time. [min] */
const CALM_MINUTES = 120
/** Stalls from which they are told as one. */
const MANY = 3

const STALL = Event.overload | Event.generatorOverload | Event.generatorOn

interface Held {
  readonly minute: number
  readonly told: Told
}

/** Tells the first stall at a start in full; holds back what follows until it knows how many came. */
export class StallLog {
  private run: { from: number; last: number; count: number; held: Held[] } | null = null

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
  takes({ bit, told }: Said, i: number): boolean {
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
    this.run.held.push({ minute: i, told })
    return true
  }

  end(): void {
    const { run } = this
    this.run = null
    if (run === null) return
    if (run.count < MANY) {
      for (const { minute, told } of run.held) this.tell(minute, told)
      return
    }
    const text =
      `The generator was started and stalled ${run.count} times from ${this.clock(run.from)} to ` +
      `${this.clock(run.last)}. Whoever starts it would first switch off what stalls it; here ` +
      'nobody does.'
    this.tell(run.last, { id: 'stalls-again', text })
  }
}
