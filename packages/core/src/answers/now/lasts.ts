// How long it lasts from one minute, and what comes in between.

import type { EventLine } from '../../cut/event-line.js'
import { eventLines } from '../../cut/event-lines.js'
import { type RideLoad, toleranceOf } from '../../cut/rides.js'
import { type Trace, traceSpan } from '../../cut/trace.js'
import type { House } from '../../house/house.js'
import type { Compiled } from '../../island/compile.js'
import { Event, type State } from '../../island/state.js'
import type { Prepared } from '../../series/prepare.js'
import { firstOf, lossesOf } from '../losses.js'

/** Minutes are counted from now; null where it does not come within what is followed. */
export interface Lasts {
  /** To the end of the ride; all that is followed where it lasts longer. [h] */
  readonly hours: number
  /** The minute in which the power goes for so long that a critical load is lost. */
  readonly givesOutAt: number | null
  /** The first to be lost, and when. */
  readonly first: { readonly name: string; readonly lostAt: number } | null
  readonly loads: readonly {
    readonly name: string
    /** Null for any gap. */
    readonly toleratesMinutes: number | null
    readonly lostAt: number | null
  }[]
  readonly comfortOffAt: number | null
  /** The arrays give something; they give more than the critical loads and the island draw. */
  readonly sunAt: number | null
  readonly sunCarriesAt: number | null
  readonly generatorOnAt: number | null
  /** The log up to the first loss. */
  readonly events: readonly EventLine[]
}

/** Power of the arrays that counts as sun. [kW] */
const SUN_KW = 0.05

/** @param state  as the first minute finds it; it is lived on */
export function lastsOf(
  { calendar }: Pick<Prepared, 'calendar'>,
  house: House,
  compiled: Compiled,
  state: State,
  loads: readonly RideLoad[],
): Lasts {
  const lived = traceSpan(compiled, state, 0, compiled.columns.n)
  const losses = lossesOf(lived.levels, compiled.rules, loads, lived.from)
  const first = firstOf(losses)
  return {
    hours: (first?.spellFrom ?? lived.n) / 60,
    givesOutAt: first?.spellFrom ?? null,
    first: first === null ? null : { name: loads[first.which]!.name, lostAt: first.at },
    loads: loads.map((load, l) => {
      const most = toleranceOf(load)
      const toleratesMinutes = Number.isFinite(most) ? most : null
      return { name: load.name, toleratesMinutes, lostAt: losses[l]?.at ?? null }
    }),
    comfortOffAt: firstWith(lived, (i) => (lived.events[i]! & Event.comfortOff) !== 0),
    sunAt: firstWith(lived, (i) => lived.solarAvailableKw[i]! > SUN_KW),
    sunCarriesAt: firstWith(
      lived,
      (i) => lived.solarAvailableKw[i]! > lived.demandCriticalKw[i]! + ownKw(compiled, i),
    ),
    generatorOnAt: firstWith(lived, (i) => (lived.events[i]! & Event.generatorOn) !== 0),
    events: eventLines(lived, house, calendar, compiled).filter(
      ({ minute }) => minute <= (first?.at ?? lived.n),
    ),
  }
}

/** What inverter and stack draw for themselves. [kW] */
function ownKw({ plant, standingKw }: Compiled, i: number): number {
  return plant.idleKw + standingKw(i)
}

function firstWith({ n }: Trace, holds: (i: number) => boolean): number | null {
  for (let i = 0; i < n; i++) if (holds(i)) return i
  return null
}
