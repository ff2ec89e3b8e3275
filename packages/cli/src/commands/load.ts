import { loadTable } from '@tideover/core'
import { openHouse } from '../open-house.js'
import type { Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { loadText } from '../text/load-text.js'

/** `load`: the loads on one page, to be checked with the customer. */
export function load(path: string | undefined, words: Words): void {
  const { prepared, files } = openHouse(path)
  const table = loadTable(prepared, files)
  if (words.json === true) sayJson(table)
  else say(loadText(table))
}
