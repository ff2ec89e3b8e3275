// The start that lasts least, among those on the full hour: what the form of a page begins with.

import type { BatchRides, Prepared } from '@tideover/core'

/** A start that the form can choose, by the clock on the wall. */
export interface FormStart {
  /** 1..31 */
  readonly day: number
  /** 0..23 */
  readonly hour: number
}

/** The earliest of equals; null without a start on the full hour. */
export function hardestStart(
  { calendar }: Prepared,
  batches: readonly Pick<BatchRides, 'from' | 'rides'>[],
): FormStart | null {
  let least = Number.POSITIVE_INFINITY
  let found: FormStart | null = null
  for (const { from, rides } of batches) {
    for (const [s, ride] of rides.minutes.entries()) {
      const minute = (from + s) % calendar.n
      if (calendar.wallMinute[minute]! % 60 !== 0 || ride >= least) continue
      least = ride
      const { day } = calendar.days[calendar.dayOf[minute]!]!
      found = { day, hour: calendar.wallMinute[minute]! / 60 }
    }
  }
  return found
}
