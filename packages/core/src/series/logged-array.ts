// An array whose AC output was logged: the best input of all, for it knows its own shade and snow.
//
// A log has one weather and a sky has another, so a day of the calendar takes the logged day of its
// season that stands at the same rank: a synthetic day duller than nine in ten takes a logged day
// duller than nine in ten. A weather record's days take the logged day nearest in date. Where too few
// days near in season were logged there is none, for a bright week has no dull day to give, and the
// model of the array stands in.

import type { Calendar } from '../axis/calendar.js'
import type { MeterRecord } from '../load/meter-record.js'
import { type RecordedDay, recordedDays, SEASON_DAYS } from '../load/recorded-days.js'

/** Days of a season that tell its dull days from its bright ones: more than half of them. */
export const LEAST_LOGGED_DAYS = 16

/** The logged days near a day of the calendar. */
interface Season {
  /** Whether they tell its dull days from its bright ones. */
  readonly isEnough: boolean
  /** Whether the very date was logged. */
  readonly isLogged: boolean
  /** The dullest first. Each [1440], [kW] */
  readonly byKwh: readonly Float64Array[]
  /** The nearest in date; null where there is none. */
  readonly nearest: Float64Array | null
}

export interface LoggedArray {
  /** Calendar days with enough logged days near in season. */
  readonly covered: number
  /** Whole days of the log. */
  readonly days: number
  /** By day of the calendar. */
  readonly seasons: readonly Season[]
  /** What the output of a day is multiplied by: above 1 for an array supposed larger. */
  readonly times: number
}

/**
 * Output by wall-clock minute of a day of the calendar. [1440], [kW]; null where too few days were
 * logged near in season
 *
 * @param rank  0 the dullest, 1 the brightest of the season; absent: nearest in date, or the very date
 */
export function loggedDay(
  { seasons, times }: LoggedArray,
  day: number,
  rank: number | undefined,
): Float64Array | null {
  const { byKwh, nearest, isEnough, isLogged } = seasons[day]!
  if (!(isEnough || (rank === undefined && isLogged))) return null
  const kw =
    rank === undefined
      ? nearest
      : byKwh[Math.min(byKwh.length - 1, Math.floor(rank * byKwh.length))]!
  return times === 1 || kw === null ? kw : kw.map((each) => times * each)
}

export function loggedArray(record: MeterRecord, calendar: Calendar): LoggedArray {
  const logged = recordedDays(record, calendar.zone).map((day) => ({ ...day, kwh: kwhOf(day) }))
  const seasons = calendar.days.map(({ dayOfYear }): Season => {
    const apart = (other: number): number => {
      const days = Math.abs(other - dayOfYear)
      return Math.min(days, 365 - days)
    }
    const near = logged
      .map((day, i) => ({ day, i, apart: apart(day.dayOfYear) }))
      .filter((each) => each.apart <= SEASON_DAYS)
    const nearest = near.toSorted((a, b) => a.apart - b.apart || a.i - b.i)[0]
    return {
      isEnough: near.length >= LEAST_LOGGED_DAYS,
      isLogged: nearest?.apart === 0,
      byKwh: near.toSorted((a, b) => a.day.kwh - b.day.kwh || a.i - b.i).map(({ day }) => day.kw),
      nearest: nearest?.day.kw ?? null,
    }
  })
  const covered = seasons.filter(({ isEnough }) => isEnough).length
  return { covered, days: logged.length, seasons, times: 1 }
}

function kwhOf({ kw }: RecordedDay): number {
  return kw.reduce((sum, value) => sum + value / 60, 0)
}
