// Does pieces of work in a thread of its own: one message each, one message back.

import { parentPort, workerData } from 'node:worker_threads'
import type { RideQuestion } from '@tideover/core'
import { openHouse } from './open-house.js'
import { doWork, type Work } from './ride-work.js'

/** What a thread is started with. */
export interface RideWork {
  readonly path: string | undefined
  readonly question: RideQuestion
}

const { path, question } = workerData as RideWork
const { prepared } = openHouse(path)
parentPort?.on('message', (work: Work) => {
  parentPort?.postMessage(doWork(prepared, question, work))
})
