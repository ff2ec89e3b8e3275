// What the threads of a ride or a page have in common.

import type {
  BatchRides,
  MonthRow,
  Prepared,
  RideJob,
  RideQuestion,
  RideResult,
} from '@tideover/core'
import { rideJobs, runRideJob } from '@tideover/core/rides'

/** Years of the typical sky that a thread takes in one go. */
const YEARS_A_JOB = 2

/** What a thread works from; the columns of the house are shared, not copied. */
export interface RideWork {
  readonly prepared: Prepared
  readonly question: RideQuestion
  /** Whether the other months are worked out too, by the hour. */
  readonly withMonths: boolean
  /** By piece of work, 1 where it is taken; shared by all threads. */
  readonly taken: Int32Array
}

/** What a thread sends back. */
export interface JobDone {
  readonly which: number
  readonly result: Worked
}

/** A job of a ride, or a month of the year by the hour, 1..12. */
export type Work = RideJob | number
export type Worked = RideResult | MonthRow

export function isRide(worked: Worked): worked is RideResult {
  return 'batches' in worked
}

/** The work behind a question in its order, the jobs of the ride first; the same in every thread. */
export function workOf(prepared: Prepared, question: RideQuestion, withMonths: boolean): Work[] {
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  if (!withMonths) return jobs
  const months = Array.from({ length: 12 }, (_, m) => m + 1)
  return [...jobs, ...months.filter((month) => month !== question.month)]
}

/** Months by the hour need all of core, which a thread that only rides does not load. */
export async function doWork(
  prepared: Prepared,
  question: RideQuestion,
  work: Work,
): Promise<Worked> {
  if (typeof work !== 'number') return runRideJob(prepared, question, work)
  const { yearMonth } = await import('@tideover/core')
  return yearMonth(prepared, question, work).row
}

/** More pieces than any answer has. */
const MOST_PIECES = 1024

/** Nothing taken yet, for all threads to see. */
export function noneTaken(): Int32Array {
  return new Int32Array(new SharedArrayBuffer(4 * MOST_PIECES))
}

/**
 * A piece that nobody else has taken, from the first on; or from the last on, for the first are
 * long and a thread that tells the progress should soon be back.
 *
 * @returns  -1 where all are taken
 */
export function takePiece(taken: Int32Array, pieces: number, from: 'first' | 'last'): number {
  for (let k = 0; k < pieces; k++) {
    const piece = from === 'first' ? k : pieces - 1 - k
    if (Atomics.compareExchange(taken, piece, 0, 1) === 0) return piece
  }
  return -1
}

/** What can be handed over instead of copied. */
export function buffersOf(result: Worked): ArrayBuffer[] {
  if (!isRide(result)) return []
  const columns = Object.values(result.batches).flat().flatMap(columnsOf)
  return [...new Set(columns.map(({ buffer }) => buffer as ArrayBuffer))]
}

function columnsOf({ rides, without, windy }: BatchRides): ArrayBufferView[] {
  const { minutes, beyond, endedBy, byLoad, lostAfter } = rides
  return [minutes, beyond, endedBy, ...byLoad, ...lostAfter, without, windy]
}
