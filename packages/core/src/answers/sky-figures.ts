// A month's rides under one sky as the figures of an answer.

import { isoUtc, minutesOfHours } from '../axis/calendar.js'
import { type RideLoad, toleranceOf } from '../cut/rides.js'
import type { Prepared } from '../series/prepare.js'
import { wilson95 } from './interval.js'
import type { BatchRides, MonthRides } from './month-rides.js'
import { isEvening, PATTERNS, type Pattern } from './patterns.js'
import { sortedMinutes } from './sorted-minutes.js'

export interface LoadFigures {
  readonly name: string
  /** Given, or what follows from what it keeps; null where it bears any gap. [min] */
  readonly toleratesMinutes: number | null
  /** What that follows from; null where it is given. */
  readonly toleranceBasis: string | null
  /** Share of starts, under the headline pattern, that ride the cut as far as this load goes. */
  readonly share: number | null
  /**
   * The same for a cut whose end brings the grid back: a freezer that went off in it is not lost
   * while it keeps.
   */
  readonly keptShare: number | null
  /** Whether it wants power in the month at all. */
  readonly wanted: boolean
  /** Until this load alone is lost, over all starts; the horizon where it is not. */
  readonly worstHours: number | null
  readonly medianHours: number
  readonly firstToFail: boolean
}

/** How many starts last the cut. */
export interface ShareFigures {
  /** The least of `shareByPattern`. */
  readonly share: number | null
  /** The pattern of that share. */
  readonly hardest: Pattern
  readonly shareByPattern: Readonly<Record<Pattern, number | null>>
  /** Starts that each pattern counts; each of them weighs the same. */
  readonly startsByPattern: Readonly<Record<Pattern, number>>
}

export interface SkyFigures extends ShareFigures {
  readonly starts: number
  /** Return period, `dull` and `none` only. */
  readonly winters?: number
  readonly shareLow?: number | null
  readonly shareHigh?: number | null
  readonly worstHoursReturnWinters?: number | null
  readonly worstHours: number | null
  readonly p05Hours: number
  readonly medianHours: number
  readonly bestHours: number
  readonly worstStart: string | null
  /** Number of the year in which `worstStart` lies, for `trace --synthetic-year`. */
  readonly worstYear: number | null
  /** The load that gives out in the worst ride. */
  readonly worstLoad: string | null
  readonly atLeastHours: boolean
  /** How far starts were followed; a figure of so many hours is a lower bound. */
  readonly horizonHours: number
  readonly hoursWithoutMean: number
  readonly withoutSunHours?: number
  /** Share of starts at which the inverter cannot take over what is running. */
  readonly changeoverLostShare: number
  readonly loads: readonly LoadFigures[]
}

export function skyFigures(
  prepared: Prepared,
  month: MonthRides,
  loads: readonly RideLoad[],
  options: { readonly hours: number; readonly winters: number },
): SkyFigures {
  const cut = minutesOfHours(options.hours)
  const shares = shareFigures(prepared, month, options.hours)
  const { share, hardest } = shares
  const minutes = sortedMinutes(month.batches.map(({ rides }) => rides.minutes))
  const worst = worstOf(month.batches)
  const { kind, years, hasExtremes } = month.sky
  const noWorst = !hasExtremes || ((kind === 'typical' || kind === 'file') && years < 2)
  // Where no ride ended, no start was the worst.
  const hasWorst = !noWorst && minutes[0]! < month.horizon
  const hours = (rank: number): number => minutes[rank]! / 60
  return {
    starts: minutes.length,
    ...shares,
    ...(kind === 'dull' || kind === 'none' ? { winters: options.winters } : {}),
    ...(kind === 'typical' ? intervalOf(share, years) : {}),
    worstHours: noWorst ? null : hours(0),
    p05Hours: hours(Math.floor(0.05 * (minutes.length - 1))),
    medianHours: hours(Math.floor(0.5 * (minutes.length - 1))),
    bestHours: hours(minutes.length - 1),
    worstStart: hasWorst ? isoUtc(prepared.calendar, worst.minute) : null,
    worstYear: hasWorst ? worst.year : null,
    worstLoad: hasWorst ? (loads[worst.load]?.name ?? null) : null,
    atLeastHours: month.batches.some((batch) => batch.rides.beyond.includes(1)),
    horizonHours: month.horizon / 60,
    hoursWithoutMean: meanWithout(month.batches) / 60,
    changeoverLostShare:
      month.batches.reduce((sum, batch) => sum + batch.lostAtOnce, 0) / minutes.length,
    loads: loadFigures(prepared, month, loads, hardest, cut, noWorst),
  }
}

