// Why an overload: which of the three limits the loads of a minute pass, and by how much.

import { stackAcKw } from '../island/balance.js'
import type { Compiled } from '../island/compile.js'

/**
 * What inverter or stack would have had to carry, in words with both numbers.
 *
 * @param minute  of the window
 * @param level   the shed level that was tried
 * @param forms   whether the island was forming, so that all that runs started at once
 */
export function overloadText(
  { demand, plant, window, columns, loadKw, togetherKw, standingKw, rules }: Compiled,
  minute: number,
  level: number,
  forms: boolean,
): string {
  const at = (minute + window.from) % demand.n
  const peak = (forms ? demand.formingKva : demand.peakKva)[level]![at]!
  const running = demand.runningKva[level]![at]!
  const who = level === rules.lastLevel && level > 0 ? 'The critical loads' : 'The loads'
  if (peak > plant.startingKva) {
    const starts = forms ? 'all starting at once' : 'with a start'
    return `${who} take ${peak.toFixed(1)} kVA ${starts}, the inverter carries ${plant.startingKva.toFixed(1)} kVA for a second.`
  }
  if (running > plant.ratedKw) {
    return `${who} run at ${running.toFixed(1)} kVA, the inverter is rated ${plant.ratedKw.toFixed(1)} kVA.`
  }
  const gives = stackAcKw(plant, standingKw(minute))
  const wanted = loadKw(level, minute)
  if (wanted > gives) {
    return `${who} draw ${wanted.toFixed(2)} kW, the battery gives ${gives.toFixed(2)} kW.`
  }
  // What is left: thermostats that run together on top.
  const more = columns.together === null ? 0 : togetherKw(level, minute)
  return `${who} and ${more.toFixed(2)} kW of thermostats at once are more than the inverter carries.`
}
