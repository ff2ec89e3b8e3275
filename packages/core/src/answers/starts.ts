// The ride of every start of a month or of the year, one for each minute.
//
// Under `dull` and `none` every day lives the spell of its own; the other skies live one numbered
// year, for a start has one row. A year is asked month by month, and put together here.

import { isoUtc } from '../axis/calendar.js'
import { rideLoads } from '../cut/rides.js'
import type { Site } from '../house/house.js'
import { daysOfCut } from '../series/dull.js'
import type { Prepared } from '../series/prepare.js'
import type { SkyKind } from '../sky/sky.js'
import { type Beside, besideOf } from './beside.js'
import { checkQuestion } from './check-question.js'
import { type MonthRides, monthRides } from './month-rides.js'
import { monthSky } from './month-sky.js'
import { rideHorizon } from './ride-jobs.js'
import { type Equipped, equip, type Scenario } from './scenario.js'
import { type SkyFigures, skyFigures } from './sky-figures.js'
import type { SkyQuestion } from './sky-of-start.js'
import { drawnWarnings } from './warnings.js'

/** `syntheticYear`: the year to live; without it `dull` and `none` choose theirs day by day. */
export type StartsQuestion = Scenario & SkyQuestion

/** Starts that live the same numbered year. */
export interface LivedSpan {
  /** First start and one past the last, UTC. */
  readonly from: string
  readonly to: string
  readonly syntheticYear: number
}

export interface StartsAnswer extends Beside {
  readonly house: string
  readonly site: Site
  /** 1..12; null for the year. */
  readonly month: number | null
  readonly cutHours: number
  /** How far each start was followed. */
  readonly horizonHours: number
  readonly modules: number
  readonly startSoc: Equipped['startSoc']
  readonly health: number
  readonly seed: number
  readonly sky: SkyKind
  /** Return period and days of the spells; null where one numbered year is lived. */
  readonly spell: { readonly winters: number; readonly days: number } | null
  readonly figures: SkyFigures
  /** How many rides each critical load ended, in the order of the file. */
  readonly endedBy: readonly { readonly name: string; readonly starts: number }[]
  /** Starts that outlast the horizon. */
  readonly beyond: number
  readonly lived: readonly LivedSpan[]
}

/** One start: the columns of the table. */
export interface StartRow {
  readonly startUtc: string
  readonly rideMinutes: number
  readonly beyond: 0 | 1
  /** Name of the load that was lost first; empty where beyond. */
  readonly endedBy: string
}

/**
 * Rides every start of a local month.
 *
 * @param month  1..12
 * @throws       InputError where the sky has no such year, or the question does not fit the house
 */
export function startsOfMonth(
  prepared: Prepared,
  question: StartsQuestion,
  month: number,
): MonthRides {
  checkQuestion({ ...question, month }, ['hours', 'month'])
  const { hours, sky: kind = 'dull', years = 30, winters = 10 } = question
  const { seed = prepared.house.seed } = question
  const year = yearOf(question)
  const choice = { kind, month, cutHours: hours, years, winters, seed }
  const lived = monthSky(prepared, year === null ? choice : { ...choice, year })
  // A row is one course of a cut.
  const span = { month, hours, horizon: rideHorizon(hours), asDrawn: true }
  const loads = rideLoads(prepared.demand)
  const rides = monthRides(prepared, lived, equip(prepared, question), loads, span)
  if (year === null) return rides
  // A numbered winter behind `dull` is no dull one: it is told as a year that comes as it comes.
  const told = kind === 'dull' || kind === 'none' ? 'typical' : kind
  return { ...rides, sky: { ...rides.sky, kind: told, years: 1 } }
}

/** The numbered year that all starts live; null where each day has its own. */
function yearOf({ sky = 'dull', syntheticYear }: StartsQuestion): number | null {
  return syntheticYear ?? (sky === 'dull' || sky === 'none' ? null : 0)
}

/** Rows of one month, in order of time. */
export function* startRows(prepared: Prepared, { batches }: MonthRides): Generator<StartRow> {
  const names = prepared.demand.critical.map(({ load }) => load.name)
  for (const { from, rides } of batches) {
    for (let s = 0; s < rides.minutes.length; s++) {
      yield {
        startUtc: isoUtc(prepared.calendar, from + s),
        rideMinutes: rides.minutes[s]!,
        beyond: rides.beyond[s] === 1 ? 1 : 0,
        endedBy: names[rides.endedBy[s]!] ?? '',
      }
    }
  }
}

/**
 * What the rows say in sum.
 *
 * @param months  of `startsOfMonth`, in order of time: one, or all of the year
 * @param month   1..12 of the one; null for the year
 * @param plain   the house as it was read, to tell which defaults it leans on
 */
export function startsFrom(
  prepared: Prepared,
  question: StartsQuestion,
  months: readonly MonthRides[],
  month: number | null,
  plain?: unknown,
): StartsAnswer {
  const { house } = prepared
  const { hours, winters = 10, seed = house.seed, sky = 'dull' } = question
  const equipped = equip(prepared, question)
  const beside = besideOf(prepared, equipped, month, plain)
  const batches = months.flatMap((one) => one.batches)
  const whole = { ...months[0]!, batches }
  const spell = yearOf(question) === null ? { winters, days: daysOfCut(hours) } : null
  return {
    house: house.house,
    site: house.site,
    month,
    cutHours: hours,
    horizonHours: whole.horizon / 60,
    modules: equipped.modules,
    startSoc: equipped.startSoc,
    health: equipped.health,
    seed,
    sky,
    spell,
    figures: skyFigures(prepared, whole, rideLoads(prepared.demand), { hours, winters }),
    ...tallied(prepared, whole),
    lived: livedSpans(prepared, whole),
    ...beside,
    warnings: [...drawnWarnings(equipped, 'Rows are told'), ...beside.warnings],
  }
}

/** How many rides each load ended, and how many none did. */
function tallied(
  prepared: Prepared,
  { batches }: MonthRides,
): Pick<StartsAnswer, 'endedBy' | 'beyond'> {
  const ends = new Float64Array(prepared.demand.critical.length)
  let beyond = 0
  for (const { rides } of batches) {
    for (const which of rides.endedBy) {
      if (which < 0) beyond++
      else ends[which]! += 1
    }
  }
  const endedBy = prepared.demand.critical.map(({ load }, which) => ({
    name: load.name,
    starts: ends[which]!,
  }))
  return { endedBy, beyond }
}

/** Neighbours that live the same year are one span. */
function livedSpans({ calendar }: Prepared, { batches }: MonthRides): LivedSpan[] {
  const spans: LivedSpan[] = []
  for (const { year, from, rides } of batches) {
    const to = isoUtc(calendar, from + rides.minutes.length)
    const last = spans.at(-1)
    if (last !== undefined && last.syntheticYear === year) spans.pop()
    const begins = last?.syntheticYear === year ? last.from : isoUtc(calendar, from)
    spans.push({ from: begins, to, syntheticYear: year })
  }
  return spans
}
