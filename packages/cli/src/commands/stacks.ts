import { InputError, type SkyKind, stacksAnswer } from '@tideover/core'
import { monthAsked } from '../darkest-month.js'
import { openHouse } from '../open-house.js'
import { OptionReader, STACKS_YEARS, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { stacksText } from '../text/stacks-text.js'

/** One sky is shown, and a clear one is never shown alone. */
const SKIES_ALONE = ['dull', 'none', 'typical', 'file'] as const

function skyOf(reader: OptionReader, words: Words): SkyKind {
  if (words.sky !== 'clear') return reader.sky(SKIES_ALONE)
  const need = `one of ${SKIES_ALONE.join(', ')} (a clear sky is never shown alone)`
  return reader.fault('sky', need, words.sky) ?? 'dull'
}

/** `stacks`: how many battery modules, and the next step for another day. */
export function stacks(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const share = reader.share('share')
  const month = reader.month()
  const asked = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    sky: skyOf(reader, words),
    years: reader.whole('years', 1, 200) ?? Number(STACKS_YEARS),
    ...(share === undefined ? {} : { share }),
  }
  reader.done()
  const { prepared, plain, files, notes: read } = openHouse(path)
  const question = monthAsked(prepared, { ...asked, month })
  if (question.sky === 'file' && prepared.record === null) {
    throw new InputError('--sky', 'one of dull, none, typical: no sky.file is named', 'file')
  }
  const show = progressLine()
  const tell = (done: number, of: number): void => show(`${done} of ${of} rides done`)
  const answer = stacksAnswer(prepared, files, question, { plain, tell })
  show('')
  if (words.json === true) sayJson(answer)
  else say(stacksText(answer, { defaults: words.defaults === true, read }))
}
