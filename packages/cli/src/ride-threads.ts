// The work of a ride or a page shared out to threads, this one among them; whoever is free takes the
// next piece.
//
// The others are started before the house is read, for an engine takes its time to start.

import { Worker } from 'node:worker_threads'
import type { MonthRow, Prepared, RideQuestion, RideResult } from '@tideover/core'
import { giveBack, keepHeapSmall } from './heap.js'
import { progressLine } from './output.js'
import {
  doWork,
  isRide,
  type JobDone,
  noneTaken,
  type RideWork,
  takePiece,
  type Worked,
  workOf,
} from './ride-work.js'

export class RideThreads {
  private readonly taken: Int32Array = noneTaken()
  private readonly others: readonly Worker[]
  private readonly done: JobDone[] = []
  private failure: unknown = null
  private wake: () => void = () => {}

  /**
   * @param threads     in all, this one among them; >= 1
   * @param withMonths  whether the other months of the year are worked out too
   */
  constructor(
    threads: number,
    private readonly withMonths = false,
  ) {
    keepHeapSmall()
    this.others = Array.from({ length: threads - 1 }, () => this.another())
  }

  /**
   * All that a ride rests on, in the order of its jobs; progress is told.
   *
   * @param question  what was asked, its month settled
   */
  async results(prepared: Prepared, question: RideQuestion): Promise<RideResult[]> {
    const done = await this.allDone(prepared, question)
    return done.filter(isRide)
  }

  /** The same, and the other months by the hour, January first. */
  async resultsAndMonths(
    prepared: Prepared,
    question: RideQuestion,
  ): Promise<{ results: RideResult[]; months: MonthRow[] }> {
    const done = await this.allDone(prepared, question)
    return {
      results: done.filter(isRide),
      months: done.filter((each): each is MonthRow => !isRide(each)),
    }
  }

  private async allDone(prepared: Prepared, question: RideQuestion): Promise<Worked[]> {
    const show = progressLine()
    const works = workOf(prepared, question, this.withMonths)
    const tell = (): void => show(`${this.done.length} of ${works.length} parts done`)
    const { withMonths, taken } = this
    const shared: RideWork = { prepared, question, withMonths, taken }
    for (const worker of this.others) {
      worker.postMessage(shared)
      worker.ref()
    }
    tell()
    giveBack()
    const from = this.others.length === 0 ? 'first' : 'last'
    const next = (): number => takePiece(this.taken, works.length, from)
    for (let which = next(); which >= 0; which = next()) {
      this.done.push({ which, result: await doWork(prepared, question, works[which]!) })
      // What the others have sent meanwhile is taken in.
      await new Promise(setImmediate)
      tell()
    }
    while (this.done.length < works.length) {
      await this.news()
      tell()
    }
    show('')
    return this.done.sort((a, b) => a.which - b.which).map(({ result }) => result)
  }

  /** The next message of another thread. */
  private async news(): Promise<void> {
    if (this.failure === null) {
      await new Promise<void>((resolve) => {
        this.wake = resolve
      })
    }
    if (this.failure !== null) throw this.failure
  }

  /** A thread that does not keep the command alive before its results are waited for. */
  private another(): Worker {
    const worker = new Worker(new URL('./ride-worker.js', import.meta.url))
    worker.on('message', (done: JobDone) => {
      this.done.push(done)
      this.wake()
    })
    worker.on('error', (error) => {
      this.failure = error
      this.wake()
    })
    worker.unref()
    return worker
  }
}
