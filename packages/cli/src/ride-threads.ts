// A ride with its work shared out to threads, and progress told to whoever looks on.

import { type RideQuestion, type RideResult, rideJobs, runRideJob } from '@tideover/core'
import { threaded } from '@tideover/threads'
import type { OpenHouse } from './open-house.js'
import { progressLine } from './output.js'

/** All that a ride rests on; with one thread nothing is started beside this one. */
export async function riddenParts(
  open: OpenHouse,
  question: RideQuestion,
  threads: number,
): Promise<RideResult[]> {
  const { prepared } = open
  const show = progressLine()
  const tell = (done: number, of: number | null): void => show(`${done} of ${of} parts done`)
  const results =
    threads === 1
      ? rideJobs(prepared, question, threaded.YEARS_A_JOB).map((job, which, { length }) => {
          tell(which, length)
          return runRideJob(prepared, question, job)
        })
      : await threaded.rideResults(open, prepared, question, { threads, tell })
  show('')
  return results
}
