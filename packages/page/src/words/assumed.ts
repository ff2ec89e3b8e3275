// Words of what was assumed, and until when the figures hold.

import type { PageFacts } from '../facts.js'
import { counted, listed, percent } from './numbers.js'
import type { Region } from './region.js'

export type AssumedWords = ReturnType<typeof assumedWords>

export function assumedWords(region: Region, { answer, untold }: PageFacts) {
  const { warnings, defaults, slips } = answer
  return {
    title: 'What was assumed, and until when it holds',
    points: [
      expires(answer.health, region),
      'The figures hold for the loads as they were listed. Whoever adds a load, or changes one, asks again.',
      ...(defaults.length === 0
        ? []
        : [
            `For ${counted(defaults.length, 'value')} nobody gave a figure, and a usual one was taken.` +
              ' Each is listed in the part for the electrician, at the end.',
          ]),
      ...(warnings.length === 0
        ? []
        : [
            `The part for the electrician also says what the weather and the loads rest on, and what is doubtful in them.`,
          ]),
    ],
    slipsTitle: 'To be looked at first: this may be a slip in what was entered',
    slips: [...slips, ...untoldWords(untold)],
  }
}

function untoldWords(names: readonly string[]): string[] {
  if (names.length === 0) return []
  return [
    `Nobody said how long ${listed(names)} may be off, so the first minute off counts as the end: what ` +
      'is said above may be shorter for that alone. Ask, and count again.',
  ]
}

function expires(health: number, region: Region): string {
  const start = `The battery is counted with ${percent(health)} of what it held when new. `
  return health === 1
    ? `${start}It wears from the first day, so the figures hold for a new battery only: ask again each year.`
    : `${start}The figures hold until it has aged to that, at about 2 % a year; have it measured ` +
        `then, and after every long ${region.cut} that ended sooner than said here.`
}
