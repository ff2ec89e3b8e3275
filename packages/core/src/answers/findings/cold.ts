// How cold the stack's place gets, and what the cold takes.

import { coldShare, placeTemperature } from '../../equipment/place.js'
import { stackC } from '../../equipment/plant.js'
import { type Prepared, plainSky, typicalOf } from '../../series/prepare.js'
import type { Equipped } from '../scenario.js'
import { chargeLimit } from './charge-limit.js'
import { type Figure, figure, type Grade, type Look, short } from './finding.js'

/** Synthetic years that are averaged. */
const YEARS = 10
/** Shares of capacity an hour that are taken from 0 and from 5 °C on; common practice. */
const MIDDLES_C = [2.5, 7.5]

export const coldPlace: Look = (prepared, equipped) => {
  const { house, plant } = equipped
  const cold = coldHours(prepared, equipped)
  if (cold.below10 < 1) return []
  const [to5, to10] = MIDDLES_C.map((placeC) => chargeLimit(plant, placeC).kw)
  const lowest = stackC(plant, cold.lowestC)
  const place = house.stack.place === 'house' ? 'In the house' : `In the ${house.stack.place}`
  const years = cold.years === 1 ? 'the weather file' : `a typical year (mean of ${cold.years})`
  const grade: Grade = cold.below5 >= 1 ? 'look' : 'good to know'
  const heated: Figure[] =
    plant.heaterKw > 0
      ? [
          figure('heaters', 1000 * plant.heaterKw, 'W'),
          figure('heater energy', cold.heaterHours * plant.heaterKw, 'kWh a year'),
        ]
      : []
  return [
    {
      id: 'cold-place',
      grade,
      what:
        `${place} the battery is below 10 °C for ${Math.round(cold.below10)} hours of ${years} ` +
        `and then takes ${short(to10!)} kW of charge at most` +
        (cold.below5 >= 1 ? `; below 5 °C for ${Math.round(cold.below5)}, ${short(to5!)} kW` : '') +
        (cold.below0 >= 1
          ? `; below 0 °C for ${Math.round(cold.below0)}, nothing, not from a generator either`
          : '') +
        `. At its coldest, ${short(lowest)} °C, ${Math.round(100 * coldShare(lowest))} % of its ` +
        'capacity is out of reach.',
      numbers: [
        figure('below 0 °C', cold.below0, 'h a year'),
        figure('below 5 °C', cold.below5, 'h a year'),
        figure('below 10 °C', cold.below10, 'h a year'),
        figure('coldest', lowest, '°C'),
        figure('capacity out of reach', coldShare(lowest)),
        ...heated,
      ],
      restsOn:
        'No charge below 0 °C comes from makers of cells; the other limits, the lag of the place ' +
        'and how much days differ are common practice, no source.',
      toDo:
        plant.heaterKw > 0
          ? 'The heater draws from the battery in a cut: insulate the cabinet, and measure what ' +
            'it takes on a cold night.'
          : 'A warmer place, insulation or a battery heater; leave a thermometer there for a ' +
            'winter. Ask the maker what the battery does when it is cold.',
    },
  ]
}

interface Cold {
  readonly below0: number
  readonly below5: number
  readonly below10: number
  /** Hours in which a heater would draw: the place below 5 °C. */
  readonly heaterHours: number
  readonly lowestC: number
  readonly years: number
}

/** The coldest hour of the stack's place. [°C] */
export function coldestPlaceC(prepared: Prepared, equipped: Equipped): number {
  return coldHours(prepared, equipped).lowestC
}

function coldHours(prepared: Prepared, { house, plant }: Equipped): Cold {
  const isFile = prepared.record !== null
  const sky = isFile ? plainSky(prepared, 'file') : typicalOf(prepared, house.seed, YEARS)
  const years = isFile ? 1 : YEARS
  const counts = { below0: 0, below5: 0, below10: 0, heaterHours: 0 }
  let lowestC = Number.POSITIVE_INFINITY
  for (let year = 0; year < years; year++) {
    for (const placeC of placeTemperature(sky.airC(year), house.stack.place)) {
      const cellC = stackC(plant, placeC)
      if (cellC < 0) counts.below0 += 1 / years
      if (cellC < 5) counts.below5 += 1 / years
      if (cellC < 10) counts.below10 += 1 / years
      if (placeC < 5) counts.heaterHours += 1 / years
      lowestC = Math.min(lowestC, placeC)
    }
  }
  return { ...counts, lowestC, years }
}
