// The rides of every start of a month, batch by batch, year by year.

import { minutesOfHours } from '../axis/calendar.js'
import {
  endedAfter,
  longestTolerance,
  lostAfter,
  type MinuteColumn,
  minuteColumn,
  minutesWithout,
  type RideLoad,
  type Rides,
  ridesOf,
  wantedSum,
} from '../cut/rides.js'
import type { Spells } from '../cut/spells.js'
import { overloadsAtChangeover } from '../island/columns.js'
import { compile } from '../island/compile.js'
import { type Enough, pass } from '../pass/pass.js'
import type { Prepared } from '../series/prepare.js'
import { newScratch, windowOf } from '../series/window.js'
import type { Window } from '../series/window-columns.js'
import type { Sky } from '../sky/sky.js'
import { newSunSums, sumSun } from '../sky/sun-year.js'
import { ColumnRoom } from '../units/column-room.js'
import { oncePer } from '../units/once.js'
import type { Batch, MonthSky } from './month-sky.js'
import { type DayLook, windyDays } from './patterns.js'
import { chanceOf, type Equipped, withStartFails } from './scenario.js'

/** One batch of starts, ridden. */
export interface BatchRides {
  readonly year: number
  /** Axis minute of the first start. */
  readonly from: number
  readonly rides: Rides
  /** Minutes within the cut in which a wanted critical load was not served. */
  readonly without: MinuteColumn
  /** Starts at which the island did not survive the changeover. */
  readonly lostAtOnce: number
  /** 1 where the start's day counts as windy. */
  readonly windy: Uint8Array
}

/** What figures need to know of a sky. */
export type SkyFacts = Pick<Sky, 'kind' | 'years' | 'hasExtremes'>

export interface MonthRides {
  readonly sky: SkyFacts
  /** With the luck of the minutes, as each start would be traced. */
  readonly batches: readonly BatchRides[]
  readonly horizon: number
  /** Where a generator starts or not by chance: both ways, to be weighed. See `weighed`. */
  readonly branches?: Branches
}

/** The same batches where every start of the generator succeeds, and where none does. */
export interface Branches {
  /** That a start fails, 0..1, neither of the ends. */
  readonly chance: number
  readonly starts: readonly BatchRides[]
  readonly fails: readonly BatchRides[]
}

export interface MonthSpan {
  readonly month: number
  /** [h] */
  readonly hours: number
  /** How far each start is followed. [min] */
  readonly horizon: number
  /** As a `Variant` has it. */
  readonly minutesOnly?: boolean
  /** Leave a generator's starts to the luck of the minutes: no branches are lived. */
  readonly asDrawn?: boolean
}

/** A stack to ride with, and how far to follow it. */
export interface Variant {
  readonly equipped: Equipped
  /** [min] */
  readonly horizon: number
  /**
   * Whether only the minutes of the rides are asked: each start is left where its ride ends, and the
   * batches tell nothing of single loads, of what ended a ride, nor of minutes without. Where a start
   * of the generator fails by chance, all is told nevertheless: by it the ways it went are told apart.
   */
  readonly minutesOnly?: boolean
  /** Leave a generator's starts to the luck of the minutes: no branches are lived. */
  readonly asDrawn?: boolean
}

/** Columns that every sky of a house may write over: nothing in them is kept. */
const scratchOf = oncePer(newScratch)
/** The same for the powers of a window, and for the columns of a stack in it. */
const roomsOf = oncePer((_: Prepared) => ({ window: new ColumnRoom(), stack: new ColumnRoom() }))

/** Rides of one stack. */
export function monthRides(
  prepared: Prepared,
  monthSky: MonthSky,
  equipped: Equipped,
  loads: readonly RideLoad[],
  span: MonthSpan,
): MonthRides {
  const { horizon, minutesOnly = false, asDrawn = false } = span
  const variants = [{ equipped, horizon, minutesOnly, asDrawn }]
  return monthRidesOf(prepared, monthSky, variants, loads, span)[0] as MonthRides
}

/** Rides of several stacks under the same weather, which is worked out once. */
export function monthRidesOf(
  prepared: Prepared,
  { sky, batches }: MonthSky,
  variants: readonly Variant[],
  loads: readonly RideLoad[],
  span: Pick<MonthSpan, 'month' | 'hours'>,
): MonthRides[] {
  const scratch = scratchOf(prepared)
  const room = roomsOf(prepared).window
  const wanted = wantedSum(loads)
  const tolerance = longestTolerance(loads)
  const furthest = Math.max(...variants.map(({ horizon }) => horizon)) + tolerance
  const within = minutesOfHours(span.hours)
  const looks: Look[] = []
  const lives = variants.map(livesOf)
  const list = lives.flat()
  const ridden = batches.map((batch, which) => {
    const end = batch.to + furthest
    const minutes = end - batch.from
    const whole = {
      cutMinutes: within,
      lostAfter: lostAfter(loads, furthest, batch.from, minutes),
    }
    const ended = { cutMinutes: 0, lostAfter: endedAfter(loads, batch.from, minutes) }
    room.clear()
    const window = windowOf(prepared, sky, scratch, batch.year, batch.from, end, undefined, room)
    looks.push(...looksOf(prepared, window, batch, which, span.month))
    const windy = new Uint8Array(batch.to - batch.from)
    return list.map((variant) => ({
      ...(variant.minutesOnly === true
        ? minutesBatch(prepared, window, batch, variant, loads, ended)
        : rideBatch(prepared, window, batch, variant, loads, wanted, whole, tolerance)),
      windy,
    }))
  })
  markWindy(prepared, ridden, looks)
  const ridesOfLife = (life: Variant): BatchRides[] => ridden.map((b) => b[list.indexOf(life)]!)
  return variants.map(({ equipped, horizon }, v) => {
    const [batches, ...both] = lives[v]!.map(ridesOfLife)
    return monthOf(sky, horizon, batches!, both, chanceOf(equipped))
  })
}

