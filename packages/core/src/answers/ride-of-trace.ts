// The ride that one traced cut shows, by the same rule as the rides of every start.

import type { Course } from '../cut/course.js'
import type { CutStory } from './trace-cut.js'

export interface TracedRide {
  /** From the start to the first minute of the time off in which a load is lost. */
  readonly minutes: number
  /** Minute of the trace in which it is lost. */
  readonly lostAt: number
  /** Index of the load that is lost first; of equals the first in the file. */
  readonly endedBy: number
}

/**
 * Null where no load is lost within the trace. A load that is off at its end may be lost later: a
 * ride within some hours is known once the trace is longer than them by the longest tolerance.
 */
export function rideOfTrace({
  trace,
  courses,
  compiled,
}: Pick<CutStory, 'trace' | 'courses' | 'compiled'>): TracedRide | null {
  const lost = courses.map((course: Course) => course.lostAt ?? Number.POSITIVE_INFINITY)
  const lostAt = Math.min(...lost)
  if (!Number.isFinite(lostAt)) return null
  let from = lostAt
  while (from > 0 && trace.levels[from - 1]! > compiled.rules.lastLevel) from--
  return { minutes: from, lostAt, endedBy: lost.indexOf(lostAt) }
}
