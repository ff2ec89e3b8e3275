// What one event costs in minutes of ride, and whether the inverter carries it.
//
// Two ways to the minutes. By rides: cuts that begin at the start of the evening are lived with the
// event and without it, and the rides compared. By energy: what the event takes from the battery
// over the mean draw of the critical loads, for they are what is on when a ride ends:
//
//     minutes = (kW + its part of the inverter's loss) · minutes / mean draw
//
// Where most rides are not seen to end, only the second can be had.

import type { Plant } from '../../equipment/plant.js'
import { batteryKw, stackAcKw } from '../../island/balance.js'
import { newState } from '../../island/state.js'
import type { Demand } from '../../load/demand.js'
import type { Equipped } from '../scenario.js'
import type { OneEvent } from './event-kinds.js'
import { islandOfBatch, type MonthStarts } from './month-starts.js'
import { oneRide } from './one-ride.js'

/** Wall clock at which the cut begins, and minutes later the event. */
export const EVENING_STARTS = 18 * 60
export const EVENT_AFTER = 10

export type Carries = 'yes' | 'no' | 'not beside all that is on'

export interface EventCost {
  readonly name: string
  readonly from: OneEvent['from']
  readonly kw: number
  readonly minutes: number
  readonly kwh: number
  readonly carries: Carries
  /** Why it is not carried alone; null where it is. */
  readonly why: string | null
  /** What else may run beside it; null where it is not carried. [kVA] */
  readonly roomKva: number | null
  /** Evenings of the month in which it would take the island down, of all. */
  readonly overOn: number
  readonly evenings: number
  /** Minutes of ride, null where it is not carried. */
  readonly costsMinutes: number | null
  readonly by: 'rides' | 'energy' | null
  readonly byEnergyMinutes: number | null
  /** Middle of the evenings whose rides end; null where most do not. */
  readonly byRidesMinutes: number | null
}

interface Scene {
  readonly starts: MonthStarts
  /** Without the generator: what is asked is the battery's time. */
  readonly equipped: Equipped
  readonly meanCriticalKw: number
}

export function eventCost(scene: Scene, event: OneEvent): EventCost {
  const { plant } = scene.equipped
  const why = whyNot(plant, event)
  const { name, from, kw, minutes } = event
  const told = { name, from, kw, minutes, kwh: (kw * minutes) / 60, why }
  if (why !== null) {
    const nothing = { costsMinutes: null, by: null, byEnergyMinutes: null, byRidesMinutes: null }
    return { ...told, carries: 'no', roomKva: null, overOn: 0, evenings: 0, ...nothing }
  }
  const { over, evenings, costs } = lived(scene, event)
  const byEnergyMinutes = byEnergy(scene, event)
  const byRidesMinutes = 2 * costs.length > evenings ? middleOf(costs) : null
  return {
    ...told,
    carries: over > 0 ? 'not beside all that is on' : 'yes',
    roomKva: plant.ratedKw - event.runningKva,
    overOn: over,
    evenings,
    costsMinutes: byRidesMinutes ?? byEnergyMinutes,
    by: byRidesMinutes === null ? 'energy' : 'rides',
    byEnergyMinutes,
    byRidesMinutes,
  }
}

/** Why inverter or stack do not carry an event even with nothing else on; null where they do. */
function whyNot(plant: Plant, { kw, minutes, runningKva, startKva }: OneEvent): string | null {
  const rated = minutes > 1 ? plant.ratedKw : plant.minuteKva
  const gives = stackAcKw(plant, plant.standingKw)
  const kva = (value: number): string => `${Number(value.toFixed(1))} kVA`
  if (runningKva > rated) {
    return `it takes ${kva(runningKva)}, the battery inverter is rated ${kva(rated)}`
  }
  if (runningKva + startKva > plant.startingKva) {
    return `it takes ${kva(runningKva + startKva)} in its start, the battery inverter carries ${kva(plant.startingKva)}`
  }
  if (kw > gives) return `it takes ${kw} kW, the battery gives ${Number(gives.toFixed(1))} kW`
  return null
}

