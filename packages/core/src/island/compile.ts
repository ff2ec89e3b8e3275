// From powers to the columns that the rule book reads: increments on the energy grid.

import type { Calendar } from '../axis/calendar.js'
import { chargeRateLimit, coldShare } from '../equipment/place.js'
import { type Plant, stackC, standingKw } from '../equipment/plant.js'
import type { House } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Window } from '../series/window-columns.js'
import { ColumnRoom } from '../units/column-room.js'
import { onGrid } from '../units/energy-grid.js'
import { attemptColumn, gridTaken, personColumn, wakeColumns } from './clock-columns.js'
import type { Columns } from './columns.js'
import { generatorColumns } from './generator-columns.js'
import { overloadColumns } from './overload-columns.js'
import { type ByLevel, type ColumnParts, stretchesOf } from './parts.js'
import type { Rules } from './rules.js'
import { deltaColumns, forcedColumns, gridColumns } from './solar-columns.js'
import { togetherColumns, togetherLoad } from './together-columns.js'

/** Everything that `step` and a trace need for one window, with the powers it was made of. */
export interface Compiled {
  readonly columns: Columns
  readonly rules: Rules
  readonly plant: Plant
  readonly window: Window
  readonly demand: Demand
  /** Load served at a level in a minute of the window. [kW] */
  readonly loadKw: ByLevel
  /** What thermostats that run together add to it. [kW] */
  readonly togetherKw: ByLevel
  /** Standing draw of the stack in a minute of the window. [kW] */
  readonly standingKw: (minute: number) => number
}

/**
 * @param gridUp  1 while the grid is there, [n of the window]; absent: the grid is gone throughout.
 *                The gateway takes a grid that comes back only after its wait
 * @param room    where the columns are made; they are good until it is cleared
 */
export function compile(
  house: House,
  calendar: Calendar,
  demand: Demand,
  plant: Plant,
  rules: Rules,
  window: Window,
  gridUp?: Uint8Array,
  room = new ColumnRoom(),
): Compiled {
  const loads = loadColumns(room, demand, rules, window)
  const standing = hourColumn(room, window, (placeC) => standingKw(plant, placeC))
  const placed = { room, house, calendar, demand, plant, rules, window }
  const parts: ColumnParts = { ...placed, standing, loads }
  const togetherKw = togetherLoad(demand, rules, window)
  return {
    columns: columnsOf(parts, gridUp, togetherKw),
    rules,
    plant,
    window,
    demand,
    loadKw: (level, minute) => loads[level]?.[minute] ?? 0,
    togetherKw,
    standingKw: (minute) => standing[minute]!,
  }
}

function columnsOf(
  parts: ColumnParts,
  gridUp: Uint8Array | undefined,
  togetherKw: ByLevel,
): Columns {
  const { room, house, plant, rules, window } = parts
  const taken = gridTaken(gridUp ?? new Uint8Array(window.n), house.gateway.reconnectSeconds)
  const delta = deltaColumns(parts)
  const personAt = personColumn(parts)
  return {
    n: window.n,
    from: window.from,
    gridUp: taken,
    lastGrid: taken.lastIndexOf(1),
    delta,
    forced: forcedColumns(parts, delta[0]!),
    ...generatorColumns(parts),
    deltaGrid: gridUp === undefined ? [] : gridColumns(parts),
    tempLimit: hourColumn(room, window, (placeC) => {
      const rate = chargeRateLimit(stackC(plant, placeC))
      return rate === Number.POSITIVE_INFINITY ? rate : onGrid((rate * plant.usableKwh) / 60)
    }),
    coldFloor: hourColumn(room, window, (placeC) =>
      onGrid(coldShare(stackC(plant, placeC)) * plant.usableKwh),
    ),
    ...overloadColumns(parts),
    together: togetherColumns(parts, togetherKw),
    attempt: rules.whenEmpty === 'retries' ? attemptColumn(parts) : new Uint8Array(0),
    personAt,
    ...(rules.wakesOnPerson
      ? wakeColumns(parts, personAt, delta.at(-1)![rules.holding]!)
      : { wakeAt: new Int32Array(0), sunLater: new Uint8Array(0) }),
  }
}

/** Load of each level, 0 (all) to lastLevel (critical only), and none for holding. [kW] */
function loadColumns(
  room: ColumnRoom,
  demand: Demand,
  rules: Rules,
  window: Window,
): Float64Array[] {
  const columns = Array.from({ length: rules.holding + 1 }, () => room.floats(window.n))
  for (const { here, ofYear } of stretchesOf(window, demand.n)) {
    for (const [level, column] of columns.entries()) {
      if (level === rules.holding) continue
      here(column).set(ofYear(demand.criticalKw))
      for (const step of demand.comfortKw.slice(level)) add(here(column), ofYear(step))
    }
  }
  return columns
}

function add(into: Float64Array, column: Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i]! += column[i]!
}

/** A value by the temperature of the stack's place, hour by hour. */
function hourColumn(
  room: ColumnRoom,
  window: Window,
  value: (placeC: number) => number,
): Float64Array {
  const out = room.floats(window.n)
  for (let hour = 0; hour < window.placeC.length; hour++) {
    const start = (window.firstHour + hour) * 60 - window.from
    out.fill(value(window.placeC[hour]!), Math.max(0, start), Math.max(0, start + 60))
  }
  return out
}
