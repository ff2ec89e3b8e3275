import { DARK_SKIES, type SkyKind, switchOffAnswer } from '@tideover/core'
import { monthAsked } from '../darkest-month.js'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { switchOffText } from '../text/switch-off-text.js'

/** `switch-off`: what each load costs in hours, and one kettle in minutes. */
export function switchOff(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const month = reader.month()
  const asked = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    sky: reader.sky(DARK_SKIES as readonly SkyKind[]) as (typeof DARK_SKIES)[number],
    generator: words.withoutGenerator !== true,
  }
  reader.done()
  const { prepared, files, plain, notes: read } = openHouse(path)
  const question = monthAsked(prepared, { ...asked, month })
  const show = progressLine()
  let tried = 0
  const answer = switchOffAnswer(prepared, question, files, plain, () =>
    show(`${++tried} sets of loads tried`),
  )
  show('')
  if (words.json === true) sayJson(answer)
  else say(switchOffText(answer, { defaults: words.defaults === true, read }))
}
