// Histories of one cohort that differ in their fuel alone.
//
// Fuel feeds back only when a tank runs dry, so cohorts with different fuel may become one as long
// as no tank is near that: all burn the same from then on. They hang in a pairing heap by what each
// has above its parent, so a burn touches none of them, and the one that runs dry first is its root.

import { NO_SPELL, type Spells } from '../cut/spells.js'

/** Something that waits to learn which down spell comes next: a start, or a spell. */
interface Ref {
  readonly start: number
  readonly spell: number
  next: Ref | null
}

export interface Label {
  /** Fuel above that of its parent; 0 for a root. [l] */
  more: number
  head: Ref
  tail: Ref
  child: Label | null
  sibling: Label | null
}

export function labelOf(start: number): Label {
  const ref = { start, spell: NO_SPELL, next: null }
  return { more: 0, head: ref, tail: ref, child: null, sibling: null }
}

/**
 * Makes two roots one.
 *
 * @param apart  fuel of `b` less that of `a`. [l]
 * @returns      the root of both: the one with less fuel
 */
export function meld(a: Label, b: Label, apart: number): Label {
  if (apart === 0 && b.child === null) {
    a.tail.next = b.head
    a.tail = b.tail
    return a
  }
  const [low, high] = apart < 0 ? [b, a] : [a, b]
  high.more = Math.abs(apart)
  high.sibling = low.child
  low.child = high
  return low
}

/**
 * Takes the root away from what hangs below it, which becomes one heap again.
 *
 * @returns  the root of the rest, `more` being its fuel above that of the old root; null where
 *           there is none
 */
export function withoutRoot(root: Label): Label | null {
  const pairs: Label[] = []
  for (let label = root.child; label !== null; ) {
    const other: Label | null = label.sibling
    const after: Label | null = other?.sibling ?? null
    label.sibling = null
    if (other === null) pairs.push(label)
    else {
      other.sibling = null
      pairs.push(above(label, other))
    }
    label = after
  }
  root.child = null
  let rest = pairs.pop() ?? null
  for (let at = pairs.length - 1; at >= 0; at--) rest = above(rest as Label, pairs[at]!)
  return rest
}

/** Two heaps below the same parent as one; its root keeps its fuel above that parent. */
function above(a: Label, b: Label): Label {
  const fuel = Math.min(a.more, b.more)
  const root = meld(a, b, b.more - a.more)
  root.more = fuel
  return root
}

/** Tells all who wait that their next spell begins in minute `i`. */
export function goDown(root: Label, i: number, spells: Spells): void {
  for (const label of all(root)) {
    const spell = spells.open(i)
    for (let ref: Ref | null = label.head; ref !== null; ref = ref.next) {
      if (ref.spell === NO_SPELL) spells.first[ref.start] = spell
      else spells.link(ref.spell, spell)
    }
    label.head = { start: -1, spell, next: null }
    label.tail = label.head
  }
}

/** Ends the open spells of all. Cohorts that became one while down have several. */
export function comeUp(root: Label, i: number, spells: Spells): void {
  for (const label of all(root)) {
    for (let ref: Ref | null = label.head; ref !== null; ref = ref.next) {
      if (ref.spell !== NO_SPELL) spells.close(ref.spell, i)
    }
  }
}

function all(root: Label): Label[] {
  const found = [root]
  for (let at = 0; at < found.length; at++) {
    for (let label = found[at]!.child; label !== null; label = label.sibling) found.push(label)
  }
  return found
}