/** As drawn, and where a start may fail with all that succeed and all that fail. */
function livesOf(variant: Variant): Variant[] {
  if (variant.asDrawn === true || chanceOf(variant.equipped) === null) return [variant]
  // By all that is known of a start the ways it went are told apart.
  const drawn = { ...variant, minutesOnly: false }
  const both = [0, 1].map((startFails) => withStartFails(variant.equipped, startFails))
  return [drawn, ...both.map((equipped) => ({ ...drawn, equipped }))]
}

/** @param both  with all starts that succeed, and all that fail; where there is no chance none */
export function monthOf(
  sky: SkyFacts,
  horizon: number,
  batches: readonly BatchRides[],
  both: readonly (readonly BatchRides[])[],
  chance: number | null,
): MonthRides {
  const [starts, fails] = both
  if (chance === null || starts === undefined || fails === undefined) {
    return { sky, batches, horizon }
  }
  return { sky, batches, horizon, branches: { chance, starts, fails } }
}

function rideBatch(
  prepared: Prepared,
  window: Window,
  batch: Batch,
  { equipped, horizon }: Variant,
  loads: readonly RideLoad[],
  wanted: Int32Array,
  enough: Enough,
  tolerance: number,
): Omit<BatchRides, 'windy'> {
  const followed = horizon + tolerance
  const left = { ...enough, onAfter: horizon }
  const { spells, lostAtOnce } = passBatch(prepared, window, batch, equipped, followed, left)
  const starts = batch.to - batch.from
  const within = Math.min(enough.cutMinutes, horizon)
  const without = minuteColumn(starts, within)
  for (let s = 0; s < starts; s++) {
    without[s] = minutesWithout(spells, s, within, wanted, batch.from)
  }
  return {
    year: batch.year,
    from: batch.from,
    rides: ridesOf(spells, loads, batch.from, horizon),
    without,
    lostAtOnce,
  }
}

/** Rides of a batch of which only the minutes are asked. */
function minutesBatch(
  prepared: Prepared,
  window: Window,
  batch: Batch,
  { equipped, horizon }: Variant,
  loads: readonly RideLoad[],
  enough: Enough,
): Omit<BatchRides, 'windy'> {
  const followed = horizon + longestTolerance(loads)
  const left = { ...enough, onAfter: horizon }
  const { spells, lostAtOnce } = passBatch(prepared, window, batch, equipped, followed, left)
  const { minutes, beyond } = ridesOf(spells, loads, batch.from, horizon)
  return {
    year: batch.year,
    from: batch.from,
    rides: { minutes, beyond, endedBy: new Int8Array(0), byLoad: [], lostAfter: [] },
    without: minuteColumn(0, 0),
    lostAtOnce,
  }
}

/** Down spells of a batch, and the starts at which the island does not survive the changeover. */
function passBatch(
  prepared: Prepared,
  window: Window,
  batch: Batch,
  { house, plant, rules, startKwh }: Equipped,
  followed: number,
  enough: Enough,
): { spells: Spells; lostAtOnce: number } {
  const { calendar, demand } = prepared
  const room = roomsOf(prepared).stack
  room.clear()
  const { columns } = compile(house, calendar, demand, plant, rules, window, undefined, room)
  const starts = batch.to - batch.from
  const spells = pass(columns, rules, starts, startKwh, followed, enough)
  let lostAtOnce = 0
  for (let s = 0; s < starts; s++) {
    const spell = spells.first[s]!
    if (spell < 0 || spells.from(spell) !== s) continue
    if (overloadsAtChangeover(columns, rules, s)) lostAtOnce++
  }
  return { spells, lostAtOnce }
}

/** A day of a batch, as the pattern `windy` looks at it. */
interface Look extends DayLook {
  readonly day: number
  readonly batch: number
}

function looksOf(
  prepared: Prepared,
  window: Window,
  batch: Batch,
  which: number,
  month: number,
): Look[] {
  const { dayOf } = prepared.calendar
  const mean = meanDay(prepared, month)
  const looks: Look[] = []
  for (let day = dayOf[batch.from]!; day <= dayOf[batch.to - 1]!; day++) {
    const at = day - window.firstDay
    const [brightness, windMs] = [window.dayGhi[at]! / mean, window.dayWindMs[at]!]
    looks.push({ day, batch: which, brightness, windMs })
  }
  return looks
}

function markWindy(
  prepared: Prepared,
  ridden: readonly (readonly BatchRides[])[],
  looks: readonly Look[],
): void {
  const windy = windyDays(looks)
  for (const [i, look] of looks.entries()) {
    if (!windy[i]) continue
    const { start, end } = prepared.calendar.days[look.day]!
    for (const batch of ridden[look.batch]!) {
      batch.windy.fill(1, Math.max(0, start - batch.from), Math.max(0, end - batch.from))
    }
  }
}

/** Mean day of a month by its clearness. [W/m² · min] */
export function meanDay(prepared: Prepared, month: number): number {
  const { sun, calendar, clearness } = prepared
  const days = calendar.days.filter((day) => day.month === month)
  const sum = newSunSums()
  sumSun(sun, days[0]!.start, days.at(-1)!.end, sum)
  return (clearness[month - 1]! * sum.extra) / days.length
}
