// A month's rides under one sky as the figures of an answer.

import { isoUtc, minutesOfHours } from '../axis/calendar.js'
import { type RideLoad, toleranceOf } from '../cut/rides.js'
import type { Prepared } from '../series/prepare.js'
import {
  asDrawn,
  type Branch,
  rankedMinutes,
  type WeighedBatch,
  weighed,
  weightOf,
} from './branches.js'
import { wilson95 } from './interval.js'
import type { Branches, MonthRides } from './month-rides.js'
import { isEvening, PATTERNS, type Pattern } from './patterns.js'
import { weighedShare } from './weighed-minutes.js'

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
  /** Starts that each pattern counts; each of them weighs the same, however it may go. */
  readonly startsByPattern: Readonly<Record<Pattern, number>>
}

/** What a generator that may not start does to a share. */
export interface FailedStarts {
  /** That a start fails, as the house states it. */
  readonly chance: number
  /** Share that lasts, under the headline pattern, where every start succeeds. */
  readonly shareIfStarts: number | null
  /** The same where the first of the cut fails, and nobody mends the set before the grid is back. */
  readonly shareIfFails: number | null
  /** Of 1 cut, what failed starts take; null where a share is not known. */
  readonly lostShare: number | null
  /** How the worst ride was lived; null without a worst start. */
  readonly worst: Branch | null
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
  /** Only where a start of the generator fails by chance: all figures then weigh both ways. */
  readonly failedStarts?: FailedStarts
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
  const batches = weighed(prepared, month)
  const shares = sharesOf(prepared, batches, cut)
  const { share, hardest } = shares
  const minutes = rankedMinutes(batches, month.horizon, ({ rides }) => rides.minutes)
  const worst = worstOf(batches)
  const { kind, years, hasExtremes } = month.sky
  const noWorst = !hasExtremes || ((kind === 'typical' || kind === 'file') && years < 2)
  // Where no ride ended, no start was the worst.
  const hasWorst = !noWorst && minutes.least < month.horizon
  return {
    starts: minutes.starts,
    ...shares,
    ...(kind === 'dull' || kind === 'none' ? { winters: options.winters } : {}),
    ...(kind === 'typical' ? intervalOf(share, years) : {}),
    worstHours: noWorst ? null : minutes.least / 60,
    p05Hours: minutes.at(0.05) / 60,
    medianHours: minutes.at(0.5) / 60,
    bestHours: minutes.most / 60,
    worstStart: hasWorst ? isoUtc(prepared.calendar, worst.minute) : null,
    worstYear: hasWorst ? worst.year : null,
    worstLoad: hasWorst ? (loads[worst.load]?.name ?? null) : null,
    atLeastHours: batches.some(outlasts),
    horizonHours: month.horizon / 60,
    hoursWithoutMean: meanWithout(batches) / 60,
    changeoverLostShare:
      month.batches.reduce((sum, batch) => sum + batch.lostAtOnce, 0) / minutes.starts,
    ...failedStarts(prepared, month.branches, shares, cut, hasWorst ? worst.branch : null),
    loads: loadFigures(prepared, batches, month.horizon, loads, hardest, cut, noWorst),
  }
}

function outlasts({ rides: { beyond }, weights }: WeighedBatch): boolean {
  if (weights === null) return beyond.includes(1)
  return beyond.some((is, s) => is === 1 && weights[s]! > 0)
}

/** What failed starts take; nothing to tell where there is no chance. */
function failedStarts(
  prepared: Prepared,
  branches: Branches | undefined,
  { share, hardest }: ShareFigures,
  cut: number,
  worst: Branch | null,
): Pick<SkyFigures, 'failedStarts'> {
  if (branches === undefined) return {}
  const { chance, starts, fails } = branches
  const [shareIfStarts, shareIfFails] = [starts, fails].map(
    (batches) => sharesOf(prepared, asDrawn(batches), cut).shareByPattern[hardest],
  ) as [number | null, number | null]
  const isKnown = share !== null && shareIfStarts !== null
  const lostShare = isKnown ? Math.max(0, weighedShare(shareIfStarts - share, 1)) : null
  return { failedStarts: { chance, shareIfStarts, shareIfFails, lostShare, worst } }
}

/** @param hours  of the cut, no further than the starts were followed */
export function shareFigures(
  prepared: Prepared,
  month: Pick<MonthRides, 'batches' | 'branches'>,
  hours: number,
): ShareFigures {
  return sharesOf(prepared, weighed(prepared, month), minutesOfHours(hours))
}

