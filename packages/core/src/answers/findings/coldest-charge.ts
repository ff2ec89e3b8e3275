// The charge at which the loads go off when the battery is at its coldest.

import { coldShare } from '../../equipment/place.js'
import { stackC } from '../../equipment/plant.js'
import type { Prepared } from '../../series/prepare.js'
import type { Equipped } from '../scenario.js'
import { coldestPlaceC } from './cold.js'

/**
 * `inverter.loadsOffAt`, lifted by what the coldest hour of the house's year puts out of reach.
 *
 * @returns  share of usable capacity; above 1 where no charge is within reach
 */
export function coldestLoadsOffAt(prepared: Prepared, equipped: Equipped): number {
  const { house, plant } = equipped
  return house.inverter.loadsOffAt + coldShare(stackC(plant, coldestPlaceC(prepared, equipped)))
}
