// Rows of a weather file to a weather record: one regular axis, gaps bridged, nights not below zero.
//
// A typical year mixes source years: it is laid on 2001. A record of real years without a
// 29 February gets that day from the day before.

import type { WeatherRecord } from '@tideover/core'
import type { Faults } from '../faults.js'
import { bridgeGaps, type Gap, gapLength, lineOfGap } from '../time/gaps.js'
import { type Axis, checkedStep, layOut, linesOfSlots } from '../time/regular.js'
import { count, duration, moment, offsetText } from '../time/say.js'
import { type RawWeather, WEATHER_COLUMNS, type WeatherColumn } from './raw-weather.js'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000
const YEAR_MINUTES = 525_600
/** Longest gap that a straight line may bridge. [min] */
const BRIDGED_MINUTES = 180
const TYPICAL_ON = 2001
/** Columns that can't be below zero. */
const NOT_NEGATIVE: readonly WeatherColumn[] = ['ghi', 'dni', 'dhi', 'windMs']
const NAMES = {
  ghi: 'ghi',
  dni: 'dni',
  dhi: 'dhi',
  airC: 'air temperature',
  windMs: 'wind',
} as const

/**
 * Lays rows on an axis.
 *
 * @throws InputError for gaps over 3 h, a step that is none, and values that can't be
 */
export function layOnAxis(raw: RawWeather, faults: Faults): WeatherRecord {
  const stepMinutes = checkedStep(raw.stampMs, raw.lines[0] ?? 1, faults)
  const back = raw.marksEnd ? stepMinutes * MINUTE_MS : 0
  const starts = raw.stampMs.map((ms) => ms - back)
  const mixed = mixesYears(starts, stepMinutes)
  const typicalYear = raw.typicalYear || mixed
  if (mixed) layOnTypicalYear(starts)
  const axis = layOut(starts, stepMinutes, raw.lines, faults)
  const lineOfSlot = linesOfSlots(axis, raw.lines)
  const leapDays = absentLeapDays(axis, lineOfSlot)
  const notes: string[] = []
  const column = (name: WeatherColumn): Float64Array | null => {
    const values = raw.columns[name]
    return values && finishColumn(name, values, axis, lineOfSlot, leapDays, notes, faults)
  }
  const [ghi, dni, dhi, airC, windMs] = WEATHER_COLUMNS.map(column)
  if (!ghi) faults.add(null, 'a record with global irradiance [W/m²]', 'none')
  faults.throwIfAny()
  const doubled = raw.lines.length - lineOfSlot.filter((line) => line > 0).length
  return {
    name: raw.name,
    stepMinutes,
    startMs: axis.startMs,
    utcOffsetMinutes: raw.utcOffsetMinutes,
    ghi: ghi as Float64Array,
    dni: dni ?? null,
    dhi: dhi ?? null,
    airC: airC ?? null,
    windMs: windMs ?? null,
    typicalYear,
    site: raw.site,
    notes: [
      ...axisNotes(raw, axis, mixed, typicalYear),
      ...raw.notes,
      ...(leapDays.length > 0
        ? [
            `${count(leapDays.length, '29 February', '29 Februaries')} absent: the day before repeated.`,
          ]
        : []),
      ...(doubled > 0
        ? [`${count(doubled, 'row')} of a repeated time or of a leap day left out.`]
        : []),
      ...notes,
    ],
  }
}

/** Whether rows of one year's length name source years that don't follow one another. */
function mixesYears(starts: Float64Array, stepMinutes: number): boolean {
  if (starts.length * stepMinutes > 366 * 1440) return false
  let least = Number.POSITIVE_INFINITY
  let most = Number.NEGATIVE_INFINITY
  let falls = 0
  for (let i = 0; i < starts.length; i++) {
    least = Math.min(least, starts[i]!)
    most = Math.max(most, starts[i]!)
    if (i > 0 && starts[i]! < starts[i - 1]! - 300 * DAY_MS) falls++
  }
  const span = (most - least) / MINUTE_MS
  return falls > 0 || (span > YEAR_MINUTES * 1.5 && span > 3 * starts.length * stepMinutes)
}

/** Moves starts to 2001 in place; rows of a 29 February become NaN and are left out. */
function layOnTypicalYear(starts: Float64Array): void {
  for (let i = 0; i < starts.length; i++) {
    const date = new Date(starts[i]!)
    const month = date.getUTCMonth()
    const day = date.getUTCDate()
    const timeOfDay = ((starts[i]! % DAY_MS) + DAY_MS) % DAY_MS
    const isLeapDay = month === 1 && day === 29
    starts[i] = isLeapDay ? Number.NaN : Date.UTC(TYPICAL_ON, month, day) + timeOfDay
  }
}

