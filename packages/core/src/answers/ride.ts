// How long does this house ride through an N-hour cut in this month?
//
// Every minute of the month is a start, in every year of the sky; each is followed past the cut
// and past the month's end. The promise stands on the cautious side: dull sky, reserve, health.

import { monthRange } from '../axis/calendar.js'
import { type RideLoad, rideLoads } from '../cut/rides.js'
import { inverterLossKw, type Plant } from '../equipment/plant.js'
import { usedDefaults } from '../house/defaults.js'
import type { Site } from '../house/house.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { cautionsFor } from './cautions.js'
import { type MonthRides, monthRides } from './month-rides.js'
import { monthSky } from './month-sky.js'
import { type Equipped, equip, type Scenario } from './scenario.js'
import { type SkyFigures, skyFigures } from './sky-figures.js'
import { warningsFor } from './warnings.js'

export interface RideQuestion extends Scenario {
  /** 1..12 */
  readonly month: number
  /** Length of the cut. [h], > 0 */
  readonly hours: number
  /** Share of starts that must ride it, 0..1. */
  readonly share?: number
  /** The sky the promise stands on; default `dull`. */
  readonly sky?: SkyKind
  /** Synthetic years of `typical`; default 30. */
  readonly years?: number
  /** Return period of `dull`; default 10. */
  readonly winters?: number
  readonly seed?: number
  /** Told after each year walked. */
  readonly progress?: (done: number, of: number, sky: SkyKind) => void
}

export interface RideAnswer {
  readonly house: string
  readonly site: Site
  readonly month: number
  readonly cutHours: number
  readonly modules: number
  readonly startSoc: Equipped['startSoc']
  readonly health: number
  readonly years: number
  readonly seed: number
  /** The sky the promise stands on. */
  readonly promise: SkyKind
  readonly skies: Partial<Record<SkyKind, SkyFigures>>
  readonly bright: { readonly share: number | null; readonly conditions: string }
  readonly met: boolean | null
  readonly cautions: readonly string[]
  readonly warnings: readonly string[]
  readonly defaults: readonly { path: string; value: string; basis: string }[]
}

/** How far each start is followed. [min] */
export const HORIZON_MINUTES = 30 * 1440

/**
 * @param plain  the house as it was read, to tell which defaults it leans on; the checked house
 *               when left out, which then leans on none
 */
export function rideAnswer(
  prepared: Prepared,
  question: RideQuestion,
  plain?: unknown,
): RideAnswer {
  const { house } = prepared
  const { month, hours, years = 30, winters = 10, seed = house.seed } = question
  const promise = question.sky ?? 'dull'
  const equipped = equip(prepared, question)
  const loads = rideLoads(prepared.demand)
  const choice = { month, cutHours: hours, years, winters, seed }
  const skies: Partial<Record<SkyKind, SkyFigures>> = {}
  const run = (kind: SkyKind, stack: Equipped): MonthRides => {
    const progress = question.progress
    return monthRides(
      prepared,
      monthSky(prepared, { ...choice, kind }),
      stack,
      loads,
      { month, hours, horizon: Math.max(HORIZON_MINUTES, Math.ceil(hours * 60)) },
      progress && ((done, of) => progress(done, of, kind)),
    )
  }
  const plainHours = withoutSunHours(prepared, equipped, loads, month)
  for (const kind of skiesToShow(prepared, promise)) {
    const figures = skyFigures(prepared, run(kind, equipped), loads, { hours, winters })
    skies[kind] = { ...figures, withoutSunHours: plainHours }
  }
  const promised = skies[promise]?.share ?? null
  return {
    house: house.house,
    site: house.site,
    month,
    cutHours: hours,
    modules: equipped.modules,
    startSoc: equipped.startSoc,
    health: equipped.health,
    years,
    seed,
    promise,
    skies,
    bright: brightCase(prepared, question, run, loads, hours, winters),
    met: question.share === undefined || promised === null ? null : promised >= question.share,
    cautions: cautionsFor(house),
    warnings: [...warningsFor(prepared, equipped), ...prepared.notes],
    defaults: plain === undefined ? [] : usedDefaults(plain),
  }
}

function skiesToShow(prepared: Prepared, promise: SkyKind): SkyKind[] {
  const order: SkyKind[] = ['dull', 'none', 'typical', 'clear']
  if (prepared.record !== null) order.push('file')
  return [promise, ...order.filter((kind) => kind !== promise)]
}

/** Full and new under a typical sky: shown beside the promise, smaller. */
function brightCase(
  prepared: Prepared,
  question: RideQuestion,
  run: (kind: SkyKind, stack: Equipped) => MonthRides,
  loads: readonly RideLoad[],
  hours: number,
  winters: number,
): RideAnswer['bright'] {
  const bright = equip(prepared, { ...question, startSoc: 'full', health: 1 })
  const figures = skyFigures(prepared, run('typical', bright), loads, { hours, winters })
  return { share: figures.share, conditions: 'full, new, typical sky' }
}

/**
 * The hand figure: energy from the start charge down to the lower limit, over the month's mean
 * critical load, idle draw and losses; comfort loads and sun left out.
 *
 *     hours = (start - limit) / (load + loss(load) + standing)
 *
 * The form is that of the stand-alone sizing standards (IEEE 1562, IEC 62124): energy that may be
 * used over the daily need.
 */
export function withoutSunHours(
  prepared: Prepared,
  equipped: Equipped,
  _loads: readonly RideLoad[],
  month: number,
): number {
  const [from, to] = monthRange(prepared.calendar, month)
  let sum = 0
  for (let i = from; i < to; i++) sum += prepared.demand.criticalKw[i]!
  const usable = equipped.startKwh - equipped.rules.loadsOffKwh
  return Math.max(0, usable / drawKw(equipped.plant, sum / (to - from)))
}

function drawKw(plant: Plant, loadKw: number): number {
  return loadKw + inverterLossKw(plant, loadKw) + plant.standingKw
}
