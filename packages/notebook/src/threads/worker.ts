// A thread: one message a part asked for; back come messages of how far it is, and its answer.

import { parentPort, workerData } from 'node:worker_threads'
import { prepare } from '@tideover/core'
import { type Ground, PARTS, type PartName, type Told } from './parts.js'

/** What is sent to a thread, and what it sends. */
export interface Ask {
  readonly name: PartName
  readonly asked: unknown
}
export type Word =
  | { readonly kind: 'told'; readonly done: number; readonly of: number | null }
  | { readonly kind: 'answer'; readonly answer: unknown }

const ground = workerData as Ground
const ready = { ...ground, prepared: prepare(ground.house, ground.files) }

parentPort?.on('message', ({ name, asked }: Ask) => {
  const part = PARTS[name] as (of: typeof ready, asked: unknown, told: Told) => unknown
  const answer = part(ready, asked, (done, of) => send({ kind: 'told', done, of }))
  send({ kind: 'answer', answer })
})

function send(word: Word): void {
  parentPort?.postMessage(word)
}
