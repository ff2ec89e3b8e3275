import { availableParallelism } from 'node:os'
import { equip, InputError, rideFrom, rideJobs, runRideJob } from '@tideover/core'
import { openHouse } from '../open-house.js'
import { camel, DEFAULT_WORDS, OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { runInThreads } from '../ride-threads.js'
import { rideText } from '../text/ride-text.js'

/** Years of the typical sky that a thread takes in one go. */
const YEARS_A_JOB = 3

/** Options that the commands of a scenario share. */
const SHARED = ['sky', 'modules', 'start-soc', 'health', 'winters', 'seed', 'years']

/** Another command on the same house with the same options, those left out left out. */
export function repeated(command: string, path: string | undefined, words: Words): string {
  const given = SHARED.flatMap((name) => {
    const word = words[camel(name)]
    const isDefault = Object.entries(DEFAULT_WORDS).some(([n, w]) => n === name && w === word)
    return word === undefined || isDefault ? [] : [`--${name} ${word}`]
  })
  const program = process.env.npm_lifecycle_event === 'start' ? 'npm start --' : 'tideover'
  return [program, command, ...(path === undefined ? [] : [path]), ...given].join(' ')
}

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
  if (question.sky === 'file' && prepared.record === null) {
    throw new InputError('--sky', 'one of dull, none, typical, clear: no sky.file is named', 'file')
  }
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
