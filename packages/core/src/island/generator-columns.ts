// The columns of a generator: what it charges, where it is too small, what it burns, when it fails.

import { generatorLitresPerHour } from '../equipment/generator.js'
import type { Plant } from '../equipment/plant.js'
import type { GeneratorInput, House } from '../house/house.js'
import { onGrid } from '../units/energy-grid.js'
import { luck } from '../units/luck.js'
import { batteryKw, generatorAcKw, newBalance, settle } from './balance.js'
import type { Burning, Columns } from './columns.js'
import { type ColumnParts, stretchesOf } from './parts.js'

const STARTS_STREAM = 41
const RUNS_STREAM = 42

type GeneratorColumns = Pick<
  Columns,
  'deltaGenerator' | 'overGenerator' | 'overGeneratorForming' | 'burn' | 'startFails' | 'runFails'
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

/** Increments while it runs beside a load, charging with what is left of it. [n] */
function fillCharge(
  out: Float64Array,
  plant: Plant,
  mostKw: number,
  load: Float64Array,
  dcKw: Float64Array,
  standing: Float64Array,
): Float64Array {
  for (let i = 0; i < out.length; i++) {
    const acKw = generatorAcKw(plant, mostKw, load[i]!)
    out[i] = onGrid(-batteryKw(plant, acKw, dcKw[i]!, standing[i]!) / 60)
  }
  return out
}

export function generatorColumns(parts: ColumnParts): GeneratorColumns {
  const { room, house, plant, window, standing } = parts
  const { generator } = house
  const none = new Uint8Array(0)
  if (generator === undefined) {
    return {
      deltaGenerator: [],
      overGenerator: [],
      overGeneratorForming: [],
      burn: () => {},
      startFails: none,
      runFails: none,
    }
  }
  const served = parts.loads.slice(0, parts.rules.lastLevel + 1)
  const into = newBalance()
  const burn = (level: number, i: number, of: Burning): void => {
    const [load, battery] = [served[level]![i]!, -of.delta * 60]
    settle(into, plant, 'generator', load, 0, window.dcKw[i]!, standing[i]!, battery)
    of.litres = onGrid(generatorLitresPerHour(generator, into.generatorKw) / 60)
  }
  return {
    deltaGenerator: served.map((load) => {
      const out = room.floats(window.n)
      return fillCharge(out, plant, generatorMostKw(house), load, window.dcKw, standing)
    }),
    overGenerator: overColumns(parts, served, parts.demand.peakKva),
    overGeneratorForming: overColumns(parts, served, parts.demand.formingKva),
    burn: remembered(served.length, window.n, burn),
    ...failures(parts, generator),
  }
}

/**
 * 1 where the load, or a peak inside the minute, is more than the generator gives. [level][n]
 *
 * @param peakKva  by level. [n of the year]
 */
function overColumns(
  { room, house, demand, window }: ColumnParts,
  loads: readonly Float64Array[],
  peakKva: readonly Float64Array[],
): Uint8Array[] {
  const ratedKw = house.generator?.ratedKw ?? 0
  const mostKva = generatorStartingKva(house)
  const columns = loads.map(() => room.flags(window.n))
  for (const { here, ofYear } of stretchesOf(window, demand.n)) {
    for (const [level, load] of loads.entries()) {
      markOver(here(columns[level]!), here(load), ofYear(peakKva[level]!), ratedKw, mostKva)
    }
  }
  return columns
}

function markOver(
  out: Uint8Array,
  load: Float64Array,
  peakKva: Float64Array,
  ratedKw: number,
  mostKva: number,
): void {
  for (let i = 0; i < out.length; i++) {
    if (!(load[i]! <= ratedKw && peakKva[i]! <= mostKva)) out[i] = 1
  }
}

/** Minutes whose last answer is kept; those who walk one after another are as near. */
const KEPT_MINUTES = 8192

/** In one minute many ask for the same increment: the last answer of each level is kept. */
function remembered(levels: number, n: number, burn: Columns['burn']): Columns['burn'] {
  const kept = Math.min(n, KEPT_MINUTES)
  const known = Array.from({ length: levels }, () => ({
    minute: new Int32Array(kept).fill(-1),
    delta: new Float64Array(kept),
    litres: new Float64Array(kept),
  }))
  return (level, i, of) => {
    const { minute, delta, litres } = known[level]!
    const at = i % kept
    if (minute[at] === i && delta[at] === of.delta) {
      of.litres = litres[at]!
      return
    }
    burn(level, i, of)
    minute[at] = i
    delta[at] = of.delta
    litres[at] = of.litres
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
  const column = (stream: number, chance: number): Uint8Array => {
    const out = new Uint8Array(window.n)
    for (let i = 0; i < window.n; i++) if (luck(house.seed, stream, first + i) < chance) out[i] = 1
    return out
  }
  const { startFailsShare, hoursBetweenFailures } = set
  return {
    startFails: column(STARTS_STREAM, startFailsShare),
    runFails: column(
      RUNS_STREAM,
      hoursBetweenFailures === undefined ? 0 : 1 / 60 / hoursBetweenFailures,
    ),
  }
}
