// What the threads of a ride have in common.

import type { BatchRides, RideQuestion, RideResult } from '@tideover/core'

/** Years of the typical sky that a thread takes in one go. */
export const YEARS_A_JOB = 2

/** A question whose month may be left to the house: its darkest. */
export type Asked = Omit<RideQuestion, 'month'> & { readonly month?: number | undefined }

/** What a thread is started with. */
export interface RideWork {
  readonly path: string | undefined
  readonly asked: Asked
  /** How many jobs are taken; shared by all threads. */
  readonly counter: Int32Array
}

/** What a thread sends back. */
export interface JobDone {
  readonly which: number
  readonly result: RideResult
}

/** The number of a job that nobody has taken yet; it may be past the last. */
export function nextJob(counter: Int32Array): number {
  return Atomics.add(counter, 0, 1)
}

/** What can be handed over instead of copied. */
export function buffersOf({ batches }: RideResult): ArrayBuffer[] {
  return Object.values(batches)
    .flat()
    .flatMap(columnsOf)
    .map(({ buffer }) => buffer as ArrayBuffer)
}

function columnsOf({ rides, without, windy }: BatchRides): ArrayBufferView[] {
  const { minutes, beyond, endedBy, byLoad, lostAfter } = rides
  return [minutes, beyond, endedBy, ...byLoad, ...lostAfter, without, windy]
}
