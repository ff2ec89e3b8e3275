// Whether the island can throttle a GB-coded solar inverter by frequency: not below its trip.

import type { House, SolarInverter } from '../../house/house.js'
import { figure, type Look } from './finding.js'

/** Where power begins to fall, where the interface trips, nominal. [Hz]; GB, from memory */
const STARTS_HZ = 50.4
const TRIPS_HZ = 52
const NOMINAL_HZ = 50
const SHOWN_HZ = [50.5, 51, 51.5, TRIPS_HZ]

/**
 * Share of power left at a frequency.
 *
 *     1 - (f - 50.4) / 50 / droop, 0..1
 *
 * @param hz     [Hz]
 * @param droop  share of nominal frequency that takes it from full power to none, > 0
 */
export function powerShareAt(hz: number, droop: number): number {
  return Math.min(1, Math.max(0, 1 - (hz - STARTS_HZ) / NOMINAL_HZ / droop))
}

interface Floored {
  readonly name: string
  readonly inverter: SolarInverter
  /** Share of power left just below the trip, > 0. */
  readonly floor: number
}

/** Solar inverters of a GB code that still give power just below their trip. */
function flooredInverters({ site, arrays }: House): Floored[] {
  if (site.gridCode !== 'G98' && site.gridCode !== 'G99') return []
  return arrays.flatMap(({ name, inverter }) => {
    const floor = inverter === undefined ? 0 : powerShareAt(TRIPS_HZ, inverter.droop)
    // One that reaches nothing before the trip can be throttled all the way.
    return inverter === undefined || !(floor > 0) ? [] : [{ name, inverter, floor }]
  })
}

/** Those of which the file says that they throttle all the way down. */
export function claimedThrottles(house: House): Floored[] {
  return flooredInverters(house).filter(({ inverter }) => inverter.onIsland === 'throttles')
}

export const frequencyDroop: Look = ({ house }) => {
  const first = claimedThrottles(house)[0] ?? flooredInverters(house)[0]
  if (first === undefined) return []
  const { onIsland, droop } = first.inverter
  const percent = Math.round(100 * first.floor)
  const claimed = onIsland === 'throttles'
  return [
    {
      id: 'frequency-droop',
      grade: claimed ? 'look' : 'good to know',
      what:
        `${first.name}: with a droop of ${Math.round(100 * droop)} % a GB-coded solar inverter ` +
        `still gives ${percent} % of its power just below ${TRIPS_HZ} Hz, where it trips.` +
        (claimed
          ? ' The file says it throttles: by frequency alone it can do so only that far.'
          : ' A full battery needs the trip.'),
      numbers: SHOWN_HZ.map((hz) =>
        figure(`at ${hz}${hz === TRIPS_HZ ? '-' : ''} Hz`, powerShareAt(hz, droop)),
      ),
      restsOn:
        'Droop from 50.4 Hz and the trip at 52.0 Hz partly seen in a published schedule; the ' +
        'droop of 10 % (2 to 12 can be set) from memory.',
      toDo:
        'Ask which frequencies the battery inverter uses and what the solar inverter is set to; ' +
        'protection settings are changed only with the consent of the network operator.',
    },
  ]
}
