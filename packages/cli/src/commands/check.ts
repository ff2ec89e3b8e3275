import { checkAnswer } from '@tideover/core'
import { openHouse } from '../open-house.js'
import { OptionReader, type Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { checkText } from '../text/check-text.js'

/** `check`: does the installation hold, electrically and on the day? */
export function check(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const modules = reader.whole('modules', 1, 100)
  reader.done()
  const { prepared } = openHouse(path)
  const answer = checkAnswer(prepared, modules === undefined ? {} : { modules })
  if (words.json === true) sayJson(answer)
  else say(checkText(answer))
}
