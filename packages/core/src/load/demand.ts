// What the house wants in every minute of its year, by shed level.
//
// Demand depends on the calendar only, so one set of columns serves every sky and every
// synthetic year. Powers are averages over the minute [kW].

import type { Calendar } from '../axis/calendar.js'
import type { House, LoadInput } from '../house/house.js'
import { typicalNotes } from '../house/typical-loads.js'
import { ownColumn } from '../units/year-column.js'
import { airNotes } from './air-notes.js'
import { apparentPower, newApparent } from './apparent.js'
import type { SurveyYear } from './day-filter.js'
import { isSurveyed, type LoadColumn } from './load-column.js'
import type { LoadRecords } from './meter-record.js'
import { type MeteredGround, meteredColumn } from './metered.js'
import { profileColumn } from './profile.js'
import { surveyColumn } from './survey.js'
import { type Together, togetherOf } from './together.js'

export interface Demand {
  readonly n: number
  /** Critical loads in the order of the house file. */
  readonly critical: readonly LoadColumn[]
  /** Sum of the critical loads. [n], [kW] */
  readonly criticalKw: Float64Array
  /** Comfort loads by shed step: step 0 goes off first. [steps][n], [kW] */
  readonly comfortKw: readonly Float64Array[]
  /** Loads that are not on the island: they share the main fuse when the grid is there. [n], [kW] */
  readonly gridOnlyKw: Float64Array
  /** Names of the comfort loads of each step. */
  readonly comfortNames: readonly (readonly string[])[]
  /**
   * Apparent power inside the minute at each shed level, 0 (all) to `steps` (critical only):
   * what runs, and the hardest single start. [steps + 1][n], [kVA]
   */
  readonly peakKva: readonly Float64Array[]
  /** What of it runs, without a start. [steps + 1][n], [kVA] */
  readonly runningKva: readonly Float64Array[]
  /** The same with everything that runs starting at once, as an island forms. [steps + 1][n] */
  readonly formingKva: readonly Float64Array[]
  /** What thermostats add when they come back together; null where none can. */
  readonly together: Together | null
  /** How far each meter record can be trusted. */
  readonly grounds: readonly MeteredGround[]
  /** Mean air of the year by the hour, for loads that follow it; null where none was given. */
  readonly airC: Float64Array | null
  /** What was understood or assumed about the loads, one sentence each. */
  readonly notes: readonly string[]
}

/** Every load of a house as a column, by its name. */
export interface LoadColumns {
  readonly columns: ReadonlyMap<string, LoadColumn>
  /** How far each meter record can be trusted. */
  readonly grounds: readonly MeteredGround[]
  /** What was understood or assumed, one sentence each. */
  readonly notes: readonly string[]
}

/**
 * @param records  those that loads and arrays name, by that name
 * @param airC     mean air of the year by the hour, for loads that follow it. [hours], [°C]
 * @param newColumn  where columns that are kept are made
 */
export function loadColumns(
  house: House,
  calendar: Calendar,
  records: LoadRecords,
  airC: Float64Array | null = null,
  newColumn = ownColumn,
): LoadColumns {
  const notes = [...typicalNotes(house.loads), ...airNotes(house)]
  const grounds: MeteredGround[] = []
  const columns = new Map<string, LoadColumn>()
  const begun = new Set<string>()
  const year = { house, calendar, airC }
  const columnOf = (load: LoadInput): Float64Array => {
    const { file, profile } = load
    if (file !== undefined) {
      return meteredColumn(load, { house, calendar, records, others: columns, notes, grounds })
    }
    if (profile === undefined) return surveyColumn(load, year)
    return profileColumn({ ...load, profile }, house, calendar, columns, notes)
  }
  const keptColumnOf = (load: LoadInput): Float64Array => {
    const kept = newColumn(calendar.n)
    if (isSurveyed(load)) return surveyColumn(load, year, kept)
    kept.set(columnOf(load))
    return kept
  }
  const build = (load: LoadInput): void => {
    if (begun.has(load.name)) return
    begun.add(load.name)
    // What a meter contains is known before it is taken out, be it metered itself.
    for (const inside of house.loads) if (load.contains?.includes(inside.name)) build(inside)
    columns.set(load.name, { load, kw: isKept(load) ? keptColumnOf(load) : columnOf(load) })
  }
  for (const load of house.loads) build(load)
  return { columns, grounds, notes }
}

/**
 * @param records  those that loads and arrays name, by that name: a net meter's load is rebuilt with
 *                 the logs of arrays
 * @param airC     mean air of the year by the hour, for loads that follow it. [hours], [°C]
 * @throws         InputError where a load follows the air and none is given
 */
export function demandOf(
  house: House,
  calendar: Calendar,
  records: LoadRecords = {},
  airC: Float64Array | null = null,
  newColumn = ownColumn,
): Demand {
  const loads = loadColumns(house, calendar, records, airC, newColumn)
  return demandFrom(loads, { house, calendar, airC, newColumn })
}

/**
 * What is left of a house's demand with some of its loads switched off; the others, and the steps
 * in which comfort loads go off, stay as they are.
 *
 * @param loads  of `loadColumns`
 * @param off    names of loads that draw nothing; one that a meter figure contains stays out of it
 */
export function demandFrom(
  loads: LoadColumns,
  year: SurveyYear,
  off: ReadonlySet<string> = new Set(),
): Demand {
  const { columns, grounds, notes } = loads
  const { house, calendar, airC, newColumn = ownColumn } = year
  const ofTier = (tier: LoadInput['tier']): LoadColumn[] =>
    house.loads.filter((l) => l.tier === tier).map((l) => columns.get(l.name) as LoadColumn)
  const stays = ({ load }: LoadColumn): boolean => !off.has(load.name)
  const critical = ofTier('critical').filter(stays)
  const orders = [...new Set(ofTier('comfort').map((c) => c.load.dropOrder))].sort((a, b) => a - b)
  const steps = orders.map((order) =>
    ofTier('comfort').filter((c) => c.load.dropOrder === order && stays(c)),
  )
  const levels = [...steps.keys(), steps.length].map((level) => [
    ...critical,
    ...steps.slice(level).flat(),
  ])
  const apparent = levels.map((level) =>
    apparentPower(level, calendar.n, newApparent(calendar.n, newColumn)),
  )
  return {
    n: calendar.n,
    critical,
    criticalKw: sum(critical, newColumn(calendar.n)),
    comfortKw: steps.map((step) => sum(step, newColumn(calendar.n))),
    gridOnlyKw: sum(ofTier('gridOnly').filter(stays), newColumn(calendar.n)),
    comfortNames: steps.map((step) => step.map((c) => c.load.name)),
    peakKva: apparent.map(({ peak }) => peak),
    runningKva: apparent.map(({ running }) => running),
    formingKva: apparent.map(({ forming }) => forming),
    together: togetherOf(critical, steps, year),
    grounds,
    airC,
    notes,
  }
}

/** Whether a demand keeps the column of a load; the others it keeps in sums only. */
function isKept(load: LoadInput): boolean {
  return load.tier === 'critical' || (load.tier === 'comfort' && load.cycle !== undefined)
}

/** Where nothing is drawn the memory is not touched, and so takes no room. */
function sum(columns: readonly LoadColumn[], total: Float64Array): Float64Array {
  for (const { kw } of columns) {
    for (let i = 0; i < kw.length; i++) if (kw[i] !== 0) total[i]! += kw[i]!
  }
  return total
}
