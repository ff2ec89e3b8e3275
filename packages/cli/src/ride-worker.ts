// Does pieces of work in a thread of its own, each as soon as nobody else has it.

import { parentPort, workerData } from 'node:worker_threads'
import { monthAsked } from './darkest-month.js'
import { openHouse } from './open-house.js'
import { buffersOf, doWork, type RideWork, takePiece, workOf } from './ride-work.js'

const { path, asked, withMonths, taken } = workerData as RideWork
const { prepared } = openHouse(path)
const question = monthAsked(prepared, asked)
const works = workOf(prepared, question, withMonths)
const next = (): number => takePiece(taken, works.length, 'first')
for (let which = next(); which >= 0; which = next()) {
  const result = doWork(prepared, question, works[which]!)
  parentPort?.postMessage({ which, result }, buffersOf(result))
}
