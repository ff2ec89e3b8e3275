import { nowAnswer } from '@tideover/core'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { nowJson } from '../text/now-json.js'
import { nowText } from '../text/now-text.js'

/** `now`: from this minute and this charge. */
export function now(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const { modules, health, winters, seed } = scenarioOf(reader)
  const soc = reader.share('soc') ?? Number.NaN
  const hours = reader.hours()
  const hasTime = words.at !== undefined
  if (hasTime) reader.moment('at', 'utc')
  reader.done()
  const { prepared, files, plain, notes: read } = openHouse(path)
  const zoned = new OptionReader(words)
  const atMs = hasTime ? zoned.moment('at', prepared.calendar.zone) : Date.now()
  zoned.done()
  const question = {
    ...{ atMs, soc, hours, winters },
    ...(modules === undefined ? {} : { modules }),
    ...(health === undefined ? {} : { health }),
    ...(seed === undefined ? {} : { seed }),
  }
  const answer = nowAnswer(prepared, question, files, plain)
  if (words.json === true) sayJson(nowJson(prepared, answer))
  else say(nowText(prepared, answer, { defaults: words.defaults === true, read, hasTime }))
}
