// What the minutes of one lived cut mean to each critical load.

import { firstLoss, type RideLoad } from '../cut/rides.js'
import { Spells } from '../cut/spells.js'
import type { Rules } from '../island/rules.js'

/** Where a load is lost, and where the spell began in which it is. Minutes of the cut. */
export interface Loss {
  readonly at: number
  readonly spellFrom: number
}

/**
 * The first loss of each load, null where it has none; one that follows from a gap still open at
 * the end counts, as it does in rides.
 *
 * @param levels  shed level of each minute of the cut
 * @param offset  minute of the year's axis in which the cut begins
 */
export function lossesOf(
  levels: Uint8Array,
  { lastLevel }: Pick<Rules, 'lastLevel'>,
  loads: readonly RideLoad[],
  offset: number,
): (Loss | null)[] {
  const spells = new Spells(1, levels.length)
  let last = -1
  let down = false
  for (let i = 0; i < levels.length; i++) {
    const isDown = levels[i]! > lastLevel
    if (isDown && !down) {
      const spell = spells.open(i)
      if (last < 0) spells.first[0] = spell
      else spells.link(last, spell)
      last = spell
    } else if (down && !isDown) spells.close(last, i)
    down = isDown
  }
  return loads.map((load) => firstLoss(spells, 0, load, offset, levels.length))
}

/** The soonest of some losses and whose it is, the first of the file where equal. */
export function firstOf(losses: readonly (Loss | null)[]): (Loss & { which: number }) | null {
  let first: (Loss & { which: number }) | null = null
  for (const [which, loss] of losses.entries()) {
    if (loss !== null && !(first !== null && first.at <= loss.at)) first = { ...loss, which }
  }
  return first
}
