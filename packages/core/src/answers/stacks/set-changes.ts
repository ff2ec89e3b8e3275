// What makes the generator of a house last longer, or start when nobody is there.

import { clockMinute, DAY_MINUTES } from '../../axis/calendar.js'
import type { GeneratorInput, House } from '../../house/house.js'
import { type HouseFiles, type Prepared, prepare } from '../../series/prepare.js'
import { MORE_FUEL_L } from '../altered.js'
import type { Change, StepKind } from './change.js'

/** More fuel, somebody at any hour, a start by itself; nothing for a house without a generator. */
export function setChanges({ house }: Prepared, files: HouseFiles): Change[] {
  const { generator } = house
  if (generator === undefined) return []
  return [
    moreFuel(house, generator, files),
    ...(generator.start === 'by hand'
      ? [...anyHour(house, files), byItself(house, generator, files)]
      : []),
  ]
}

function moreFuel(house: House, generator: GeneratorInput, files: HouseFiles): Change {
  const inCans = house.person !== undefined
  const { tankL, cansL } = generator
  const more = inCans ? { cansL: cansL + MORE_FUEL_L } : { tankL: tankL + MORE_FUEL_L }
  return {
    ...unpriced('fuel'),
    what:
      `${MORE_FUEL_L} l more fuel ` +
      (inCans
        ? `in cans, ${tankL + cansL + MORE_FUEL_L} l with the tank`
        : `in a larger tank, ${tankL + MORE_FUEL_L} l`),
    warnings: [
      'Petrol is kept in no more than the local rule allows, never in the living space: the fuel plan ' +
        '(generator) tells how much a cut takes, and a rule where it knows one.',
    ],
    prepared: () => prepare({ ...house, generator: { ...generator, ...more } }, files),
  }
}

function anyHour(house: House, files: HouseFiles): Change[] {
  const { person } = house
  if (person === undefined) return []
  const [from, to] = [clockMinute(person.from) ?? 0, clockMinute(person.to) ?? 0]
  if (to - from === DAY_MINUTES) return []
  return [
    {
      ...unpriced('person'),
      what: `somebody to start the generator at any hour (now ${person.from} to ${person.to})`,
      price: 0,
      warnings: ['It counts only if somebody has agreed to be woken.'],
      prepared: () =>
        prepare({ ...house, person: { ...person, from: '00:00', to: '24:00' } }, files),
    },
  ]
}

function byItself(house: House, generator: GeneratorInput, files: HouseFiles): Change {
  return {
    ...unpriced('start'),
    what: 'a generator of the same size that starts by itself',
    warnings: [
      'A set that starts by itself starts with nobody there: it stands outdoors, its exhaust away ' +
        'from every opening, and its cans are still poured by hand.',
    ],
    prepared: () => prepare({ ...house, generator: { ...generator, start: 'automatic' } }, files),
  }
}

function unpriced(kind: StepKind): Pick<Change, 'kind' | 'price' | 'givesUp'> {
  return { kind, price: null, givesUp: null }
}
