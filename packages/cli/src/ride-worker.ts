// Does pieces of work in a thread of its own, each as soon as nobody else has it.

import { parentPort, workerData } from 'node:worker_threads'
import { monthAsked } from './darkest-month.js'
import { openHouse } from './open-house.js'
import { buffersOf, doWork, nextJob, type RideWork, workOf } from './ride-work.js'

const { path, asked, withMonths, counter } = workerData as RideWork
const { prepared } = openHouse(path)
const question = monthAsked(prepared, asked)
const works = workOf(prepared, question, withMonths)
for (let which = nextJob(counter); which < works.length; which = nextJob(counter)) {
  const result = doWork(prepared, question, works[which]!)
  parentPort?.postMessage({ which, result }, buffersOf(result))
}
