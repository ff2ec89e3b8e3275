// Thermostats after a time without power: everything is warm, so everything runs at once.
//
// A fridge that was off owes its minutes; it does not resume its clock where it stood. After a
// quarter of an hour off, all cycling loads run together for 40 minutes (common practice, no
// source: thermostatic loads come back at 1.5 to 3 times their mean for 20 to 60 minutes).

import type { Calendar } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import type { LoadColumn } from './load-column.js'
import { startExtraKva } from './starting.js'
import { surveyColumn } from './survey.js'

/** Time off after which the thermostats come back together. [min] */
export const TOGETHER_AFTER = 15
/** How long they then run. [min] */
export const TOGETHER_FOR = 40

/** What comes on top of the ordinary demand while the thermostats run together. */
export interface Together {
  /** [n], [kW] */
  readonly criticalKw: Float64Array
  /** By shed step. [steps][n], [kW] */
  readonly comfortKw: readonly Float64Array[]
  /** By shed level: apparent power of a kW of these loads, at worst. [kVA/kW] */
  readonly kvaPerKw: readonly number[]
  /** By shed level: all of them starting in one minute, above their running power. [kVA] */
  readonly startKva: readonly number[]
}

/** Null for a house without cycling loads on the island. */
export function togetherOf(
  critical: readonly LoadColumn[],
  steps: readonly (readonly LoadColumn[])[],
  house: House,
  calendar: Calendar,
): Together | null {
  const cycling = (columns: readonly LoadColumn[]): LoadColumn[] =>
    columns.filter(({ load }) => load.cycle !== undefined && load.file === undefined)
  const levels = [...steps.keys(), steps.length].map((level) =>
    cycling([...critical, ...steps.slice(level).flat()]),
  )
  if (levels[0]!.length === 0) return null
  return {
    criticalKw: owed(cycling(critical), house, calendar),
    comfortKw: steps.map((step) => owed(cycling(step), house, calendar)),
    kvaPerKw: levels.map((level) => Math.max(1, ...level.map((c) => 1 / c.load.powerFactor))),
    startKva: levels.map((level) =>
      level.reduce((sum, { load }) => sum + load.pieces * startExtraKva(load), 0),
    ),
  }
}

/** Power of these loads with their thermostats on, less what they draw in their cycle. */
function owed(columns: readonly LoadColumn[], house: House, calendar: Calendar): Float64Array {
  const out = new Float64Array(calendar.n)
  for (const { load, kw } of columns) {
    const on = surveyColumn({ ...load, cycle: undefined }, house, calendar)
    for (let i = 0; i < out.length; i++) out[i]! += on[i]! - kw[i]!
  }
  return out
}
