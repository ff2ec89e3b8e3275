// A weather record laid onto the house's calendar by month, day and time of day.
//
// Intervals of more than 15 minutes are spread as the hours of a synthetic day are: sun and cloud
// alternate, the interval's energy and beam kept. Shorter ones are taken as they are.

import { type Calendar, MINUTE_MS } from '../axis/calendar.js'
import { InputError } from '../house/problem.js'
import { airOfYear } from './air.js'
import { copyInterval, newIntervalRoom, spreadInterval } from './record-interval.js'
import type { Sky } from './sky.js'
import { newSunSums, type SunYear, sumSun } from './sun-year.js'
import type { WeatherRecord } from './weather-record.js'

const COARSE_MINUTES = 15
const WIND_MS = 1
/** A year may lack its first or last hours. */
const LEAST_DAYS = 364.5

/**
 * @param monthlyC  used where the record has no air temperature; null then refuses
 * @throws          InputError where the record is shorter than a year or lacks air
 */
export function recordSky(
  year: SunYear,
  record: WeatherRecord,
  monthlyC: readonly number[] | null,
  seed: number,
): Sky {
  const { calendar } = year
  const layout = new RecordLayout(record, calendar)
  if (record.airC === null && monthlyC === null) {
    throw new InputError(
      'sky.airC',
      'given [°C]: the weather file has no air temperature',
      undefined,
    )
  }
  const room = newIntervalRoom(year)
  const step = record.stepMinutes
  return {
    kind: 'file',
    years: layout.years,
    hasExtremes: !record.typicalYear,
    fill(k, from, to, into) {
      for (let a = from - ((from + layout.phase) % step); a < to; a += step) {
        const at = layout.indexOf(k, Math.max(0, a + (step >> 1)))
        if (step <= COARSE_MINUTES) copyInterval(into, room, record, at, a)
        else {
          const number = k * 8784 * 32 + Math.floor(a / step)
          spreadInterval(into, room, record, at, a, seed, number)
        }
      }
    },
    airC: (k) =>
      record.airC === null
        ? airOfYear(monthlyC as number[], calendar, null, 0, 0, true)
        : layout.hourly(k, record.airC),
    windMs: (k) => (record.windMs === null ? null : layout.hourly(k, record.windMs)),
  }
}
/** Finds the interval of a record for a minute of the house's calendar. */
class RecordLayout {
  readonly years: number
  /** Minutes by which the record's intervals begin before those of the axis. */
  readonly phase: number

  constructor(
    private readonly record: WeatherRecord,
    private readonly calendar: Calendar,
  ) {
    const days = daysOf(record)
    this.years = Math.max(1, Math.floor((days + 0.5) / 365))
    if (days < LEAST_DAYS) {
      throw new InputError(record.name, 'a record of a year or more', `${days.toFixed(1)} days`)
    }
    const standard = calendar.startMs / MINUTE_MS + record.utcOffsetMinutes
    this.phase = standard % record.stepMinutes
  }

  /** Index of the interval that covers a minute, -1 where the record has none. */
  indexOf(year: number, minute: number): number {
    const { calendar, record } = this
    const ms = calendar.startMs + (minute + record.utcOffsetMinutes) * MINUTE_MS
    const date = new Date(ms)
    const first = new Date(record.startMs)
    const month = date.getUTCMonth()
    // A leap day that the record lacks takes the day before.
    const leap = month === 1 && date.getUTCDate() === 29
    let target = first.getUTCFullYear() + (year % this.years)
    const at = (y: number): number =>
      Date.UTC(
        y,
        month,
        leap && !isLeap(y) ? 28 : date.getUTCDate(),
        date.getUTCHours(),
        date.getUTCMinutes(),
      )
    while (at(target) < record.startMs) target += this.years
    const index = Math.floor((at(target) - record.startMs) / MINUTE_MS / record.stepMinutes)
    if (index < record.ghi.length) return index
    const before = Math.floor(
      (at(target - this.years) - record.startMs) / MINUTE_MS / record.stepMinutes,
    )
    return before >= 0 && before < record.ghi.length ? before : -1
  }

  /** A column of the record as hourly values of the house's year. */
  hourly(year: number, column: Float64Array): Float64Array {
    const out = new Float64Array(Math.ceil(this.calendar.n / 60))
    let last = WIND_MS
    for (let h = 0; h < out.length; h++) {
      const value = column[this.indexOf(year, h * 60 + 30)]
      if (value !== undefined && !Number.isNaN(value)) last = value
      out[h] = last
    }
    return out
  }
}

function daysOf(record: WeatherRecord): number {
  return (record.ghi.length * record.stepMinutes) / 1440
}

function isLeap(year: number): boolean {
  return new Date(Date.UTC(year, 1, 29)).getUTCMonth() === 1
}

/** Monthly mean clearness of a record: global over extraterrestrial, month by month. */
export function recordClearness(year: SunYear, record: WeatherRecord): number[] {
  const { calendar } = year
  const layout = new RecordLayout(record, calendar)
  const step = record.stepMinutes
  const ghi = new Float64Array(12)
  const extra = new Float64Array(12)
  const sum = newSunSums()
  for (const day of calendar.days) {
    const month = day.month - 1
    sumSun(year, day.start, day.end, sum)
    extra[month]! += sum.extra
    for (let i = day.start; i < day.end; i += step) {
      const value = record.ghi[layout.indexOf(0, i + (step >> 1))]
      if (value !== undefined && !Number.isNaN(value)) ghi[month]! += value * step
    }
  }
  return Array.from(ghi, (value, m) => (extra[m]! > 0 ? value / extra[m]! : 0.5))
}

/**
 * Minutes by which the light of a record comes after that of a clear sky: the distance of their
 * centres of gravity, day by day, each day counted by its light. Clouds move it by some ten.
 *
 * @returns  [min], negative where it comes before; NaN for a record without light or of less than a
 *           year
 */
export function recordLagMinutes(year: SunYear, record: WeatherRecord): number {
  const { calendar } = year
  if (daysOf(record) < LEAST_DAYS) return Number.NaN
  const layout = new RecordLayout(record, calendar)
  const step = record.stepMinutes
  let lag = 0
  let weight = 0
  for (const day of calendar.days) {
    const clear = { sum: 0, moment: 0 }
    const light = { sum: 0, moment: 0 }
    for (let i = day.start; i < day.end; i++) {
      clear.sum += year.ghi[i]!
      clear.moment += year.ghi[i]! * (i + 0.5)
    }
    for (let i = day.start; i < day.end; i += step) {
      const value = record.ghi[layout.indexOf(0, i + (step >> 1))]
      if (!(value !== undefined && value > 0)) continue
      light.sum += value
      light.moment += value * (i + step / 2)
    }
    if (!(clear.sum > 0 && light.sum > 0)) continue
    lag += light.sum * (light.moment / light.sum - clear.moment / clear.sum)
    weight += light.sum
  }
  return lag / weight
}

/** Monthly mean air temperature of a record, or null where it has none. */
export function recordAirC(year: SunYear, record: WeatherRecord): number[] | null {
  if (record.airC === null) return null
  const hourly = new RecordLayout(record, year.calendar).hourly(0, record.airC)
  const sums = new Float64Array(12)
  const counts = new Float64Array(12)
  for (const day of year.calendar.days) {
    for (let i = day.start; i < day.end; i += 60) {
      sums[day.month - 1]! += hourly[Math.floor(i / 60)]!
      counts[day.month - 1]! += 1
    }
  }
  return Array.from(sums, (sum, m) => sum / counts[m]!)
}
