// Rides of many starts, each with what it counts for, from which cases are read by rank.

/** How many starts ride how long; a start may count for a part of one. */
export class WeighedMinutes {
  private readonly weightAt: Float64Array
  private sum = 0

  /** @param most  the longest ride that is told. [min] */
  constructor(most: number) {
    this.weightAt = new Float64Array(most + 1)
  }

  add(minutes: number, weight: number): void {
    this.weightAt[minutes]! += weight
    this.sum += weight
  }

  /** Starts counted. The parts of one add up to it but for rounding. */
  get starts(): number {
    return Math.round(this.sum)
  }

  /** Share of starts that ride so long or longer; null without a start. */
  lasting(minutes: number): number | null {
    if (this.sum === 0) return null
    let weight = 0
    for (let m = minutes; m < this.weightAt.length; m++) weight += this.weightAt[m]!
    return weighedShare(weight, this.sum)
  }

  /** The shortest that counts at all. NaN without a start. */
  get least(): number {
    const found = this.weightAt.findIndex((weight) => weight > 0)
    return found < 0 ? Number.NaN : found
  }

  /** The longest that counts at all. NaN without a start. */
  get most(): number {
    const found = this.weightAt.findLastIndex((weight) => weight > 0)
    return found < 0 ? Number.NaN : found
  }

  /**
   * The lower nearest rank: with whole starts the value at place share · (starts - 1), rounded
   * down, of the rising list. NaN without a start.
   *
   * @param share  0.5 the middle one
   */
  at(share: number): number {
    // Parts of a start that should add up to one may miss it by their rounding.
    const rank = Math.floor(share * (this.starts - 1)) + ROUNDING
    let passed = 0
    for (let m = 0; m < this.weightAt.length; m++) {
      passed += this.weightAt[m]!
      if (passed > rank) return m
    }
    return this.most
  }
}

const ROUNDING = 1e-6

/** The share of a weight; of parts of starts to nine digits, for their sums are rounded. */
export function weighedShare(part: number, all: number): number {
  if (Number.isInteger(part) && Number.isInteger(all)) return part / all
  return Math.round((1e9 * part) / all) / 1e9
}
