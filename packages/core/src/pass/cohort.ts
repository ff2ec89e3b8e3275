// Starts that have become one: the same state but for fuel in the same minute, so the same future
// until one of them runs dry.

import type { Spells } from '../cut/spells.js'
import type { Kind, Timers, Waits } from '../island/mode.js'
import type { State } from '../island/state.js'
import { comeUp, goDown, type Label, labelOf, meld, withoutRoot } from './labels.js'

/** A crowd, as a cohort in it sees it. */
export interface Home {
  readonly kind: Kind
  readonly waits: Waits
  take(cohort: Cohort): void
}

export class Cohort implements Timers {
  /** In a crowd: stored energy less the crowd's offset. [kWh] */
  base = 0
  /** In a crowd: fuel plus the crowd's burn. [l] */
  fuelBase = 0
  /** Neighbours in a crowd's bucket. */
  prev: Cohort | null = null
  next: Cohort | null = null
  bucket = 0
  /** The crowd it is in. */
  home: Home | null = null
  timer = -1
  togetherUntil = -1
  onBefore = -1
  /** In a crowd: the minute in which one of its timers ends; -1 without. */
  due = -1
  down = false
  /** First minute of the latest of its open spells. */
  downSince = 0

  /** @param state  that of the history with the least fuel */
  private constructor(
    readonly state: State,
    /** The latest of its starts. */
    public youngest: number,
    private root: Label,
  ) {}

  static ofStart(state: State, start: number): Cohort {
    return new Cohort(state, start, labelOf(start))
  }

  /** Takes over the starts of another in the same state; fuel may differ where no tank is near dry. */
  join(other: Cohort): void {
    const apart = other.state.fuelL - this.state.fuelL
    this.root = meld(this.root, other.root, apart)
    this.state.fuelL += Math.min(0, apart)
    this.youngest = Math.max(this.youngest, other.youngest)
    this.downSince = Math.max(this.downSince, other.downSince)
  }

  /** Whether histories of different fuel are in it. */
  get isMixed(): boolean {
    return this.root.child !== null
  }

  /** Parts the history with the least fuel from the others, which are left here. Only if mixed. */
  partDriest(): Cohort {
    const driest = new Cohort({ ...this.state }, this.youngest, this.root)
    driest.down = this.down
    driest.downSince = this.downSince
    const rest = withoutRoot(this.root) as Label
    this.state.fuelL += rest.more
    rest.more = 0
    this.root = rest
    return driest
  }

  goDown(i: number, spells: Spells): void {
    goDown(this.root, i, spells)
    this.down = true
    this.downSince = i
  }

  comeUp(i: number, spells: Spells): void {
    comeUp(this.root, i, spells)
    this.down = false
  }
}
