// Rides a month once more with something changed, and keeps what a doubt needs of it.

import { minutesOfHours } from '../../axis/calendar.js'
import { rideLoads } from '../../cut/rides.js'
import type { Prepared } from '../../series/prepare.js'
import type { SkyKind } from '../../sky/sky.js'
import { type HourFigures, hourFigures } from '../hour-figures.js'
import { type MonthRides, monthRidesOf } from '../month-rides.js'
import { type MonthSky, monthSky } from '../month-sky.js'
import { rideHorizon } from '../ride-jobs.js'
import type { RideQuestion } from '../ride-question.js'
import { type Equipped, equip } from '../scenario.js'

/** Years of the typical sky where none are asked for: a doubt needs a rough figure. */
export const DOUBT_YEARS = 5

/** The promise, ready to be asked again with one thing changed. */
export interface Rider {
  readonly prepared: Prepared
  readonly question: RideQuestion
  /** Of the promise. */
  readonly monthSky: MonthSky
  readonly equipped: Equipped
}

export interface Ridden {
  readonly month: MonthRides
  readonly figures: HourFigures
}

export function riderOf(prepared: Prepared, question: RideQuestion): Rider {
  return {
    prepared,
    question,
    monthSky: skyOf(prepared, question, question.sky ?? 'dull'),
    equipped: equip(prepared, question),
  }
}

export function skyOf(prepared: Prepared, question: RideQuestion, kind: SkyKind): MonthSky {
  const { month, hours, winters = 10, seed = prepared.house.seed } = question
  const years = question.years ?? DOUBT_YEARS
  return monthSky(prepared, { kind, month, cutHours: hours, years, winters, seed })
}

/** What is other than in the promise; what is left out is as it was. */
export interface Change {
  readonly prepared?: Prepared
  readonly question?: RideQuestion
  readonly monthSky?: MonthSky
  /** Houses to ride under the same weather; the one of the question where left out. */
  readonly houses?: readonly Equipped[]
  /** How far starts are followed; as far as a ride's where left out. [min] */
  readonly horizon?: number
}

/** One result a house. */
export function rideAgain(rider: Rider, change: Change = {}): Ridden[] {
  const prepared = change.prepared ?? rider.prepared
  const question = change.question ?? rider.question
  const sky = change.monthSky ?? rider.monthSky
  const houses = change.houses ?? [equip(prepared, question)]
  const { month, hours } = question
  const horizon = change.horizon ?? rideHorizon(hours)
  const loads = rideLoads(prepared.demand)
  const variants = houses.map((equipped) => ({ equipped, horizon, minutesOnly: true }))
  return monthRidesOf(prepared, sky, variants, loads, { month, hours }).map((ridden) => ({
    month: ridden,
    figures: hourFigures(prepared, ridden, hours),
  }))
}

/** Share of starts that last the cut, and no more: starts are followed no further. */
export function shareOf(rider: Rider, change: Change): number | null {
  const horizon = minutesOfHours((change.question ?? rider.question).hours)
  return rideAgain(rider, { ...change, horizon })[0]!.figures.share
}
