// What the battery can take at the AC side, by what limits it.

import { chargeRateLimit } from '../../equipment/place.js'
import { type Plant, stackC, standingKw } from '../../equipment/plant.js'
import { acForBattery } from '../../island/balance.js'
import { CHARGE_BANDS } from '../../island/rules.js'

export interface ChargeLimit {
  /** At the AC side of the inverter. [kW] */
  readonly kw: number
  readonly by: 'battery inverter' | 'battery' | 'cold or heat'
}

/**
 * Most that is taken from the AC side.
 *
 * @param placeC  temperature of the stack's place
 * @param soc     share of usable capacity, 0..1; below 0.9 the full limit holds
 */
export function chargeLimit(plant: Plant, placeC: number, soc = 0): ChargeLimit {
  const band = CHARGE_BANDS.find(({ upTo }) => soc <= upTo) ?? CHARGE_BANDS[0]
  const stackKw = band.limit * plant.chargeKw
  const temperedKw = chargeRateLimit(stackC(plant, placeC)) * plant.usableKwh
  const atAc = (kw: number): number => -acForBattery(plant, -kw, standingKw(plant, placeC))
  const byStack = atAc(Math.min(stackKw, temperedKw))
  if (byStack >= plant.chargeAcKw) return { kw: plant.chargeAcKw, by: 'battery inverter' }
  return { kw: byStack, by: temperedKw < stackKw ? 'cold or heat' : 'battery' }
}
