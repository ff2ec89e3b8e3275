// One month of the seasonal table: what its starts ride, by the hour of the clock on the wall.

import { DAY_MINUTES, minutesOfHours } from '../../axis/calendar.js'
import type { Prepared } from '../../series/prepare.js'
import { type WeighedBatch, weighed, weightOf } from '../branches.js'
import type { MonthRides } from '../month-rides.js'
import type { SkyFigures } from '../sky-figures.js'
import { WeighedMinutes } from '../weighed-minutes.js'

/** Starts of one span of hours of the day. */
export interface HourCell {
  /** First hour of the clock on the wall, and one past the last. */
  readonly hours: readonly [number, number]
  readonly starts: number
  /** The least of the two below. */
  readonly share: number
  readonly shareByPattern: { readonly any: number; readonly windy: number | null }
  /** Null where no worst may be said. */
  readonly worstHours: number | null
  /** The lower nearest rank. */
  readonly p05Hours: number
  readonly medianHours: number
}

export interface MonthRow {
  /** 1..12 */
  readonly month: number
  /** Over all starts of the month, as `ride` tells them. */
  readonly figures: SkyFigures
  /** [24] */
  readonly byHour: readonly HourCell[]
  /** [8], from midnight */
  readonly byThreeHours: readonly HourCell[]
}

export function monthRow(
  prepared: Prepared,
  rides: MonthRides,
  figures: SkyFigures,
  question: { readonly month: number; readonly hours: number },
): MonthRow {
  const cut = minutesOfHours(question.hours)
  const hasWorst = figures.worstHours !== null
  const batches = weighed(prepared, rides)
  const cells = (width: number): HourCell[] =>
    startsByClock(prepared, batches, rides.horizon, width).map((starts, i) =>
      cellOf([i * width, (i + 1) * width], starts, cut, hasWorst),
    )
  return { month: question.month, figures, byHour: cells(1), byThreeHours: cells(3) }
}

interface ClockStarts {
  /** Rides of all starts, and of those on windy days. */
  readonly minutes: WeighedMinutes
  readonly windy: WeighedMinutes
}

/** Rides by spans of so many hours of the clock. */
function startsByClock(
  prepared: Prepared,
  batches: readonly WeighedBatch[],
  horizon: number,
  width: number,
): ClockStarts[] {
  const { wallMinute } = prepared.calendar
  const found = Array.from({ length: 24 / width }, () => ({
    minutes: new WeighedMinutes(horizon),
    windy: new WeighedMinutes(horizon),
  }))
  for (const batch of batches) {
    const { from, rides, windy } = batch
    for (let s = 0; s < rides.minutes.length; s++) {
      const at = Math.floor((wallMinute[from + s]! * found.length) / DAY_MINUTES)
      found[at]!.minutes.add(rides.minutes[s]!, weightOf(batch, s))
      if (windy[s] === 1) found[at]!.windy.add(rides.minutes[s]!, weightOf(batch, s))
    }
  }
  return found
}

function cellOf(
  hours: readonly [number, number],
  { minutes, windy }: ClockStarts,
  cut: number,
  hasWorst: boolean,
): HourCell {
  const any = minutes.lasting(cut) ?? Number.NaN
  const onWindy = windy.lasting(cut)
  return {
    hours,
    starts: minutes.starts,
    share: Math.min(any, onWindy ?? any),
    shareByPattern: { any, windy: onWindy },
    worstHours: hasWorst ? minutes.least / 60 : null,
    p05Hours: minutes.at(0.05) / 60,
    medianHours: minutes.at(0.5) / 60,
  }
}
