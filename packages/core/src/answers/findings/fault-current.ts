// A grid-forming inverter feeds little into a fault: overcurrent devices may not trip in time.

import { figure, type Look, short } from './finding.js'

/** Phase to neutral. [V] */
const VOLTS = 230
/** A common large final circuit, and its type B device's instant trip: 5 times rating at most. */
const CIRCUIT_A = 32
const INSTANT_MULTIPLE = 5

export const faultCurrent: Look = ({ house }, { plant }) => {
  const faultA = (1000 * plant.startingKva) / house.inverter.phases / VOLTS
  const neededA = CIRCUIT_A * INSTANT_MULTIPLE
  if (!(faultA < neededA)) return []
  return [
    {
      id: 'fault-current',
      grade: 'look',
      what:
        `On the island a fault is fed with about ${Math.floor(faultA)} A, what the battery ` +
        `inverter carries for a second; a B${CIRCUIT_A} circuit breaker wants up to ${neededA} A ` +
        'to open at once. Overcurrent devices that protect on the grid may not trip in time.',
      numbers: [
        figure('fault current, about', faultA, 'A'),
        figure(`wanted by a B${CIRCUIT_A}`, neededA, 'A'),
        figure('largest type B that opens at once', Math.floor(faultA / INSTANT_MULTIPLE), 'A'),
      ],
      restsOn:
        'The starting rating at 230 V; type B opens at once at 3 to 5 times its rating, from ' +
        `memory of IEC 60898. The data sheet's fault current wins (${short(plant.startingKva)} kVA here).`,
      toDo:
        'Residual-current protection on every circuit of the island, devices chosen for island ' +
        'mode, earth and neutral-earth bond made there; measure loop and trip times with the ' +
        'grid off, by a licensed person.',
    },
  ]
}
