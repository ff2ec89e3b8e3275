import { availableParallelism } from 'node:os'
import { equip, rideFrom } from '@tideover/core'
import { checkSky, openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { RideThreads } from '../ride-threads.js'
import { rideText } from '../text/ride-text.js'
import { repeated } from './repeated.js'

/** `ride`: how long the house lasts. */
export async function ride(path: string | undefined, words: Words): Promise<void> {
  const reader = new OptionReader(words)
  const share = reader.share('share')
  const question = {
    ...scenarioOf(reader),
    month: reader.month() ?? 1,
    hours: reader.hours(),
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 30,
    ...(share === undefined ? {} : { share }),
  }
  const threads = reader.whole('threads', 1, 64) ?? availableParallelism()
  reader.done()
  const crew = new RideThreads(threads)
  const { prepared, plain, notes: read } = openHouse(path, true)
  checkSky(prepared, question.sky)
  // What is wrong with the question is told before anything is worked out.
  equip(prepared, question)
  const results = await crew.results(prepared, question)
  const answer = rideFrom(prepared, question, results, plain)
  if (words.json === true) sayJson(answer)
  else {
    const traceCommand = repeated('trace', path, words)
    say(rideText(answer, { defaults: words.defaults === true, read, traceCommand }))
  }
}
