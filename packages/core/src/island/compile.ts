// From powers to the columns that the rule book reads: increments on the energy grid.

import { type Calendar, clockMinute, DAY_MINUTES, inSpan } from '../axis/calendar.js'
import { generatorLitresPerHour } from '../equipment/generator.js'
import { chargeRateLimit, coldShare } from '../equipment/place.js'
import { type Plant, stackC, standingKw } from '../equipment/plant.js'
import type { House, Person } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Window } from '../series/window.js'
import { onGrid } from '../units/energy-grid.js'
import { batteryKw, generatorAcKw, mostAcKw, newBalance, settle } from './balance.js'
import { type Columns, NEVER } from './columns.js'
import type { Rules } from './rules.js'
import { togetherColumns, togetherLoad } from './together-columns.js'

const VOLTS = 230

/** Everything that `step` and a trace need for one window, with the powers it was made of. */
export interface Compiled {
  readonly columns: Columns
  readonly rules: Rules
  readonly plant: Plant
  readonly window: Window
  readonly demand: Demand
  /** Load served at a level in a minute of the window. [kW] */
  readonly loadKw: (level: number, minute: number) => number
  /** What thermostats that run together add to it. [kW] */
  readonly togetherKw: (level: number, minute: number) => number
  /** Standing draw of the stack in a minute of the window. [kW] */
  readonly standingKw: (minute: number) => number
}

/**
 * @param gridUp  1 while the grid is there, [n of the window]; absent: the grid is gone throughout.
 *                The gateway takes a grid that comes back only after its wait
 */
export function compile(
  house: House,
  calendar: Calendar,
  demand: Demand,
  plant: Plant,
  rules: Rules,
  window: Window,
  gridUp?: Uint8Array,
): Compiled {
  const { n } = window
  const loads = loadColumns(demand, rules, window)
  const loadKw = (level: number, minute: number): number => loads[level]?.[minute] ?? 0
  const standing = hourColumn(window, (placeC) => standingKw(plant, placeC))
  const levels = [...loads.keys()]
  const deltaOut = [...levels, rules.holding].map((level) =>
    fill(n, (i) => -batteryKw(plant, loadKw(level, i), window.dcKw[i]!, standing[i]!)),
  )
  deltaOut.push(fill(n, (i) => window.dcKw[i]! - standing[i]!))
  const withSolar = (dc: boolean): Float64Array[] =>
    [...levels, rules.holding].map((level) =>
      fill(n, (i) => {
        const acKw = Math.max(loadKw(level, i) - window.acKw[i]!, -plant.chargeAcKw)
        return -batteryKw(plant, acKw, dc ? window.dcKw[i]! : 0, standing[i]!)
      }),
    )
  const deltaIn = rules.solar === null ? deltaOut : withSolar(true)
  const forced = rules.solar?.canTrip ? forcedOf(rules, plant, window, standing, loadKw) : deltaIn
  const taken = gridTaken(gridUp ?? new Uint8Array(n), house.gateway.reconnectSeconds)
  const togetherKw = togetherLoad(demand, rules, window)
  const generator = generatorColumns(house, plant, rules, window, standing, loadKw)
  const columns: Columns = {
    n,
    from: window.from,
    gridUp: taken,
    lastGrid: taken.lastIndexOf(1),
    deltaOut,
    deltaIn,
    forced,
    ...generator,
    deltaGrid:
      gridUp === undefined
        ? new Float64Array(0)
        : gridColumn(house, plant, window, standing, loadKw),
    tempLimit: hourColumn(window, (placeC) => {
      const rate = chargeRateLimit(stackC(plant, placeC))
      return rate === Number.POSITIVE_INFINITY ? rate : onGrid((rate * plant.usableKwh) / 60)
    }),
    coldFloor: hourColumn(window, (placeC) =>
      onGrid(coldShare(stackC(plant, placeC)) * plant.usableKwh),
    ),
    overload: levels.map((level) => overloadColumn(demand, plant, window, standing, level, loadKw)),
    together: togetherColumns({
      house,
      plant,
      rules,
      window,
      demand,
      standing,
      loadKw,
      togetherKw,
    }),
    attempt:
      rules.whenEmpty === 'retries'
        ? attemptColumn(house.inverter.retryAt, calendar, window)
        : new Uint8Array(0),
    personAt: personColumn(house.person, calendar, window),
  }
  return {
    columns,
    rules,
    plant,
    window,
    demand,
    loadKw,
    togetherKw,
    standingKw: (minute) => standing[minute]!,
  }
}

function fill(n: number, kw: (minute: number) => number): Float64Array {
  const out = new Float64Array(n)
  for (let i = 0; i < n; i++) out[i] = onGrid(kw(i) / 60)
  return out
}

/** Load of each level, 0 (all) to lastLevel (critical only), over the window. [kW] */
function loadColumns(demand: Demand, rules: Rules, window: Window): Float64Array[] {
  return Array.from({ length: rules.lastLevel + 1 }, (_, level) => {
    const out = new Float64Array(window.n)
    for (const column of [demand.criticalKw, ...demand.comfortKw.slice(level)]) {
      for (let i = 0; i < window.n; i++) out[i]! += column[(i + window.from) % demand.n]!
    }
    return out
  })
}

/** A value by the temperature of the stack's place, hour by hour. */
function hourColumn(window: Window, value: (placeC: number) => number): Float64Array {
  const out = new Float64Array(window.n)
  for (let hour = 0; hour < window.placeC.length; hour++) {
    const start = (window.firstHour + hour) * 60 - window.from
    out.fill(value(window.placeC[hour]!), Math.max(0, start), Math.max(0, start + 60))
  }
  return out
}

