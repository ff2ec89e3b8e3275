// The worst starts of a year, apart from each other: not a hundred neighbours of one night.

import type { Calendar } from '../../axis/calendar.js'
import type { MonthRides } from '../month-rides.js'

/** The shortest ride of one local day of one numbered year. */
export interface DayWorst {
  readonly year: number
  /** Index into the days of the calendar. */
  readonly day: number
  /** On the axis of the year; the earliest of equals. */
  readonly minute: number
  readonly rideMinutes: number
}

/** The shortest ride of each day that does not last the cut. */
export function worstOfDays(
  calendar: Calendar,
  { batches }: Pick<MonthRides, 'batches'>,
  cutMinutes: number,
): DayWorst[] {
  const found = new Map<string, DayWorst>()
  for (const { year, from, rides } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      const rideMinutes = rides.minutes[s]!
      if (rideMinutes >= cutMinutes) continue
      const day = calendar.dayOf[from + s]!
      // A day of a dull spell may live two years, before noon and after: it is one day.
      const key = `${year} ${day}`
      const before = found.get(key)
      if (before !== undefined && before.rideMinutes <= rideMinutes) continue
      found.set(key, { year, day, minute: from + s, rideMinutes })
    }
  }
  return [...found.values()]
}

/**
 * Greedy by the length of the ride: the shortest first, then the shortest at least so many days
 * from all taken. Of equals the earliest. The year's end touches its beginning.
 *
 * @param years  numbered years that follow each other; 1 where each day chooses its own
 * @param most   how many to take
 */
export function apartFromEachOther(
  days: readonly DayWorst[],
  calendar: Calendar,
  years: number,
  apartDays: number,
  most: number,
): DayWorst[] {
  const around = years * calendar.days.length
  const place = ({ year, day }: DayWorst): number =>
    (years > 1 ? year : 0) * calendar.days.length + day
  const taken: DayWorst[] = []
  const ranked = [...days].sort((a, b) => a.rideMinutes - b.rideMinutes || place(a) - place(b))
  for (const each of ranked) {
    if (taken.length === most) break
    const isFar = taken.every((other) => {
      const gap = Math.abs(place(each) - place(other))
      return Math.min(gap, around - gap) >= apartDays
    })
    if (isFar) taken.push(each)
  }
  return taken
}
