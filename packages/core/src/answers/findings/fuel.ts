// Fuel at home against what may be kept there.

import { type FuelRule, fuelRule } from '../generator-plan/fuel-rule.js'
import { type Finding, figure, type Look, short } from './finding.js'

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
  const rule = fuelRule(house)
  if (rule !== null) return keptL > rule.petrolL ? [overGb(keptL, rule, numbers)] : []
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

function overGb(
  keptL: number,
  { petrolL, plasticCanL, metalCanL }: FuelRule,
  numbers: Finding['numbers'],
): Finding {
  return {
    id: 'fuel-kept',
    grade: 'look',
    what:
      `Tank and cans hold ${short(keptL)} l. If it is petrol, more than ${petrolL} l at home ` +
      'has to be notified to the petroleum enforcement authority.',
    numbers: [...numbers, figure('petrol without notifying', petrolL, 'l')],
    restsOn:
      'Pages of fire services on the petroleum regulations of 2014, Great Britain; cans of at ' +
      `most ${plasticCanL} l in plastic and ${metalCanL} l in metal. Whether a tank fitted to the set counts, ask.`,
    toDo: 'Keep less, or notify; in suitable cans, outside the living space, away from flames.',
  }
}
