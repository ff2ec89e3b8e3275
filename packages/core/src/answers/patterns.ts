// Cuts are not dice: the minutes at which they tend to start.
//
// `evening`: 15 to 21 h on the wall clock (40 % of severe-weather cuts start then, computed from
// the public record of major United States interruptions 2000-2016). `windy`: the windiest 5 % of
// the month's days where there is a wind record; else days no brighter than 0.8 of the month's mean.

import { type Calendar, inSpan } from '../axis/calendar.js'

export const PATTERNS = ['any', 'evening', 'windy'] as const
export type Pattern = (typeof PATTERNS)[number]

const EVENING = [15 * 60, 21 * 60] as const
const WINDIEST = 0.05
const DULLER_THAN = 0.8

/** What a pattern counts, and what that rests on. */
export interface PatternGround {
  readonly pattern: Pattern
  readonly counts: string
  readonly restsOn: string
}

export const PATTERN_GROUNDS: readonly PatternGround[] = [
  {
    pattern: 'any',
    counts: 'every minute of the month, each as likely as the next',
    restsOn: 'none but that; cuts do not fall so evenly',
  },
  {
    pattern: 'evening',
    counts: 'starts from 15 to 21 h on the clock on the wall',
    restsOn:
      '40 % of severe-weather cuts start then, computed from the public record of major United ' +
      'States interruptions 2000-2016; a quarter of the day would bring 25 %',
  },
  {
    pattern: 'windy',
    counts:
      'starts on the windiest 5 % of the days where the sky has a wind record, else on days no ' +
      "brighter than 0.8 of the month's mean",
    restsOn: 'wind cuts lines and brings cloud; both limits are common practice, no source',
  },
]

export function isEvening(calendar: Calendar, minute: number): boolean {
  return inSpan(calendar.wallMinute[minute]!, EVENING[0], EVENING[1])
}

/** One day of the starts, as the pattern `windy` sees it. */
export interface DayLook {
  /** Global irradiation over the month's mean. */
  readonly brightness: number
  /** [m/s], NaN where there is no record */
  readonly windMs: number
}

/** Which of some days count as windy. */
export function windyDays(days: readonly DayLook[]): boolean[] {
  if (days.some((day) => Number.isNaN(day.windMs))) {
    return days.map((day) => day.brightness <= DULLER_THAN)
  }
  const sorted = days.map((day) => day.windMs).sort((a, b) => b - a)
  const least = sorted[Math.max(1, Math.round(WINDIEST * days.length)) - 1] ?? Infinity
  return days.map((day) => day.windMs >= least)
}
