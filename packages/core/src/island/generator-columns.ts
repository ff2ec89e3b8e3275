// The columns of a generator: what it charges, where it is too small, what it burns, when it fails.

import { generatorLitresPerHour } from '../equipment/generator.js'
import type { GeneratorInput, House } from '../house/house.js'
import { onGrid } from '../units/energy-grid.js'
import { luck } from '../units/luck.js'
import { batteryKw, generatorAcKw, newBalance, settle } from './balance.js'
import type { Columns } from './columns.js'
import { type ColumnParts, flags } from './parts.js'

const STARTS_STREAM = 41
const RUNS_STREAM = 42

type GeneratorColumns = Pick<
  Columns,
  'deltaGenerator' | 'overGenerator' | 'overGeneratorForming' | 'litres' | 'startFails' | 'runFails'
>

/** What a small set gives in the second of a motor's start, over its rating; common practice. */
const START_SHARE = 1.5

/** Most that load and charge together may take; 0 without a generator. [kW] */
export function generatorMostKw({ generator }: Pick<House, 'generator'>): number {
  return generator === undefined ? 0 : generator.mostShare * generator.ratedKw
}

/** Most it gives in the second of a motor's start; 0 without a generator. [kVA] */
export function generatorStartingKva({ generator }: Pick<House, 'generator'>): number {
  return generator?.startingKva ?? START_SHARE * (generator?.ratedKw ?? 0)
}

/** 1 where the load, or a peak inside the minute, is more than the generator gives. [level][n] */
function overGenerator(
  { house, rules, window, loads, demand }: ColumnParts,
  peakKva: readonly Float64Array[],
): Uint8Array[] {
  const ratedKw = house.generator?.ratedKw ?? 0
  const mostKva = generatorStartingKva(house)
  return loads.slice(0, rules.lastLevel + 1).map((load, level) => {
    const peak = peakKva[level]!
    return flags(window, demand.n, (i, at) => !(load[i]! <= ratedKw && peak[at]! <= mostKva))
  })
}

export function generatorColumns(parts: ColumnParts): GeneratorColumns {
  const { house, plant, window, standing } = parts
  const { generator } = house
  const none = new Uint8Array(0)
  if (generator === undefined) {
    return {
      deltaGenerator: [],
      overGenerator: [],
      overGeneratorForming: [],
      litres: () => 0,
      startFails: none,
      runFails: none,
    }
  }
  const served = parts.loads.slice(0, parts.rules.lastLevel + 1)
  const mostKw = generatorMostKw(house)
  const into = newBalance()
  const deltaGenerator = served.map((load) => {
    const out = new Float64Array(window.n)
    for (let i = 0; i < window.n; i++) {
      const acKw = generatorAcKw(plant, mostKw, load[i]!)
      out[i] = onGrid(-batteryKw(plant, acKw, window.dcKw[i]!, standing[i]!) / 60)
    }
    return out
  })
  const burns = (level: number, i: number, delta: number): number => {
    const [load, battery] = [served[level]![i]!, -delta * 60]
    settle(into, plant, 'generator', load, 0, window.dcKw[i]!, standing[i]!, battery)
    return onGrid(generatorLitresPerHour(generator, into.generatorKw) / 60)
  }
  // In one minute many ask for the same increment.
  const asked = served.map(() => new Float64Array(window.n).fill(Number.NaN))
  const answered = served.map(() => new Float64Array(window.n))
  return {
    deltaGenerator,
    overGenerator: overGenerator(parts, parts.demand.peakKva),
    overGeneratorForming: overGenerator(parts, parts.demand.formingKva),
    litres: (level, i, delta) => {
      if (asked[level]![i] !== delta) {
        asked[level]![i] = delta
        answered[level]![i] = burns(level, i, delta)
      }
      return answered[level]![i]!
    },
    ...failures(parts, generator),
  }
}

/**
 * Chance by the minute of the numbered year, so that it is the same for every start that meets it.
 * A start fails with the share stated; a running hour with one over the hours between failures.
 */
function failures(
  { house, calendar, rules, window }: ColumnParts,
  set: GeneratorInput,
): Pick<Columns, 'startFails' | 'runFails'> {
  if (rules.generator?.canFail !== true) {
    return { startFails: new Uint8Array(0), runFails: new Uint8Array(0) }
  }
  const first = window.year * calendar.n + window.from
  const column = (stream: number, chance: number): Uint8Array =>
    flags(window, calendar.n, (i) => luck(house.seed, stream, first + i) < chance)
  const { startFailsShare, hoursBetweenFailures } = set
  return {
    startFails: column(STARTS_STREAM, startFailsShare),
    runFails: column(
      RUNS_STREAM,
      hoursBetweenFailures === undefined ? 0 : 1 / 60 / hoursBetweenFailures,
    ),
  }
}
