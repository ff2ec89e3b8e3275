import {
  APART_DAYS,
  equip,
  InputError,
  monthName,
  YEAR_YEARS,
  yearFrom,
  yearMonth,
} from '@tideover/core'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson } from '../output.js'
import { yearText } from '../text/year-text.js'
import { repeated } from './repeated.js'

/** `year`: the seasonal worst case, and why. */
export function year(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const question = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    // A clear year is no worst case.
    sky: reader.sky(['dull', 'none', 'typical', 'file']),
    years: reader.whole('years', 1, 200) ?? YEAR_YEARS,
    apartDays: reader.whole('apart', 1, 180) ?? APART_DAYS,
  }
  reader.done()
  const { prepared, plain, files } = openHouse(path)
  if (question.sky === 'file' && prepared.record === null) {
    throw new InputError('--sky', 'one of dull, none, typical: no sky.file is named', 'file')
  }
  equip(prepared, question)
  const show = progressLine()
  const months = Array.from({ length: 12 }, (_, i) => {
    show(monthName(i + 1))
    return yearMonth(prepared, question, i + 1)
  })
  let steps = 0
  show('the worst starts')
  const answer = yearFrom(prepared, question, months, { plain, files }, () => {
    show(`the worst starts: ${++steps} steps tried on each`)
  })
  show('')
  if (words.json === true) sayJson(answer)
  else say(yearText(answer, traceCommand(path, words, question.sky)))
}

/** How years follow each other matters to the typical sky alone. */
function traceCommand(path: string | undefined, words: Words, sky: string): string {
  const { years, ...others } = words
  return repeated('trace', path, sky === 'typical' ? { ...others, years } : others)
}
