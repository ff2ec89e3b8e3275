// Day before month, or month before day? Decided by what the file itself shows, or not at all.

import type { Faults } from '../faults.js'
import { type DateOrder, dateOf, doubtfulDate } from './stamp.js'

const DAY_MS = 86_400_000

/**
 * Order of day and month in a column of dates.
 *
 * First number above 12: day first. Second above 12: month first. Else the order in which the
 * dates follow one another day by day, when only one order does. Dots mean day first.
 *
 * @param dates  The different dates as written, in the order of the file
 * @param line   Line of the first, for the message
 * @throws       InputError where both orders are possible, or neither is
 */
export function dateOrder(dates: readonly string[], line: number, faults: Faults): DateOrder {
  let dayFirst = 0
  let monthFirst = 0
  let doubtful = 0
  for (const date of dates) {
    const pair = doubtfulDate(date)
    if (pair === null) continue
    doubtful++
    if (pair[0] > 12 || date.includes('.')) dayFirst++
    if (pair[1] > 12) monthFirst++
  }
  if (doubtful === 0) return 'ymd'
  if (dayFirst > 0 && monthFirst > 0) {
    const got = `${dates.find(isSecondAbove12)} and ${dates.find(isFirstAbove12)}`
    return faults.refuse(line, 'a file with one order of day and month', got)
  }
  if (dayFirst > 0) return 'dmy'
  if (monthFirst > 0) return 'mdy'
  return orderByCourse(dates, line, faults)
}

function orderByCourse(dates: readonly string[], line: number, faults: Faults): DateOrder {
  const byDay = runsDaily(dates, 'dmy')
  const byMonth = runsDaily(dates, 'mdy')
  if (byDay && !byMonth) return 'dmy'
  if (byMonth && !byDay) return 'mdy'
  const need = 'dates whose day and month can be told apart (write them as 2007-02-01)'
  return faults.refuse(line, need, dates[0] ?? 'nothing')
}

/** Whether neighbouring dates are one day apart, either way. */
function runsDaily(dates: readonly string[], order: DateOrder): boolean {
  const days = dates.map((date) => dateOf(date, order))
  if (days.length < 2) return false
  return days.every((ms, i) => i === 0 || Math.abs(ms - (days[i - 1] ?? Number.NaN)) === DAY_MS)
}

function isFirstAbove12(date: string): boolean {
  return (doubtfulDate(date)?.[0] ?? 0) > 12
}

function isSecondAbove12(date: string): boolean {
  return (doubtfulDate(date)?.[1] ?? 0) > 12
}
