// The generator on the card: when, who, how long the fuel runs.

import { generatorLitresPerHour } from '@tideover/core'
import { type Html, list, tag } from './html.js'
import type { PapersInput } from './input.js'
import { short, wholePercent } from './numbers.js'

export function generatorPart({ prepared: { house }, check }: PapersInput): Html {
  const { generator, person } = house
  if (generator === undefined) {
    return tag('div', [
      tag('h3', 'Generator'),
      tag('p', 'None is counted on. Never plug one into a socket: it kills people on the line.'),
    ])
  }
  const night = check.findings.find(({ id }) => id === 'night-wait')
  const bedtime = night?.numbers.find(({ name }) => name === 'charge needed at bedtime')?.value
  const { tankL, cansL, ratedKw } = generator
  // What nobody pours stays in the cans.
  const countedL = tankL + (person === undefined ? 0 : cansL)
  const halfHours = countedL / generatorLitresPerHour(generator, ratedKw / 2)
  const unpoured = person === undefined && cansL > 0 ? ' (nobody is named who pours them)' : ''
  const when = `at ${wholePercent(generator.startAt)} charge; runs to ${wholePercent(generator.stopAt)}`
  const start =
    generator.start === 'automatic'
      ? `Starts by itself ${when}.`
      : `Start it by hand ${when}.${
          person === undefined
            ? ' Nobody is named who can.'
            : ` Counted on: ${person.from} to ${person.to}, within ${short(person.minutes)} min.`
        }`
  const bed =
    typeof bedtime !== 'number'
      ? []
      : [
          bedtime < 1
            ? `Before bed: ${Math.ceil(100 * bedtime)} % or more, spare loads off, else run it first.`
            : 'No charge lasts the night: run it late, and again early.',
        ]
  return tag('div', [
    tag('h3', 'Generator'),
    list([
      start,
      ...bed,
      `Fuel: tank ${short(tankL)} l, cans ${short(cansL)} l${unpoured}: about ${Math.floor(halfHours)} h at half load.`,
      tag(
        'b',
        'Outdoors only, far from doors and windows: its exhaust holds carbon monoxide, which kills. ' +
          'Stop it and let it cool before filling.',
      ),
    ]),
  ])
}
