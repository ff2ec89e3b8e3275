// Pieces of work behind a ride or a page, done by whichever thread is free.

import {
  type MonthRow,
  type Prepared,
  type RideJob,
  type RideQuestion,
  type RideResult,
  runRideJob,
  yearMonth,
} from '@tideover/core'

/** A job of a ride, or a month of the year by the hour, 1..12. */
export type Work = RideJob | number
export type Worked = RideResult | MonthRow

export function doWork(prepared: Prepared, question: RideQuestion, work: Work): Worked {
  return typeof work === 'number'
    ? yearMonth(prepared, question, work).row
    : runRideJob(prepared, question, work)
}
