// One month of the seasonal table: what its starts ride, by the hour of the clock on the wall.

import { DAY_MINUTES, minutesOfHours } from '../../axis/calendar.js'
import type { Prepared } from '../../series/prepare.js'
import type { MonthRides } from '../month-rides.js'
import type { SkyFigures } from '../sky-figures.js'

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
  const cells = (width: number): HourCell[] =>
    startsByClock(prepared, rides, width).map((starts, i) =>
      cellOf([i * width, (i + 1) * width], starts, cut, hasWorst),
    )
  return { month: question.month, figures, byHour: cells(1), byThreeHours: cells(3) }
}

interface ClockStarts {
  /** Rides, in rising order. [min] */
  minutes: Int32Array
  /** The same of starts on windy days. */
  windy: Int32Array
}

/** Rides by spans of so many hours of the clock. */
function startsByClock(prepared: Prepared, { batches }: MonthRides, width: number): ClockStarts[] {
  const { wallMinute } = prepared.calendar
  const found = Array.from({ length: 24 / width }, () => ({
    minutes: [] as number[],
    windy: [] as number[],
  }))
  for (const { from, rides, windy } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      const at = Math.floor((wallMinute[from + s]! * found.length) / DAY_MINUTES)
      found[at]!.minutes.push(rides.minutes[s]!)
      if (windy[s] === 1) found[at]!.windy.push(rides.minutes[s]!)
    }
  }
  return found.map(({ minutes, windy }) => ({
    minutes: Int32Array.from(minutes).sort(),
    windy: Int32Array.from(windy).sort(),
  }))
}

function cellOf(
  hours: readonly [number, number],
  { minutes, windy }: ClockStarts,
  cut: number,
  hasWorst: boolean,
): HourCell {
  const any = shareOf(minutes, cut) ?? Number.NaN
  const onWindy = shareOf(windy, cut)
  const rank = (share: number): number => minutes[Math.floor(share * (minutes.length - 1))]! / 60
  return {
    hours,
    starts: minutes.length,
    share: Math.min(any, onWindy ?? any),
    shareByPattern: { any, windy: onWindy },
    worstHours: hasWorst ? rank(0) : null,
    p05Hours: rank(0.05),
    medianHours: rank(0.5),
  }
}

function shareOf(minutes: Int32Array, cut: number): number | null {
  if (minutes.length === 0) return null
  let hold = 0
  for (const ride of minutes) if (ride >= cut) hold++
  return hold / minutes.length
}
