// The minutes of a log in which a load is lost.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { Course } from './course.js'
import type { EventLine } from './event-lines.js'

/** One line for each load that is lost, in the minute it is. */
export function lossLines(
  courses: readonly Course[],
  from: number,
  calendar: Calendar,
): EventLine[] {
  return courses.flatMap((course) => {
    const { lostAt } = course
    if (lostAt === null) return []
    return [{ minute: lostAt, local: localTime(calendar, from + lostAt), text: lossText(course) }]
  })
}

function lossText({ name, shown, toleratesMinutes }: Course): string {
  if (shown === null) {
    if (toleratesMinutes === 0) return `${name} is lost: it bears no gap.`
    return `${name} is lost: it bears ${toleratesMinutes} min, gaps in a row counted together.`
  }
  if (shown.unit === 'l') return `${name} is lost: no ${shown.word}.`
  return `${name} is lost: past ${shown.limit} °C.`
}
