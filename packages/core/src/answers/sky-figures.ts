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
import { type HourFigures, hoursOf } from './hour-figures.js'
import { wilson95 } from './interval.js'
import type { Branches, MonthRides } from './month-rides.js'
import { isEvening, type Pattern } from './patterns.js'
import { count, newTally, type ShareFigures, shareOf, sharesOf } from './share-figures.js'
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

export interface SkyFigures extends HourFigures {
  /** Return period, `dull` and `none` only. */
  readonly winters?: number
  readonly shareLow?: number | null
  readonly shareHigh?: number | null
  readonly worstHoursReturnWinters?: number | null
  readonly worstStart: string | null
  /** Number of the year in which `worstStart` lies, for `trace --synthetic-year`. */
  readonly worstYear: number | null
  /** The load that gives out in the worst ride. */
  readonly worstLoad: string | null
  readonly atLeastHours: boolean
  readonly hoursWithoutMean: number
  readonly withoutSunHours?: number
  /** Only where a start of the generator fails by chance: all figures then weigh both ways. */
  readonly failedStarts?: FailedStarts
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
  const told = hoursOf(prepared, month, batches, options.hours)
  const { share, hardest, worstHours } = told
  const worst = worstOf(batches)
  const { kind, years } = month.sky
  // Where no ride ended, no start was the worst.
  const hasWorst = worstHours !== null && worst.ride < month.horizon
  return {
    ...told,
    ...(kind === 'dull' || kind === 'none' ? { winters: options.winters } : {}),
    ...(kind === 'typical' ? intervalOf(share, years) : {}),
    worstStart: hasWorst ? isoUtc(prepared.calendar, worst.minute) : null,
    worstYear: hasWorst ? worst.year : null,
    worstLoad: hasWorst ? (loads[worst.load]?.name ?? null) : null,
    atLeastHours: batches.some(outlasts),
    hoursWithoutMean: meanWithout(batches) / 60,
    ...failedStarts(prepared, month.branches, told, cut, hasWorst ? worst.branch : null),
    loads: loadFigures(prepared, batches, month.horizon, loads, hardest, cut, worstHours === null),
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
