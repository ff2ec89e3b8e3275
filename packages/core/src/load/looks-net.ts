// Whether a record without any export looks like that of a meter behind which solar ran.
//
// Solar takes from what a meter at the grid counts around noon in the bright half of the year: to
// nothing, or far below what the same hours draw in the dark half. The night, which no sun reaches,
// is the measure, so that heating or cooling by the season does not count. All limits are common
// practice, no source; a record of one house is told right by them in a test.

import { DAY_MINUTES } from '../axis/calendar.js'
import { daysApart, type RecordedDay } from './recorded-days.js'

/** Around noon on the wall clock, summer time or not. [minute of the day] */
const NOON = [600, 900] as const
/** When no roof gives anything worth naming. */
const NIGHT_FROM = 1320
const NIGHT_TO = 300
/** Midsummer and midwinter of the north. [day of the year] */
const MIDSUMMER = 172
const MIDWINTER = 355
/** From midsummer to the equinox, and to what is summer beyond doubt. [days] */
const HALF_DAYS = 92
const SEASON_CORE_DAYS = 45
const HALF_YEAR_DAYS = 182

/** Nothing on the display of a meter. [kW] */
const NOTHING_KW = 0.005
/** Minutes without any draw around bright noons that no standby of a lived-in house leaves. */
const ZERO_SHARE = 0.1
/** Nights without draw at least so much rarer. */
const ZERO_NIGHTS = 0.2
/** Days around midsummer and around midwinter that tell a season. */
const TELLING_DAYS = 21
/** Noon over night in summer is below this share of the winter's. */
const SUNKEN = 0.6

/**
 * Why the record looks so, one clause; null where it does not.
 *
 * @param south  the bright half is then October to March
 */
export function looksNet(days: readonly RecordedDay[], south: boolean): string | null {
  const around = (middle: number, within: number): DayParts[] =>
    days.filter(({ dayOfYear }) => apartFrom(middle, dayOfYear, south) <= within).map(dayParts)
  const bright = around(MIDSUMMER, HALF_DAYS)
  const zeros = mean(bright, (day) => day.noonZero)
  if (zeros > ZERO_SHARE && mean(bright, (day) => day.nightZero) < ZERO_NIGHTS * zeros) {
    const percent = Math.round(100 * zeros)
    return `nothing is drawn in ${percent} % of the time around noon from spring to autumn, yet at night it is`
  }
  const summer = around(MIDSUMMER, SEASON_CORE_DAYS)
  const winter = around(MIDWINTER, SEASON_CORE_DAYS)
  if (summer.length < TELLING_DAYS || winter.length < TELLING_DAYS) return null
  const ratio = (of: readonly DayParts[]): number =>
    mean(of, (day) => day.noonKw) / mean(of, (day) => day.nightKw)
  if (!(ratio(summer) < SUNKEN * ratio(winter))) return null
  const percent = Math.round((100 * ratio(summer)) / ratio(winter))
  return (
    'measured by the nights, the hours around noon draw in summer only ' +
    `${percent} % of what they draw in winter`
  )
}

/** Days from a middle of a season, which comes half a year later in the south. */
function apartFrom(middle: number, dayOfYear: number, south: boolean): number {
  return daysApart(south ? middle + HALF_YEAR_DAYS : middle, dayOfYear)
}

interface DayParts {
  readonly noonKw: number
  readonly nightKw: number
  /** Share of minutes without any draw. */
  readonly noonZero: number
  readonly nightZero: number
}

function dayParts({ kw }: RecordedDay): DayParts {
  const noon = kw.subarray(...NOON)
  const night = [...kw.subarray(0, NIGHT_TO), ...kw.subarray(NIGHT_FROM, DAY_MINUTES)]
  const zero = (of: ArrayLike<number>): number =>
    Array.from(of).filter((value) => value <= NOTHING_KW).length / of.length
  return {
    noonKw: noon.reduce((sum, value) => sum + value, 0) / noon.length,
    nightKw: night.reduce((sum, value) => sum + value, 0) / night.length,
    noonZero: zero(noon),
    nightZero: zero(night),
  }
}

function mean<T>(of: readonly T[], value: (each: T) => number): number {
  return of.reduce((sum, each) => sum + value(each), 0) / of.length
}
