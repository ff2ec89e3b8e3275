// The jobs of a ride shared out to threads; whoever is free takes the next.

import { Worker } from 'node:worker_threads'
import type { RideJob, RideResult } from '@tideover/core'
import type { RideWork } from './ride-worker.js'

/**
 * Results in the order of the jobs.
 *
 * @param threads  >= 1
 * @param done     told after each job
 */
export async function runInThreads(
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
