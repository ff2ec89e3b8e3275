// Rides jobs in a thread of its own, each as soon as nobody else has it.

import { parentPort, workerData } from 'node:worker_threads'
import { rideJobs, runRideJob } from '@tideover/core'
import { monthAsked } from './darkest-month.js'
import { openHouse } from './open-house.js'
import { buffersOf, nextJob, type RideWork, YEARS_A_JOB } from './ride-work.js'

const { path, asked, counter } = workerData as RideWork
const { prepared } = openHouse(path)
const question = monthAsked(prepared, asked)
const jobs = rideJobs(prepared, question, YEARS_A_JOB)
for (let which = nextJob(counter); which < jobs.length; which = nextJob(counter)) {
  const result = runRideJob(prepared, question, jobs[which]!)
  parentPort?.postMessage({ which, result }, buffersOf(result))
}
