// The table of typical loads as it is read: one line a kind.

import { toleratedMinutes } from '../consequence/of-load.js'
import { DEFAULTS } from '../house/defaults.js'
import type { LoadInput, Tier } from '../house/house.js'
import { typicalRow } from '../house/typical-loads.js'
import { TYPICAL_KINDS, type TypicalRow } from '../house/typical-rows.js'

export interface TypicalLine {
  readonly kind: string
  readonly tier: Tier
  /** Power while it runs, the most of one that follows the air. [W] */
  readonly w: number
  /** How it runs, in words. */
  readonly runs: string
  readonly powerFactor: number
  readonly startingMultiple: number
  /** Null for one that is not critical. [min] */
  readonly toleratesMinutes: number | null
  readonly source: string
}

/** Every row of the table, in the order of a walk through the house. */
export function typicalTable(): TypicalLine[] {
  return TYPICAL_KINDS.map((kind) => {
    const { load, source } = typicalRow(kind) as TypicalRow
    return {
      kind,
      tier: load.tier,
      w: load.w ?? Math.max(...(load.byAir ?? []).map(([, w]) => w)),
      runs: runsWords(load),
      powerFactor: load.powerFactor ?? DEFAULTS['loads[].powerFactor'].value,
      startingMultiple: load.startingMultiple ?? DEFAULTS['loads[].startingMultiple'].value,
      toleratesMinutes: load.tier === 'critical' ? toleratedMinutes(load) : null,
      source,
    }
  })
}

/** `6 a day of 3 min, 06:30-22:30` */
function runsWords(load: Partial<LoadInput>): string {
  const { cycle, events, charging, byAir, at, runs } = load
  const hours = events?.at ?? at ?? []
  const season =
    typeof runs === 'object'
      ? [`heating season below ${runs.below} °C`]
      : runs === 'heating season'
        ? ['heating season']
        : []
  const how = [
    ...(cycle === undefined ? [] : [`${cycle.onMinutes} min on, ${cycle.offMinutes} off`]),
    ...(events === undefined ? [] : [`${events.perDay} a day of ${events.minutes} min`]),
    ...(charging === undefined ? [] : [`${charging.kwhPerDay} kWh a day`]),
    ...(byAir === undefined ? [] : [byAir.map(([c, w]) => `${w} W at ${c} °C`).join(', ')]),
    ...hours,
    ...season,
  ]
  return how.length === 0 ? 'all the time' : how.join(', ')
}
