// The settings of an island as the rule book reads them: thresholds on the energy grid, waits in
// whole minutes, one list of shed levels.
//
// Levels: 0 serves all, `lastLevel` serves the critical loads only; `holding` is an island formed
// with its loads off, `dark` an island that is gone.

import type { Plant } from '../equipment/plant.js'
import type { House, OnIsland, SolarInverter, WhenEmpty } from '../house/house.js'
import { solarGroups } from '../house/solar-groups.js'
import { onGrid } from '../units/energy-grid.js'

/**
 * Charge bands near full, common practice, no source: the full limit to 90 % of capacity, half
 * to 95, a quarter to 98, a tenth above.
 */
export const CHARGE_BANDS = [
  { upTo: 0.9, limit: 1 },
  { upTo: 0.95, limit: 0.5 },
  { upTo: 0.98, limit: 0.25 },
  { upTo: 1, limit: 0.1 },
] as const

/** Attempts after an overload, 60 s apart, before somebody must come; cp. */
const RETRIES = 3

/** One group of AC-coupled arrays that come in, wait and trip together. */
export interface SolarRules {
  /** Whether it drops out where too little of it can be taken. */
  readonly canTrip: boolean
  /** Share of its power that it must be able to get rid of to stay in. */
  readonly floorShare: number
  /** Whether it is held out near full. */
  readonly heldOut: boolean
  readonly waitMinutes: number
  readonly offKwh: number
  readonly backKwh: number
}

/** Gaps at the changeover above which motors stop and start anew; cp. [ms] */
const MOTORS_STOP_MS = 200

export interface GeneratorRules {
  readonly byHand: boolean
  readonly startKwh: number
  readonly stopKwh: number
  readonly readyMinutes: number
  readonly leastMinutes: number
  /** Tank and cans. [l] */
  readonly fuelL: number
  /** Left in cans after so many fillings of the tank; the last is 0. [l] */
  readonly cansAfter: readonly number[]
  /** More than it burns in any minute. [l] */
  readonly mostLitres: number
  /** Whether the columns hold failures. */
  readonly canFail: boolean
}

export interface Rules {
  /** [kWh], on the grid like every energy here. */
  readonly capacityKwh: number
  /** Upper edge of each charge band; the last is capacity. */
  readonly bandEdgesKwh: readonly number[]
  /** Most the stack may gain in a minute, in each band. [kWh] */
  readonly bandLimitsKwh: readonly number[]
  /** Thresholds between level i and i + 1. */
  readonly shed: readonly { readonly dropBelowKwh: number; readonly returnAtKwh: number }[]
  readonly loadsOffKwh: number
  readonly loadsBackKwh: number
  readonly whenEmpty: WhenEmpty
  readonly lastLevel: number
  readonly holding: number
  readonly dark: number
  /** Groups of AC-coupled solar, two at most; none for a house without. */
  readonly solar: readonly SolarRules[]
  /** Groups that can trip, a bit each. */
  readonly tripMask: number
  /** What can wake a dark, empty stack: DC-coupled sun, a generator, somebody who waits for sun. */
  readonly wakesOnSun: boolean
  readonly wakesOnGenerator: boolean
  readonly wakesOnPerson: boolean
  /** The gap at the changeover stops motors, which then start anew. */
  readonly motorsStop: boolean
  readonly retries: number
  /** What a fast load relay does in an overload, if there is one. */
  readonly sheds: boolean
  readonly generator: GeneratorRules | null
}

/** An island that would have collapsed is formed with its loads off only by somebody. */
export function isFormedByHand(level: number, rules: Rules): boolean {
  return level === rules.holding && rules.whenEmpty === 'collapses'
}

