// What is said beside every answer, because people can be hurt.

import type { House } from '../house/house.js'

/** Cautions for a house, most general last. */
export function cautionsFor(house: House): string[] {
  const cautions = [
    'Running as an island needs isolation of all live conductors, an earth electrode of its own ' +
      'and a neutral-earth bond that it makes only while it runs; the supply earth is not to be ' +
      'relied on. Work for a licensed person, agreed with the network operator.',
  ]
  const isAny = (words: RegExp): boolean =>
    house.loads.some(({ name, like = '' }) => words.test(name) || words.test(like))
  if (isAny(/boiler|stove|solid.?fuel/i)) {
    cautions.push(
      'A boiler or stove that burns solid fuel needs a heat leak and protection that work with no ' +
        'power at all.',
    )
  }
  if (isAny(MEDICAL)) {
    cautions.push(
      "Nobody's health rests on a simulation: medicines follow pharmacist and maker, and a " +
        'medical device needs a plan of its own for a longer cut.',
    )
  }
  if (house.generator !== undefined) {
    cautions.push(
      'A generator runs outdoors, far from doors and windows: its exhaust holds carbon monoxide.',
    )
  }
  cautions.push(
    'A simulation under stated conditions, not a guarantee. Local codes, the network operator ' +
      'and licensed people have the last word.',
  )
  return cautions
}

const MEDICAL = /medic|insulin|vaccin|oxygen|dialys|ventilat|cpap|breathing|hoist|alarm/i
