// Parts of work shared out to threads; whoever is free takes the next.

import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import type { Answered, Asked, Ground, PartName, Told } from './parts.js'
import type { Ask, Word } from './worker.js'

export interface Running {
  /** >= 1; as many as the machine has cores where left out. */
  readonly threads?: number
  /** Told how much is done, and of how much; null where nobody knows. */
  readonly tell?: (done: number, of: number | null) => void
  /** Ends the threads. */
  readonly signal?: AbortSignal
}

/**
 * Answers in the order of what was asked.
 *
 * @throws what a thread threw, or the reason of the signal
 */
export async function runParts<Name extends PartName>(
  ground: Ground,
  name: Name,
  asked: readonly Asked<Name>[],
  { threads = availableParallelism(), tell = () => {}, signal }: Running = {},
): Promise<Answered<Name>[]> {
  signal?.throwIfAborted()
  const answers = new Array<Answered<Name>>(asked.length)
  // A single part is told from within, many by their count.
  const within: Told = asked.length === 1 ? tell : () => {}
  let next = 0
  let finished = 0
  const workers = new Set<Worker>()
  const runOne = async (): Promise<void> => {
    const { house, files, plain } = ground
    const workerData = { house, files, plain } satisfies Ground
    const program = new URL('./worker.js', import.meta.url)
    const worker = new Worker(program, { workerData, execArgv: [] })
    workers.add(worker)
    while (next < asked.length) {
      const which = next++
      const ask: Ask = { name, asked: asked[which] }
      answers[which] = (await answerOf(worker, ask, within, signal)) as Answered<Name>
      finished++
      if (asked.length > 1) tell(finished, asked.length)
    }
  }
  if (asked.length > 1) tell(0, asked.length)
  try {
    await Promise.all(Array.from({ length: Math.min(threads, asked.length) }, runOne))
  } finally {
    await Promise.all([...workers].map((worker) => worker.terminate()))
  }
  return answers
}

async function answerOf(
  worker: Worker,
  ask: Ask,
  told: Told,
  signal: AbortSignal | undefined,
): Promise<unknown> {
  signal?.throwIfAborted()
  return new Promise((resolve, reject) => {
    const settle = (done: () => void): void => {
      worker.off('message', hear)
      worker.off('error', failed)
      signal?.removeEventListener('abort', stop)
      done()
    }
    const hear = (word: Word): void => {
      if (word.kind === 'told') told(word.done, word.of)
      else settle(() => resolve(word.answer))
    }
    const failed = (error: unknown): void => settle(() => reject(error))
    const stop = (): void => failed(signal?.reason)
    worker.on('message', hear)
    worker.on('error', failed)
    signal?.addEventListener('abort', stop)
    worker.postMessage(ask)
  })
}
