// Where the loads of a minute are more than inverter and stack carry.
//
// Solar is not counted on: a cloud or a trip takes it away within the minute.

import type { Plant } from '../equipment/plant.js'
import { stackAcKw } from './balance.js'
import type { Columns } from './columns.js'
import { type ColumnParts, flags } from './parts.js'

export function overloadColumns(parts: ColumnParts): Pick<Columns, 'overload' | 'overForming'> {
  const levels = Array.from({ length: parts.rules.lastLevel + 1 }, (_, level) => level)
  return {
    overload: levels.map((level) => whileFormed(parts, level)),
    overForming: levels.map((level) => whenForming(parts, level)),
  }
}

/**
 * 1 where what runs exceeds the rating (for a single minute the most that is carried for one), a
 * start the most that is carried for a second, or the mean what the stack gives.
 */
function whileFormed(parts: ColumnParts, level: number): Uint8Array {
  const { demand, plant, window } = parts
  const [peak, running] = [demand.peakKva[level]!, demand.runningKva[level]!]
  const gives = stackGives(parts, level)
  return flags(window, demand.n, (i, at) => {
    return !(gives(i) && carries(plant, running[at]!, mostKva(plant, running, at), peak[at]!))
  })
}

/**
 * Most that may run in a minute: the rating, or what is carried for a minute where the one before
 * kept the rating. [kVA]
 */
export function mostKva(plant: Plant, running: Float64Array, at: number): number {
  const before = running[at === 0 ? running.length - 1 : at - 1]!
  return before <= plant.ratedKw ? plant.minuteKva : plant.ratedKw
}

/** 1 where the island cannot form: all that runs in the minute starts in it. */
function whenForming(parts: ColumnParts, level: number): Uint8Array {
  const { demand, plant, window } = parts
  const [all, running] = [demand.formingKva[level]!, demand.runningKva[level]!]
  const gives = stackGives(parts, level)
  return flags(window, demand.n, (i, at) => {
    return !(gives(i) && carries(plant, running[at]!, plant.minuteKva, all[at]!))
  })
}

/** Whether the inverter carries what runs, and a peak of a second beside it. All [kVA] */
export function carries(plant: Plant, runningKva: number, most: number, peakKva: number): boolean {
  return runningKva <= most && peakKva <= plant.startingKva
}

/** Whether the stack gives the mean of a minute; a heater takes its part of what it gives. */
function stackGives(
  { plant, standing, loads }: ColumnParts,
  level: number,
): (minute: number) => boolean {
  const most = stackAcKw(plant, plant.standingKw)
  const heated = stackAcKw(plant, plant.standingKw + plant.heaterKw)
  const load = loads[level]!
  return (i) => load[i]! <= (standing[i]! > plant.standingKw ? heated : most)
}
