// The autonomy curve of a month under one sky, by the patterns in which cuts tend to start.

import { rideLoads } from '../cut/rides.js'
import { daysOfCut } from '../series/dull.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { type AutonomyCurve, autonomyCurve, leastCurve } from './autonomy-curve.js'
import { weighed } from './branches.js'
import { checkQuestion } from './check-question.js'
import { monthRides } from './month-rides.js'
import { monthSky } from './month-sky.js'
import { isEvening, type Pattern } from './patterns.js'
import type { RideQuestion } from './ride-question.js'
import { equip } from './scenario.js'

export interface MonthCurve {
  readonly sky: SkyKind
  /** 1..12 */
  readonly month: number
  /** Length of the cut that the question asks for, and that fixes the dull spell. [h] */
  readonly cutHours: number
  /** Return period and days of the spell; under `dull` and `none`, else null. */
  readonly spell: { readonly winters: number; readonly days: number } | null
  readonly byPattern: Readonly<Record<Pattern, AutonomyCurve>>
  /** The least of them at each hour: at `cutHours` it is the share of the answer. */
  readonly least: AutonomyCurve
}

/**
 * Follows every start of the month as `rideAnswer` does, as far as the last of the hours or to
 * the end of the cut, whichever is later.
 *
 * @param question  as for `rideAnswer`; its `sky` is not looked at
 * @param hours     where to tell the share. [h]
 */
export function monthCurve(
  prepared: Prepared,
  question: RideQuestion,
  sky: SkyKind,
  hours: ArrayLike<number>,
): MonthCurve {
  checkQuestion(question, ['month', 'hours'])
  const { month, hours: cutHours, years = 30, winters = 10, seed = prepared.house.seed } = question
  const horizon = Math.ceil(60 * Math.max(cutHours, ...Array.from(hours)))
  const ridden = monthRides(
    prepared,
    monthSky(prepared, { kind: sky, month, cutHours, years, winters, seed }),
    equip(prepared, question),
    rideLoads(prepared.demand),
    { month, hours: cutHours, horizon, minutesOnly: true },
  )
  const batches = weighed(prepared, ridden)
  const evening = batches.map(({ from, rides }) =>
    Uint8Array.from(rides.minutes, (_, s) => (isEvening(prepared.calendar, from + s) ? 1 : 0)),
  )
  const counted = (masks: readonly Uint8Array[]): AutonomyCurve =>
    autonomyCurve(
      batches.map(({ rides, weights }, b) => ({ ...rides, weights, counted: masks[b]! })),
      hours,
      horizon,
    )
  const byPattern = {
    any: autonomyCurve(
      batches.map(({ rides, weights }) => ({ ...rides, weights })),
      hours,
      horizon,
    ),
    evening: counted(evening),
    windy: counted(batches.map(({ windy }) => windy)),
  }
  return {
    sky,
    month,
    cutHours,
    spell: sky === 'dull' || sky === 'none' ? { winters, days: daysOfCut(cutHours) } : null,
    byPattern,
    least: leastCurve(Object.values(byPattern)),
  }
}
