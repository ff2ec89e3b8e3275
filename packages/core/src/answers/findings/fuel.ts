// Fuel at home against what may be kept there.

import type { House } from '../../house/house.js'
import { type Finding, figure, type Look, short } from './finding.js'

/** Petrol kept at home in Great Britain without telling the authority. [l] */
const PETROL_GB_L = 30

export const fuelKept: Look = (_, { house }) => {
  const { generator } = house
  if (generator === undefined) return []
  const { tankL, cansL } = generator
  const keptL = tankL + cansL
  const numbers = [
    figure('tank', tankL, 'l'),
    figure('cans', cansL, 'l'),
    figure('together', keptL, 'l'),
  ]
  if (isGreatBritain(house)) {
    return keptL > PETROL_GB_L ? [overGb(keptL, numbers)] : []
  }
  return [
    {
      id: 'fuel-ask',
      grade: 'good to know',
      what: `Tank and cans hold ${short(keptL)} l; how much may be kept at home differs by place.`,
      numbers,
      restsOn: 'No figure for this place is known here.',
      toDo: 'Ask the fire service and the insurer before cans are filled.',
    },
  ]
}

function overGb(keptL: number, numbers: Finding['numbers']): Finding {
  return {
    id: 'fuel-kept',
    grade: 'look',
    what:
      `Tank and cans hold ${short(keptL)} l. If it is petrol, more than ${PETROL_GB_L} l at home ` +
      'has to be notified to the petroleum enforcement authority.',
    numbers: [...numbers, figure('petrol without notifying', PETROL_GB_L, 'l')],
    restsOn:
      'Pages of fire services on the petroleum regulations of 2014, Great Britain; cans of at ' +
      'most 10 l in plastic and 20 l in metal. Whether a tank fitted to the set counts, ask.',
    toDo: 'Keep less, or notify; in suitable cans, outside the living space, away from flames.',
  }
}

function isGreatBritain({ site }: House): boolean {
  return site.timezone === 'Europe/London'
}
