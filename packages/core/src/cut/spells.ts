// Down spells: the spans in which an island served nothing, as a result from which everything
// else about a cut is folded.
//
// They form a forest: each start points at its first spell, each spell at the next of the same
// history, so that histories that have become one share what follows.

/** No further spell. */
export const NO_SPELL = -1

export class Spells {
  /** First spell of each start. */
  readonly first: Int32Array
  private froms: Int32Array = new Int32Array(1024)
  private tos: Int32Array = new Int32Array(1024)
  private nexts: Int32Array = new Int32Array(1024)
  private count = 0

  /**
   * @param starts   how many starts
   * @param horizon  minutes that each start is followed
   */
  constructor(
    starts: number,
    readonly horizon: number,
  ) {
    this.first = new Int32Array(starts).fill(NO_SPELL)
  }

  get length(): number {
    return this.count
  }

  /** Adds a spell that begins at a minute and is still open; returns its index. */
  open(from: number): number {
    if (this.count === this.froms.length) this.grow()
    this.froms[this.count] = from
    this.tos[this.count] = -1
    this.nexts[this.count] = NO_SPELL
    return this.count++
  }

  close(spell: number, to: number): void {
    this.tos[spell] = to
  }

  link(spell: number, next: number): void {
    this.nexts[spell] = next
  }

  /** First minute of the spell. */
  from(spell: number): number {
    return this.froms[spell]!
  }

  /** One past its last minute; -1 while it is open at the end of what was followed. */
  to(spell: number): number {
    return this.tos[spell]!
  }

  next(spell: number): number {
    return this.nexts[spell]!
  }

  private grow(): void {
    const wider = (old: Int32Array): Int32Array => {
      const out = new Int32Array(old.length * 2)
      out.set(old)
      return out
    }
    this.froms = wider(this.froms)
    this.tos = wider(this.tos)
    this.nexts = wider(this.nexts)
  }
}
