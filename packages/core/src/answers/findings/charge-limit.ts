// What the battery can take at the AC side, by what limits it.

import { chargeRateLimit } from '../../equipment/place.js'
import { type Plant, stackC, standingKw } from '../../equipment/plant.js'
import { acForBattery } from '../../island/balance.js'

/** Share of the charge limit that is left above 90, 95 and 98 % of charge; common practice. */
const BANDS: readonly (readonly [above: number, share: number])[] = [
  [0.98, 0.1],
  [0.95, 0.25],
  [0.9, 0.5],
]

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
  const band = BANDS.find(([above]) => soc > above)?.[1] ?? 1
  const stackKw = band * plant.chargeKw
  const temperedKw = chargeRateLimit(stackC(plant, placeC)) * plant.usableKwh
  const atAc = (kw: number): number => -acForBattery(plant, -kw, standingKw(plant, placeC))
  const byStack = atAc(Math.min(stackKw, temperedKw))
  if (byStack >= plant.chargeAcKw) return { kw: plant.chargeAcKw, by: 'battery inverter' }
  return { kw: byStack, by: temperedKw < stackKw ? 'cold or heat' : 'battery' }
}
