// Fuel of a generator from the three figures of its data sheet.

import type { GeneratorInput } from '../house/house.js'

/**
 * Litres an hour at a power: straight between no, half and full load, and on beyond.
 *
 * @param kw  [kW], >= 0
 */
export function generatorLitresPerHour(
  set: Pick<GeneratorInput, 'ratedKw' | 'litresPerHour'>,
  kw: number,
): number {
  const { none, half, full } = set.litresPerHour
  const share = kw / set.ratedKw
  return share <= 0.5 ? none + (half - none) * 2 * share : half + (full - half) * (2 * share - 1)
}
