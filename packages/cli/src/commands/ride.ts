import { InputError, rideAnswer } from '@tideover/core'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { rideText } from '../text/ride-text.js'

/** `ride`: how long the house lasts. */
export function ride(path: string | undefined, words: Words): void {
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
  reader.done()
  const { prepared, plain, notes: read } = openHouse(path)
  if (question.sky === 'file' && prepared.record === null) {
    throw new InputError('--sky', 'one of dull, none, typical, clear: no sky.file is named', 'file')
  }
  const show = progressLine()
  const answer = rideAnswer(
    prepared,
    { ...question, progress: (done, of, sky) => show(`${sky} sky: ${done} of ${of}`) },
    plain,
  )
  show('')
  if (words.json === true) sayJson(answer)
  else say(rideText(answer, { defaults: words.defaults === true, read }))
}
