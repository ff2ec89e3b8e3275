// Which phases the island feeds.

import type { House, PhaseOrThree } from './house.js'

type Phased = { readonly inverter: Pick<House['inverter'], 'phases' | 'phase'> }

/** Whether something on a phase is fed by the island, wholly. */
export function isOnIsland(house: Phased, phase: PhaseOrThree | undefined): boolean {
  return house.inverter.phases === 3 || phase === undefined || phase === house.inverter.phase
}
