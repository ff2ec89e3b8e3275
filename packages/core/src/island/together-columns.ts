// The columns of an island whose thermostats run together, worked out minute by minute when asked:
// it is the state of a few minutes after a time off, and not worth columns of a year.

import { generatorLitresPerHour } from '../equipment/generator.js'
import type { Demand } from '../load/demand.js'
import { missedStartsKva } from '../load/together.js'
import type { Window } from '../series/window-columns.js'
import { onGrid } from '../units/energy-grid.js'
import { batteryKw, generatorAcKw, newBalance, settle, stackAcKw } from './balance.js'
import type { TogetherColumns } from './columns.js'
import { generatorMostKw, generatorStartingKva } from './generator-columns.js'
import { carries } from './overload-columns.js'
import type { ByLevel, ColumnParts } from './parts.js'
import type { Rules } from './rules.js'
import { forcedKw, solarKw } from './solar-columns.js'

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

export function togetherColumns(parts: ColumnParts, togetherKw: ByLevel): TogetherColumns | null {
  const { house, plant, rules, window, demand, standing, loads } = parts
  const { together } = demand
  if (together === null) return null
  const { generator } = house
  const load: ByLevel = (level, i) => loads[level]![i]! + togetherKw(level, i)
  const kwh = (acKw: number, dcKw: number, i: number): number =>
    onGrid(-batteryKw(plant, acKw, dcKw, standing[i]!) / 60)
  const into = newBalance()
  return {
    delta: (mask, level, i) => {
      const acKw = load(level, i) - solarKw(window, mask, i)
      return kwh(mask === 0 ? acKw : Math.max(acKw, -plant.chargeAcKw), window.dcKw[i]!, i)
    },
    forced: (mask, level, i) => {
      const acKw = load(level, i) - forcedKw(rules, window, mask, i)
      return acKw < -plant.chargeAcKw ? Number.POSITIVE_INFINITY : kwh(acKw, 0, i)
    },
    generator: (level, i) =>
      kwh(generatorAcKw(plant, generatorMostKw(house), load(level, i)), window.dcKw[i]!, i),
    overload: (level, i, first) => {
      const at = (i + window.from) % demand.n
      const more = togetherKw(level, i) * together.kvaPerKw[level]!
      const runs = demand.runningKva[level]![at]! + more
      const peak = first ? together.formingKva[level]![at]! : demand.peakKva[level]![at]! + more
      const most = first ? plant.minuteKva : plant.ratedKw
      return !(load(level, i) <= stackAcKw(plant, standing[i]!) && carries(plant, runs, most, peak))
    },
    overForming: (level, i, missed) => {
      const at = (i + window.from) % demand.n
      const missedKva = missedStartsKva(together.cycling[level]!, at, missed)
      const runs = demand.runningKva[level]![at]!
      return !(
        loads[level]![i]! <= stackAcKw(plant, standing[i]!) &&
        carries(plant, runs, plant.minuteKva, demand.formingKva[level]![at]! + missedKva)
      )
    },
    overGenerator: (level, i, first) => {
      const at = (i + window.from) % demand.n
      const more = togetherKw(level, i) * together.kvaPerKw[level]!
      const peak = first ? together.formingKva[level]![at]! : demand.peakKva[level]![at]! + more
      return !(load(level, i) <= (generator?.ratedKw ?? 0) && peak <= generatorStartingKva(house))
    },
    burn: (level, i, of) => {
      if (generator === undefined) return
      const served = load(level, i)
      settle(into, plant, 'generator', served, 0, window.dcKw[i]!, standing[i]!, -of.delta * 60)
      of.litres = onGrid(generatorLitresPerHour(generator, into.generatorKw) / 60)
    },
  }
}
