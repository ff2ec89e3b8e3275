// What to switch off from this minute on, each load retraced.

import type { Compiled } from '../../island/compile.js'
import { demandFrom, type LoadColumns } from '../../load/demand.js'
import { oneRide } from '../switch-off/one-ride.js'
import { islandUnder, type NowScene, stateNow } from './scene.js'

/** What switching a load off in this minute adds, under the dull sky and without the generator. */
export interface NowSwitch {
  readonly name: string
  readonly tier: 'critical' | 'comfort'
  readonly addsHours: number
  /** Whether the others then outlast what is followed, so that it adds more. */
  readonly beyond: boolean
}

export interface NowSwitches {
  /** Those that may go, then those that must stay on, each the most first. */
  readonly switchOff: readonly NowSwitch[]
  /** The same for all that may go together; null where there is none. */
  readonly allThatMayGo: Pick<NowSwitch, 'addsHours' | 'beyond'> | null
}

/** Each load off from this minute on, and all that may go together. */
export function switches(scene: NowScene, columns: LoadColumns): NowSwitches {
  const island = islandUnder(scene, scene.bare, 'dull')
  const switchOff = scene.prepared.house.loads.flatMap(({ name, tier }): NowSwitch[] => {
    if (tier === 'gridOnly') return []
    const found = switched(scene, columns, island, new Set([name]))
    return found === null ? [] : [{ name, tier, ...found }]
  })
  const rank = ({ tier }: NowSwitch): number => (tier === 'critical' ? 1 : 0)
  const mayGo = scene.prepared.demand.comfortNames.flat()
  return {
    switchOff: switchOff.sort((a, b) => rank(a) - rank(b) || b.addsHours - a.addsHours),
    allThatMayGo: mayGo.length === 0 ? null : switched(scene, columns, island, new Set(mayGo)),
  }
}

/** The ride of the others without some loads, less that with them; null where no other is left. */
function switched(
  scene: NowScene,
  columns: LoadColumns,
  island: Compiled,
  off: ReadonlySet<string>,
): Pick<NowSwitch, 'addsHours' | 'beyond'> | null {
  const { prepared, bare, loads } = scene
  const { house, calendar, demand } = prepared
  const others = loads.filter((load) => !off.has(load.name))
  if (others.length === 0) return null
  const less = demandFrom(columns, { house, calendar, airC: demand.airC }, off)
  const ride = (each: Compiled): ReturnType<typeof oneRide> =>
    oneRide(each, stateNow(bare), 0, each.columns.n, others)
  const [before, after] = [ride(island), ride(islandUnder(scene, bare, 'dull', less))]
  return {
    addsHours: (after.minutes - before.minutes) / 60,
    beyond: before.lost && !after.lost,
  }
}
