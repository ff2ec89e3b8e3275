// Starts that have become one: the same state in the same minute, so the same future.

import type { Spells } from '../cut/spells.js'
import { NO_SPELL } from '../cut/spells.js'
import type { Mode } from '../island/calm.js'
import type { State } from '../island/state.js'

/** Something that waits to learn which down spell comes next: a start, or a spell. */
interface Ref {
  readonly start: number
  readonly spell: number
  next: Ref | null
}

/** A crowd, as a cohort in it sees it. */
export interface Home {
  readonly mode: Mode
  take(cohort: Cohort): void
}

export class Cohort {
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
  /** Its timer of generator or person, and the minute in which that ends; -1 without one. */
  timer = -1
  due = -1
  down = false
  /** First minute of the latest of its open spells. */
  downSince = 0
  private head: Ref
  private tail: Ref

  constructor(
    readonly state: State,
    /** The latest of its starts. */
    public youngest: number,
  ) {
    this.head = { start: youngest, spell: NO_SPELL, next: null }
    this.tail = this.head
  }

  /** Takes over the starts of another in the same state. */
  join(other: Cohort): void {
    this.tail.next = other.head
    this.tail = other.tail
    this.youngest = Math.max(this.youngest, other.youngest)
    this.downSince = Math.max(this.downSince, other.downSince)
  }

  /** Tells all who wait that their next spell begins in minute `i`. */
  goDown(i: number, spells: Spells): void {
    const spell = spells.open(i)
    for (let ref: Ref | null = this.head; ref !== null; ref = ref.next) {
      if (ref.spell === NO_SPELL) spells.first[ref.start] = spell
      else spells.link(ref.spell, spell)
    }
    this.head = { start: -1, spell, next: null }
    this.tail = this.head
    this.down = true
    this.downSince = i
  }

  /** Ends the spells of all histories in it. Cohorts that joined while down have several. */
  comeUp(i: number, spells: Spells): void {
    for (let ref: Ref | null = this.head; ref !== null; ref = ref.next) {
      if (ref.spell !== NO_SPELL) spells.close(ref.spell, i)
    }
    this.down = false
  }
}
