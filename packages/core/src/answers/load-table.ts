// The loads of a house on one page, to be checked with the customer.

import { monthRange } from '../axis/calendar.js'
import { consequenceOf, toleratedMinutes } from '../consequence/of-load.js'
import type { LoadInput, PhaseOrThree, Tier } from '../house/house.js'
import { typicalRow } from '../house/typical-loads.js'
import { loadColumns } from '../load/demand.js'
import { isSurveyed } from '../load/load-column.js'
import type { LoadRecords } from '../load/meter-record.js'
import { startExtraKva } from '../load/starting.js'
import type { Prepared } from '../series/prepare.js'
import { cautionsFor } from './cautions.js'
import { meterDoubts } from './meter-doubts.js'
import { slipsOf } from './slips.js'

export interface LoadRow {
  readonly name: string
  readonly tier: Tier
  readonly phase: PhaseOrThree
  /** What the column comes from. */
  readonly from: 'survey' | 'meter' | 'profile'
  readonly pieces: number
  /** Power of one piece while it runs; null for a meter or a profile. [W] */
  readonly w: number | null
  /** Hours a day in which it draws, mean of January. [h] */
  readonly hoursADay: number
  readonly januaryKwhADay: number
  readonly julyKwhADay: number
  /** Whether other days stand in for most of January, of July: no reading is near them. */
  readonly standsIn: { readonly january: boolean; readonly july: boolean }
  /** Most it draws in a minute of the year. [kW] */
  readonly mostKw: number
  /** Apparent power of one piece in its start; null where the starts are not known. [kVA] */
  readonly startKva: number | null
  /** Null for a load that is not critical, and for one that bears any gap. [min] */
  readonly toleratesMinutes: number | null
  /** Its kind in the table of typical loads; null where none is named. */
  readonly like: string | null
  /** Fields taken from that table, and what they rest on. */
  readonly taken: readonly string[]
  readonly source: string | null
  /** What that follows from; null where it is given. */
  readonly toleranceBasis: string | null
  /** Loads that are inside a metered figure or a profile, taken out of it. */
  readonly contains: readonly string[]
}

export interface TierSum {
  readonly januaryKwhADay: number
  readonly julyKwhADay: number
}

export interface LoadTable {
  readonly house: string
  /** Critical, comfort, then off in a cut, each in the order of the file. */
  readonly loads: readonly LoadRow[]
  readonly sums: Readonly<Record<Tier, TierSum>>
  /** What the readers of the meter files understood. */
  readonly read: readonly { readonly file: string; readonly notes: readonly string[] }[]
  readonly slips: readonly string[]
  readonly warnings: readonly string[]
  readonly cautions: readonly string[]
}

const TIERS = ['critical', 'comfort', 'gridOnly'] as const
const JANUARY = 1
const JULY = 7

/** @param records  those that loads and arrays name, by that name */
export function loadTable(prepared: Prepared, records: LoadRecords = {}): LoadTable {
  const { house, calendar } = prepared
  const { columns } = loadColumns(house, calendar, records, prepared.demand.airC)
  const loads = TIERS.flatMap((tier) =>
    house.loads
      .filter((load) => load.tier === tier)
      .map((load) => rowOf(prepared, load, columns.get(load.name)!.kw)),
  )
  return {
    house: house.house,
    loads,
    sums: Object.fromEntries(
      TIERS.map((tier) => [tier, sumOf(loads.filter((row) => row.tier === tier))]),
    ) as Record<Tier, TierSum>,
    read: [...(records.meters ?? [])].map(([file, { notes }]) => ({ file, notes })),
    slips: [...slipsOf(prepared), ...meterDoubts(prepared, null)],
    warnings: prepared.demand.notes,
    cautions: cautionsFor(house),
  }
}

function rowOf({ house, calendar, demand }: Prepared, load: LoadInput, kw: Float64Array): LoadRow {
  const without = demand.grounds.find(({ name }) => name === load.name)?.monthsWithout ?? []
  const surveyed = isSurveyed(load)
  const [from, to] = monthRange(calendar, JANUARY)
  const january = kw.subarray(from, to)
  const days = (to - from) / 1440
  const tolerated = toleratedMinutes(load)
  const running = (load.w ?? 0) / 1000 / load.powerFactor
  return {
    name: load.name,
    tier: load.tier,
    phase: load.phase ?? (house.inverter.phases === 3 ? 'three' : house.inverter.phase),
    from: surveyed ? 'survey' : load.file === undefined ? 'profile' : 'meter',
    pieces: load.pieces,
    w: load.w ?? null,
    hoursADay: january.reduce((n, value) => n + (value > 0 ? 1 : 0), 0) / 60 / days,
    januaryKwhADay: meanKwh(kw, from, to),
    julyKwhADay: meanKwh(kw, ...monthRange(calendar, JULY)),
    standsIn: { january: without.includes(JANUARY), july: without.includes(JULY) },
    mostKw: kw.reduce((most, value) => Math.max(most, value), 0),
    startKva: surveyed ? running + startExtraKva(load) : null,
    toleratesMinutes: load.tier === 'critical' && Number.isFinite(tolerated) ? tolerated : null,
    toleranceBasis: load.tier === 'critical' ? consequenceOf(load).basis : null,
    like: load.like ?? null,
    taken: load.taken ?? [],
    source: typicalRow(load.like)?.source ?? null,
    contains: load.contains ?? [],
  }
}

/** Mean of the days of a span. [kWh a day] */
function meanKwh(kw: Float64Array, from: number, to: number): number {
  return (kw.subarray(from, to).reduce((sum, value) => sum + value / 60, 0) * 1440) / (to - from)
}

function sumOf(rows: readonly LoadRow[]): TierSum {
  const sum = (value: (row: LoadRow) => number): number =>
    rows.reduce((total, row) => total + value(row), 0)
  return {
    januaryKwhADay: sum((row) => row.januaryKwhADay),
    julyKwhADay: sum((row) => row.julyKwhADay),
  }
}
