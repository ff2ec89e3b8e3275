// What is the worst of the year, and why: every month by the hour of the day, and the worst starts
// apart from each other, each with its story and what would cure it.

import { minutesOfHours } from '../../axis/calendar.js'
import { rideLoads } from '../../cut/rides.js'
import type { Site } from '../../house/house.js'
import { daysOfCut } from '../../series/dull.js'
import type { Prepared } from '../../series/prepare.js'
import type { SkyKind } from '../../sky/sky.js'
import { type Beside, besideOf } from '../beside.js'
import { checkQuestion } from '../check-question.js'
import { monthRides } from '../month-rides.js'
import { isSpell, monthSky } from '../month-sky.js'
import { rideHorizon } from '../ride-jobs.js'
import { type Equipped, equip } from '../scenario.js'
import { skyFigures } from '../sky-figures.js'
import { skyOfStart } from '../sky-of-start.js'
import { drawnWarnings } from '../warnings.js'
import { livedAgain, type Tried, triedSteps } from './cures.js'
import { type MonthRow, monthRow } from './month-row.js'
import { type StartStory, startStory } from './start-story.js'
import type { HouseSource } from './steps.js'
import { apartFromEachOther, type DayWorst, worstOfDays } from './worst-starts.js'
import { APART_DAYS, YEAR_YEARS, type YearQuestion } from './year-question.js'

/** How many worst starts are told. */
const MOST_STORIES = 5

/** What one month found; it can be worked out anywhere. */
export interface YearMonth {
  readonly row: MonthRow
  /** The shortest ride of each of its days that does not last the cut; none where no worst is said. */
  readonly days: readonly DayWorst[]
  /** Numbered years of the sky that each lived all of the month; 1 where days choose their own. */
  readonly years: number
}

export interface WorstStart extends StartStory {
  /** Smallest step first. */
  readonly tried: readonly Tried[]
  /** The first of them that lasts the cut. */
  readonly cure: Tried['id'] | null
}

export interface YearAnswer extends Beside {
  readonly house: string
  readonly site: Site
  readonly cutHours: number
  readonly horizonHours: number
  readonly modules: number
  readonly startSoc: Equipped['startSoc']
  readonly health: number
  readonly seed: number
  readonly sky: SkyKind
  /** Numbered years looked at; null where each day lives a spell of its own. */
  readonly years: number | null
  /** Return period and days of the spells; null under other skies. */
  readonly spell: { readonly winters: number; readonly days: number } | null
  readonly months: readonly MonthRow[]
  /** The month of the least share; of equals that of the shortest 1 in 20. */
  readonly hardestMonth: number
  readonly apartDays: number
  /** The shortest first; empty where every start lasts, null where no worst may be said. */
  readonly worst: readonly WorstStart[] | null
}

/**
 * Rides every start of one month.
 *
 * @param month  1..12
 * @throws       InputError where the question does not fit the house
 */
export function yearMonth(prepared: Prepared, question: YearQuestion, month: number): YearMonth {
  checkQuestion({ ...question, month }, ['hours', 'month'])
  const { hours, sky: kind = 'dull', years = YEAR_YEARS, winters = 10 } = question
  const { seed = prepared.house.seed } = question
  const lived = monthSky(prepared, { kind, month, cutHours: hours, years, winters, seed })
  const span = { month, hours, horizon: rideHorizon(hours) }
  const loads = rideLoads(prepared.demand)
  const rides = monthRides(prepared, lived, equip(prepared, question), loads, span)
  const figures = skyFigures(prepared, rides, loads, { hours, winters })
  const hasWorst = figures.worstHours !== null
  return {
    row: monthRow(prepared, rides, figures, { month, hours }),
    days: hasWorst ? worstOfDays(prepared.calendar, rides, minutesOfHours(hours)) : [],
    years: isSpell(kind) ? 1 : lived.sky.years,
  }
}

/**
 * Puts twelve months together and tells the worst starts.
 *
 * @param months  of `yearMonth`, January first
 * @param source  the house as it was read, for the changed ones that are tried
 * @param done    told after each step that was tried on the worst starts
 */
export function yearFrom(
  prepared: Prepared,
  question: YearQuestion,
  months: readonly YearMonth[],
  source: HouseSource,
  done: () => void = () => {},
): YearAnswer {
  const { house } = prepared
  const { hours, sky = 'dull', winters = 10, seed = house.seed } = question
  const { apartDays = APART_DAYS } = question
  const equipped = equip(prepared, question)
  const beside = besideOf(prepared, equipped, null, source.plain)
  const rows = months.map(({ row }) => row)
  return {
    house: house.house,
    site: house.site,
    cutHours: hours,
    horizonHours: rideHorizon(hours) / 60,
    modules: equipped.modules,
    startSoc: equipped.startSoc,
    health: equipped.health,
    seed,
    sky,
    years: isSpell(sky) ? null : months[0]!.years,
    spell: isSpell(sky) ? { winters, days: daysOfCut(hours) } : null,
    months: rows,
    hardestMonth: hardestMonthOf(rows),
    apartDays,
    worst: worstStarts(prepared, { ...question, apartDays }, months, source, done),
    ...beside,
    warnings: [
      ...drawnWarnings(equipped, 'Worst starts, and what would cure them, are told'),
      ...beside.warnings,
    ],
  }
}

/** The month of the least share; of equals that of the shortest 1 in 20. 1..12 */
export function hardestMonthOf(rows: readonly MonthRow[]): number {
  const share = ({ figures }: MonthRow): number => figures.share ?? 1
  const [hardest] = [...rows].sort(
    (a, b) =>
      share(a) - share(b) ||
      a.figures.p05Hours - b.figures.p05Hours ||
      a.figures.medianHours - b.figures.medianHours,
  )
  return hardest!.month
}

function worstStarts(
  prepared: Prepared,
  question: YearQuestion & { readonly apartDays: number },
  months: readonly YearMonth[],
  source: HouseSource,
  done: () => void,
): WorstStart[] | null {
  if (months.some(({ row }) => row.figures.worstHours === null)) return null
  const { years = YEAR_YEARS } = question
  const days = months.flatMap((month) => month.days)
  const numbered = months[0]!.years
  const starts = apartFromEachOther(
    days,
    prepared.calendar,
    numbered,
    question.apartDays,
    MOST_STORIES,
  )
  const lived = { ...question, years }
  const tried = triedSteps(prepared, lived, starts, source, done)
  return starts.map((start, i) => {
    const story = livedAgain(prepared, lived, start)
    const { sky } = skyOfStart(prepared, { ...lived, syntheticYear: start.year }, start.minute)
    return {
      ...startStory(prepared, story, sky),
      tried: tried[i]!,
      cure: tried[i]!.find(({ lasts }) => lasts)?.id ?? null,
    }
  })
}
