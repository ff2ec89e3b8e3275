// A time axis in hours since the cut began, labelled with what the clock on the wall shows.
//
// Time runs on evenly over a clock change; only the labels jump.

import { type Calendar, localTime, type Prepared } from '@tideover/core'
import { axisTitle, BASE_AXIS, NIGHT } from './style.js'

const DAY = 1440

/** Minutes between labels, by the hours shown at most. */
const STEPS = [
  { upTo: 1, minutes: 15 },
  { upTo: 2.5, minutes: 30 },
  { upTo: 5, minutes: 60 },
  { upTo: 10, minutes: 120 },
  { upTo: 18, minutes: 240 },
  { upTo: 36, minutes: 360 },
  { upTo: 60, minutes: 720 },
  { upTo: 8 * 24, minutes: DAY },
  { upTo: 15 * 24, minutes: 2 * DAY },
  { upTo: Number.POSITIVE_INFINITY, minutes: 5 * DAY },
] as const

/**
 * @param from  axis minute of the start
 * @param n     minutes shown
 */
export function clockAxis(calendar: Calendar, from: number, n: number): Record<string, unknown> {
  const { tickvals, ticktext } = clockTicks(calendar, from, n)
  return {
    ...BASE_AXIS,
    title: axisTitle(`local time (${calendar.zone.replaceAll('_', ' ')})`),
    range: [0, n / 60],
    tickvals,
    ticktext,
    ticks: 'outside',
    ticklen: 4,
    tickangle: 0,
  }
}

function clockTicks(
  calendar: Calendar,
  from: number,
  n: number,
): { tickvals: number[]; ticktext: string[] } {
  const step = STEPS.find(({ upTo }) => n / 60 <= upTo)!.minutes
  const tickvals: number[] = []
  const ticktext: string[] = []
  let days = 0
  for (let i = 0; i <= n; i++) {
    const minute = (from + i) % calendar.n
    const isMidnight = startsDay(calendar, minute)
    if (isMidnight) days++
    const every = step >= DAY ? isMidnight && (days - 1) % (step / DAY) === 0 : false
    if (!every && !(step < DAY && calendar.wallMinute[minute]! % step === 0)) continue
    const [weekday, day, month, clock] = localTime(calendar, from + i).split(' ')
    const date = `${weekday} ${day} ${month}`
    tickvals.push(i / 60)
    if (step >= DAY) ticktext.push(`${weekday}<br>${day} ${month}`)
    else ticktext.push(isMidnight || tickvals.length === 1 ? `${clock}<br>${date}` : `${clock}`)
  }
  return { tickvals, ticktext }
}

function startsDay(calendar: Calendar, minute: number): boolean {
  return calendar.days[calendar.dayOf[minute]!]!.start === minute
}

/** Spans with the sun below the horizon, in minutes since the start: [from, to). */
export function nights(
  prepared: Pick<Prepared, 'sun' | 'calendar'>,
  from: number,
  n: number,
): [number, number][] {
  const { sine } = prepared.sun
  return spans(n, (i) => !(sine[(from + i) % prepared.calendar.n]! > 0))
}

/** Runs of minutes for which something holds: [from, to). */
export function spans(n: number, holds: (minute: number) => boolean): [number, number][] {
  const found: [number, number][] = []
  let from = -1
  for (let i = 0; i <= n; i++) {
    const on = i < n && holds(i)
    if (on && from < 0) from = i
    if (!on && from >= 0) {
      found.push([from, i])
      from = -1
    }
  }
  return found
}

/** A night as a shape behind one panel. */
export function nightShape(
  [from, to]: readonly [number, number],
  yaxis: string,
): Record<string, unknown> {
  return {
    type: 'rect',
    xref: 'x',
    yref: `${yaxis} domain`,
    x0: from / 60,
    x1: to / 60,
    y0: 0,
    y1: 1,
    fillcolor: NIGHT,
    line: { width: 0 },
    layer: 'below',
  }
}
