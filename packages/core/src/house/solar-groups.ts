// AC-coupled arrays that behave alike on the island: one group comes in, waits and trips together.

import { DEFAULTS } from './defaults.js'
import type { ArrayInput, House, SolarInverter } from './house.js'
import { isOnIsland } from './phases.js'

/** More kinds of solar inverter than this are refused by name. */
export const MOST_GROUPS = 2

export interface SolarGroup {
  /** Names of its arrays. */
  readonly names: readonly string[]
  /** Settings that all its inverters share; ratings and efficiency are those of the first. */
  readonly inverter: SolarInverter
}

type Settings = Partial<Record<'onIsland' | keyof typeof OF_A_WAY, unknown>>

/** Settings that tell two ways apart, and the answers on the island that heed them. */
const OF_A_WAY = {
  reconnectSeconds: ['throttles', 'trips', 'throttles to a floor'],
  rampSeconds: ['throttles', 'trips', 'throttles to a floor'],
  floorShare: ['throttles to a floor'],
  outAbove: ['trips'],
  backBelow: ['trips'],
} as const

/** A text that is equal for inverters that behave alike; what is left out counts as its default. */
export function islandWay(inverter: Settings): string {
  const onIsland = inverter.onIsland ?? DEFAULTS['arrays[].inverter.onIsland'].value
  const fields = Object.entries(OF_A_WAY) as [keyof typeof OF_A_WAY, readonly unknown[]][]
  const heeded = fields.filter(([, answers]) => answers.includes(onIsland))
  const values = heeded.map(
    ([field]) => inverter[field] ?? DEFAULTS[`arrays[].inverter.${field}`].value,
  )
  return JSON.stringify([onIsland, ...values])
}

/** Groups of the AC-coupled arrays that the island's phases feed, in the order of the file. */
export function solarGroups(house: House): SolarGroup[] {
  const groups = new Map<string, { names: string[]; inverter: SolarInverter }>()
  for (const { name, inverter } of house.arrays) {
    if (inverter === undefined || !isOnIsland(house, inverter.phase)) continue
    const way = islandWay(inverter)
    const there = groups.get(way)
    if (there === undefined) groups.set(way, { names: [name], inverter })
    else there.names.push(name)
  }
  return [...groups.values()]
}

/** Whether an array brings an AC-coupled inverter; one that shares another's does not. */
export function bringsInverter({ inverter, onInverterOf }: ArrayInput): boolean {
  return inverter !== undefined && onInverterOf === undefined
}

/** AC rating of the solar inverters that arrays bring. [kW] */
export function solarRatedKw(arrays: readonly ArrayInput[]): number {
  return arrays
    .filter(bringsInverter)
    .reduce((sum, { inverter }) => sum + (inverter?.ratedKw ?? 0), 0)
}

/** The group of an array, counted from 0; -1 for one that is DC-coupled or not on the island. */
export function groupOf(house: House, { name }: Pick<ArrayInput, 'name'>): number {
  return solarGroups(house).findIndex(({ names }) => names.includes(name))
}
