// What a test with the grid off should read: a steady load on a warm battery, no sun, no set.
//
// It is walked by the same rule book as every cut, with flat columns in place of the survey, so
// that a tester who sets a stated load can hold meter and display against it.

import { monthRange } from '../axis/calendar.js'
import { type Trace, trace } from '../cut/trace.js'
import type { House } from '../house/house.js'
import { mostAcKw } from '../island/balance.js'
import { compile } from '../island/compile.js'
import { rulesOf, shedSteps } from '../island/rules.js'
import type { Demand } from '../load/demand.js'
import type { Prepared } from '../series/prepare.js'
import type { Window } from '../series/window-columns.js'
import { onGrid } from '../units/energy-grid.js'
import { type Equipped, equip, type Scenario } from './scenario.js'

/** Charge at which the test begins: below the bands in which charging slows; common practice. */
const START_SHARE = 0.9
/** Neither cold nor hot, so that every limit and all of the capacity are the stack's own. [°C] */
const PLACE_C = 25
/** Share of rating that the stated load takes, where the stack gives it; common practice. */
const TEST_SHARE = 0.5
const READ_AFTER_MINUTES = [10, 30, 60] as const
/** How far the stated load is followed. [h] */
const FOLLOW_HOURS = 24

export interface TestReading {
  readonly minutes: number
  /** False where the load is off: more than the island carries, or the battery is empty. */
  readonly isOn: boolean
  /** Out of the battery inverter at its AC side. [kW] */
  readonly dischargeKw: number
  /** At the terminals of the stack. [kW] */
  readonly batteryKw: number
  /** Share of usable capacity at the end of the minute, 0..1 */
  readonly share: number
}

export interface TestRun {
  readonly loadKw: number
  /** Share of nameplate capacity that age has left. */
  readonly health: number
  readonly usableKwh: number
  readonly readings: readonly TestReading[]
}

export interface TestThreshold {
  readonly what: string
  /** Share of usable capacity, 0..1 */
  readonly share: number
  /** Stored there in a new stack, and in one of the house's health. [kWh] */
  readonly newKwh: number
  readonly agedKwh: number
  /** From the start of the test under the stated load; null where it is not reached. [h] */
  readonly newHours: number | null
  readonly agedHours: number | null
}

export interface IslandTest {
  readonly startShare: number
  readonly placeC: number
  /** Health of the aged runs; those of a new stack stand at 1. */
  readonly health: number
  /** Mean of the critical loads in the month. [kW] */
  readonly meanKw: number
  /** A load to set: half the rating, or less where the stack gives less. [kW] */
  readonly statedKw: number
  readonly mean: { readonly fresh: TestRun; readonly aged: TestRun }
  readonly stated: { readonly fresh: TestRun; readonly aged: TestRun }
  /** From high to low. */
  readonly thresholds: readonly TestThreshold[]
}

/**
 * @param month  1..12, whose mean of the critical loads is taken
 * @throws       InputError where the scenario does not fit the house
 */
export function islandTest(prepared: Prepared, month: number, scenario: Scenario = {}): IslandTest {
  const aged = equip(prepared, { ...scenario, generator: false })
  const fresh = equip(prepared, { ...scenario, generator: false, health: 1 })
  const meanKw = meanCriticalKw(prepared, month)
  const most = mostAcKw(aged.plant, aged.plant.standingKw)
  const statedKw = Math.floor(10 * Math.min(TEST_SHARE * aged.plant.ratedKw, most)) / 10
  const walks = {
    fresh: steady(prepared, fresh, statedKw),
    aged: steady(prepared, aged, statedKw),
  }
  return {
    startShare: START_SHARE,
    placeC: PLACE_C,
    health: aged.health,
    meanKw,
    statedKw,
    mean: {
      fresh: runOf(steady(prepared, fresh, meanKw), fresh, meanKw),
      aged: runOf(steady(prepared, aged, meanKw), aged, meanKw),
    },
    stated: {
      fresh: runOf(walks.fresh, fresh, statedKw),
      aged: runOf(walks.aged, aged, statedKw),
    },
    thresholds: thresholdsOf(prepared, walks, fresh, aged),
  }
}

