// What starts in a minute, and where a column is largest.

import type { Demand } from '../../load/demand.js'
import type { IslandLoad } from '../../load/island-loads.js'
import { startsIn } from '../../load/load-column.js'

export { type IslandLoad, islandLoads } from '../../load/island-loads.js'

/** The hardest start of a minute; null where nothing starts. */
export function hardestStart(
  loads: readonly IslandLoad[],
  i: number,
): { readonly name: string; readonly kva: number } | null {
  let hardest: { name: string; kva: number } | null = null
  for (const load of loads) {
    const { name, kw, powerFactor, startKva } = load
    const before = kw[i === 0 ? kw.length - 1 : i - 1]!
    if (!startsIn(load, before, kw[i]!)) continue
    const rise = kw[i]! - before
    const kva = startKva ?? rise / powerFactor
    if (kva > (hardest?.kva ?? 0)) hardest = { name, kva }
  }
  return hardest
}

/** Power at a shed level, 0 for all loads, as many as there are steps for the critical ones. [n] */
export function levelKw({ criticalKw, comfortKw }: Demand, level: number): Float64Array {
  const kw = criticalKw.slice()
  for (const step of comfortKw.slice(level)) for (let i = 0; i < kw.length; i++) kw[i]! += step[i]!
  return kw
}

/** Largest minute of a shed level. [kW] */
export function largestKw(demand: Demand, level: number): number {
  return levelKw(demand, level).reduce((most, kw) => Math.max(most, kw), 0)
}

/** Where a column is largest, and in how many minutes it passes a limit. */
export function largest(
  column: Float64Array,
  limit: number,
): { readonly at: number; readonly value: number; readonly minutesOver: number } {
  let at = 0
  let minutesOver = 0
  for (let i = 0; i < column.length; i++) {
    if (column[i]! > column[at]!) at = i
    if (column[i]! > limit) minutesOver++
  }
  return { at, value: column[at]!, minutesOver }
}
