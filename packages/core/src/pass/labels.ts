// Histories of one cohort that differ in their fuel alone.
//
// Fuel feeds back only when a tank runs dry, so cohorts with different fuel may become one as long
// as no tank is near that: all burn the same from then on. They hang in a pairing heap by what each
// has above its parent, so a burn touches none of them, and the one that runs dry first is its root.
//
// Each history holds a list of those who wait to learn which down spell comes next: starts (their
// number) and spells (theirs, counted on from the last start).

import type { Spells } from '../cut/spells.js'
import { doubled, NONE } from './cohorts.js'
import { Ids } from './ids.js'

const FIRST_SIZE = 4096

export class Labels {
  /** Fuel above that of its parent; 0 for a root, but for one that is to be melded. [l] */
  above: Float64Array = new Float64Array(FIRST_SIZE)
  private child = new Int32Array(FIRST_SIZE)
  private sibling = new Int32Array(FIRST_SIZE)
  /** First and last of those who wait. */
  private head = new Int32Array(FIRST_SIZE)
  private tail = new Int32Array(FIRST_SIZE)
  private used = 0
  private free = NONE
  /** Who waits beside each start and spell. */
  private beside: Int32Array
  /** Reused. */
  private readonly found = new Ids()

  constructor(
    private readonly starts: number,
    private readonly spells: Spells,
  ) {
    this.beside = new Int32Array(Math.max(FIRST_SIZE, starts))
  }

  ofStart(start: number): number {
    let label = this.free
    if (label === NONE) {
      if (this.used === this.above.length) this.grow()
      label = this.used++
    } else this.free = this.sibling[label]!
    this.above[label] = 0
    this.child[label] = NONE
    this.waitsAlone(label, start)
    return label
  }

  /** Whether histories of different fuel are in the heap. */
  isMixed(root: number): boolean {
    return this.child[root] !== NONE
  }

  /**
   * Makes two roots one, `above` telling what the second has above the first, less than nothing
   * where it has less.
   *
   * @returns  the root of both: the one with less fuel, with nothing above it
   */
  meld(a: number, b: number): number {
    const root = this.below(a, b)
    this.above[root] = 0
    return root
  }

  /** Those who wait in `b` go on in `a`, whose fuel is the same. */
  private append(a: number, b: number): number {
    this.beside[this.tail[a]!] = this.head[b]!
    this.tail[a] = this.tail[b]!
    this.sibling[b] = this.free
    this.free = b
    return a
  }

  private hang(low: number, high: number): number {
    this.sibling[high] = this.child[low]!
    this.child[low] = high
    return low
  }

  /**
   * Takes the root away from what hangs below it, which becomes one heap again.
   *
   * @param root  of a heap that is mixed
   * @returns     root of the rest; `above` tells its fuel above that of the old root
   */
  withoutRoot(root: number): number {
    const pairs = this.found
    pairs.clear()
    for (let label = this.child[root]!; label !== NONE; ) {
      const other = this.sibling[label]!
      const after = other === NONE ? NONE : this.sibling[other]!
      pairs.push(other === NONE ? label : this.below(label, other))
      label = after
    }
    this.child[root] = NONE
    let rest = pairs.at(pairs.count - 1)
    for (let at = pairs.count - 2; at >= 0; at--) rest = this.below(rest, pairs.at(at))
    return rest
  }

  /** What a new root has above the old one, told once. [l] */
  takeMore(root: number): number {
    const more = this.above[root]!
    this.above[root] = 0
    return more
  }

  /** Two heaps below the same parent as one; its root keeps its fuel above that parent. */
  private below(a: number, b: number): number {
    const { above } = this
    const apart = above[b]! - above[a]!
    if (apart === 0 && this.child[b] === NONE) return this.append(a, b)
    if (apart < 0) {
      above[a] = -apart
      return this.hang(b, a)
    }
    above[b] = apart
    return this.hang(a, b)
  }

  /** Tells all who wait that their next spell begins in minute `i`. */
  goDown(root: number, i: number): void {
    this.all(root)
    for (let at = 0; at < this.found.count; at++) this.goDownOne(this.found.at(at), i)
  }

  private goDownOne(label: number, i: number): void {
    const { spells, starts } = this
    const spell = spells.open(i)
    const last = this.tail[label]!
    for (let who = this.head[label]!; ; who = this.beside[who]!) {
      if (who < starts) spells.first[who] = spell
      else spells.link(who - starts, spell)
      if (who === last) break
    }
    this.waitsAlone(label, starts + spell)
  }

  /** Ends the open spells of all. Cohorts that became one while down have several. */
  comeUp(root: number, i: number): void {
    this.all(root)
    for (let at = 0; at < this.found.count; at++) this.comeUpOne(this.found.at(at), i)
  }

  private comeUpOne(label: number, i: number): void {
    const { spells, starts } = this
    const last = this.tail[label]!
    for (let who = this.head[label]!; ; who = this.beside[who]!) {
      if (who >= starts) spells.close(who - starts, i)
      if (who === last) break
    }
  }

  /** Nobody waits any more; the numbers of the heap may be given anew. */
  forget(root: number): void {
    this.all(root)
    for (let at = 0; at < this.found.count; at++) {
      const label = this.found.at(at)
      this.sibling[label] = this.free
      this.free = label
    }
  }

  /** Tells who waits, and the fuel that each has above the root. [l] */
  tell(root: number, found: (who: number, moreL: number) => void, moreL = 0): void {
    for (let who = this.head[root]!; ; who = this.beside[who]!) {
      found(who, moreL)
      if (who === this.tail[root]) break
    }
    for (let label = this.child[root]!; label !== NONE; label = this.sibling[label]!) {
      this.tell(label, found, moreL + this.above[label]!)
    }
  }

  private waitsAlone(label: number, who: number): void {
    while (who >= this.beside.length) this.beside = doubled(this.beside)
    this.head[label] = who
    this.tail[label] = who
  }

  /** Finds those of a heap, the root first. */
  private all(root: number): void {
    const { found, child, sibling } = this
    found.clear()
    found.push(root)
    for (let at = 0; at < found.count; at++) {
      for (let label = child[found.at(at)]!; label !== NONE; label = sibling[label]!) {
        found.push(label)
      }
    }
  }

  private grow(): void {
    this.above = doubled(this.above)
    this.child = doubled(this.child)
    this.sibling = doubled(this.sibling)
    this.head = doubled(this.head)
    this.tail = doubled(this.tail)
  }
}