function byEnergy({ equipped, meanCriticalKw }: Scene, { kw, minutes }: OneEvent): number | null {
  const { plant } = equipped
  const draw = (loadKw: number): number => batteryKw(plant, loadKw, 0, plant.standingKw)
  const mean = draw(meanCriticalKw)
  return mean > 0 ? ((draw(meanCriticalKw + kw) - mean) * minutes) / mean : null
}

/** Each evening of the month: where the event is too much, and what it costs where it is not. */
function lived(
  { starts, equipped }: Scene,
  event: OneEvent,
): { over: number; evenings: number; costs: number[] } {
  const { prepared, loads, horizon } = starts
  const { wallMinute, n } = prepared.calendar
  const demand = new DemandOnce(prepared.demand)
  const costs: number[] = []
  let [over, evenings] = [0, 0]
  for (const { batch, window } of starts.batches) {
    for (let at = batch.from; at < batch.to; at++) {
      if (wallMinute[at % n] !== EVENING_STARTS) continue
      evenings++
      const from = at - batch.from
      const plain = islandOfBatch(starts, equipped, prepared.demand, window)
      const more = demand.with(event, (at + EVENT_AFTER) % n, (changed) =>
        islandOfBatch(starts, equipped, changed, window),
      )
      const [without, withIt] = [plain, more].map((island) =>
        oneRide(island, newState(island.rules, equipped.startKwh), from, horizon, loads),
      ) as [ReturnType<typeof oneRide>, ReturnType<typeof oneRide>]
      if (isOver(withIt.overloads, without.overloads, event)) over++
      else if (without.lost && without.minutes > EVENT_AFTER + event.minutes)
        costs.push(without.minutes - withIt.minutes)
    }
  }
  return { over, evenings, costs }
}

/** Whether the island or its comfort loads drop out over the event and would not have without. */
function isOver(withIt: readonly number[], without: readonly number[], event: OneEvent): boolean {
  const until = EVENT_AFTER + Math.ceil(event.minutes)
  return withIt.some((i) => i >= EVENT_AFTER && i < until && !without.includes(i))
}

function middleOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  return sorted[Math.floor(0.5 * (sorted.length - 1))]!
}

/** A demand to which one event is added at one time, and taken out again. */
class DemandOnce {
  private readonly copy: Demand

  constructor(private readonly base: Demand) {
    const copies = (columns: readonly Float64Array[]): Float64Array[] =>
      columns.map((column) => column.slice())
    this.copy = {
      ...base,
      criticalKw: base.criticalKw.slice(),
      peakKva: copies(base.peakKva),
      runningKva: copies(base.runningKva),
      formingKva: copies(base.formingKva),
    }
  }

  /** @param at  minute of the year's axis in which the event begins */
  with<T>(event: OneEvent, at: number, use: (demand: Demand) => T): T {
    const { base, copy } = this
    const pairs = [
      [base.criticalKw, copy.criticalKw, event.kw, 0] as const,
      ...copy.runningKva.map((to, l) => [base.runningKva[l]!, to, event.runningKva, 0] as const),
      ...copy.formingKva.map((to, l) => {
        const all = event.runningKva + event.startKva
        return [base.formingKva[l]!, to, all, 0] as const
      }),
      ...copy.peakKva.map(
        (to, l) => [base.peakKva[l]!, to, event.runningKva, event.startKva] as const,
      ),
    ]
    const minutes = Array.from({ length: Math.ceil(event.minutes) }, (_, k) => k)
    for (const [from, to, each, first] of pairs) {
      for (const k of minutes) {
        const i = (at + k) % base.n
        to[i] = from[i]! + each * Math.min(1, event.minutes - k) + (k === 0 ? first : 0)
      }
    }
    const result = use(copy)
    for (const [from, to] of pairs) {
      for (const k of minutes) to[(at + k) % base.n] = from[(at + k) % base.n]!
    }
    return result
  }
}
