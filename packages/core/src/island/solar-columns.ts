// AC-coupled solar by the groups that are in, a bit each in a mask: what it fills, what it forces.

import type { Window } from '../series/window-columns.js'
import { onGrid } from '../units/energy-grid.js'
import { batteryKw } from './balance.js'
import type { Columns } from './columns.js'
import type { ColumnParts } from './parts.js'
import type { Rules } from './rules.js'

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

/** Increments by the groups that are in, level by level; dark only with none in. */
export function deltaColumns(parts: ColumnParts): Float64Array[][] {
  const { rules, window, loads } = parts
  const without = loads.map((load) => withoutSolar(parts, load))
  return masksOf(rules).map((mask) => {
    if (mask === 0) return [...without, darkColumn(parts)]
    const solar = sumColumn(window.n, (i) => solarKw(window, mask, i))
    return loads.map((load, level) => withSolar(parts, load, solar, without[level]!))
  })
}

function sumColumn(n: number, value: (i: number) => number): Float64Array {
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) out[i] = value(i)
  return out
}

function withoutSolar({ plant, window, standing }: ColumnParts, load: Float64Array): Float64Array {
  const { n, dcKw } = window
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    out[i] = onGrid(-batteryKw(plant, load[i]!, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}

/** By night it is what it is without. */
function withSolar(
  { plant, window, standing }: ColumnParts,
  load: Float64Array,
  solar: Float64Array,
  without: Float64Array,
): Float64Array {
  const { n, dcKw } = window
  const out = without.slice()
  for (let i = 0; i < n; i++) {
    if (solar[i] === 0) continue
    const acKw = Math.max(load[i]! - solar[i]!, -plant.chargeAcKw)
    out[i] = onGrid(-batteryKw(plant, acKw, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}

function darkColumn({ rules, window, standing }: ColumnParts): Float64Array {
  const { n, dcKw } = window
  return sumColumn(n, (i) => onGrid((darkDcKw(rules, dcKw[i]!) - standing[i]!) / 60))
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
  const { rules, window, loads } = parts
  if (rules.tripMask === 0) return []
  return masksOf(rules).map((mask) => {
    if ((mask & rules.tripMask) === 0) return []
    const forced = sumColumn(window.n, (i) => forcedKw(rules, window, mask, i))
    return loads.map((load, level) => forcedColumn(parts, load, forced, without[level]!))
  })
}

function forcedColumn(
  { plant, window, standing }: ColumnParts,
  load: Float64Array,
  forced: Float64Array,
  without: Float64Array,
): Float64Array {
  const { n, dcKw } = window
  const out = without.slice()
  for (let i = 0; i < n; i++) {
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
  const { house, plant, rules, window, standing, loads, demand } = parts
  const fuseKw = (house.gateway.mainFuseA * VOLTS) / 1000
  return masksOf(rules).map((mask) =>
    Float64Array.from({ length: window.n }, (_, i) => {
      const houseKw = loads[0]![i]! + demand.gridOnlyKw[(i + window.from) % demand.n]!
      const spare = Math.max(0, fuseKw - houseKw + solarKw(window, mask, i))
      const acKw = -Math.min(spare, plant.chargeAcKw)
      return onGrid(-batteryKw(plant, acKw, window.dcKw[i]!, standing[i]!) / 60)
    }),
  )
}
