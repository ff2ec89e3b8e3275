// Wall clock of a zone to UTC, row by row, both clock changes included.
//
// The zone is asked a few times a day of the file, never once a row.

import { Info } from 'luxon'

const DAY_MS = 86_400_000
const MINUTE_MS = 60_000

/** A time zone, as far as readers need one. */
export interface WallZone {
  readonly name: string
  /** Local time minus UTC at a moment. [ms] UTC -> [min] */
  offset(ms: number): number
}

/** Moments a wall clock can mean. [ms] UTC */
export interface Reading {
  /** The one moment, or the earlier of two; NaN in the hour that spring leaves out. */
  readonly first: number
  /** The later moment in the hour that autumn repeats, else NaN. */
  readonly second: number
}

interface Day {
  readonly before: number
  readonly after: number
  /** Moment of the clock change near this day, Infinity where there is none. [ms] UTC */
  readonly change: number
}

/** The zone, or null where the name is none or depends on the machine. */
export function zoneNamed(name: string): WallZone | null {
  if (['', 'local', 'system', 'default'].includes(name.trim().toLowerCase())) return null
  const zone = Info.normalizeZone(name)
  return zone.isValid ? zone : null
}

/** Translates wall clock of one zone. */
export class WallClock {
  private readonly days = new Map<number, Day>()

  constructor(private readonly zone: WallZone) {}

  /**
   * Moments at which the wall shows this time.
   *
   * @param wallMs    Wall clock counted as if it were UTC. [ms]
   * @param marksEnd  True where it ends an interval: the very moment at which spring's hour
   *                  begins then exists, as the end of the hour before
   */
  read(wallMs: number, marksEnd: boolean): Reading {
    const { before, after, change } = this.day(Math.floor(wallMs / DAY_MS))
    const early = wallMs - before * MINUTE_MS
    if (change === Number.POSITIVE_INFINITY) return { first: early, second: Number.NaN }
    const late = wallMs - after * MINUTE_MS
    const isEarly = early < change
    const isLate = late >= change
    if (isEarly && isLate) return { first: early, second: late }
    if (isEarly || (!isLate && marksEnd && early === change)) {
      return { first: early, second: Number.NaN }
    }
    return { first: isLate ? late : Number.NaN, second: Number.NaN }
  }

  private day(number: number): Day {
    let day = this.days.get(number)
    if (day === undefined) {
      day = this.lookUp((number - 1) * DAY_MS, (number + 2) * DAY_MS)
      this.days.set(number, day)
    }
    return day
  }

  private lookUp(from: number, to: number): Day {
    const before = this.zone.offset(from)
    const after = this.zone.offset(to)
    if (before === after) return { before, after, change: Number.POSITIVE_INFINITY }
    let low = from / MINUTE_MS
    let high = to / MINUTE_MS
    while (high - low > 1) {
      const middle = Math.floor((low + high) / 2)
      if (this.zone.offset(middle * MINUTE_MS) === before) low = middle
      else high = middle
    }
    return { before, after, change: high * MINUTE_MS }
  }
}