/** First intervals of those 29 Februaries that have no row at all. */
function absentLeapDays(axis: Axis, lineOfSlot: Int32Array): number[] {
  const perDay = 1440 / axis.stepMinutes
  const endMs = axis.startMs + axis.n * axis.stepMinutes * MINUTE_MS
  const found: number[] = []
  for (let year = new Date(axis.startMs).getUTCFullYear(); Date.UTC(year, 0) < endMs; year++) {
    const leapDay = Date.UTC(year, 1, 29)
    if (new Date(leapDay).getUTCDate() !== 29) continue
    const from = Math.round((leapDay - axis.startMs) / (axis.stepMinutes * MINUTE_MS))
    if (from < perDay || from + perDay > axis.n) continue
    if (lineOfSlot.subarray(from, from + perDay).every((line) => line === 0)) found.push(from)
  }
  return found
}

function finishColumn(
  name: WeatherColumn,
  values: Float64Array,
  axis: Axis,
  lineOfSlot: Int32Array,
  leapDays: readonly number[],
  notes: string[],
  faults: Faults,
): Float64Array | null {
  const column = new Float64Array(axis.n).fill(Number.NaN)
  for (let i = 0; i < values.length; i++) {
    const slot = axis.slot[i]!
    if (slot >= 0 && Number.isNaN(column[slot]!)) column[slot] = values[i]!
  }
  if (column.every((value) => Number.isNaN(value))) {
    if (name !== 'ghi') notes.push(`${capital(NAMES[name])} is missing throughout: left out.`)
    return null
  }
  const perDay = 1440 / axis.stepMinutes
  for (const from of leapDays) column.copyWithin(from, from - perDay, from)
  if (NOT_NEGATIVE.includes(name)) clip(name, column, notes)
  checkRange(name, column, lineOfSlot, faults)
  const { filled, long } = bridgeGaps(column, Math.floor(BRIDGED_MINUTES / axis.stepMinutes))
  if (filled.length > 0) notes.push(filledNote(name, filled, axis.stepMinutes))
  for (const gap of long) {
    const from = moment(axis.startMs + gap.from * axis.stepMinutes * MINUTE_MS)
    const need = `a record without gaps over 3 h in ${NAMES[name]} (fill it, or cut the record there)`
    const got = `${duration((gap.to - gap.from) * axis.stepMinutes)} without a value from ${from}`
    faults.add(lineOfGap(gap, lineOfSlot), need, got)
  }
  return column
}

function clip(name: WeatherColumn, column: Float64Array, notes: string[]): void {
  let clipped = 0
  let least = 0
  for (let i = 0; i < column.length; i++) {
    if (!(column[i]! < 0)) continue
    least = Math.min(least, column[i]!)
    column[i] = 0
    clipped++
  }
  if (clipped === 0) return
  const values = count(clipped, 'value')
  notes.push(
    `${capital(NAMES[name])}: ${values} below zero taken as 0 (lowest ${least.toFixed(1)}).`,
  )
}

/** Beyond these a unit or a column is wrong. */
const MOST: Readonly<Record<WeatherColumn, readonly [number, string]>> = {
  ghi: [2000, 'irradiance of at most 2000 [W/m²]'],
  dni: [1500, 'irradiance of at most 1500 [W/m²]'],
  dhi: [1500, 'irradiance of at most 1500 [W/m²]'],
  airC: [60, 'air temperature of at most 60 [°C]'],
  windMs: [90, 'wind of at most 90 [m/s]'],
}

function checkRange(
  name: WeatherColumn,
  column: Float64Array,
  lineOfSlot: Int32Array,
  faults: Faults,
): void {
  const [most, need] = MOST[name]
  for (let i = 0; i < column.length; i++) {
    if (column[i]! > most) faults.add(lineOfSlot[i] || null, need, `${column[i]}`)
  }
}

function filledNote(name: WeatherColumn, filled: readonly Gap[], stepMinutes: number): string {
  const length = duration(gapLength(filled) * stepMinutes)
  return `${capital(NAMES[name])}: ${count(filled.length, 'gap')} filled by a straight line, ${length} in all.`
}

function axisNotes(raw: RawWeather, axis: Axis, mixed: boolean, typicalYear: boolean): string[] {
  const minutes = axis.n * axis.stepMinutes
  const from = moment(axis.startMs)
  const to = moment(axis.startMs + minutes * MINUTE_MS)
  const zone = offsetText(raw.utcOffsetMinutes)
  const period = `${from} to ${to}, standard time ${zone}: ${count(axis.n, 'interval')} of ${axis.stepMinutes} min.`
  const notes = [mixed ? `Typical year of mixed source years, laid on ${TYPICAL_ON}.` : period]
  if (mixed) notes.push(period)
  else if (typicalYear) notes.push('The file calls itself a typical year.')
  if (minutes < YEAR_MINUTES) notes.push(`Covers ${duration(minutes)}, less than a year.`)
  notes.push(`A stamp marks the ${raw.marksEnd ? 'end' : 'start'} of its interval.`)
  return notes
}

function capital(text: string): string {
  return text.length <= 3 ? text.toUpperCase() : text.charAt(0).toUpperCase() + text.slice(1)
}
