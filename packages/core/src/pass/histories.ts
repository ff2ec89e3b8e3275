// Cohorts with all that hangs on them: who is in them, which timers run, which spells are open.

import type { Spells } from '../cut/spells.js'
import type { Rules } from '../island/rules.js'
import { copyState } from '../island/state.js'
import { Cohorts } from './cohorts.js'
import { Dues } from './dues.js'
import { Labels } from './labels.js'

export class Histories {
  readonly cohorts: Cohorts
  readonly dues: Dues
  private readonly labels: Labels

  constructor(starts: number, minutes: number, spells: Spells, rules: Rules) {
    this.cohorts = new Cohorts(rules)
    this.dues = new Dues(this.cohorts, minutes)
    this.labels = new Labels(starts, spells)
  }

  /** A cohort of one start, outside of all crowds; its state is still to be set. */
  ofStart(start: number): number {
    return this.cohorts.add(this.labels.ofStart(start), start)
  }

  /** Whether histories of different fuel are in it. */
  isMixed(id: number): boolean {
    return this.labels.isMixed(this.cohorts.label[id]!)
  }

  /**
   * One takes over the starts of another in the same state; the fuel of both, as `cohorts` has it,
   * may differ where no tank is near dry.
   */
  join(id: number, other: number): void {
    const { cohorts, labels, dues } = this
    const [label, taken] = [cohorts.label[id]!, cohorts.label[other]!]
    labels.above[taken] = cohorts.fuel[other]! - cohorts.fuel[id]!
    cohorts.label[id] = labels.meld(label, taken)
    cohorts.fuel[id] = Math.min(cohorts.fuel[id]!, cohorts.fuel[other]!)
    cohorts.youngest[id] = Math.max(cohorts.youngest[id]!, cohorts.youngest[other]!)
    cohorts.downSince[id] = Math.max(cohorts.downSince[id]!, cohorts.downSince[other]!)
    dues.leave(other)
    cohorts.remove(other)
  }

  /**
   * Parts the history with the least fuel, with the state as it is, from the others, which are
   * left. Only if mixed.
   *
   * @returns  its cohort, and what the next driest of the others has above it. [l]
   */
  partDriest(id: number): { driest: number; more: number } {
    const { cohorts, labels } = this
    const root = cohorts.label[id]!
    const rest = labels.withoutRoot(root)
    const driest = cohorts.add(root, cohorts.youngest[id]!)
    cohorts.down[driest] = cohorts.down[id]!
    cohorts.downSince[driest] = cohorts.downSince[id]!
    cohorts.label[id] = rest
    copyState(cohorts.state[driest]!, cohorts.state[id]!)
    return { driest, more: labels.takeMore(rest) }
  }

  /** Nobody follows it any more. */
  forget(id: number): void {
    this.dues.leave(id)
    this.labels.forget(this.cohorts.label[id]!)
    this.cohorts.remove(id)
  }

  /** Tells who waits in a cohort, and the fuel that each has above the driest. [l] */
  tell(id: number, found: (who: number, moreL: number) => void): void {
    this.labels.tell(this.cohorts.label[id]!, found)
  }

  goDown(id: number, i: number): void {
    this.labels.goDown(this.cohorts.label[id]!, i)
    this.cohorts.down[id] = 1
    this.cohorts.downSince[id] = i
  }

  comeUp(id: number, i: number): void {
    this.labels.comeUp(this.cohorts.label[id]!, i)
    this.cohorts.down[id] = 0
  }
}
