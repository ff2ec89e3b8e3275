// The columns of an island whose thermostats run together, worked out minute by minute when asked:
// it is the state of a few minutes after a time off, and not worth columns of a year.

import { generatorLitresPerHour } from '../equipment/generator.js'
import type { Plant } from '../equipment/plant.js'
import type { House } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Window } from '../series/window.js'
import { onGrid } from '../units/energy-grid.js'
import { batteryKw, generatorAcKw, mostAcKw, newBalance, settle } from './balance.js'
import type { TogetherColumns } from './columns.js'
import type { Rules } from './rules.js'

type ByLevel = (level: number, minute: number) => number

/** What thermostats that run together add to the load of a level. [kW] */
export function togetherLoad(demand: Demand, rules: Rules, window: Window): ByLevel {
  const { together, n } = demand
  if (together === null) return () => 0
  return (level, minute) => {
    if (level > rules.lastLevel) return 0
    const at = (minute + window.from) % n
    let kw = together.criticalKw[at]!
    for (let step = level; step < together.comfortKw.length; step++) {
      kw += together.comfortKw[step]![at]!
    }
    return kw
  }
}

export interface TogetherParts {
  readonly house: House
  readonly plant: Plant
  readonly rules: Rules
  readonly window: Window
  readonly demand: Demand
  readonly standing: Float64Array
  readonly loadKw: ByLevel
  readonly togetherKw: ByLevel
}

export function togetherColumns(parts: TogetherParts): TogetherColumns | null {
  const { house, plant, rules, window, demand, standing, togetherKw } = parts
  const { together } = demand
  if (together === null) return null
  const { generator } = house
  const load: ByLevel = (level, i) => parts.loadKw(level, i) + togetherKw(level, i)
  const kwh = (acKw: number, dcKw: number, i: number): number =>
    onGrid(-batteryKw(plant, acKw, dcKw, standing[i]!) / 60)
  const floor = rules.solar?.floorShare ?? 1
  const into = newBalance()
  return {
    out: (level, i) => kwh(load(level, i), window.dcKw[i]!, i),
    in: (level, i) =>
      kwh(Math.max(load(level, i) - window.acKw[i]!, -plant.chargeAcKw), window.dcKw[i]!, i),
    forced: (level, i) => {
      const acKw = load(level, i) - floor * window.acKw[i]!
      return acKw < -plant.chargeAcKw ? Number.POSITIVE_INFINITY : kwh(acKw, 0, i)
    },
    generator: (level, i) =>
      kwh(generatorAcKw(plant, generator?.ratedKw ?? 0, load(level, i)), window.dcKw[i]!, i),
    overload: (level, i, first) => {
      const peak = demand.peakKva[level]![(i + window.from) % demand.n]!
      const more = togetherKw(level, i) * together.kvaPerKw[level]!
      const starts = first ? together.startKva[level]! : 0
      const holds =
        load(level, i) <= mostAcKw(plant, standing[i]!) && peak + more + starts <= plant.startingKva
      return !holds
    },
    overGenerator: (level, i) => !(load(level, i) <= (generator?.ratedKw ?? 0)),
    litres: (level, i, delta) => {
      if (generator === undefined) return 0
      const served = load(level, i)
      settle(into, plant, 'generator', served, 0, window.dcKw[i]!, standing[i]!, -delta * 60)
      return onGrid(generatorLitresPerHour(generator, into.generatorKw) / 60)
    },
  }
}
