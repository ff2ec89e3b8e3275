// Every stack of a base side by side, under one sky that is worked out once.

import { rideLoads } from '../../cut/rides.js'
import type { House } from '../../house/house.js'
import type { Prepared } from '../../series/prepare.js'
import { type HourFigures, hourFigures } from '../hour-figures.js'
import { monthRidesOf } from '../month-rides.js'
import { monthSky } from '../month-sky.js'
import type { Pattern } from '../patterns.js'
import { rideHorizon } from '../ride-jobs.js'
import type { RideQuestion } from '../ride-question.js'
import { type Equipped, equip } from '../scenario.js'

/** How much further than in a ride starts are followed, so that a day more can be seen. [min] */
const DAY_MORE = 1440
/** A share that differs by less is the same to whoever reads it. */
export const POINT = 0.01
/** Stacks ridden in one go: what is kept of each start takes room. */
const AT_ONCE = 6

export interface StackRow {
  readonly modules: number
  /** Of the aged stack. [kWh] */
  readonly usableKwh: number
  /** Of all its modules; null where the house gives none. */
  readonly price: number | null
  /** As in `ride`; null from a typical-year file or one synthetic year. [h] */
  readonly worstHours: number | null
  readonly p05Hours: number
  readonly medianHours: number
  /** Least over the patterns; null without a start. */
  readonly share: number | null
  readonly hardest: Pattern
  /** Share of starts at which the inverter cannot take over what is running. */
  readonly changeoverLostShare: number
  /** In the middle case, over one module less; null for one module and where both outlast the horizon. [h] */
  readonly addedHours: number | null
  /** The same in the worst case. [h] */
  readonly addedWorstHours: number | null
  /** Price of the module over `addedHours`; null where not known or no hour is added. */
  readonly pricePerAddedHour: number | null
  /** Whether the share reaches the target; null without one. */
  readonly met: boolean | null
}

/** Figures under the sky of the question, of several stacks; the weather is worked out once. */
export function stackFigures(
  prepared: Prepared,
  question: RideQuestion,
  stacks: readonly Equipped[],
): HourFigures[] {
  const { month, hours, years = 30, winters = 10, seed = prepared.house.seed } = question
  const kind = question.sky ?? 'dull'
  const sky = monthSky(prepared, { kind, month, cutHours: hours, years, winters, seed })
  const horizon = rideHorizon(hours) + DAY_MORE
  const loads = rideLoads(prepared.demand)
  const variants = stacks.map((equipped) => ({ equipped, horizon, minutesOnly: true }))
  return monthRidesOf(prepared, sky, variants, loads, { month, hours }).map((rides) =>
    hourFigures(prepared, rides, hours),
  )
}

/** One more than the stacks ridden in one go. */
export interface RiddenStacks {
  readonly equipped: readonly Equipped[]
  readonly figures: readonly HourFigures[]
}

/** Rides one module up to what the base allows. @param tell  told how many stacks are done */
export function rideStacks(
  prepared: Prepared,
  question: RideQuestion,
  tell: (count: number) => void,
): RiddenStacks {
  const most = prepared.house.stack.modulesMax
  const equipped = Array.from({ length: most }, (_, i) =>
    equip(prepared, { ...question, modules: i + 1 }),
  )
  const figures: HourFigures[] = []
  for (let from = 0; from < most; from += AT_ONCE) {
    figures.push(...stackFigures(prepared, question, equipped.slice(from, from + AT_ONCE)))
    tell(figures.length)
  }
  return { equipped, figures }
}

/** The rows of a table of stacks, one module first. @param target  share to be met, 0..1 */
export function stackRows(
  { stack }: House,
  { equipped, figures }: RiddenStacks,
  target: number | undefined,
): StackRow[] {
  return figures.map((here, i) => {
    const { modules, plant } = equipped[i]!
    const before = figures[i - 1]
    const price = stack.module.price
    const addedHours = gained(here, before, 'medianHours')
    return {
      modules,
      usableKwh: plant.usableKwh,
      price: price === undefined ? null : modules * price,
      worstHours: here.worstHours,
      p05Hours: here.p05Hours,
      medianHours: here.medianHours,
      share: here.share,
      hardest: here.hardest,
      changeoverLostShare: here.changeoverLostShare,
      addedHours,
      addedWorstHours: gained(here, before, 'worstHours'),
      pricePerAddedHour: perHour(price ?? null, addedHours),
      met: target === undefined || here.share === null ? null : here.share >= target,
    }
  })
}

/** The cases in which hours are told. */
export const CASES = ['medianHours', 'p05Hours', 'worstHours'] as const
export type Case = (typeof CASES)[number]

/** Hours over another figure; null where that one outlasts the horizon or there is none. [h] */
export function gained(
  here: HourFigures,
  before: HourFigures | undefined,
  which: Case,
): number | null {
  const [now, then] = [here[which], before?.[which]]
  if (now === null || then === null || then === undefined) return null
  return then >= here.horizonHours ? null : now - then
}

/** Money for each hour; null where a price is not known or no hour is gained. */
export function perHour(price: number | null, hours: number | null): number | null {
  return price === null || hours === null || !(hours > 0) ? null : price / hours
}
