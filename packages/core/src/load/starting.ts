// What a load draws in the second of its start.

import type { LoadInput } from '../house/house.js'
import { lockedRotorKva } from '../house/locked-rotor.js'

type Motor = Pick<
  LoadInput,
  'w' | 'powerFactor' | 'startingMultiple' | 'motorHp' | 'lockedRotorCode'
>

/**
 * Apparent power of one piece above its running power while it starts: from the letter on the
 * motor's plate where there is one, else from the starting multiple.
 *
 * @returns  [kVA], >= 0
 */
export function startExtraKva(load: Motor): number {
  const runningKva = (load.w ?? 0) / 1000 / load.powerFactor
  if (load.motorHp === undefined || load.lockedRotorCode === undefined) {
    return (load.startingMultiple - 1) * runningKva
  }
  return Math.max(0, lockedRotorKva(load.motorHp, load.lockedRotorCode) - runningKva)
}
