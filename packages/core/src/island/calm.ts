// Where the rule book does the same to every charge: the span of stored energy within which one
// minute of one kind moves a state by one increment and changes nothing else but its timers.
//
// This says nothing that `step` does not say; it is `step` read for a whole span at once. What
// lies outside is handed to `step` itself. The agreement of the two is tested state by state.

import { GRID_KWH } from '../units/energy-grid.js'
import { type Columns, newBurning } from './columns.js'
import type { Kind, SolarIs } from './mode.js'
import { type GeneratorRules, isFormedByHand, type Rules } from './rules.js'

/** Strictly between `above` and `below` [kWh] a state moves by `delta` and burns `litres`. */
export interface Calm {
  above: number
  below: number
  delta: number
  litres: number
  /** Groups of solar that trip for all of them, a bit each. */
  trips: number
}

/**
 * The calm spans of one kind. What does not depend on the minute is read once, here; a column or
 * a threshold that the kind has no use for is null or infinite.
 */
export class CalmSpans {
  /** That of the minute last asked for; empty (above >= below) where there is none. */
  readonly now: Calm = { above: 0, below: 0, delta: 0, litres: 0, trips: 0 }
  private readonly burning = newBurning()
  /** Thresholds that no minute moves. */
  private above = -1
  private below = Number.POSITIVE_INFINITY
  /** Thresholds that the cold lifts. */
  private coldAbove = Number.NEGATIVE_INFINITY
  private coldBelow = Number.POSITIVE_INFINITY
  private never = false
  private readonly running: boolean
  /** At the stop charge or above. */
  private readonly keptRunning: boolean
  private readonly level: number
  private readonly bandLimit: number
  private readonly upper: number
  private readonly lower: number
  /** Minutes in which a state of this kind goes through `step` whatever its charge. */
  private readonly breaks: Uint8Array | null
  private readonly fails: Uint8Array | null
  /** Increment, and the one that is left where solar trips for all. */
  private readonly delta: Float64Array | null
  private readonly deltaTripped: Float64Array | null
  private readonly forced: Float64Array | null
  private readonly mask: number
  private readonly canTrip: number

  constructor(
    private readonly kind: Kind,
    private readonly columns: Columns,
    private readonly rules: Rules,
  ) {
    const { level, band } = kind
    this.level = level
    this.keptRunning = kind.generator === 'kept running'
    this.running = this.keptRunning || kind.generator === 'running'
    this.bandLimit = rules.bandLimitsKwh[band] ?? 0
    this.upper = rules.bandEdgesKwh[band] ?? Number.POSITIVE_INFINITY
    this.lower = band === 0 ? 0 : rules.bandEdgesKwh[band - 1]!
    this.mask = this.running || level === rules.dark ? 0 : groupsOf(kind, 'in')
    this.canTrip = kind.grid ? 0 : this.mask & rules.tripMask
    if (!kind.grid) {
      this.readGenerator()
      this.readLevel()
      if (!this.running && level !== rules.dark) this.readSolar()
    }
    const isOn = level <= rules.lastLevel
    const { together } = kind
    this.breaks = !isOn || together || kind.grid ? null : this.overload(level)
    this.fails = this.running && rules.generator!.canFail ? columns.runFails : null
    this.delta = together
      ? null
      : this.running
        ? columns.deltaGenerator[level]!
        : kind.grid
          ? columns.deltaGrid[this.mask]!
          : this.deltaOf(this.mask)
    this.deltaTripped = together ? null : this.deltaOf(this.mask & ~this.canTrip)
    this.forced = together || this.canTrip === 0 ? null : columns.forced[this.mask]![level]!
  }

  /** The calm span of minute `i`, as long as no timer of a state ends in it. */
  at(i: number): Calm {
    const { now, columns } = this
    if (this.never || (columns.gridUp[i] === 1) !== this.kind.grid || this.isBroken(i)) {
      now.above = Number.POSITIVE_INFINITY
      now.below = Number.NEGATIVE_INFINITY
      now.delta = 0
      now.litres = 0
      now.trips = 0
      return now
    }
    this.supply(i)
    const { delta } = now
    const cold = columns.coldFloor[i]!
    let above = Math.max(this.above, this.coldAbove + cold)
    let below = Math.min(this.below, this.coldBelow + cold)
    // A minute ends at the upper edge of the band, and a band left downwards is another kind.
    below = Math.min(below, this.upper - Math.max(0, delta))
    if (delta < 0) above = Math.max(above, this.lower - delta - GRID_KWH)
    if (this.running) {
      const { stopKwh } = this.rules.generator!
      if (this.keptRunning) above = Math.max(above, stopKwh - Math.min(0, delta) - GRID_KWH)
      else below = Math.min(below, stopKwh - Math.max(0, delta))
      const { burning } = this
      burning.delta = delta
      if (this.kind.together) columns.together!.burn(this.level, i, burning)
      else columns.burn(this.level, i, burning)
      now.litres = burning.litres
    }
    now.above = above
    now.below = below
    return now
  }

