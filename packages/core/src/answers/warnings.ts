// What will surprise the owner of a house; said, not refused.

import type { GeneratorInput, House } from '../house/house.js'
import { solarRatedKw } from '../house/solar-groups.js'
import { generatorStartingKva } from '../island/generator-columns.js'
import { carries, mostKva } from '../island/overload-columns.js'
import type { Prepared } from '../series/prepare.js'
import { claimedThrottles } from './findings/droop.js'
import { largest } from './findings/island-loads.js'
import { chanceOf, type Equipped } from './scenario.js'

export function warningsFor(prepared: Prepared, equipped: Equipped): string[] {
  const { house, demand } = prepared
  const warnings = solarWarnings(house)
  const peak = largest(demand.peakKva.at(-1)!, 0).value
  if (peak > equipped.plant.startingKva) {
    warnings.push(
      `The critical loads reach ${peak.toFixed(1)} kVA in a start; the battery inverter carries ` +
        `${equipped.plant.startingKva.toFixed(1)} kVA and will drop out.`,
    )
  }
  const together = largest((demand.together?.formingKva ?? demand.formingKva).at(-1)!, 0).value
  if (peak <= equipped.plant.startingKva && together > equipped.plant.startingKva) {
    warnings.push(
      `Starting all at once, as after a time off, the critical loads reach ${together.toFixed(1)} ` +
        `kVA; the battery inverter carries ${equipped.plant.startingKva.toFixed(1)} kVA and may ` +
        'not bring them back.',
    )
  }
  const over = minutesOver(prepared, equipped)
  if (peak <= equipped.plant.startingKva && over > 0 && !equipped.rules.sheds) {
    warnings.push(
      `In ${over} minutes of the year all loads of the island together, with their starts, are ` +
        'more than the battery inverter carries: it then drops out with the critical loads on it. ' +
        'check tells when.',
    )
  }
  warnings.push(...generatorWarnings(prepared))
  return warnings
}

function generatorWarnings({ house, demand }: Prepared): string[] {
  const { generator } = house
  if (generator === undefined) return []
  const loadKw = largest(demand.criticalKw, 0).value
  const startKva = largest(demand.peakKva.at(-1)!, 0).value
  const givesKva = generatorStartingKva(house)
  const why =
    loadKw > generator.ratedKw
      ? `${loadKw.toFixed(2)} kW; the generator is rated ${generator.ratedKw.toFixed(2)} kW`
      : startKva > givesKva
        ? `${startKva.toFixed(1)} kVA in a start; the generator gives ${givesKva.toFixed(1)} kVA for a second`
        : null
  const chances = chanceWarnings(generator)
  if (why === null) return chances
  return [
    ...chances,
    `The critical loads reach ${why}: it stalls, and takes the island down with it. A ride may be ` +
      'longer without it. check tells when.',
  ]
}

/** A share of the figures is luck of the set, which no larger stack mends. */
function chanceWarnings({ startFailsShare, hoursBetweenFailures }: GeneratorInput): string[] {
  const parts: string[] = []
  if (startFailsShare > 0) {
    parts.push(`not to start in ${Number((100 * startFailsShare).toFixed(1))} of 100 tries`)
  }
  if (hoursBetweenFailures !== undefined) {
    parts.push(`to fail once in ${hoursBetweenFailures} h of running`)
  }
  if (parts.length === 0) return []
  return [
    `The generator is taken ${parts.join(' and ')}, and is then out of order until the grid is ` +
      'back: the figures hold that.',
  ]
}

/** Where a generator starts by chance: that some of an answer is one course among others. */
export function drawnWarnings(equipped: Equipped, what: string): string[] {
  if (chanceOf(equipped) === null) return []
  return [
    `${what} as the luck of each minute has the generator start or not; ride weighs both ways, so ` +
      'its shares and hours may differ.',
  ]
}

/** Minutes of the year in which what runs, or a start beside it, is too much with all loads on. */
function minutesOver({ demand }: Prepared, { plant }: Equipped): number {
  const [running, peak] = [demand.runningKva[0]!, demand.peakKva[0]!]
  let minutes = 0
  for (let i = 0; i < demand.n; i++) {
    if (!carries(plant, running[i]!, mostKva(plant, running, i), peak[i]!)) minutes++
  }
  return minutes
}

function solarWarnings(house: House): string[] {
  const warnings = claimedThrottles(house).map(
    ({ name, floor }) =>
      `${name} is taken to throttle down to nothing. By frequency alone a GB-coded solar inverter ` +
      `still gives ${Math.round(100 * floor)} % just below its trip: unless it is told another ` +
      'way, `throttles to a floor` is the cautious answer.',
  )
  const acKw = solarRatedKw(house.arrays)
  if (acKw > house.inverter.ratedKva) {
    warnings.push(
      `Solar inverters of ${Number(acKw.toFixed(2))} kW stand against a battery inverter of ` +
        `${house.inverter.ratedKva} kVA: on the island at most as much is good practice.`,
    )
  }
  if (house.arrays.length === 0) warnings.push('No solar array: the house lives on its battery.')
  return warnings
}
