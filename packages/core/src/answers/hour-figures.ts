// A month's rides under one sky in hours: all that the minutes of the rides tell alone.

import { minutesOfHours } from '../axis/calendar.js'
import type { Prepared } from '../series/prepare.js'
import { rankedMinutes, type WeighedBatch, weighed } from './branches.js'
import type { MonthRides } from './month-rides.js'
import { type ShareFigures, sharesOf } from './share-figures.js'

export interface HourFigures extends ShareFigures {
  readonly starts: number
  /** Null where no worst may be said: from a typical-year file or one synthetic year. */
  readonly worstHours: number | null
  readonly p05Hours: number
  readonly medianHours: number
  readonly bestHours: number
  /** How far starts were followed; a figure of so many hours is a lower bound. */
  readonly horizonHours: number
  /** Share of starts at which the inverter cannot take over what is running. */
  readonly changeoverLostShare: number
}

/** @param hours  of the cut, no further than the starts were followed */
export function hourFigures(prepared: Prepared, month: MonthRides, hours: number): HourFigures {
  return hoursOf(prepared, month, weighed(prepared, month), hours)
}

/** @param batches  the month's, weighed */
export function hoursOf(
  prepared: Prepared,
  { sky, batches: drawn, horizon }: MonthRides,
  batches: readonly WeighedBatch[],
  hours: number,
): HourFigures {
  const minutes = rankedMinutes(batches, horizon, ({ rides }) => rides.minutes)
  const { kind, years, hasExtremes } = sky
  const noWorst = !hasExtremes || ((kind === 'typical' || kind === 'file') && years < 2)
  return {
    starts: minutes.starts,
    ...sharesOf(prepared, batches, minutesOfHours(hours)),
    worstHours: noWorst ? null : minutes.least / 60,
    p05Hours: minutes.at(0.05) / 60,
    medianHours: minutes.at(0.5) / 60,
    bestHours: minutes.most / 60,
    horizonHours: horizon / 60,
    changeoverLostShare:
      drawn.reduce((sum, { lostAtOnce }) => sum + lostAtOnce, 0) / minutes.starts,
  }
}
