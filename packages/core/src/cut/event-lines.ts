// The log of a cut in local time: what happened, why, with the numbers.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import { solarGroups } from '../house/solar-groups.js'
import type { Compiled } from '../island/compile.js'
import { Event } from '../island/state.js'
import { type IslandLoad, islandLoads } from '../load/island-loads.js'
import type { EventLine, Tell } from './event-line.js'
import { saidIn } from './event-texts.js'
import type { Scene } from './scene.js'
import { SolarLog } from './solar-log.js'
import { StallLog } from './stall-log.js'
import type { Trace } from './trace.js'
import { goesFlat, sunInVain, tooCold } from './watches.js'

/**
 * Lines in order of time.
 *
 * Solar that trips again and again is told once with its reason, and once more when it stays in
 * or the log ends, with how often it tried. A dark island is told of each day's sun that finds
 * no grid to feed.
 */
export function eventLines(
  trace: Trace,
  house: House,
  calendar: Calendar,
  compiled: Compiled,
): EventLine[] {
  const lines: EventLine[] = []
  const tell: Tell = (minute, told) => {
    lines.push({ minute, local: localTime(calendar, trace.from + minute), ...told })
  }
  let known: readonly IslandLoad[] | null = null
  const loads = (): readonly IslandLoad[] => {
    known ??= islandLoads({ house, calendar, demand: compiled.demand })
    return known
  }
  const scene: Scene = { trace, house, calendar, compiled, loads }
  const solar = solarGroups(house).map((group, g) => new SolarLog(scene, group, g, tell))
  const clock = (i: number): string => localTime(calendar, trace.from + i)
  const stalls = new StallLog(trace.events, clock, tell)
  const inVain = sunInVain(scene, tell)
  const flat = goesFlat(scene, tell)
  const frozen = tooCold(scene, tell)
  let full = false
  for (let i = 0; i < trace.n; i++) {
    for (const log of solar) log.pass(i)
    stalls.pass(i)
    if (!(trace.storedKwh[i]! >= compiled.rules.capacityKwh * 0.95)) full = false
    for (const said of trace.events[i] === 0 ? [] : saidIn(scene, i)) {
      if (stalls.takes(said, i) || solar.some((log) => log.takes(said, i))) continue
      if (said.bit !== Event.full || !full) tell(i, said.told)
      if (said.bit === Event.full) full = true
    }
    inVain(i)
    flat(i)
    frozen(i)
  }
  for (const log of solar) log.end()
  stalls.end()
  return lines.sort((a, b) => a.minute - b.minute)
}
