// The jobs of a ride shared out to threads; whoever is free takes the next.

import { Worker } from 'node:worker_threads'
import {
  type Prepared,
  type RideJob,
  type RideQuestion,
  type RideResult,
  rideJobs,
  runRideJob,
} from '@tideover/core'
import { progressLine } from './output.js'
import type { RideWork } from './ride-worker.js'

/** Years of the typical sky that a thread takes in one go. */
const YEARS_A_JOB = 3

/** All that a ride rests on, with progress told; with one thread nothing is started beside it. */
export async function rideResults(
  path: string | undefined,
  prepared: Prepared,
  question: RideQuestion,
  threads: number,
): Promise<RideResult[]> {
  const show = progressLine()
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  const tell = (count: number): void => show(`${count} of ${jobs.length} parts done`)
  tell(0)
  const results =
    threads === 1
      ? jobs.map((job, which) => {
          const result = runRideJob(prepared, question, job)
          tell(which + 1)
          return result
        })
      : await runInThreads(jobs, { path, question }, threads, tell)
  show('')
  return results
}

/**
 * Results in the order of the jobs.
 *
 * @param threads  >= 1
 * @param done     told after each job
 */
async function runInThreads(
  jobs: readonly RideJob[],
  work: RideWork,
  threads: number,
  done: (count: number) => void,
): Promise<RideResult[]> {
  const results = new Array<RideResult>(jobs.length)
  let next = 0
  let finished = 0
  const runOne = async (): Promise<void> => {
    const worker = new Worker(new URL('./ride-worker.js', import.meta.url), { workerData: work })
    try {
      while (next < jobs.length) {
        const which = next++
        worker.postMessage(jobs[which])
        results[which] = await answerOf(worker)
        done(++finished)
      }
    } finally {
      await worker.terminate()
    }
  }
  await Promise.all(Array.from({ length: Math.min(threads, jobs.length) }, runOne))
  return results
}

function answerOf(worker: Worker): Promise<RideResult> {
  return new Promise((resolve, reject) => {
    const answered = (result: RideResult): void => {
      worker.off('error', failed)
      resolve(result)
    }
    const failed = (error: unknown): void => {
      worker.off('message', answered)
      reject(error)
    }
    worker.once('message', answered)
    worker.once('error', failed)
  })
}
