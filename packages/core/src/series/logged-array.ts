// An array whose AC output was logged: the best input of all, for it knows its own shade and snow.
//
// A log has one weather and a sky has another, so a day of the calendar takes the logged day of its
// season that stands at the same rank: a synthetic day duller than nine in ten takes a logged day
// duller than nine in ten. A weather record's days take the logged day nearest in date. Where no day
// near in season was logged there is none, and the model of the array stands in.

import type { Calendar } from '../axis/calendar.js'
import type { MeterRecord } from '../load/meter-record.js'
import { type RecordedDay, recordedDays } from '../load/metered.js'

/** How far apart two days of one season may be. [days]; common practice, no source */
const SEASON_DAYS = 15

export interface LoggedArray {
  /** Calendar days that have a log near in season. */
  readonly covered: number
  /** Whole days of the log. */
  readonly days: number
  /**
   * Output by wall-clock minute of a day of the calendar. [1440], [kW]; null where none was logged
   * near in season
   *
   * @param rank  0 the dullest, 1 the brightest of the season; absent: nearest in date
   */
  day(day: number, rank: number | undefined): Float64Array | null
}

export function loggedArray(record: MeterRecord, calendar: Calendar): LoggedArray {
  const logged = recordedDays(record, calendar.zone).map((day) => ({ ...day, kwh: kwhOf(day) }))
  const seasons = calendar.days.map(({ dayOfYear }) => {
    const apart = (other: number): number => {
      const days = Math.abs(other - dayOfYear)
      return Math.min(days, 365 - days)
    }
    const near = logged
      .map((day, i) => ({ day, i, apart: apart(day.dayOfYear) }))
      .filter((each) => each.apart <= SEASON_DAYS)
    return {
      byKwh: near.toSorted((a, b) => a.day.kwh - b.day.kwh || a.i - b.i).map(({ day }) => day.kw),
      nearest: near.toSorted((a, b) => a.apart - b.apart || a.i - b.i)[0]?.day.kw ?? null,
    }
  })
  return {
    covered: seasons.filter(({ nearest }) => nearest !== null).length,
    days: logged.length,
    day(day, rank) {
      const { byKwh, nearest } = seasons[day]!
      if (rank === undefined || nearest === null) return nearest
      return byKwh[Math.min(byKwh.length - 1, Math.floor(rank * byKwh.length))]!
    },
  }
}

function kwhOf({ kw }: RecordedDay): number {
  return kw.reduce((sum, value) => sum + value / 60, 0)
}
