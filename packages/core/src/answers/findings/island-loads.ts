// The loads on the island one by one, and what runs and starts in a minute.

import type { Demand } from '../../load/demand.js'
import { startExtraKva } from '../../load/starting.js'
import { surveyColumn } from '../../load/survey.js'
import type { Prepared } from '../../series/prepare.js'

export interface IslandLoad {
  readonly name: string
  readonly critical: boolean
  readonly kw: Float64Array
  readonly powerFactor: number
  /** Above running power in a start; null for a metered load, which shows steps only. [kVA] */
  readonly startKva: number | null
}

/** Critical loads, then comfort loads; metered comfort loads of one shed step as one. */
export function islandLoads({ house, demand, calendar }: Prepared): IslandLoad[] {
  const found: IslandLoad[] = demand.critical.map(({ load, kw }) => ({
    name: load.name,
    critical: true,
    kw,
    powerFactor: load.powerFactor,
    startKva: load.file === undefined ? startExtraKva(load) : null,
  }))
  for (const [step, names] of demand.comfortNames.entries()) {
    const loads = house.loads.filter((load) => names.includes(load.name))
    const metered = loads.filter((load) => load.file !== undefined)
    const rest = demand.comfortKw[step]!.slice()
    for (const load of loads) {
      if (load.file !== undefined) continue
      const kw = surveyColumn(load, house, calendar)
      for (let i = 0; i < kw.length; i++) rest[i]! -= kw[i]!
      found.push({
        name: load.name,
        critical: false,
        kw,
        powerFactor: load.powerFactor,
        startKva: startExtraKva(load),
      })
    }
    if (metered.length === 0) continue
    found.push({
      name: metered.map((load) => load.name).join(' and '),
      critical: false,
      kw: rest,
      powerFactor: Math.min(...metered.map((load) => load.powerFactor)),
      startKva: null,
    })
  }
  return found
}

/** The hardest start of a minute; null where nothing starts. */
export function hardestStart(
  loads: readonly IslandLoad[],
  i: number,
): { readonly name: string; readonly kva: number } | null {
  let hardest: { name: string; kva: number } | null = null
  for (const { name, kw, powerFactor, startKva } of loads) {
    const rise = kw[i]! - kw[i === 0 ? kw.length - 1 : i - 1]!
    if (!(rise > 0)) continue
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