function sharesOf(prepared: Prepared, batches: readonly WeighedBatch[], cut: number): ShareFigures {
  const tally = tallied(prepared, batches, cut)
  const shareByPattern = byPattern(tally, shareOf)
  const known = PATTERNS.filter((pattern) => shareByPattern[pattern] !== null)
  const hardest = known.reduce((least, pattern) =>
    shareByPattern[pattern]! < shareByPattern[least]! ? pattern : least,
  )
  return {
    share: shareByPattern[hardest],
    hardest,
    shareByPattern,
    startsByPattern: byPattern(tally, ({ starts }) => Math.round(starts)),
  }
}

/** Starts of each pattern, and those that ride the whole cut. */
function tallied(
  prepared: Prepared,
  batches: readonly WeighedBatch[],
  cut: number,
): Record<Pattern, Tally> {
  const tally = { any: newTally(), evening: newTally(), windy: newTally() }
  for (const batch of batches) {
    const { from, rides, windy } = batch
    for (let s = 0; s < rides.minutes.length; s++) {
      const holds = rides.minutes[s]! >= cut
      const weight = weightOf(batch, s)
      count(tally.any, holds, weight)
      if (isEvening(prepared.calendar, from + s)) count(tally.evening, holds, weight)
      if (windy[s] === 1) count(tally.windy, holds, weight)
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

function count(tally: Tally, holds: boolean, weight: number): void {
  tally.starts += weight
  if (holds) tally.hold += weight
}

/** Null where there is no start. */
function shareOf({ starts, hold }: Tally): number | null {
  return starts === 0 ? null : weighedShare(hold, starts)
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

interface Worst {
  readonly minute: number
  readonly year: number
  readonly load: number
  readonly ride: number
  readonly branch: Branch | null
}

/** The shortest ride that counts; the earliest of equals, one as drawn before the others. */
function worstOf(batches: readonly WeighedBatch[]): Worst {
  let worst: Worst = { minute: 0, year: 0, load: -1, ride: Number.POSITIVE_INFINITY, branch: null }
  for (const batch of batches) {
    const { year, from, rides, branch } = batch
    for (let s = 0; s < rides.minutes.length; s++) {
      const ride = rides.minutes[s]!
      if (ride < worst.ride && weightOf(batch, s) > 0)
        worst = { minute: from + s, year, load: rides.endedBy[s]!, ride, branch }
    }
  }
  return worst
}

function meanWithout(batches: readonly WeighedBatch[]): number {
  let sum = 0
  let starts = 0
  for (const batch of batches) {
    for (let s = 0; s < batch.without.length; s++) {
      const weight = weightOf(batch, s)
      starts += weight
      sum += weight * batch.without[s]!
    }
  }
  return sum / starts
}

function loadFigures(
  prepared: Prepared,
  batches: readonly WeighedBatch[],
  horizon: number,
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
  for (const batch of batches) {
    const { from, rides, windy } = batch
    for (let s = 0; s < rides.minutes.length; s++) {
      const weight = weightOf(batch, s)
      if (rides.endedBy[s]! >= 0) ends[rides.endedBy[s]!]! += weight
      if (headline === 'evening' && !isEvening(prepared.calendar, from + s)) continue
      if (headline === 'windy' && windy[s] !== 1) continue
      for (const [which, tally] of tallies.entries()) {
        count(tally, rides.byLoad[which]![s]! >= cut, weight)
        count(kept[which]!, rides.lostAfter[which]![s]! >= back, weight)
      }
    }
  }
  const most = Math.max(...ends)
  return loads.map((load, which) => {
    const minutes = rankedMinutes(batches, horizon, ({ rides }) => rides.byLoad[which]!)
    return {
      name: load.name,
      toleratesMinutes: finite(toleranceOf(load)),
      toleranceBasis: load.consequence.basis,
      share: shareOf(tallies[which]!),
      wanted: batches.some(({ from, rides }) =>
        load.wantedIn.subarray(from, from + rides.minutes.length).includes(0),
      ),
      keptShare: shareOf(kept[which]!),
      worstHours: noWorst ? null : minutes.least / 60,
      medianHours: minutes.at(0.5) / 60,
      firstToFail: most > 0 && ends.indexOf(most) === which,
    }
  })
}

function finite(minutes: number): number | null {
  return Number.isFinite(minutes) ? minutes : null
}
