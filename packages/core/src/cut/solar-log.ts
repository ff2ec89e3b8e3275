// What one group of AC-coupled solar does in a cut, trips that follow each other closely told as one.

import { localTime } from '../axis/calendar.js'
import type { SolarGroup } from '../house/solar-groups.js'
import { solarKw } from '../island/solar-columns.js'
import { SOLAR_EVENTS } from '../island/state.js'
import type { Tell } from './event-line.js'
import { type Said, solarName } from './event-texts.js'
import { type Scene, SUN_KW } from './scene.js'

/** Solar that has not tripped for so long stays in. [min] */
const CALM_MINUTES = 30

/** Tells the first trip in full, and how many followed once it stays in. */
export class SolarLog {
  private run: { from: number; last: number; count: number } | null = null
  private isHeldOut = false

  constructor(
    private readonly scene: Scene,
    private readonly group: SolarGroup,
    private readonly g: number,
    private readonly tell: Tell,
  ) {}

  /** Looks whether trips are over before minute `i` is told. */
  pass(i: number): void {
    if (this.run === null || i - this.run.last <= CALM_MINUTES) return
    const name = solarName(this.scene.house, this.group)
    // Of an island that is dark nothing stays in.
    const isDark = this.scene.trace.levels[i] === this.scene.compiled.rules.dark
    if (this.run.count > 1 && !isDark) {
      const text = `${name} stays in again. ${this.tripText()}`
      this.tell(i, { id: 'solar-stays-in', text, names: this.group.names })
    }
    this.run = null
  }

  /** Whether it told what was said, or left it out on purpose. */
  takes({ bit, told }: Said, i: number): boolean {
    const { isIn, trips, heldOut } = SOLAR_EVENTS[this.g]!
    if (bit === trips) {
      if (this.run === null) this.tell(i, told)
      this.run = { from: this.run?.from ?? i, last: i, count: (this.run?.count ?? 0) + 1 }
      return true
    }
    if (bit === heldOut) {
      this.run = null
      this.isHeldOut = true
    }
    if (bit !== isIn) return false
    // The last minute of a wait tells; the first one in is the next. At night nobody sees it, but
    // what was said to be out is said to be in again.
    const sunKw = solarKw(this.scene.compiled.window, 1 << this.g, i)
    if (this.run === null && (this.isHeldOut || sunKw >= SUN_KW)) this.tell(i + 1, told)
    this.isHeldOut = false
    return true
  }

  end(): void {
    if (this.run === null || this.run.count < 2) return
    const last = this.scene.trace.n - 1
    this.tell(last, { id: 'solar-still-trips', text: this.tripText(), names: this.group.names })
  }

  private tripText(): string {
    const { trace, calendar } = this.scene
    const run = this.run!
    const clock = (i: number): string => localTime(calendar, trace.from + i).slice(-5)
    return `It tripped ${run.count} times from ${clock(run.from)} to ${clock(run.last)}.`
  }
}
