// How long does this house ride through an N-hour cut in this month?
//
// Every minute of the month is a start, in every year of the sky; each is followed past the cut
// and past the month's end. The promise stands on the cautious side: dull sky, reserve, health.

import { minutesOfHours, monthRange } from '../axis/calendar.js'
import { rideLoads } from '../cut/rides.js'
import { inverterLossKw, type Plant } from '../equipment/plant.js'
import { usedDefaults } from '../house/defaults.js'
import type { Site } from '../house/house.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { cautionsFor } from './cautions.js'
import { monthRidesOf, type Variant } from './month-rides.js'
import { type MonthSky, monthSky } from './month-sky.js'
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
  /** The promise's figures with the generator left out; null for a house without one. */
  readonly withoutGenerator: SkyFigures | null
  readonly bright: { readonly share: number | null; readonly conditions: string }
  readonly met: boolean | null
  readonly cautions: readonly string[]
  readonly warnings: readonly string[]
  readonly defaults: readonly { path: string; value: string; basis: string }[]
}

/** How far each start is followed at least. [min] */
export const HORIZON_MINUTES = 2 * 1440

/** How far past the end of a long cut each start is followed. [min] */
const BEYOND_MINUTES = 1440

/**
 * @param plain  the house as it was read, to tell which defaults it leans on; without it the
 *               answer lists none
 * @throws       InputError where the question does not fit the house
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
  const skies: Partial<Record<SkyKind, SkyFigures>> = {}
  let bright: SkyFigures | undefined
  let bare: SkyFigures | undefined
  for (const kind of skiesToShow(prepared, promise)) {
    const sky = monthSky(prepared, { kind, month, cutHours: hours, years, winters, seed })
    const found = figuresUnder(prepared, sky, question, variantsOf(prepared, question, kind))
    skies[kind] = found.main!
    bright = found.bright ?? bright
    bare = found.bare ?? bare
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
    withoutGenerator: bare ?? null,
    bright: { share: bright?.share ?? null, conditions: 'full, new, typical sky' },
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

/** The stack as asked for; under typical skies also full and new; for the promise also bare. */
function variantsOf(
  prepared: Prepared,
  question: RideQuestion,
  kind: SkyKind,
): Record<string, Variant> {
  const cut = minutesOfHours(question.hours)
  const horizon = Math.max(HORIZON_MINUTES, cut + BEYOND_MINUTES)
  const variants: Record<string, Variant> = {
    main: { equipped: equip(prepared, question), horizon },
  }
  if (kind === 'typical') {
    const scenario: Scenario = { ...question, startSoc: 'full', health: 1 }
    variants.bright = { equipped: equip(prepared, scenario), horizon: cut }
  }
  if (kind === (question.sky ?? 'dull') && prepared.house.generator !== undefined) {
    variants.bare = { equipped: equip(prepared, { ...question, generator: false }), horizon }
  }
  return variants
}

function figuresUnder(
  prepared: Prepared,
  sky: MonthSky,
  question: RideQuestion,
  variants: Record<string, Variant>,
): Record<string, SkyFigures | undefined> {
  const { month, hours, winters = 10, progress } = question
  const loads = rideLoads(prepared.demand)
  const list = Object.values(variants)
  const rides = monthRidesOf(prepared, sky, list, loads, { month, hours }, (done, of) =>
    progress?.(done, of, sky.sky.kind),
  )
  const figures = rides.map((ride, v) => ({
    ...skyFigures(prepared, ride, loads, { hours, winters }),
    withoutSunHours: withoutSunHours(prepared, list[v]!.equipped, month),
  }))
  return Object.fromEntries(Object.keys(variants).map((name, v) => [name, figures[v]]))
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
export function withoutSunHours(prepared: Prepared, equipped: Equipped, month: number): number {
  const [from, to] = monthRange(prepared.calendar, month)
  let sum = 0
  for (let i = from; i < to; i++) sum += prepared.demand.criticalKw[i]!
  const usable = equipped.startKwh - equipped.rules.loadsOffKwh
  return Math.max(0, usable / drawKw(equipped.plant, sum / (to - from)))
}

function drawKw(plant: Plant, loadKw: number): number {
  return loadKw + inverterLossKw(plant, loadKw) + plant.standingKw
}
