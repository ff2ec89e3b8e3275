// A small generator for a house that has none.

import { DEFAULTS } from '../../house/defaults.js'
import type { GeneratorInput, Person } from '../../house/house.js'
import { generatorStartingKva } from '../../island/generator-columns.js'
import { type HouseFiles, type Prepared, prepare } from '../../series/prepare.js'
import { largest } from '../findings/island-loads.js'
import { type Change, short } from './change.js'

/** Sets of our own invention, petrol, no maker's; the first that carries the critical loads. [kW] */
const SETS_KW = [2.2, 3, 5.5] as const

function setOf(ratedKw: number): GeneratorInput {
  return {
    ratedKw,
    tankL: 4 * ratedKw,
    cansL: 0,
    litresPerHour: { none: 0.2 * ratedKw, half: 0.35 * ratedKw, full: 0.55 * ratedKw },
    start: 'by hand',
    mostShare: DEFAULTS['generator.mostShare'].value,
    leastShare: DEFAULTS['generator.leastShare'].value,
    startFailsShare: DEFAULTS['generator.startFailsShare'].value,
    readySeconds: DEFAULTS['generator.readySeconds'].value,
    leastRunMinutes: DEFAULTS['generator.leastRunMinutes'].value,
    startAt: DEFAULTS['generator.startAt'].value,
    stopAt: DEFAULTS['generator.stopAt'].value,
  }
}

const SOMEBODY: Person = {
  minutes: DEFAULTS['person.minutes'].value,
  from: DEFAULTS['person.from'].value,
  to: DEFAULTS['person.to'].value,
}

/** A small set by hand with the fuel of its tank; nothing for a house that has one. */
export function generatorChange(prepared: Prepared, files: HouseFiles): Change[] {
  const { house, demand } = prepared
  if (house.generator !== undefined) return []
  const loadKw = largest(demand.criticalKw, 0).value
  const startKva = largest(demand.peakKva.at(-1)!, 0).value
  const carries = (generator: GeneratorInput): boolean =>
    loadKw <= generator.mostShare * generator.ratedKw &&
    startKva <= generatorStartingKva({ ...house, generator })
  const enough = SETS_KW.map(setOf).find(carries)
  const generator = enough ?? setOf(SETS_KW.at(-1)!)
  const person = house.person ?? SOMEBODY
  const { inverter } = house
  const wakesOn = [...new Set([...inverter.wakesOn, 'generator' as const])]
  return [
    {
      kind: 'generator',
      what:
        `a generator of ${short(generator.ratedKw)} kW started by hand (${person.from} to ${person.to}, ` +
        `after ${person.minutes} min), ${short(generator.tankL)} l in its tank and no more`,
      price: house.prices?.generator ?? null,
      givesUp: null,
      warnings: [
        (enough === undefined
          ? 'An invented set, and too small for the critical loads; '
          : 'An invented set, as small as carries the critical loads; ') +
          'it runs outdoors, its exhaust holds carbon monoxide.',
      ],
      prepared: () =>
        prepare({ ...house, generator, person, inverter: { ...inverter, wakesOn } }, files),
    },
  ]
}
