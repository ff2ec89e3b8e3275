// A year of stored energy day by day: the least and the greatest of each, and where they are.
//
// A day is less than a pixel of a phone and two or three of a wide page, so its two extremes are
// all that could be seen of it.

import type { Calendar, StateName } from '@tideover/core'
import { extremes } from './decimate.js'

/** Stored energy minute by minute; a trace is one. */
export interface StoredMinutes {
  /** Minute of the year's axis of the first. */
  readonly from: number
  /** At the end of each minute. [n], [kWh]; NaN is a gap */
  readonly storedKwh: ArrayLike<number>
  /** Of each minute, where times without power are to be shown. [n] */
  readonly states?: readonly StateName[]
}

/** Minutes of one local day, [from, to) in the column, and the rows of its extremes. */
export interface StoredDay {
  readonly from: number
  readonly to: number
  /** 1..12 */
  readonly month: number
  /** Null where no minute of the day is known. */
  readonly least: number | null
  readonly greatest: number | null
}

/** The local days that the column touches; past the end of the year it begins again. */
export function storedDays(
  { from, storedKwh }: StoredMinutes,
  calendar: Pick<Calendar, 'n' | 'days' | 'dayOf'>,
): StoredDay[] {
  const n = storedKwh.length
  const days: StoredDay[] = []
  for (let at = 0; at < n; ) {
    const minute = (from + at) % calendar.n
    const day = calendar.days[calendar.dayOf[minute]!]!
    const to = Math.min(n, at + day.end - minute)
    const [least = null, greatest = null] = extremes(storedKwh, at, to)
    days.push({ from: at, to, month: day.month, least, greatest })
    at = to
  }
  return days
}

/** Runs of days of one month. */
export function storedMonths(days: readonly StoredDay[]): StoredDay[][] {
  const months: StoredDay[][] = []
  for (const day of days) {
    const last = months.at(-1)
    if (last === undefined || last[0]!.month !== day.month) months.push([day])
    else last.push(day)
  }
  return months
}
