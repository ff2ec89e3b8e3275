// What a comparison of stacks costs: six stacks, twelve months, three skies, one year each.
//
// The croft with room for six modules, on two workers that take every other month; making the
// house ready is in it, once a worker. Run by itself it prints the one figure.

import { fileURLToPath } from 'node:url'
import { isMainThread, parentPort, Worker, workerData } from 'node:worker_threads'
import { prepare, rideStacks } from '@tideover/core'
import { loadHouse } from '@tideover/files'

export const STACKS_WORKERS = 2
const SKIES = ['dull', 'none', 'typical']
const FILE = fileURLToPath(import.meta.url)

/** [ms] */
export async function stacksMs() {
  const from = performance.now()
  const sums = await Promise.all(Array.from({ length: STACKS_WORKERS }, (_, k) => inWorker(k)))
  if (!(sums.reduce((a, b) => a + b, 0) > 0)) throw new Error(`the stacks gave ${sums}`)
  return performance.now() - from
}

function inWorker(which) {
  return new Promise((resolve, reject) => {
    const worker = new Worker(FILE, { workerData: { stacksOf: which } })
    worker.once('message', resolve)
    worker.once('error', reject)
  })
}

/** Sum of the middle rides of the months of one worker, so that none is skipped. */
function rideMonths(which) {
  const path = fileURLToPath(new URL('../../data-samples/croft.yaml', import.meta.url))
  const { house, files } = loadHouse(path)
  const croft = prepare({ ...house, stack: { ...house.stack, modulesMax: 6 } }, files)
  let sum = 0
  for (let month = 1 + which; month <= 12; month += STACKS_WORKERS) {
    for (const sky of SKIES) {
      const { figures } = rideStacks(croft, { month, hours: 24, sky, years: 1 }, () => {})
      for (const { medianHours } of figures) sum += medianHours
    }
  }
  return sum
}

if (!isMainThread && workerData?.stacksOf !== undefined) {
  parentPort.postMessage(rideMonths(workerData.stacksOf))
} else if (isMainThread && process.argv[1] === FILE) {
  console.log(JSON.stringify({ stacksMs: await stacksMs() }))
}
