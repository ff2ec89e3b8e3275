// One cut of a house, traced: the sky and year chosen as the other answers choose them.

import { MINUTE_MS, minutesOfHours } from '../axis/calendar.js'
import { type Course, courseOf } from '../cut/course.js'
import type { EventLine } from '../cut/event-line.js'
import { eventLines } from '../cut/event-lines.js'
import { lossLines } from '../cut/loss-lines.js'
import { type RideLoad, rideLoads } from '../cut/rides.js'
import { type Trace, trace } from '../cut/trace.js'
import { InputError } from '../house/problem.js'
import { type Compiled, compile } from '../island/compile.js'
import { daysOfCut } from '../series/dull.js'
import type { Prepared } from '../series/prepare.js'
import { newScratch, windowOf } from '../series/window.js'
import type { Scratch } from '../series/window-columns.js'
import type { Sky, SkyKind } from '../sky/sky.js'
import { checkQuestion } from './check-question.js'
import type { CutQuestion } from './cut-question.js'
import { type Equipped, equip } from './scenario.js'
import { skyOfStart } from './sky-of-start.js'

export interface CutStory {
  readonly trace: Trace
  /** Minutes of the first cut. */
  readonly cutMinutes: number
  /** Every cut, [from, to) in minutes of the trace; outside them the grid is there. */
  readonly cuts: readonly (readonly [number, number])[]
  readonly events: readonly EventLine[]
  /** What the gaps do to each critical load, in the order of the file. */
  readonly courses: readonly Course[]
  readonly compiled: Compiled
  readonly sky: SkyKind
  readonly syntheticYear: number
  /** Return period and days of the spell; null unless `dull` or `none` chose the year by them. */
  readonly spell: { readonly winters: number; readonly days: number } | null
  readonly capacityKwh: number
  readonly startSoc: Equipped['startSoc']
}

/** What one cut after another of the same house is traced with. */
export interface CutStage {
  readonly prepared: Prepared
  readonly loads: readonly RideLoad[]
  readonly scratch: Scratch
  /** Skies met so far. */
  readonly skies: Map<string, Sky>
}

/** @param like  the stage of the same house with other loads, whose skies serve again */
export function cutStage(prepared: Prepared, like?: CutStage): CutStage {
  return {
    prepared,
    loads: rideLoads(prepared.demand),
    scratch: like?.scratch ?? newScratch(prepared),
    skies: like?.skies ?? new Map(),
  }
}

/** @throws InputError where the question is at fault, or the start lies outside the house's year */
export function traceCut(prepared: Prepared, question: CutQuestion): CutStory {
  checkQuestion(question, ['startMs', 'hours'])
  return traceOn(cutStage(prepared), question)
}

/** One cut of several: the same as `traceCut`, without preparing anew. */
export function traceOn(stage: CutStage, question: CutQuestion): CutStory {
  const { prepared, loads, scratch } = stage
  const { calendar, demand } = prepared
  const from = startMinute(prepared, question.startMs)
  const minutes = minutesOfHours(question.hours)
  const equipped = equip(prepared, question)
  const { house } = equipped
  const { sky, year } = skyOfStart(prepared, question, from, stage.skies)
  const cuts = cutsOf(prepared, question, minutes)
  const end = from + cuts.at(-1)![1] + minutesOfHours(question.after ?? 0)
  const window = windowOf(prepared, sky, scratch, year, from, end)
  const gridUp = new Uint8Array(window.n).fill(1)
  for (const [begins, ends] of cuts) gridUp.fill(0, begins, ends)
  const { plant, rules } = equipped
  const compiled = compile(house, calendar, demand, plant, rules, window, gridUp)
  const cut = trace(compiled, equipped.startKwh)
  const courses = loads.map((load) => courseOf(cut, load, rules))
  const events = [
    ...eventLines(cut, house, calendar, compiled),
    ...lossLines(courses, from, calendar),
  ]
  const { capacityKwh } = rules
  return {
    trace: cut,
    cutMinutes: minutes,
    cuts,
    events: events.sort((a, b) => a.minute - b.minute),
    courses,
    compiled,
    sky: question.sky ?? 'dull',
    syntheticYear: year,
    spell: spellOf(question),
    capacityKwh,
    startSoc: equipped.startSoc,
  }
}

/** The cuts of a run in minutes from the first; each begins after the one before has ended. */
function cutsOf(
  prepared: Prepared,
  { startMs, further = [] }: CutQuestion,
  minutes: number,
): [number, number][] {
  const cuts: [number, number][] = [[0, minutes]]
  for (const { startMs: nextMs, hours } of further) {
    startMinute(prepared, nextMs)
    const begins = Math.floor((nextMs - startMs) / MINUTE_MS)
    const [, before] = cuts.at(-1)!
    if (!(begins > before)) {
      throw new InputError(
        'further cut',
        `after the cut before it has ended, at ${new Date(startMs + before * MINUTE_MS).toISOString().slice(0, 16)}Z`,
        Number.isFinite(nextMs) ? new Date(nextMs).toISOString() : nextMs,
      )
    }
    cuts.push([begins, begins + minutesOfHours(hours)])
  }
  return cuts
}

/** Minute of the axis; seconds are cut off. @throws InputError outside the year */
export function startMinute(prepared: Prepared, startMs: number): number {
  const { calendar } = prepared
  const minute = Math.floor((startMs - calendar.startMs) / MINUTE_MS)
  if (!(minute >= 0 && minute < calendar.n)) {
    const iso = (ms: number): string => `${new Date(ms).toISOString().slice(0, 16)}Z`
    const last = calendar.startMs + (calendar.n - 1) * MINUTE_MS
    throw new InputError(
      'start',
      `a time in the house's year, ${iso(calendar.startMs)} to ${iso(last)}`,
      Number.isFinite(startMs) ? iso(startMs) : startMs,
    )
  }
  return minute
}

function spellOf({
  sky = 'dull',
  syntheticYear,
  hours,
  winters = 10,
}: CutQuestion): CutStory['spell'] {
  return (sky === 'dull' || sky === 'none') && syntheticYear === undefined
    ? { winters, days: daysOfCut(hours) }
    : null
}
