// All starts of a month under one sky, their weather worked out once and ridden with many demands.

import { minutesOfHours } from '../../axis/calendar.js'
import { longestTolerance, lostAfter, type RideLoad, rideLoads, ridesOf } from '../../cut/rides.js'
import type { Spells } from '../../cut/spells.js'
import { type Compiled, compile } from '../../island/compile.js'
import type { Demand } from '../../load/demand.js'
import { pass } from '../../pass/pass.js'
import type { Prepared } from '../../series/prepare.js'
import { newScratch, windowOf } from '../../series/window.js'
import type { Window } from '../../series/window-columns.js'
import { type Batch, monthSky } from '../month-sky.js'
import type { RideQuestion } from '../ride-question.js'
import type { Equipped } from '../scenario.js'
import { atShare, sortedMinutes } from '../sorted-minutes.js'

/** Rides of a month in hours; one of `horizonHours` is a lower bound. */
export interface RideHours {
  readonly medianHours: number
  readonly p05Hours: number
  /** Null where the sky tells no worst case. */
  readonly worstHours: number | null
}

export interface MonthStarts {
  readonly prepared: Prepared
  readonly batches: readonly { readonly batch: Batch; readonly window: Window }[]
  /** All critical loads of the house. */
  readonly loads: readonly RideLoad[]
  /** How far each start is followed. [min] */
  readonly horizon: number
  /** The same with the longest gap that a load bears. [min] */
  readonly furthest: number
  readonly cutMinutes: number
  readonly starts: number
  readonly hasWorst: boolean
}

/** @param horizon  how far to follow each start. [min] */
export function monthStarts(
  prepared: Prepared,
  question: RideQuestion,
  horizon: number,
): MonthStarts {
  const { month, hours, sky: kind = 'dull', years = 30, winters = 10 } = question
  const seed = question.seed ?? prepared.house.seed
  const choice = { kind, month, cutHours: hours, years, winters, seed }
  const { sky, batches } = monthSky(prepared, choice)
  const loads = rideLoads(prepared.demand)
  const furthest = horizon + longestTolerance(loads)
  const scratch = newScratch(prepared)
  return {
    prepared,
    batches: batches.map((batch) => ({
      batch,
      window: windowOf(prepared, sky, scratch, batch.year, batch.from, batch.to + furthest),
    })),
    loads,
    horizon,
    furthest,
    cutMinutes: minutesOfHours(hours),
    starts: batches.reduce((sum, { from, to }) => sum + to - from, 0),
    hasWorst: sky.hasExtremes,
  }
}

/** The island of one batch with a demand. */
export function islandOfBatch(
  { prepared }: MonthStarts,
  { house, plant, rules }: Equipped,
  demand: Demand,
  window: Window,
): Compiled {
  return compile(house, prepared.calendar, demand, plant, rules, window)
}

/** Down spells of every start, batch by batch; they serve for all critical loads and for fewer. */
export function spellsWith(starts: MonthStarts, equipped: Equipped, demand: Demand): Spells[] {
  const { cutMinutes, loads, furthest, horizon } = starts
  return starts.batches.map(({ batch, window }) => {
    const { columns, rules } = islandOfBatch(starts, equipped, demand, window)
    const count = batch.to - batch.from
    const enough = {
      cutMinutes,
      onAfter: horizon,
      lostAfter: lostAfter(loads, furthest, batch.from, columns.n),
    }
    return pass(columns, rules, count, equipped.startKwh, furthest, enough)
  })
}

/** @param loads  those whose loss ends a ride; at least one */
export function hoursOfRides(
  starts: MonthStarts,
  spells: readonly Spells[],
  loads: readonly RideLoad[],
): RideHours {
  const rides = starts.batches.map(({ batch }, b) =>
    ridesOf(spells[b]!, loads, batch.from, starts.horizon),
  )
  const sorted = sortedMinutes(rides.map(({ minutes }) => minutes))
  return {
    medianHours: atShare(sorted, 0.5) / 60,
    p05Hours: atShare(sorted, 0.05) / 60,
    worstHours: starts.hasWorst ? sorted[0]! / 60 : null,
  }
}
