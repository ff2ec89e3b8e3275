// A small house as it stands in a file, for tests to change, and an island with columns by hand.

import {
  type Calendar,
  type Compiled,
  calendarOf,
  checkHouse,
  compile,
  type Demand,
  type House,
  type InputError,
  onGrid,
  plantOf,
  rulesOf,
  type Trace,
  trace,
  type Window,
} from '@tideover/core'

type Plain = Record<string, unknown>

/** Lossless but for 50 W of idle draw and 10 W of electronics; 10 kWh, health 1. */
export function plainHouse(changes: Plain = {}): Plain {
  return {
    house: 'Test',
    site: { latitudeDeg: 52, longitudeDeg: 0, elevationM: 0, timezone: 'UTC' },
    sky: { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(10) },
    arrays: [],
    gateway: { reconnectSeconds: 0 },
    inverter: { ratedKva: 5, idleW: 50, roundTrip: 1 },
    stack: {
      module: { usableKwh: 10, chargeKw: 2, dischargeKw: 5 },
      modules: 1,
      health: 1,
      electronicsW: 10,
      selfDischargePerMonth: 0,
    },
    loads: [{ name: 'pump', tier: 'critical', w: 390 }],
    ...changes,
  }
}

/** Where something is at fault and what is needed, one line a problem; none where it runs. */
export function faultsOf(run: () => unknown): string[] {
  try {
    run()
    return []
  } catch (error) {
    return (error as InputError).problems.map(({ where, need }) => `${where}: ${need}`)
  }
}

export const UTC_2025: Calendar = calendarOf(2025, 'UTC')

/** An array whose light the test gives itself. */
export function solar(
  onIsland: 'throttles' | 'trips' | 'throttles to a floor',
  reconnectSeconds = 180,
): Plain {
  return {
    name: onIsland,
    peakKw: 4,
    tiltDeg: 30,
    azimuthDeg: 180,
    inverter: { ratedKw: 4, onIsland, reconnectSeconds },
  }
}

export const DC_ARRAY: Plain = { name: 'dc', peakKw: 4, tiltDeg: 30, azimuthDeg: 180 }

/** Columns of an island; a number stands for a constant, a function is asked each minute. */
export interface ByHand {
  readonly house: House
  readonly minutes: number
  readonly critical: Given
  /** By shed step, the first goes off first. */
  readonly comfort?: readonly Given[]
  /** AC-coupled solar, one for each group. */
  readonly ac?: Given | readonly Given[]
  readonly dc?: Given
  /** Temperature of the stack's place by hour; 25 °C when left out: neither cold nor hot. */
  readonly placeC?: Given
  readonly gridUp?: (minute: number) => boolean
  /** What thermostats add when they run together. */
  readonly together?: Demand['together']
  /** Inside the minute, by level; the load itself when left out. [kVA] */
  readonly peakKva?: ByLevel
  /** Off the island, behind the same main fuse. */
  readonly gridOnly?: Given
  /** What runs; the load itself when left out. [kVA] */
  readonly runningKva?: ByLevel
  /** All of it starting at once; the peak when left out. [kVA] */
  readonly formingKva?: ByLevel
}

type ByLevel = (level: number, minute: number) => number

export type Given = number | ((index: number) => number)

function column(n: number, given: Given): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => (typeof given === 'number' ? given : given(i)))
}

/** Compiles an island from columns by hand; the cut starts at 00:00 UTC on 1 January. */
export function islandOf(given: ByHand): Compiled {
  const { house, minutes: n } = given
  const comfortKw = (given.comfort ?? []).map((step) => column(n, step))
  const criticalKw = column(n, given.critical)
  const loadAt = (level: number, i: number): number =>
    comfortKw.slice(level).reduce((sum, step) => sum + step[i]!, criticalKw[i]!)
  const peakKva = given.peakKva ?? loadAt
  const byLevel = (kva: ByLevel): Float64Array[] =>
    [...comfortKw.keys(), comfortKw.length].map((level) => column(n, (i) => kva(level, i)))
  const demand: Demand = {
    n,
    critical: [{ load: house.loads[0]!, kw: criticalKw }],
    criticalKw,
    comfortKw,
    gridOnlyKw: column(n, given.gridOnly ?? 0),
    comfortNames: comfortKw.map((_, step) => [`step ${step}`]),
    peakKva: byLevel(peakKva),
    runningKva: byLevel(given.runningKva ?? loadAt),
    formingKva: byLevel(given.formingKva ?? peakKva),
    together: given.together ?? null,
    grounds: [],
    airC: null,
    notes: [],
  }
  const hours = Math.ceil(n / 60)
  const plant = plantOf(house, house.stack.modules, house.stack.health)
  const rules = rulesOf(house, plant, comfortKw.length)
  const ac = [given.ac ?? 0].flat() as Given[]
  const window: Window = {
    from: 0,
    n,
    year: 0,
    acKw: rules.solar.map((_, group) => column(n, ac[group] ?? 0)),
    dcKw: column(n, given.dc ?? 0),
    placeC: column(hours, given.placeC ?? 25),
    firstHour: 0,
    dayGhi: new Float64Array(1),
    dayWindMs: new Float64Array(1),
    firstDay: 0,
  }
  const up = given.gridUp
  const gridUp = up && Uint8Array.from({ length: n }, (_, i) => (up(i) ? 1 : 0))
  return compile(house, UTC_2025, demand, plant, rules, window, gridUp)
}

/** Lives the island from a share of its capacity. */
export function live(given: ByHand, startShare: number): Trace {
  const island = islandOf(given)
  return trace(island, onGrid(startShare * island.plant.usableKwh))
}

/** Lives an island whose house is written as changes to the small one. */
export function liveHouse(changes: Plain, given: Omit<ByHand, 'house'>, startShare: number): Trace {
  return live({ ...given, house: checkHouse(plainHouse(changes)) }, startShare)
}

/** First minute in which the critical load is not served, -1 where there is none. */
export function firstWithout(t: Trace): number {
  return t.servedCriticalKw.findIndex((kw, i) => t.demandCriticalKw[i]! > 0 && kw === 0)
}

/** Minutes in which an event of the trace is set. */
export function minutesOf(t: Trace, event: number): number[] {
  const minutes: number[] = []
  for (let i = 0; i < t.n; i++) if ((t.events[i]! & event) !== 0) minutes.push(i)
  return minutes
}
