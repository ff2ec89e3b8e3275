// The loads on the island one by one.

import type { Calendar } from '../axis/calendar.js'
import type { House, LoadInput } from '../house/house.js'
import type { Demand } from './demand.js'
import { isSurveyed, startsIn } from './load-column.js'
import { startExtraKva } from './starting.js'
import { surveyColumn } from './survey.js'

interface Surveyed {
  readonly house: House
  readonly demand: Demand
  readonly calendar: Calendar
}

export interface IslandLoad {
  readonly name: string
  readonly critical: boolean
  readonly kw: Float64Array
  readonly powerFactor: number
  /** Above running power in a start; null for a metered or standard load, which shows steps only. [kVA] */
  readonly startKva: number | null
  /** Whether a thermostat or a float switches it, so that it waits through a time off. */
  readonly cycles: boolean
  /** The curve of one that follows the air step by step. */
  readonly byAir?: LoadInput['byAir']
}

/** Critical loads, then comfort loads; those without known starts of one shed step as one. */
export function islandLoads({ house, demand, calendar }: Surveyed): IslandLoad[] {
  const found: IslandLoad[] = demand.critical.map(({ load, kw }) => ({
    name: load.name,
    critical: true,
    kw,
    powerFactor: load.powerFactor,
    startKva: isSurveyed(load) ? startExtraKva(load) : null,
    cycles: load.cycle !== undefined,
    byAir: load.byAir,
  }))
  for (const [step, names] of demand.comfortNames.entries()) {
    const loads = house.loads.filter((load) => names.includes(load.name))
    const metered = loads.filter((load) => !isSurveyed(load))
    const rest = demand.comfortKw[step]!.slice()
    for (const load of loads) {
      if (!isSurveyed(load)) continue
      const kw = surveyColumn(load, { house, calendar, airC: demand.airC })
      for (let i = 0; i < kw.length; i++) rest[i]! -= kw[i]!
      found.push({
        name: load.name,
        critical: false,
        kw,
        powerFactor: load.powerFactor,
        startKva: startExtraKva(load),
        cycles: load.cycle !== undefined,
        byAir: load.byAir,
      })
    }
    if (metered.length === 0) continue
    found.push({
      name: metered.map((load) => load.name).join(' and '),
      critical: false,
      kw: rest,
      powerFactor: Math.min(...metered.map((load) => load.powerFactor)),
      startKva: null,
      cycles: false,
    })
  }
  return found
}

/** Within this time everything that cycles has run once. [min] */
const ROUND_MINUTES = 1440

/**
 * Names of the loads that draw or start hardest in a minute, the hardest first.
 *
 * @param only       whether the critical ones alone are asked about
 * @param waitedFor  minutes without power before the island formed in this minute: all that runs
 *                   starts, and what cycles and would have run since; `all` that cycles after a
 *                   long time; null where the island stood
 */
export function hardestNames(
  loads: readonly IslandLoad[],
  at: number,
  only: boolean,
  waitedFor: number | 'all' | null,
): string[] {
  return loads
    .filter(({ critical }) => critical || !only)
    .map((load) => {
      const { name, kw, powerFactor, startKva, cycles } = load
      const before = kw[at === 0 ? kw.length - 1 : at - 1]!
      const back =
        !cycles || waitedFor === null ? 0 : waitedFor === 'all' ? ROUND_MINUTES : waitedFor
      const runs = kw.subarray(Math.max(0, at - back), at + 1)
      const kwNow = runs.reduce((most, value) => Math.max(most, value), 0)
      const begins = kwNow > 0 && (waitedFor !== null || startsIn(load, before, kwNow))
      return { name, kva: kwNow / powerFactor + (begins ? (startKva ?? 0) : 0) }
    })
    .filter(({ kva }) => kva > 0)
    .sort((a, b) => b.kva - a.kva)
    .map(({ name }) => name)
}
