// The long questions, asked in threads: the cell tells how far they are, and interrupting the
// kernel ends them.

import type {
  DoubtsAnswer,
  PlanAnswer,
  PlanQuestion,
  RideAnswer,
  RideQuestion,
  StacksAnswer,
  SwitchOffAnswer,
  SwitchOffQuestion,
  YearAnswer,
  YearQuestion,
} from '@tideover/core'
import { progress } from './progress.js'
import { type Ground, type Running, threaded } from './threads/index.js'

type Asking<Question, Answer> = (house: Ground, question: Question) => Promise<Answer>

/** Each takes what `loadHouse` gave, or the same with another house in it. */
export interface Ask {
  readonly ride: Asking<RideQuestion, RideAnswer>
  readonly stacks: Asking<RideQuestion, StacksAnswer>
  readonly year: Asking<YearQuestion, YearAnswer>
  readonly switchOff: Asking<SwitchOffQuestion, SwitchOffAnswer>
  readonly generator: Asking<PlanQuestion, PlanAnswer>
  readonly doubts: Asking<RideQuestion, DoubtsAnswer>
}

export const ask: Ask = {
  ride: watched('Trying every minute of the month as a start', threaded.ride),
  stacks: watched('Trying every stack', threaded.stacks),
  year: watched('Trying every minute of the year as a start', threaded.year),
  switchOff: watched('Switching off one load after another', threaded.switchOff),
  generator: watched('Following the generator through cuts of every month', threaded.generator),
  doubts: watched('Changing one thing after another', threaded.doubts),
}

function watched<Question, Answer>(
  what: string,
  work: (house: Ground, question: Question, running: Running) => Promise<Answer>,
): Asking<Question, Answer> {
  return async (house, question) => {
    const line = progress(what)
    const stop = new AbortController()
    const interrupted = (): void => stop.abort(new Error(`Interrupted: ${what.toLowerCase()}.`))
    // While a cell has not yet awaited, Node watches for SIGINT itself, and forgets a listener that
    // is added meanwhile.
    await new Promise((awake) => setImmediate(awake))
    process.once('SIGINT', interrupted)
    try {
      return await work(house, question, { tell: line.tell, signal: stop.signal })
    } finally {
      process.off('SIGINT', interrupted)
      line.end()
    }
  }
}