/** @param steps  how many shed steps the comfort loads make */
export function rulesOf(house: House, plant: Plant, steps: number): Rules {
  const kwh = (share: number): number => onGrid(share * plant.usableKwh)
  const { inverter } = house
  const solar = solarGroups(house).map((group) => solarRules(group.inverter, kwh))
  return {
    capacityKwh: kwh(1),
    bandEdgesKwh: CHARGE_BANDS.map((band) => kwh(band.upTo)),
    bandLimitsKwh: CHARGE_BANDS.map((band) => onGrid((band.limit * plant.chargeKw) / 60)),
    shed: shedSteps(house, steps).map(({ dropBelow, returnAt }) => ({
      dropBelowKwh: kwh(dropBelow),
      returnAtKwh: kwh(returnAt),
    })),
    loadsOffKwh: kwh(inverter.loadsOffAt),
    loadsBackKwh: kwh(inverter.loadsBackAt),
    whenEmpty: inverter.whenEmpty,
    lastLevel: steps,
    holding: steps + 1,
    dark: steps + 2,
    solar,
    tripMask: solar.reduce((mask, { canTrip }, g) => mask | (canTrip ? 1 << g : 0), 0),
    wakesOnSun: inverter.wakesOn.includes('sun'),
    wakesOnGenerator: inverter.wakesOn.includes('generator') && house.generator !== undefined,
    wakesOnPerson: inverter.wakesOn.includes('person') && solar.length > 0,
    motorsStop: house.gateway.changeoverMs > MOTORS_STOP_MS,
    retries: RETRIES,
    sheds: inverter.onOverload === 'sheds',
    generator: generatorRules(house, kwh),
  }
}

function solarRules(inverter: SolarInverter, kwh: (share: number) => number): SolarRules {
  return {
    canTrip: inverter.onIsland !== 'throttles',
    floorShare: FLOOR_OF[inverter.onIsland] ?? inverter.floorShare,
    heldOut: inverter.onIsland === 'trips',
    // A ramp gives half its energy: half of it counts as waiting.
    waitMinutes: wholeMinutes(inverter.reconnectSeconds + inverter.rampSeconds / 2),
    offKwh: kwh(inverter.outAbove),
    backKwh: kwh(inverter.backBelow),
  }
}

/** Share of its power that an array must get rid of; its own setting where it throttles to one. */
const FLOOR_OF: Partial<Record<OnIsland, number>> = { throttles: 0, trips: 1 }

/**
 * Where several steps carry a `dropOrder`, the first goes at `dropBelow` and each further one
 * lower by equal parts of the way to `loadsOffAt`; each returns as far above as the first does.
 */
export function shedSteps(house: House, steps: number): { dropBelow: number; returnAt: number }[] {
  const { dropBelow, returnAt } = house.comfort
  const apart = (dropBelow - house.inverter.loadsOffAt) / Math.max(1, steps)
  return Array.from({ length: steps }, (_, i) => ({
    dropBelow: dropBelow - i * apart,
    returnAt: returnAt - i * apart,
  }))
}

function generatorRules(house: House, kwh: (share: number) => number): GeneratorRules | null {
  const { generator } = house
  if (generator === undefined) return null
  return {
    byHand: generator.start === 'by hand',
    startKwh: kwh(generator.startAt),
    stopKwh: kwh(generator.stopAt),
    readyMinutes: wholeMinutes(generator.readySeconds),
    leastMinutes: generator.leastRunMinutes,
    fuelL: onGrid(generator.tankL) + onGrid(generator.cansL),
    cansAfter: cansAfter(generator.tankL, generator.cansL),
    mostLitres: onGrid(generator.litresPerHour.full / 30),
    canFail: generator.startFailsShare > 0 || generator.hoursBetweenFailures !== undefined,
  }
}

/** Cans are poured when the tank is empty, as much as goes in. */
function cansAfter(tankL: number, cansL: number): number[] {
  const left = [onGrid(cansL)]
  while (left.at(-1)! > 0) left.push(Math.max(0, left.at(-1)! - onGrid(tankL)))
  return left
}

/** Seconds as whole minutes, rounded up: a wait that has begun is waited out. At least 1. */
function wholeMinutes(seconds: number): number {
  return Math.max(1, Math.ceil(seconds / 60))
}
