// Why an overload: which limit the loads of a minute pass, by how much, and which loads they are.

import type { House } from '../house/house.js'
import { stackAcKw } from '../island/balance.js'
import type { Compiled } from '../island/compile.js'
import { generatorStartingKva } from '../island/generator-columns.js'
import { missedStartsKva, TOGETHER_AFTER } from '../load/together.js'

export interface OverloadMinute {
  /** Of the window. */
  readonly minute: number
  /** The shed level that was tried. */
  readonly level: number
  /** Whether the island was forming, so that all that runs started at once. */
  readonly forms: boolean
  /** Minutes without loads before it, counted up to where thermostats run together. */
  readonly offFor: number
  /** Loads that draw or start hardest, the hardest first. */
  readonly names: readonly string[]
}

/** What inverter or stack would have had to carry, in words with both numbers. */
export function overloadText(compiled: Compiled, at: OverloadMinute): string {
  const { demand, plant, window, loadKw, standingKw } = compiled
  const { minute, level } = at
  const peak = peakKva(compiled, at)
  const running = demand.runningKva[level]![(minute + window.from) % demand.n]!
  const who = at.names.length === 0 ? 'The loads' : named(at.names)
  const takes = at.names.length === 1 ? 'takes' : 'take'
  if (peak > plant.startingKva) {
    const starts = at.forms ? 'all starting at once' : 'with a start'
    const [peakText, most] = apart(peak, plant.startingKva)
    return `${who} ${takes} ${peakText} kVA ${starts}, the inverter carries ${most} kVA for a second.`
  }
  if (running > plant.ratedKw) {
    const [runs, rated] = apart(running, plant.ratedKw)
    return `${who} ${takes} ${runs} kVA running, the inverter is rated ${rated} kVA.`
  }
  const gives = stackAcKw(plant, standingKw(minute))
  return `${who} ${takes} ${loadKw(level, minute).toFixed(2)} kW, the battery gives ${gives.toFixed(2)} kW.`
}

/** The same for a generator, which carries load and starts alone. */
export function generatorOverText(
  compiled: Compiled,
  house: Pick<House, 'generator'>,
  at: OverloadMinute,
): string {
  const loadKw = compiled.loadKw(at.level, at.minute)
  const ratedKw = house.generator?.ratedKw ?? 0
  const who = at.names.length === 0 ? 'The loads' : named(at.names)
  const takes = at.names.length === 1 ? 'takes' : 'take'
  if (loadKw > ratedKw) {
    return `${who} ${takes} ${loadKw.toFixed(2)} kW, the generator is rated ${ratedKw.toFixed(2)} kW.`
  }
  const starts = at.forms ? 'all starting at once' : 'with a start'
  return (
    `${who} ${takes} ${peakKva(compiled, at).toFixed(1)} kVA ${starts}, the generator gives ` +
    `${generatorStartingKva(house).toFixed(1)} kVA for a second.`
  )
}

/** Two powers with as many decimals as tell them apart, three at most. */
function apart(a: number, b: number): [string, string] {
  const decimals = [1, 2].find((places) => a.toFixed(places) !== b.toFixed(places)) ?? 3
  return [a.toFixed(decimals), b.toFixed(decimals)]
}

function peakKva(
  { demand, window }: Compiled,
  { minute, level, forms, offFor }: OverloadMinute,
): number {
  const at = (minute + window.from) % demand.n
  if (!forms) return demand.peakKva[level]![at]!
  const { together } = demand
  if (together === null) return demand.formingKva[level]![at]!
  if (offFor >= TOGETHER_AFTER) return together.formingKva[level]![at]!
  return demand.formingKva[level]![at]! + missedStartsKva(together.cycling[level]!, at, offFor)
}

function named(names: readonly string[]): string {
  const shown = names.slice(0, 3)
  const rest = names.length - shown.length
  return rest > 0 ? `${shown.join(', ')} and ${rest} more` : shown.join(' and ')
}
