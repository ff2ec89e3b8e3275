import { doubtsAnswer } from '@tideover/core'
import { monthAsked } from '../darkest-month.js'
import { checkSky, openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { partsLine, say, sayJson } from '../output.js'
import { doubtsText } from '../text/doubts-text.js'

/** `doubts`: how sure the answer is, and when it expires. */
export function doubts(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const share = reader.share('share')
  const month = reader.month()
  const asked = {
    ...scenarioOf(reader),
    // Twice the cut is asked about too.
    hours: reader.number('hours', 'a number > 0 and <= 360 [h]', (v) => v > 0 && v <= 360) ?? 24,
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 5,
    ...(share === undefined ? {} : { share }),
  }
  reader.done()
  const { prepared, plain } = openHouse(path)
  const question = monthAsked(prepared, { ...asked, month })
  checkSky(prepared, question.sky)
  const parts = partsLine()
  const answer = doubtsAnswer(prepared, question, plain, parts.told)
  parts.end()
  if (words.json === true) sayJson(answer)
  else say(doubtsText(answer))
}
