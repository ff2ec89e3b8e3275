// Which consequence a load has: the gap it is given, or one that follows from what it keeps.

import type { LoadInput } from '../house/house.js'
import { boiler } from './boiler.js'
import { coldStore } from './cold.js'
import type { Consequence } from './consequence.js'
import { plainGap } from './gap.js'
import { hotWater, waterBuffer } from './water.js'

/** What of a load tells its consequence; a row of the typical loads leaves fields out. */
type Keeping = Partial<
  Pick<
    LoadInput,
    'w' | 'pieces' | 'cycle' | 'toleratesMinutes' | 'holdOver' | 'overheats' | 'buffer' | 'hotWater'
  >
>

export function consequenceOf(load: Keeping): Consequence {
  const { cycle, holdOver, overheats, buffer } = load
  const duty = cycle === undefined ? null : cycle.onMinutes / (cycle.onMinutes + cycle.offMinutes)
  if (holdOver !== undefined) return coldStore(holdOver, duty ?? undefined)
  if (overheats !== undefined) return boiler(overheats)
  if (buffer !== undefined) return waterBuffer(buffer, duty)
  if (load.hotWater !== undefined) {
    return hotWater(load.hotWater, ((load.w ?? 0) / 1000) * (load.pieces ?? 1))
  }
  return plainGap(load.toleratesMinutes ?? 0)
}

/** The longest gap that does no harm to a load at rest, given or derived; Infinity for any. [min] */
export function toleratedMinutes(load: Keeping): number {
  const { lostIn, rest } = consequenceOf(load)
  return lostIn(rest)
}