function meanCriticalKw({ calendar, demand }: Prepared, month: number): number {
  const [from, to] = monthRange(calendar, month)
  return demand.criticalKw.subarray(from, to).reduce((sum, kw) => sum + kw, 0) / (to - from)
}

/** The island under one power, without sun or generator. */
function steady(prepared: Prepared, { house, plant }: Equipped, kw: number): Trace {
  const n = FOLLOW_HOURS * 60
  const rules = rulesOf(house, plant, 0)
  const column = (value: number): Float64Array => new Float64Array(n).fill(value)
  const window: Window = {
    from: 0,
    n,
    year: 0,
    acKw: rules.solar.map(() => column(0)),
    dcKw: column(0),
    placeC: new Float64Array(FOLLOW_HOURS).fill(PLACE_C),
    firstHour: 0,
    dayGhi: new Float64Array(FOLLOW_HOURS),
    dayWindMs: new Float64Array(FOLLOW_HOURS),
    firstDay: 0,
  }
  const demand = flatDemand(column(kw))
  const compiled = compile(house, prepared.calendar, demand, plant, rules, window)
  return trace(compiled, onGrid(START_SHARE * plant.usableKwh))
}

function flatDemand(kw: Float64Array): Demand {
  return {
    n: kw.length,
    critical: [],
    criticalKw: kw,
    comfortKw: [],
    gridOnlyKw: new Float64Array(kw.length),
    comfortNames: [],
    peakKva: [kw],
    runningKva: [kw],
    formingKva: [kw],
    together: null,
    grounds: [],
    airC: null,
    notes: [],
  }
}

function runOf(walked: Trace, { plant, health }: Equipped, loadKw: number): TestRun {
  const { usableKwh } = plant
  return {
    loadKw,
    health,
    usableKwh,
    readings: READ_AFTER_MINUTES.map((minutes) => ({
      minutes,
      isOn: walked.servedCriticalKw[minutes - 1]! > 0,
      dischargeKw: walked.dischargeKw[minutes - 1]!,
      batteryKw: walked.batteryKw[minutes - 1]!,
      share: walked.storedKwh[minutes - 1]! / usableKwh,
    })),
  }
}

/** Until a charge is reached with the load still on; at the lower limit, until it goes off. */
function hoursTo({ storedKwh, servedCriticalKw }: Trace, kwh: number): number | null {
  const at = storedKwh.findIndex((stored, i) => stored <= kwh && servedCriticalKw[i]! > 0)
  return at === -1 ? null : (at + 1) / 60
}

function hoursOn({ servedCriticalKw }: Trace): number | null {
  const off = servedCriticalKw.indexOf(0)
  return off === -1 ? null : off / 60
}

interface Walks {
  readonly fresh: Trace
  readonly aged: Trace
}

function thresholdsOf(
  { house, demand }: Prepared,
  walks: Walks,
  fresh: Equipped,
  aged: Equipped,
): TestThreshold[] {
  const energies = (share: number) => ({
    share,
    newKwh: share * fresh.plant.usableKwh,
    agedKwh: share * aged.plant.usableKwh,
  })
  const above = switches(house, demand).map(({ what, share }) => ({
    what,
    ...energies(share),
    newHours: hoursTo(walks.fresh, share * fresh.plant.usableKwh),
    agedHours: hoursTo(walks.aged, share * aged.plant.usableKwh),
  }))
  const off = {
    what: 'all loads go off',
    ...energies(house.inverter.loadsOffAt),
    newHours: hoursOn(walks.fresh),
    agedHours: hoursOn(walks.aged),
  }
  return [...above, off].sort((a, b) => b.share - a.share)
}

/** Charges at which something switches before the last loads go off. */
function switches(
  house: House,
  demand: Pick<Demand, 'comfortKw'>,
): { what: string; share: number }[] {
  const steps = shedSteps(house, demand.comfortKw.length).map(({ dropBelow }, i, { length }) => ({
    what: length === 1 ? 'comfort loads go off' : `comfort loads of step ${i + 1} go off`,
    share: dropBelow,
  }))
  const set = house.generator
  return [
    { what: 'reserve', share: house.stack.reserve },
    ...steps,
    ...(set === undefined ? [] : [{ what: 'generator is wanted', share: set.startAt }]),
  ]
}
