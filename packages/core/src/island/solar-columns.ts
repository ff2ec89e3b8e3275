// AC-coupled solar by the groups that are in, a bit each in a mask: what it fills, what it forces.

import type { Plant } from '../equipment/plant.js'
import type { Window } from '../series/window-columns.js'
import { onGrid } from '../units/energy-grid.js'
import { batteryKw } from './balance.js'
import type { Columns } from './columns.js'
import { type ColumnParts, stretchesOf } from './parts.js'
import type { Rules, SolarRules } from './rules.js'

const VOLTS = 230

/** Every set of groups: 0 (none) to all of them. */
export function masksOf({ solar }: Pick<Rules, 'solar'>): number[] {
  return Array.from({ length: 1 << solar.length }, (_, mask) => mask)
}

/** What the groups of a mask give, if all of it can be taken. [kW] */
export function solarKw({ acKw }: Pick<Window, 'acKw'>, mask: number, i: number): number {
  let sum = 0
  for (let g = 0; g < acKw.length; g++) if ((mask & (1 << g)) !== 0) sum += acKw[g]![i]!
  return sum
}

/**
 * What the groups of a mask must get rid of to stay in: all of it for one that trips, its floor
 * for one that throttles to a floor, nothing for one that throttles. [kW]
 */
export function forcedKw(
  { solar }: Pick<Rules, 'solar'>,
  { acKw }: Pick<Window, 'acKw'>,
  mask: number,
  i: number,
): number {
  let sum = 0
  for (let g = 0; g < solar.length; g++) {
    if ((mask & (1 << g)) !== 0) sum += solar[g]!.floorShare * acKw[g]![i]!
  }
  return sum
}

/** DC-coupled sun that a dark island stores: a stack it cannot wake takes none. [kW] */
export function darkDcKw({ wakesOnSun }: Pick<Rules, 'wakesOnSun'>, dcKw: number): number {
  return wakesOnSun ? dcKw : 0
}

/** What the groups of a mask give, each taken by its share. [n], [kW] */
function solarColumn(
  { room, rules, window }: ColumnParts,
  mask: number,
  shareOf: (rules: SolarRules) => number,
): Float64Array {
  const only = window.acKw.findIndex((_, g) => mask === 1 << g)
  if (only >= 0 && shareOf(rules.solar[only]!) === 1) return window.acKw[only]!
  const out = room.floats(window.n)
  for (const [g, column] of window.acKw.entries()) {
    if ((mask & (1 << g)) === 0) continue
    const share = shareOf(rules.solar[g]!)
    for (let i = 0; i < out.length; i++) out[i]! += share * column[i]!
  }
  return out
}

/** Increments by the groups that are in, level by level; dark only with none in. */
export function deltaColumns(parts: ColumnParts): Float64Array[][] {
  const { room, plant, rules, window, standing, loads } = parts
  const { n, dcKw } = window
  const without = loads.map((load) => fillWithout(room.floats(n), plant, load, dcKw, standing))
  return masksOf(rules).map((mask) => {
    if (mask === 0) return [...without, fillDark(room.floats(n), rules, dcKw, standing)]
    const solar = solarColumn(parts, mask, () => 1)
    return loads.map((load, level) => {
      return fillWithSolar(room.copy(without[level]!), plant, load, solar, dcKw, standing)
    })
  })
}

function fillWithout(
  out: Float64Array,
  plant: Plant,
  load: Float64Array,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    out[i] = onGrid(-batteryKw(plant, load[i]!, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}

/** @param out  the increments without; by night they stay */
function fillWithSolar(
  out: Float64Array,
  plant: Plant,
  load: Float64Array,
  solar: Float64Array,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    if (solar[i] === 0) continue
    const acKw = Math.max(load[i]! - solar[i]!, -plant.chargeAcKw)
    out[i] = onGrid(-batteryKw(plant, acKw, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}

function fillDark(
  out: Float64Array,
  rules: Rules,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    out[i] = onGrid((darkDcKw(rules, dcKw[i]!) - standing[i]!) / 60)
  }
  return out
}

/**
 * What arrays that cannot throttle (or not below their floor) force on the stack: infinite where
 * their surplus exceeds the inverter's own charge limit, for no charge band takes that.
 *
 * @param without  increments with no AC-coupled solar in. [level][n]
 */
export function forcedColumns(
  parts: ColumnParts,
  without: readonly Float64Array[],
): Columns['forced'] {
  const { room, plant, rules, window, standing, loads } = parts
  if (rules.tripMask === 0) return []
  return masksOf(rules).map((mask) => {
    if ((mask & rules.tripMask) === 0) return []
    const forced = solarColumn(parts, mask, ({ floorShare }) => floorShare)
    return loads.map((load, level) => {
      const out = room.copy(without[level]!)
      return fillForced(out, plant, load, forced, window.dcKw, standing)
    })
  })
}

/** @param out  the increments without; they stay where nothing is forced and no sun rests */
function fillForced(
  out: Float64Array,
  plant: Plant,
  load: Float64Array,
  forced: Float64Array,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    if (forced[i] === 0 && dcKw[i] === 0) continue
    const acKw = load[i]! - forced[i]!
    out[i] =
      acKw < -plant.chargeAcKw
        ? Number.POSITIVE_INFINITY
        : onGrid(-batteryKw(plant, acKw, 0, standing[i]!) / 60)
  }
  return out
}

/** With the grid there the stack charges with what all loads of the house leave of the main fuse. */
export function gridColumns(parts: ColumnParts): Columns['deltaGrid'] {
  const { room, house, demand, plant, rules, window, standing, loads } = parts
  const fuseKw = (house.gateway.mainFuseA * VOLTS) / 1000
  const spare = room.floats(window.n)
  for (const { here, ofYear } of stretchesOf(window, demand.n)) {
    fillSpare(here(spare), fuseKw, here(loads[0]!), ofYear(demand.gridOnlyKw))
  }
  return masksOf(rules).map((mask) => {
    const solar = solarColumn(parts, mask, () => 1)
    return fillGrid(room.floats(window.n), plant, spare, solar, window.dcKw, standing)
  })
}

/** What the loads leave of the main fuse; less than none where they are more than it bears. [kW] */
function fillSpare(
  out: Float64Array,
  fuseKw: number,
  load: Float64Array,
  gridOnly: Float64Array,
): void {
  for (let i = 0; i < out.length; i++) out[i] = fuseKw - (load[i]! + gridOnly[i]!)
}

function fillGrid(
  out: Float64Array,
  plant: Plant,
  spare: Float64Array,
  solar: Float64Array,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    const acKw = -Math.min(Math.max(0, spare[i]! + solar[i]!), plant.chargeAcKw)
    out[i] = onGrid(-batteryKw(plant, acKw, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}
