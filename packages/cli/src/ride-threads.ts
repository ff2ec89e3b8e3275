// The work of a ride or a page shared out to threads; whoever is free takes the next.

import { Worker } from 'node:worker_threads'
import {
  type MonthRow,
  type Prepared,
  type RideQuestion,
  type RideResult,
  rideJobs,
} from '@tideover/core'
import { progressLine } from './output.js'
import { doWork, type Work, type Worked } from './ride-work.js'
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
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  return (await allDone(jobs, path, prepared, question, threads)) as RideResult[]
}

/** The same, and the other months of the year by the hour. */
export async function resultsAndMonths(
  path: string | undefined,
  prepared: Prepared,
  question: RideQuestion,
  threads: number,
): Promise<{ results: RideResult[]; months: MonthRow[] }> {
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  const others = Array.from({ length: 12 }, (_, m) => m + 1).filter((m) => m !== question.month)
  const done = await allDone([...jobs, ...others], path, prepared, question, threads)
  return {
    results: done.slice(0, jobs.length) as RideResult[],
    months: done.slice(jobs.length) as MonthRow[],
  }
}

async function allDone(
  works: readonly Work[],
  path: string | undefined,
  prepared: Prepared,
  question: RideQuestion,
  threads: number,
): Promise<Worked[]> {
  const show = progressLine()
  const tell = (count: number): void => show(`${count} of ${works.length} parts done`)
  tell(0)
  const done =
    threads === 1
      ? works.map((work, which) => {
          const worked = doWork(prepared, question, work)
          tell(which + 1)
          return worked
        })
      : await doneInThreads(works, { path, question }, threads, tell)
  show('')
  return done
}

/**
 * What came of it, in the order of the work.
 *
 * @param threads  >= 1
 * @param told     after each piece
 */
async function doneInThreads(
  works: readonly Work[],
  data: RideWork,
  threads: number,
  told: (count: number) => void,
): Promise<Worked[]> {
  const done = new Array<Worked>(works.length)
  let next = 0
  let finished = 0
  const runOne = async (): Promise<void> => {
    const worker = new Worker(new URL('./ride-worker.js', import.meta.url), { workerData: data })
    try {
      while (next < works.length) {
        const which = next++
        worker.postMessage(works[which])
        done[which] = await answerOf(worker)
        told(++finished)
      }
    } finally {
      await worker.terminate()
    }
  }
  await Promise.all(Array.from({ length: Math.min(threads, works.length) }, runOne))
  return done
}

function answerOf(worker: Worker): Promise<Worked> {
  return new Promise((resolve, reject) => {
    const answered = (result: Worked): void => {
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
