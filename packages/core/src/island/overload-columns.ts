// Where the loads of a minute are more than inverter and stack carry.
//
// Solar is not counted on: a cloud or a trip takes it away within the minute.

import type { Plant } from '../equipment/plant.js'
import { stackAcKw } from './balance.js'
import type { Columns } from './columns.js'
import { type ColumnParts, stretchesOf } from './parts.js'

export function overloadColumns(parts: ColumnParts): Pick<Columns, 'overload' | 'overForming'> {
  const { room, demand, plant, rules, window, standing, loads } = parts
  const served = loads.slice(0, rules.lastLevel + 1)
  const overload = served.map(() => room.flags(window.n))
  const overForming = served.map(() => room.flags(window.n))
  for (const { here, ofYear, at } of stretchesOf(window, demand.n)) {
    for (const [level, load] of served.entries()) {
      const heavy = here(overload[level]!)
      const all = demand.runningKva[level]!
      const [running, forming] = [ofYear(all), ofYear(demand.formingKva[level]!)]
      markTooHeavy(heavy, plant, here(load), here(standing))
      here(overForming[level]!).set(heavy)
      markPeaks(heavy, plant, running, ofYear(demand.peakKva[level]!), all.at(at - 1)!)
      markForming(here(overForming[level]!), plant, running, forming)
    }
  }
  return { overload, overForming }
}

/** 1 where the mean is more than the stack gives; a heater takes its part of what it gives. */
function markTooHeavy(
  out: Uint8Array,
  plant: Plant,
  load: Float64Array,
  standing: Float64Array,
): void {
  const most = stackAcKw(plant, plant.standingKw)
  const heated = stackAcKw(plant, plant.standingKw + plant.heaterKw)
  for (let i = 0; i < out.length; i++) {
    if (!(load[i]! <= (standing[i]! > plant.standingKw ? heated : most))) out[i] = 1
  }
}

/**
 * 1 where what runs exceeds the rating (for a single minute the most that is carried for one), or
 * a start the most that is carried for a second.
 *
 * @param before  what ran in the minute before the first. [kVA]
 */
function markPeaks(
  out: Uint8Array,
  plant: Plant,
  running: Float64Array,
  peak: Float64Array,
  before: number,
): void {
  let last = before
  for (let i = 0; i < out.length; i++) {
    const runs = running[i]!
    if (!carries(plant, runs, mostAfter(plant, last), peak[i]!)) out[i] = 1
    last = runs
  }
}

/** 1 where the island cannot form: all that runs in the minute starts in it. */
function markForming(
  out: Uint8Array,
  plant: Plant,
  running: Float64Array,
  forming: Float64Array,
): void {
  for (let i = 0; i < out.length; i++) {
    if (!carries(plant, running[i]!, plant.minuteKva, forming[i]!)) out[i] = 1
  }
}

/**
 * Most that may run in a minute: the rating, or what is carried for a minute where the one before
 * kept the rating. [kVA]
 */
export function mostKva(plant: Plant, running: Float64Array, at: number): number {
  return mostAfter(plant, running[at === 0 ? running.length - 1 : at - 1]!)
}

/** @param beforeKva  what ran in the minute before */
function mostAfter(plant: Plant, beforeKva: number): number {
  return beforeKva <= plant.ratedKw ? plant.minuteKva : plant.ratedKw
}

/** Whether the inverter carries what runs, and a peak of a second beside it. All [kVA] */
export function carries(plant: Plant, runningKva: number, most: number, peakKva: number): boolean {
  return runningKva <= most && peakKva <= plant.startingKva
}
