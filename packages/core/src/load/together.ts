// Thermostats after a time without power: everything is warm, so everything runs at once.
//
// A fridge that was off owes its minutes; it does not resume its clock where it stood. After a
// quarter of an hour off, all cycling loads run together for 40 minutes (common practice, no
// source: thermostatic loads come back at 1.5 to 3 times their mean for 20 to 60 minutes).

import { ownColumn } from '../units/year-column.js'
import { formingKva } from './apparent.js'
import type { SurveyYear } from './day-filter.js'
import { isSurveyed, type LoadColumn } from './load-column.js'
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
  /** By shed level: all that runs or may run, starting in one minute. [steps + 1][n], [kVA] */
  readonly formingKva: readonly Float64Array[]
  /** By shed level: the loads with a cycle, which start on return where their turn was missed. */
  readonly cycling: readonly (readonly LoadColumn[])[]
}

/**
 * Apparent power of loads that missed their turn in the minutes before and start in this one, on
 * top of what starts in it anyway: a float switch stays closed, a fridge stays warm. [kVA]
 *
 * @param missed  minutes before `at` in which nothing was served
 */
export function missedStartsKva(
  cycling: readonly LoadColumn[],
  at: number,
  missed: number,
): number {
  let kva = 0
  for (const { load, kw } of cycling) {
    let most = 0
    for (let back = 1; back <= missed; back++) {
      most = Math.max(most, kw[(at - back + kw.length) % kw.length]!)
    }
    const pieces = Math.max(0, most - kw[at]!) / ((load.w ?? 0) / 1000)
    kva += pieces * ((load.w ?? 0) / 1000 / load.powerFactor + startExtraKva(load))
  }
  return kva
}

/** Null for a house without cycling loads on the island. */
export function togetherOf(
  critical: readonly LoadColumn[],
  steps: readonly (readonly LoadColumn[])[],
  year: SurveyYear,
): Together | null {
  const { n } = year.calendar
  const { newColumn = ownColumn } = year
  const isCycling = ({ load }: LoadColumn): boolean => load.cycle !== undefined && isSurveyed(load)
  const levels = [...steps.keys(), steps.length].map((level) => [
    ...critical,
    ...steps.slice(level).flat(),
  ])
  if (!levels[0]!.some(isCycling)) return null
  const withThermostatsOn = new Map(
    levels[0]!.filter(isCycling).map((column) => [column, alwaysOn(column, year)]),
  )
  const owedBy = (columns: readonly LoadColumn[]): Float64Array =>
    owed(columns.filter(isCycling), withThermostatsOn, newColumn(n))
  return {
    criticalKw: owedBy(critical),
    comfortKw: steps.map(owedBy),
    cycling: levels.map((level) => level.filter(isCycling)),
    kvaPerKw: levels.map((level) =>
      Math.max(1, ...level.filter(isCycling).map((c) => 1 / c.load.powerFactor)),
    ),
    formingKva: formingKva(
      levels.map((level) => level.map((column) => withThermostatsOn.get(column) ?? column)),
      n,
      newColumn,
    ),
  }
}

function alwaysOn({ load }: LoadColumn, year: SurveyYear): LoadColumn {
  return { load, kw: surveyColumn({ ...load, cycle: undefined }, year) }
}

/** Power of these loads with their thermostats on, less what they draw in their cycle. */
function owed(
  columns: readonly LoadColumn[],
  on: ReadonlyMap<LoadColumn, LoadColumn>,
  out: Float64Array,
): Float64Array {
  for (const column of columns) {
    const { kw } = on.get(column) as LoadColumn
    for (let i = 0; i < out.length; i++) out[i]! += kw[i]! - column.kw[i]!
  }
  return out
}
