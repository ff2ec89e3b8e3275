// What stands above and below an answer: likely slips, warnings, cautions, what it rests on.

import type { Beside } from '@tideover/core'
import { bullets } from './lines.js'
import { defaultLines } from './ride-text.js'

export interface Show {
  /** List the defaults used, and what was read. */
  readonly defaults: boolean
  /** What the readers understood of the files. */
  readonly read: readonly string[]
}

export function withEnds(answer: Beside, lines: readonly string[], show: Show): string {
  const { slips, warnings, cautions } = answer
  return [
    ...(slips.length === 0 ? [] : ['Look at the file first:', ...bullets(slips), '']),
    ...lines,
    ...(warnings.length === 0 ? [] : ['', 'Look at:', ...bullets(warnings)]),
    ...['', 'Caution:', ...bullets(cautions)],
    ...['', ...defaultLines(answer, show.defaults)],
    ...(show.defaults && show.read.length > 0 ? ['', 'Read:', ...bullets(show.read)] : []),
  ].join('\n')
}
