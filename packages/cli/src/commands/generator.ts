import { generatorPlan, type PlanQuestion, type SkyKind } from '@tideover/core'
import { checkSky, openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { partsLine, say, sayJson } from '../output.js'
import { generatorText } from '../text/generator-text.js'
import { repeated } from './repeated.js'

/** `generator`: how much fuel to store, and who must be there. */
export function generator(path: string | undefined, words: Words): void {
  const question = questionOf(words)
  const { prepared, plain } = openHouse(path)
  checkSky(prepared, question.sky)
  const parts = partsLine()
  const answer = generatorPlan(prepared, question, plain, parts.told)
  parts.end()
  if (words.json === true) sayJson(answer)
  else say(generatorText(answer, repeated('trace', path, asTrace(words))))
}

function questionOf(words: Words): PlanQuestion & { readonly sky: SkyKind } {
  const reader = new OptionReader(words)
  const month = reader.month()
  const quiet = reader.clockSpan('quiet')
  const setKw = reader.number('set', 'a number > 0 and <= 100 [kW]', (v) => v > 0 && v <= 100)
  const startFails = reader.share('start-fails')
  const between = reader.number('hours-between-failures', 'a number > 0 [h]', (v) => v > 0)
  const hasChances = startFails !== undefined || between !== undefined
  const chances = { startFailsShare: startFails ?? 0, hoursBetweenFailures: between ?? null }
  const question = {
    ...scenarioOf(reader),
    days: reader.number('days', 'a number > 0 and <= 30 [days]', (v) => v > 0 && v <= 30) ?? 3,
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 5,
    ...(month === undefined ? {} : { month }),
    ...(quiet === undefined ? {} : { quiet }),
    ...(setKw === undefined ? {} : { setKw }),
    ...(hasChances ? { chances } : {}),
  }
  reader.done()
  return question
}

/** Years matter to a trace under the typical sky only. */
function asTrace(words: Words): Words {
  return words.sky === 'typical' ? words : { ...words, years: undefined }
}