/** @param hours  of the cut, no further than the starts were followed */
export function shareFigures(
  prepared: Prepared,
  { batches }: Pick<MonthRides, 'batches'>,
  hours: number,
): ShareFigures {
  const tally = tallied(prepared, batches, minutesOfHours(hours))
  const shareByPattern = byPattern(tally, shareOf)
  const known = PATTERNS.filter((pattern) => shareByPattern[pattern] !== null)
  const hardest = known.reduce((least, pattern) =>
    shareByPattern[pattern]! < shareByPattern[least]! ? pattern : least,
  )
  return {
    share: shareByPattern[hardest],
    hardest,
    shareByPattern,
    startsByPattern: byPattern(tally, ({ starts }) => starts),
  }
}

/** Starts of each pattern, and those that ride the whole cut. */
function tallied(
  prepared: Prepared,
  batches: readonly BatchRides[],
  cut: number,
): Record<Pattern, Tally> {
  const tally = { any: newTally(), evening: newTally(), windy: newTally() }
  for (const { from, rides, windy } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      const holds = rides.minutes[s]! >= cut
      count(tally.any, holds)
      if (isEvening(prepared.calendar, from + s)) count(tally.evening, holds)
      if (windy[s] === 1) count(tally.windy, holds)
    }
  }
  return tally
}

function byPattern<T>(
  { any, evening, windy }: Record<Pattern, Tally>,
  value: (tally: Tally) => T,
): Record<Pattern, T> {
  return { any: value(any), evening: value(evening), windy: value(windy) }
}

interface Tally {
  starts: number
  hold: number
}

function newTally(): Tally {
  return { starts: 0, hold: 0 }
}

function count(tally: Tally, holds: boolean): void {
  tally.starts++
  if (holds) tally.hold++
}

/** Null where there is no start. */
function shareOf({ starts, hold }: Tally): number | null {
  return starts === 0 ? null : hold / starts
}

/** Interval and return period over several synthetic years; with one year there is neither. */
function intervalOf(
  share: number | null,
  years: number,
): Pick<SkyFigures, 'shareLow' | 'shareHigh' | 'worstHoursReturnWinters'> {
  if (share === null || years < 2) {
    return { shareLow: null, shareHigh: null, worstHoursReturnWinters: null }
  }
  const [shareLow, shareHigh] = wilson95(share * years, years)
  return { shareLow, shareHigh, worstHoursReturnWinters: years }
}

/** The shortest ride; the earliest of equals. */
function worstOf(batches: readonly BatchRides[]): { minute: number; year: number; load: number } {
  let worst = { minute: 0, year: 0, load: -1, ride: Number.POSITIVE_INFINITY }
  for (const { year, from, rides } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      if (rides.minutes[s]! < worst.ride)
        worst = { minute: from + s, year, load: rides.endedBy[s]!, ride: rides.minutes[s]! }
    }
  }
  return worst
}

function meanWithout(batches: readonly BatchRides[]): number {
  let sum = 0
  let starts = 0
  for (const { without } of batches) {
    starts += without.length
    for (const minutes of without) sum += minutes
  }
  return sum / starts
}

function loadFigures(
  prepared: Prepared,
  { batches, horizon }: MonthRides,
  loads: readonly RideLoad[],
  headline: Pattern,
  cut: number,
  noWorst: boolean,
): LoadFigures[] {
  const ends = new Float64Array(loads.length)
  const tallies = loads.map(newTally)
  const kept = loads.map(newTally)
  const wait = Math.ceil(prepared.house.gateway.reconnectSeconds / 60)
  const back = Math.min(cut + wait, horizon)
  for (const { from, rides, windy } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      if (rides.endedBy[s]! >= 0) ends[rides.endedBy[s]!]! += 1
      if (headline === 'evening' && !isEvening(prepared.calendar, from + s)) continue
      if (headline === 'windy' && windy[s] !== 1) continue
      for (const [which, tally] of tallies.entries()) {
        count(tally, rides.byLoad[which]![s]! >= cut)
        count(kept[which]!, rides.lostAfter[which]![s]! >= back)
      }
    }
  }
  const most = Math.max(...ends)
  return loads.map((load, which) => {
    const minutes = sortedMinutes(batches.map(({ rides }) => rides.byLoad[which]!))
    return {
      name: load.name,
      toleratesMinutes: finite(toleranceOf(load)),
      toleranceBasis: load.consequence.basis,
      share: shareOf(tallies[which]!),
      wanted: batches.some(({ from, rides }) =>
        load.wantedIn.subarray(from, from + rides.minutes.length).includes(0),
      ),
      keptShare: shareOf(kept[which]!),
      worstHours: noWorst ? null : minutes[0]! / 60,
      medianHours: minutes[Math.floor(0.5 * (minutes.length - 1))]! / 60,
      firstToFail: most > 0 && ends.indexOf(most) === which,
    }
  })
}

function finite(minutes: number): number | null {
  return Number.isFinite(minutes) ? minutes : null
}