/**
 * What an array that cannot throttle (or not below its floor) forces on the stack: infinite where its surplus exceeds the
 * inverter's own charge limit, for no charge band takes that.
 */
function forcedOf(
  rules: Rules,
  plant: Plant,
  window: Window,
  standing: Float64Array,
  loadKw: (level: number, minute: number) => number,
): Float64Array[] {
  const floor = rules.solar?.floorShare ?? 1
  return Array.from({ length: rules.holding + 1 }, (_, level) =>
    Float64Array.from({ length: window.n }, (_, i) => {
      const acKw = loadKw(level, i) - floor * window.acKw[i]!
      if (acKw < -plant.chargeAcKw) return Number.POSITIVE_INFINITY
      return onGrid(-batteryKw(plant, acKw, 0, standing[i]!) / 60)
    }),
  )
}

/** 1 where running power exceeds the rating or the stack's discharge limit, or a start the peak. */
function overloadColumn(
  demand: Demand,
  plant: Plant,
  window: Window,
  standing: Float64Array,
  level: number,
  loadKw: (level: number, minute: number) => number,
): Uint8Array {
  const peak = demand.peakKva[level]!
  const most = mostAcKw(plant, plant.standingKw)
  const heated = mostAcKw(plant, plant.standingKw + plant.heaterKw)
  return Uint8Array.from({ length: window.n }, (_, i) =>
    loadKw(level, i) <= (standing[i]! > plant.standingKw ? heated : most) &&
    peak[(i + window.from) % demand.n]! <= plant.startingKva
      ? 0
      : 1,
  )
}

function generatorColumns(
  house: House,
  plant: Plant,
  rules: Rules,
  window: Window,
  standing: Float64Array,
  loadKw: (level: number, minute: number) => number,
): Pick<Columns, 'deltaGenerator' | 'overGenerator' | 'litres'> {
  const { generator } = house
  if (generator === undefined) return { deltaGenerator: [], overGenerator: [], litres: () => 0 }
  const levels = Array.from({ length: rules.lastLevel + 1 }, (_, level) => level)
  const into = newBalance()
  return {
    deltaGenerator: levels.map((level) =>
      fill(window.n, (i) => {
        const acKw = generatorAcKw(plant, generator.ratedKw, loadKw(level, i))
        return -batteryKw(plant, acKw, window.dcKw[i]!, standing[i]!)
      }),
    ),
    overGenerator: levels.map((level) =>
      Uint8Array.from({ length: window.n }, (_, i) =>
        loadKw(level, i) <= generator.ratedKw ? 0 : 1,
      ),
    ),
    litres: (level, i, delta) => {
      const battery = -delta * 60
      const load = loadKw(level, i)
      settle(into, plant, 'generator', load, 0, window.dcKw[i]!, standing[i]!, battery)
      return onGrid(generatorLitresPerHour(generator, into.generatorKw) / 60)
    },
  }
}

/** With the grid there the stack charges with what the main fuse has left. */
function gridColumn(
  house: House,
  plant: Plant,
  window: Window,
  standing: Float64Array,
  loadKw: (level: number, minute: number) => number,
): Float64Array {
  const fuseKw = (house.gateway.mainFuseA * VOLTS) / 1000
  return fill(window.n, (i) => {
    const spare = Math.max(0, fuseKw - loadKw(0, i) + window.acKw[i]!)
    return -batteryKw(plant, -Math.min(spare, plant.chargeAcKw), window.dcKw[i]!, standing[i]!)
  })
}

/**
 * Minutes in which the gateway has the grid: one that comes back is waited out, and one that goes
 * again meanwhile begins its wait anew. A grid there in the first minute has been there long.
 */
export function gridTaken(gridUp: Uint8Array, reconnectSeconds: number): Uint8Array {
  const wait = Math.ceil(reconnectSeconds / 60)
  let there = wait
  return gridUp.map((up) => {
    const taken = up === 1 && there >= wait ? 1 : 0
    there = up === 1 ? there + 1 : 0
    return taken
  })
}

/** 1 in the spans of the wall clock in which an empty island tries again. */
function attemptColumn(spans: readonly string[], calendar: Calendar, window: Window): Uint8Array {
  const times = spans.map((span) => span.split('-').map((part) => clockMinute(part.trim()) ?? 0))
  return Uint8Array.from({ length: window.n }, (_, i) => {
    const wall = calendar.wallMinute[(i + window.from) % calendar.n]!
    return times.some(([from, to]) => inSpan(wall, from ?? 0, to ?? 0)) ? 1 : 0
  })
}

/** When somebody called in a minute has done it: within their hours, so many minutes later. */
function personColumn(person: Person | undefined, calendar: Calendar, window: Window): Int32Array {
  if (person === undefined) return new Int32Array(window.n).fill(NEVER)
  const from = clockMinute(person.from) ?? 0
  const to = clockMinute(person.to) ?? DAY_MINUTES
  const takes = Math.ceil(person.minutes)
  const out = new Int32Array(window.n)
  // Somebody called after hours begins when the hours do; two days past the window are looked at.
  let begins: number = NEVER
  for (let i = window.n + 2 * DAY_MINUTES - 1; i >= 0; i--) {
    if (inSpan(calendar.wallMinute[(i + window.from) % calendar.n]!, from, to)) begins = i
    if (i < window.n) out[i] = begins === NEVER ? NEVER : begins + takes
  }
  return out
}
