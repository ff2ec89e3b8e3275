// The moment that is asked about: its weather, its house with and without a generator.

import { minutesOfHours } from '../../axis/calendar.js'
import { type RideLoad, rideLoads } from '../../cut/rides.js'
import { type Compiled, compile } from '../../island/compile.js'
import { newState, type State, solarWaits } from '../../island/state.js'
import type { Demand } from '../../load/demand.js'
import type { Prepared } from '../../series/prepare.js'
import { newScratch, windowOf } from '../../series/window.js'
import type { Window } from '../../series/window-columns.js'
import { type Equipped, equip, type Scenario } from '../scenario.js'
import { skyOfStart } from '../sky-of-start.js'

/** The dark ones first. */
export const NOW_SKIES = ['dull', 'none', 'clear'] as const
export type NowSky = (typeof NOW_SKIES)[number]

export interface NowQuestion extends Pick<Scenario, 'modules' | 'health'> {
  /** Now, of any year: the house's stands for it. UTC [ms] */
  readonly atMs: number
  /** What the display says, 0..1; 5 points are taken off for the error of the reading. */
  readonly soc: number
  /** How far to look ahead; default 48. [h] */
  readonly hours?: number
  readonly winters?: number
  readonly seed?: number
}

export interface NowScene {
  readonly prepared: Prepared
  readonly equipped: Equipped
  /** The same without the generator. */
  readonly bare: Equipped
  readonly minute: number
  readonly loads: readonly RideLoad[]
  readonly windows: Readonly<Record<NowSky, Window>>
}

/** @param minute  now, on the axis of the year */
export function sceneOf(
  prepared: Prepared,
  question: NowQuestion & { hours: number },
  startSoc: number,
  minute: number,
): NowScene {
  const scenario = { ...question, startSoc }
  const scratch = newScratch(prepared)
  const end = minute + minutesOfHours(question.hours)
  const windows = NOW_SKIES.map((kind) => {
    const { sky, year } = skyOfStart(prepared, { ...question, sky: kind }, minute)
    return [kind, windowOf(prepared, sky, scratch, year, minute, end)] as const
  })
  return {
    prepared,
    equipped: equip(prepared, scenario),
    bare: equip(prepared, { ...scenario, generator: false }),
    minute,
    loads: rideLoads(prepared.demand),
    windows: Object.fromEntries(windows) as Record<NowSky, Window>,
  }
}

export function islandUnder(
  { prepared, windows }: NowScene,
  { house, plant, rules }: Equipped,
  sky: NowSky,
  demand: Demand = prepared.demand,
): Compiled {
  return compile(house, prepared.calendar, demand, plant, rules, windows[sky])
}

/**
 * The island as this minute finds it: the changeover is past, so nothing is lost by it, and AC-coupled
 * solar waits as after one, for nobody knows whether it is in.
 */
export function stateNow({ rules, startKwh }: Equipped): State {
  const state = { ...newState(rules, startKwh), grid: false }
  solarWaits(state, 0, rules)
  return state
}
