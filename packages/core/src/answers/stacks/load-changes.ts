// Less load: what could go off in a cut, or be on only while it lasts.

import { monthRange } from '../../axis/calendar.js'
import type { LoadInput } from '../../house/house.js'
import { loadColumns } from '../../load/demand.js'
import { type HouseFiles, type Prepared, prepare } from '../../series/prepare.js'
import { isVital } from '../cautions.js'
import type { Change } from './change.js'

/** Loads looked at: those that take most in the month, and those that draw hardest. */
const MOST_ENERGY = 6
const HARDEST = 2

/**
 * Comfort loads off, critical ones moved to comfort or off; nothing on which health or a fire
 * hangs, and never the last critical load.
 */
export function loadChanges(prepared: Prepared, files: HouseFiles, month: number): Change[] {
  const { house } = prepared
  const to = (load: LoadInput, tier: 'comfort' | 'gridOnly'): Change =>
    moved(prepared, files, load, tier)
  const hasOthers = house.loads.filter(({ tier }) => tier === 'critical').length > 1
  return heaviest(prepared, files, month).flatMap((load) => {
    if (load.tier === 'comfort') return [to(load, 'gridOnly')]
    if (!hasOthers || isVital(load)) return []
    return [to(load, 'comfort'), to(load, 'gridOnly')]
  })
}

function heaviest({ house, calendar, demand }: Prepared, files: HouseFiles, month: number) {
  const [from, to] = monthRange(calendar, month)
  const { columns } = loadColumns(house, calendar, files, demand.airC)
  // The figure of a whole house is no switch.
  const island = house.loads
    .filter(({ tier, contains, profile }) => tier !== 'gridOnly' && !(contains ?? profile))
    .map((load) => {
      const column = columns.get(load.name)!.kw.subarray(from, to)
      return {
        load,
        sum: column.reduce((a, b) => a + b, 0),
        most: column.reduce((a, b) => Math.max(a, b), 0),
      }
    })
    .filter(({ most }) => most > 0)
  const names = new Set([
    ...island.toSorted((a, b) => b.sum - a.sum).slice(0, MOST_ENERGY),
    ...island.toSorted((a, b) => b.most - a.most).slice(0, HARDEST),
  ])
  return island.filter((each) => names.has(each)).map(({ load }) => load)
}

function moved(
  prepared: Prepared,
  files: HouseFiles,
  { name, tier }: LoadInput,
  to: 'comfort' | 'gridOnly',
): Change {
  const { house } = prepared
  const loads = house.loads.map((load) => (load.name === name ? { ...load, tier: to } : load))
  return {
    kind: 'load',
    what: to === 'comfort' ? `${name} on only while it lasts (comfort)` : `${name} off in a cut`,
    price: 0,
    givesUp: tier === 'critical' ? name : null,
    warnings: tier === 'critical' ? [`The hours and shares then no longer hold for ${name}.`] : [],
    prepared: () => prepare({ ...house, loads }, files),
  }
}
