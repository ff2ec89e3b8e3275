// A cut as its sentences see it, and the words that several of them share.

import type { Calendar } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import type { Compiled } from '../island/compile.js'
import type { IslandLoad } from '../load/island-loads.js'
import type { Trace } from './trace.js'

/** All that a sentence may need. */
export interface Scene {
  readonly trace: Trace
  readonly house: House
  readonly calendar: Calendar
  readonly compiled: Compiled
  /** The loads one by one, worked out when first asked for. */
  readonly loads: () => readonly IslandLoad[]
}

/** Sun worth a line. [kW] */
export const SUN_KW = 0.05

/** Index in the calendar of the day of minute `i`. */
export function dayAt({ trace, calendar }: Scene, i: number): number {
  return calendar.dayOf[(i + trace.from) % calendar.n]!
}

/** Whether the tank is empty: nothing is left but the cans. */
export function isInCans({ trace, compiled: { rules } }: Scene, i: number): boolean {
  return rules.generator?.cansAfter.includes(trace.fuelL[i]!) === true
}

export function personWords({ person }: House): string {
  return `${person?.minutes} min, ${person?.from} to ${person?.to}`
}

/** The charge at which the loads return. */
export function backPercent({ compiled: { rules, columns } }: Scene, i: number): string {
  return percent((rules.loadsBackKwh + columns.coldFloor[i]!) / rules.capacityKwh)
}

export function kw(value: number): string {
  return `${value.toFixed(2)} kW`
}

export function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}
