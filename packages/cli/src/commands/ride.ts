import { availableParallelism } from 'node:os'
import { equip, InputError, rideFrom } from '@tideover/core'
import { openHouse } from '../open-house.js'
import { camel, DEFAULT_WORDS, OptionReader, scenarioOf, type Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { rideResults } from '../ride-threads.js'
import { rideText } from '../text/ride-text.js'

/** Options that a ride and a trace share. */
const SHARED = ['sky', 'modules', 'start-soc', 'health', 'winters', 'seed', 'years']

/** Another command on the same house with the same options, those left out left out. */
function repeated(command: string, path: string | undefined, words: Words): string {
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
  const results = await rideResults(path, prepared, question, threads)
  const answer = rideFrom(prepared, question, results, plain)
  if (words.json === true) sayJson(answer)
  else {
    const traceCommand = repeated('trace', path, words)
    say(rideText(answer, { defaults: words.defaults === true, read, traceCommand }))
  }
}
