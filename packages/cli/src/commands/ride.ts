import { availableParallelism } from 'node:os'
import { equip, rideFrom, rideJobs, runRideJob } from '@tideover/core'
import { checkSky, openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { runInThreads } from '../ride-threads.js'
import { rideText } from '../text/ride-text.js'
import { repeated } from './repeated.js'

/** Years of the typical sky that a thread takes in one go. */
const YEARS_A_JOB = 3

/** `ride`: how long the house lasts. */
export async function ride(path: string | undefined, words: Words): Promise<void> {
  const reader = new OptionReader(words)
  const share = reader.share('share')
  const question = {
    ...scenarioOf(reader),
    month: reader.whole('month', 1, 12) ?? 1,
    hours: reader.hours(),
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 30,
    ...(share === undefined ? {} : { share }),
  }
  const threads = reader.whole('threads', 1, 64) ?? availableParallelism()
  reader.done()
  const { prepared, plain, notes: read } = openHouse(path)
  checkSky(prepared, question.sky)
  // What is wrong with the question is told before any thread begins.
  equip(prepared, question)
  const show = progressLine()
  const jobs = rideJobs(prepared, question, YEARS_A_JOB)
  const tell = (count: number): void => show(`${count} of ${jobs.length} parts done`)
  tell(0)
  const results =
    threads === 1
      ? jobs.map((job, which) => {
          const result = runRideJob(prepared, question, job)
          tell(which + 1)
          return result
        })
      : await runInThreads(jobs, { path, question }, threads, tell)
  show('')
  const answer = rideFrom(prepared, question, results, plain)
  if (words.json === true) sayJson(answer)
  else {
    const traceCommand = repeated('trace', path, words)
    say(rideText(answer, { defaults: words.defaults === true, read, traceCommand }))
  }
}
