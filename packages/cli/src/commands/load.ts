import { loadTable, typicalTable } from '@tideover/core'
import { openHouse } from '../open-house.js'
import type { Words } from '../options.js'
import { say, sayJson } from '../output.js'
import { loadText } from '../text/load-text.js'
import { typicalText } from '../text/typical-text.js'

/** `load`: the loads on one page, to be checked with the customer. */
export function load(path: string | undefined, words: Words): void {
  if (words.kinds === true) {
    if (words.json === true) sayJson({ kinds: typicalTable() })
    else say(typicalText(typicalTable()))
    return
  }
  const { prepared, files } = openHouse(path)
  const table = loadTable(prepared, files)
  if (words.json === true) sayJson(table)
  else say(loadText(table))
}
