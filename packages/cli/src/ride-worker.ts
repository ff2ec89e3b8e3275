// Does pieces of work in a thread of its own, each as soon as nobody else has it.

import { parentPort } from 'node:worker_threads'
import { keepHeapSmall } from './heap.js'
import type { RideWork } from './ride-work.js'

keepHeapSmall()
const { buffersOf, doWork, takePiece, workOf } = await import('./ride-work.js')

parentPort?.once('message', async ({ prepared, question, withMonths, taken }: RideWork) => {
  const works = workOf(prepared, question, withMonths)
  const next = (): number => takePiece(taken, works.length, 'first')
  for (let which = next(); which >= 0; which = next()) {
    const result = await doWork(prepared, question, works[which]!)
    parentPort?.postMessage({ which, result }, buffersOf(result))
  }
})
