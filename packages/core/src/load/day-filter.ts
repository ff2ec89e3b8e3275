// On which days and at which hours a line of the survey runs.

import { type Calendar, clockMinute, DAY_MINUTES, inSpan, type LocalDay } from '../axis/calendar.js'
import { weekdayOf } from '../house/holidays.js'
import { type House, type LoadInput, WEEKDAYS } from '../house/house.js'
import { InputError } from '../house/problem.js'
import type { NewColumn } from '../units/year-column.js'

/** The year that survey lines are laid on. */
export interface SurveyYear {
  readonly house: House
  readonly calendar: Calendar
  /** Mean air of the year by the hour; null where no load needs it. [hours], [°C] */
  readonly airC: Float64Array | null
  /** Where columns that are kept are made; ordinary memory where left out. */
  readonly newColumn?: NewColumn | undefined
}

/** 1 for each day of the calendar on which a load runs. [days] */
export function daysOn(load: LoadInput, year: SurveyYear): Uint8Array {
  return Uint8Array.from(year.calendar.days, (day) => (isOn(load, day, year) ? 1 : 0))
}

function isOn({ runs, months, days }: LoadInput, day: LocalDay, year: SurveyYear): boolean {
  const { house, calendar } = year
  if (runs !== 'always' && !house.heatingMonths.includes(day.month)) return false
  if (typeof runs === 'object' && !(meanAirC(day, year) - house.sky.airMarginK < runs.below)) {
    return false
  }
  if (months !== undefined && !months.includes(day.month)) return false
  const weekday = WEEKDAYS[weekdayOf(day, calendar.year, house.holidays) - 1]
  return days === undefined || (weekday !== undefined && days.includes(weekday))
}

/** The air by the hour, for a load that follows it. */
export function airOf({ airC }: SurveyYear): Float64Array {
  if (airC === null) throw new InputError('airC', 'given, for loads that follow the air', airC)
  return airC
}

/** Mean air of a day. [°C] */
export function meanAirC({ start, end }: LocalDay, year: SurveyYear): number {
  const airC = airOf(year)
  let sum = 0
  for (let i = start; i < end; i += 60) sum += airC[Math.floor(i / 60)]!
  return sum / Math.ceil((end - start) / 60)
}

/** First minute and one past the last of a span of the clock on the wall. */
export function spanMinutes(span: string): readonly [number, number] {
  const [from, to] = span.split('-').map((part) => clockMinute(part.trim()) ?? 0)
  return [from ?? 0, to ?? 0]
}

/** 1 for each minute of the clock on the wall within a span; all of them without spans. [1440] */
export function hoursOpen(spans: readonly string[] | undefined): Uint8Array {
  const open = new Uint8Array(DAY_MINUTES)
  if (spans === undefined) return open.fill(1)
  for (const [from, to] of spans.map(spanMinutes)) {
    for (let wall = 0; wall < DAY_MINUTES; wall++) if (inSpan(wall, from, to)) open[wall] = 1
  }
  return open
}
