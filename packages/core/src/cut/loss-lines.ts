// The minutes of a log in which a load is lost.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { Course } from './course.js'
import type { EventLine } from './event-line.js'

/** One line for each load that is lost, in the minute it is. */
export function lossLines(
  courses: readonly Course[],
  from: number,
  calendar: Calendar,
): EventLine[] {
  return courses.flatMap((course) => {
    const { lostAt } = course
    if (lostAt === null) return []
    const local = localTime(calendar, from + lostAt)
    const names = [course.name]
    return [{ id: 'load-lost', minute: lostAt, local, text: lossText(course), names }]
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
