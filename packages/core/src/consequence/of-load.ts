// Which consequence a load has: the gap it is given, or one that follows from what it keeps.

import type { LoadInput } from '../house/house.js'
import { boiler } from './boiler.js'
import { coldStore } from './cold.js'
import type { Consequence } from './consequence.js'
import { plainGap } from './gap.js'
import { hotWater, waterBuffer } from './water.js'

export function consequenceOf(load: LoadInput): Consequence {
  const { cycle, holdOver, overheats, buffer } = load
  const duty = cycle === undefined ? null : cycle.onMinutes / (cycle.onMinutes + cycle.offMinutes)
  if (holdOver !== undefined) return coldStore(holdOver, duty ?? undefined)
  if (overheats !== undefined) return boiler(overheats)
  if (buffer !== undefined) return waterBuffer(buffer, duty)
  if (load.hotWater !== undefined) {
    return hotWater(load.hotWater, ((load.w ?? 0) / 1000) * load.pieces)
  }
  return plainGap(load.toleratesMinutes)
}

/** The longest gap that does no harm to a load at rest, given or derived; Infinity for any. [min] */
export function toleratedMinutes(load: LoadInput): number {
  const { lostIn, rest } = consequenceOf(load)
  return lostIn(rest)
}
