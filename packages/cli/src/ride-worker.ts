// Runs jobs of a ride in a thread of its own: one message a job, one message back.

import { parentPort, workerData } from 'node:worker_threads'
import { type RideJob, type RideQuestion, runRideJob } from '@tideover/core'
import { openHouse } from './open-house.js'

/** What a thread is started with. */
export interface RideWork {
  readonly path: string | undefined
  readonly question: RideQuestion
}

const { path, question } = workerData as RideWork
const { prepared } = openHouse(path)
parentPort?.on('message', (job: RideJob) => {
  parentPort?.postMessage(runRideJob(prepared, question, job))
})