  /** Whether something happens in this minute whatever the charge. */
  private isBroken(i: number): boolean {
    if (this.breaks !== null && this.breaks[i] === 1) return true
    if (this.fails !== null && this.fails[i] === 1) return true
    const { level, kind, columns, rules } = this
    if (level > rules.lastLevel) {
      if (kind.retries) return false
      if (rules.whenEmpty === 'retries') return !this.isAttemptCalm(i)
      return isFormedByHand(level, rules) && columns.sunLater[i] !== 1
    }
    if (!kind.together) return false
    const together = columns.together!
    return this.running
      ? together.overGenerator(level, i, false)
      : together.overload(level, i, false)
  }

  /** An island that tries again neither begins nor gives up. */
  private isAttemptCalm(i: number): boolean {
    const isTime = this.columns.attempt[i] === 1
    if (this.level === this.rules.dark) return !isTime
    return isTime || this.delta![i]! > 0
  }

  /** The increment within the limits of charge; says where solar trips for all. */
  private supply(i: number): void {
    const { level, columns, now, mask } = this
    const limit = Math.min(this.bandLimit, columns.tempLimit[i]!)
    now.trips = 0
    if (this.delta !== null) {
      now.trips = this.forced !== null && this.forced[i]! > limit ? this.canTrip : 0
      now.delta = Math.min(limit, (now.trips === 0 ? this.delta : this.deltaTripped!)[i]!)
      return
    }
    const together = columns.together!
    if (this.running) {
      now.delta = Math.min(limit, together.generator(level, i))
      return
    }
    if (this.canTrip !== 0 && together.forced(mask, level, i) > limit) now.trips = this.canTrip
    now.delta = Math.min(limit, together.delta(mask & ~now.trips, level, i))
  }

  /** The generator's side: nothing is called, started or stopped. */
  private readGenerator(): void {
    const { kind, rules } = this
    if (rules.generator === null || kind.generator === 'out of order') return
    const set: GeneratorRules = rules.generator
    if (kind.level === rules.dark && !rules.wakesOnGenerator) {
      this.never ||= kind.generator !== 'off' || kind.called
      return
    }
    // A minute that would pass the stop charge ends there.
    if (kind.generator === 'starting' || this.running) return
    if (kind.tankEmpty && set.cansAfter[kind.pours] === 0) {
      this.never ||= kind.called
      return
    }
    // Wanted up to this charge, itself included.
    const wantedKwh = kind.tankEmpty ? Math.max(set.startKwh, set.stopKwh - GRID_KWH) : set.startKwh
    // Between tries after an overload it is wanted by its charge alone, as while the loads are on.
    const on = kind.level <= rules.lastLevel || kind.retries
    if (!kind.called) {
      this.above = Math.max(this.above, wantedKwh)
      this.never ||= !on
    } else if (on) this.below = Math.min(this.below, wantedKwh + GRID_KWH)
  }

  /** The level stays. */
  private readLevel(): void {
    const { kind, level, rules, running } = this
    if (level > rules.lastLevel) {
      const canReturn = level === rules.holding || rules.wakesOnSun
      if (canReturn && !kind.retries) this.coldBelow = rules.loadsBackKwh
      // It tries again as soon as it may.
      if (kind.overdue) this.coldBelow = rules.loadsOffKwh + GRID_KWH
      this.never ||= running
      return
    }
    if (!running) this.coldAbove = rules.loadsOffKwh
    if (level < rules.lastLevel) this.above = Math.max(this.above, rules.shed[level]!.dropBelowKwh)
    if (level > 0) this.below = Math.min(this.below, rules.shed[level - 1]!.returnAtKwh)
  }

  /** Held solar stays held, and solar that is in stays in. */
  private readSolar(): void {
    for (const [g, is] of this.kind.solar.entries()) {
      const solar = this.rules.solar[g]!
      if (is === 'held') this.above = Math.max(this.above, solar.backKwh)
      if (is === 'in' && solar.heldOut) this.below = Math.min(this.below, solar.offKwh)
    }
  }

  private overload(level: number): Uint8Array {
    return (this.running ? this.columns.overGenerator : this.columns.overload)[level]!
  }

  private deltaOf(mask: number): Float64Array {
    return this.columns.delta[mask]![this.level]!
  }
}

/** Groups of solar that are in a state, a bit each. */
function groupsOf(kind: Kind, is: SolarIs): number {
  return kind.solar.reduce((mask, solar, g) => mask | (solar === is ? 1 << g : 0), 0)
}
