// The rides of every start of a month, batch by batch, year by year.

import { minutesWithout, type RideLoad, type Rides, ridesOf, wantedSum } from '../cut/rides.js'
import { walkStarts } from '../cut/starts.js'
import { compile } from '../island/compile.js'
import type { Prepared } from '../series/prepare.js'
import { newScratch, windowOf } from '../series/window.js'
import type { Sky } from '../sky/sky.js'
import type { MonthSky } from './month-sky.js'
import { windyDays } from './patterns.js'
import type { Equipped } from './scenario.js'

/** One batch of starts, ridden. */
export interface BatchRides {
  readonly year: number
  /** Axis minute of the first start. */
  readonly from: number
  readonly rides: Rides
  /** Minutes within the cut in which a wanted critical load was not served. */
  readonly without: Int32Array
  /** 1 where the start's day counts as windy. */
  readonly windy: Uint8Array
}

export interface MonthRides {
  readonly sky: Sky
  readonly batches: readonly BatchRides[]
  readonly horizon: number
}

export interface MonthSpan {
  readonly month: number
  /** [h] */
  readonly hours: number
  /** How far each start is followed. [min] */
  readonly horizon: number
}

export function monthRides(
  prepared: Prepared,
  { sky, batches }: MonthSky,
  equipped: Equipped,
  loads: readonly RideLoad[],
  span: MonthSpan,
  progress?: (done: number, of: number) => void,
): MonthRides {
  const scratch = newScratch(prepared)
  const wanted = wantedSum(loads)
  const tolerance = Math.max(...loads.map((load) => load.toleratesMinutes))
  const follow = span.horizon + tolerance
  const looks: { day: number; batch: number; brightness: number; windMs: number }[] = []
  const ridden = batches.map((batch, which) => {
    const { house, calendar, demand } = prepared
    const end = batch.to + follow
    const window = windowOf(prepared, sky, scratch, batch.year, batch.from, end)
    const { columns } = compile(house, calendar, demand, equipped.plant, equipped.rules, window)
    const starts = batch.to - batch.from
    const spells = walkStarts(columns, equipped.rules, starts, equipped.startKwh, follow)
    const within = Math.min(Math.ceil(span.hours * 60), follow)
    const lastDay = calendar.dayOf[batch.to - 1]!
    for (let day = calendar.dayOf[batch.from]!; day <= lastDay; day++) {
      const at = day - window.firstDay
      const brightness = window.dayGhi[at]! / meanDay(prepared, span.month)
      looks.push({ day, batch: which, brightness, windMs: window.dayWindMs[at]! })
    }
    progress?.(which + 1, batches.length)
    return {
      year: batch.year,
      from: batch.from,
      rides: ridesOf(spells, loads, batch.from, span.horizon),
      without: Int32Array.from({ length: starts }, (_, s) =>
        minutesWithout(spells, s, within, wanted, batch.from),
      ),
      windy: new Uint8Array(starts),
    }
  })
  const windy = windyDays(looks)
  for (const [i, look] of looks.entries()) {
    if (windy[i]) markDay(prepared, ridden[look.batch]!, look.day)
  }
  return { sky, batches: ridden, horizon: span.horizon }
}

function markDay(prepared: Prepared, batch: BatchRides, day: number): void {
  const { start, end } = prepared.calendar.days[day]!
  batch.windy.fill(1, Math.max(0, start - batch.from), Math.max(0, end - batch.from))
}

/** Mean day of a month by its clearness. [W/m² · min] */
function meanDay(prepared: Prepared, month: number): number {
  const { sun, calendar, clearness } = prepared
  let extra = 0
  const days = calendar.days.filter((day) => day.month === month)
  for (const { start, end } of days) {
    for (let i = start; i < end; i++) extra += sun.dniExtra[Math.floor(i / 1440)]! * sun.sine[i]!
  }
  return (clearness[month - 1]! * extra) / days.length
}
