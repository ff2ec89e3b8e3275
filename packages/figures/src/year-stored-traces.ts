// What is drawn of a year of stored energy: the band of its days, its extremes, times without power.

import { type Calendar, type Trace as CutTrace, localTime } from '@tideover/core'
import { spans } from './clock-axis.js'
import { extremes, WIDEST_PX } from './decimate.js'
import type { Trace } from './figure.js'
import { offSpans } from './state-strip.js'
import { AREAS, BAD, INK } from './style.js'
import type { StoredDay, StoredMinutes } from './year-stored-days.js'

const DAY = 1440

/** Greatest of each day, and least, with the band between filled; each at its own minute. */
export function bandTraces(
  stored: StoredMinutes,
  days: readonly StoredDay[],
  calendar: Calendar,
): Trace[] {
  const line = (which: 'greatest' | 'least') => ({
    type: 'scatter',
    mode: 'lines',
    name: `${which} of the day`,
    // A day of which nothing is known has its place, and no value.
    x: days.map((day) => ((day[which] ?? day.from) + 1) / DAY),
    y: days.map((day) => (day[which] === null ? Number.NaN : kwhAt(stored, day[which]))),
    text: days.map((day) => clockAt(stored, day[which] ?? day.from, calendar)),
    hovertemplate: `%{text}: ${which} of the day %{y:.2f} kWh<extra></extra>`,
  })
  return [
    bandTrace(stored, days),
    { ...line('greatest'), line: { color: AREAS.battery, width: 0.8, simplify: false } },
    { ...line('least'), line: { color: AREAS.battery, width: 1.6, simplify: false } },
  ]
}

/** Forth along the greatest and back along the least, once for each run of days that are known. */
function bandTrace(stored: StoredMinutes, days: readonly StoredDay[]): Trace {
  const runs = spans(days.length, (i) => days[i]!.least !== null)
  const rows = runs.flatMap(([from, to]) => {
    const run = days.slice(from, to)
    return [...run.map((day) => day.greatest), ...run.map((day) => day.least).reverse(), null]
  })
  return {
    type: 'scatter',
    mode: 'lines',
    name: 'band',
    x: rows.map((row) => (row === null ? null : (row + 1) / DAY)),
    y: rows.map((row) => (row === null ? null : kwhAt(stored, row))),
    line: { width: 0, simplify: false },
    fill: 'toself',
    fillcolor: 'rgba(31,79,130,0.3)',
    hoverinfo: 'skip',
  }
}

/** Rows of the least and the greatest of all. */
export function storedExtremes({ storedKwh }: StoredMinutes): number[] {
  return extremes(storedKwh, 0, storedKwh.length)
}

export function extremeMarks(stored: StoredMinutes, calendar: Calendar): Trace[] {
  const rows = storedExtremes(stored)
  return [
    {
      type: 'scatter',
      mode: 'markers',
      name: 'least and greatest',
      x: rows.map((row) => (row + 1) / DAY),
      y: rows.map((row) => kwhAt(stored, row)),
      text: rows.map((row) => clockAt(stored, row, calendar)),
      marker: {
        symbol: ['triangle-up', 'triangle-down'],
        size: 9,
        color: AREAS.sun,
        line: { color: INK, width: 1 },
      },
      cliponaxis: false,
      hovertemplate: '%{text}: %{y:.2f} kWh<extra></extra>',
    },
  ]
}

/** Runs of minutes without power: [from, to) in the column. */
export function withoutPower({ states, storedKwh }: StoredMinutes): [number, number][] {
  if (states === undefined) return []
  const seen: Pick<CutTrace, 'states' | 'n'> = { states, n: storedKwh.length }
  return offSpans(seen)
}

/** A stroke below the axis for each of them; of those on the same pixel one. */
export function offTrace(stored: StoredMinutes, yKwh: number): Trace[] {
  const n = stored.storedKwh.length
  const off = withoutPower(stored)
  if (off.length === 0) return []
  const pixels = new Map<number, number>()
  for (const [from, to] of off) {
    const [a, b] = [pixelOf(from, n), pixelOf(to - 1, n)]
    for (let pixel = a; pixel <= b; pixel++) {
      if (!pixels.has(pixel)) pixels.set(pixel, Math.max(from, Math.ceil((pixel * n) / WIDEST_PX)))
    }
  }
  const x = [...pixels.values()].map((minute) => minute / DAY)
  return [
    {
      type: 'scatter',
      mode: 'markers',
      name: 'no power',
      x,
      y: x.map(() => yKwh),
      marker: { symbol: 'line-ns', size: 7, line: { color: BAD, width: 1.2 } },
      cliponaxis: false,
      hoverinfo: 'skip',
    },
  ]
}

function pixelOf(minute: number, n: number): number {
  return Math.floor((minute * WIDEST_PX) / n)
}

/** A minute that matters, at what is stored then. */
export function markTrace(
  stored: StoredMinutes,
  minute: number,
  words: string,
  calendar: Calendar,
): Trace {
  return {
    type: 'scatter',
    mode: 'markers',
    name: words,
    x: [(minute + 1) / DAY],
    y: [kwhAt(stored, minute)],
    text: [clockAt(stored, minute, calendar)],
    marker: { symbol: 'circle', size: 8, color: BAD, line: { color: '#ffffff', width: 1 } },
    cliponaxis: false,
    hovertemplate: `${words}, %{text}: %{y:.2f} kWh<extra></extra>`,
  }
}

function kwhAt({ storedKwh }: StoredMinutes, row: number): number {
  return Math.round(1000 * storedKwh[row]!) / 1000
}

/** Values hold at the end of their minute. */
export function clockAt({ from }: StoredMinutes, row: number, calendar: Calendar): string {
  return localTime(calendar, from + row + 1)
}
