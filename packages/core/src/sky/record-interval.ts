// One interval of a weather record laid over its minutes.
//
// What no sky can give is not made: no light while the sun is below the horizon, no beam above
// that of the cleanest air (the rest becomes diffuse), and where twilight would be pressed into
// the few minutes of a low sun, no more than the brightest minute that is ever recorded.

import { cleanBeam } from './clean-beam.js'
import { erbsDiffuseFraction } from './erbs.js'
import { newSunSums, type SunSums, type SunYear, sumSun } from './sun-year.js'
import type { WeatherRecord } from './weather-record.js'
import { type CloudSpells, type MinuteSky, newCloudSpells, spreadHour } from './within-day.js'

/** Hours before and after by which the brightness between clouds is judged; common practice. */
const JUDGED_HOURS = 2
/** Where all of them are dull: the beam between clouds as a share of the clear one; common practice. */
const LEAST_BRIGHT = 0.7
/** Clear beam on level ground below which an interval tells nothing. [W/m²] */
const TELLING_WM2 = 50

/** What laying out needs besides the record; made once for each. */
export interface IntervalRoom {
  readonly year: SunYear
  /** Beam of the cleanest air. [n], [W/m²] */
  readonly clean: Float64Array
  readonly spells: CloudSpells
  readonly sum: SunSums
  readonly other: SunSums
}

export function newIntervalRoom(year: SunYear): IntervalRoom {
  const [sum, other] = [newSunSums(), newSunSums()]
  return { year, clean: cleanBeam(year), spells: newCloudSpells(), sum, other }
}

/**
 * A short interval: its values stand for each of its minutes.
 *
 * @param at     index in the record, -1 for none: no light
 * @param start  first minute of the interval, which may begin before the year or end after it
 */
export function copyInterval(
  into: MinuteSky,
  room: IntervalRoom,
  record: WeatherRecord,
  at: number,
  start: number,
): void {
  const { year, clean } = room
  const [from, to] = [Math.max(0, start), Math.min(year.dni.length, start + record.stepMinutes)]
  const recorded = { dni: valueAt(record.dni, at), dhi: valueAt(record.dhi, at) }
  for (let i = from; i < to; i++) {
    const sine = year.sine[i]!
    const ghi = at < 0 || !(sine > 0) ? 0 : Math.max(0, record.ghi[at]!)
    const extra = year.dniExtra[Math.floor(i / 1440)]! * sine
    const beam = ghi === 0 ? 0 : beamOf(ghi, recorded.dhi, recorded.dni * sine, extra)
    const dni = sine > 0 ? Math.min(beam / sine, clean[i]!) : 0
    into.ghi[i] = ghi
    into.dni[i] = dni
    into.dhi[i] = ghi - dni * sine
  }
}

/**
 * A long interval: sun and cloud alternate as in an hour of a synthetic day.
 *
 * A beam above the clear one of the month is that of cleaner air, and shines throughout. Haze is no
 * cloud either: between clouds the beam is as strong as in the clearest interval of two hours
 * around, so that a steady hazy day stays steady.
 *
 * @param number  counts intervals over all years: the interval's luck
 */
export function spreadInterval(
  into: MinuteSky,
  room: IntervalRoom,
  record: WeatherRecord,
  at: number,
  start: number,
  seed: number,
  number: number,
): void {
  const { year, spells, sum } = room
  const [from, to] = [Math.max(0, start), Math.min(year.dni.length, start + record.stepMinutes)]
  sumSun(year, from, to, sum)
  const ghi = at < 0 || !(sum.ghi > 0) ? 0 : record.ghi[at]! * (to - from)
  const beam = ghi === 0 ? 0 : beamOfInterval(year, record, at, from, to, sum)
  if (beam > sum.beam) shineThroughout(into, room, from, to, ghi, beam)
  else {
    const bright = beam > 0 ? Math.max(beam / sum.beam, brightAround(room, record, at, start)) : 1
    spreadHour(into, spells, year, from, to, ghi, ghi - beam, seed, number, bright)
  }
  holdBelowBrightest(into, year, from, to)
}

/** Recorded over clear beam in the clearest of the intervals around, LEAST_BRIGHT..1. */
function brightAround(
  room: IntervalRoom,
  record: WeatherRecord,
  at: number,
  start: number,
): number {
  const { year, other } = room
  const step = record.stepMinutes
  const reach = (60 * JUDGED_HOURS) / step
  let most = LEAST_BRIGHT
  for (let away = -reach; away <= reach; away++) {
    const from = start + away * step
    if (from < 0 || from + step > year.dni.length) continue
    sumSun(year, from, from + step, other)
    if (!(other.beam > TELLING_WM2 * step)) continue
    const share = beamOfInterval(year, record, at + away, from, from + step, other) / other.beam
    if (share > most) most = share
  }
  return Math.min(1, most)
}

/** Beam on level ground over an interval. [W/m² · min], NaN outside the record */
function beamOfInterval(
  year: SunYear,
  record: WeatherRecord,
  at: number,
  from: number,
  to: number,
  sum: SunSums,
): number {
  const minutes = to - from
  const ghi = valueAt(record.ghi, at) * minutes
  const dhi = valueAt(record.dhi, at) * minutes
  const level = valueAt(record.dni, at) * minutes * sineOfBeam(year, from, to, sum)
  return beamOf(ghi, dhi, level, sum.extra)
}

/**
 * Beam on level ground: what a recorded diffuse light leaves, else the recorded beam, else by Erbs.
 *
 * @param dhi, level, extra  diffuse, beam and light above the air on level ground, in the unit of
 *                           `ghi`; NaN where not recorded
 */
function beamOf(ghi: number, dhi: number, level: number, extra: number): number {
  if (!Number.isNaN(dhi)) return Math.max(0, ghi - dhi)
  if (!Number.isNaN(level)) return Math.min(ghi, level)
  return extra > 0 ? ghi * (1 - erbsDiffuseFraction(ghi / extra)) : 0
}

function valueAt(column: Float64Array | null, at: number): number {
  return column?.[at] ?? Number.NaN
}

/** Sine of the sun as the clear beam of an interval sees it in the mean. */
function sineOfBeam(year: SunYear, from: number, to: number, sum: SunSums): number {
  let dni = 0
  for (let i = from; i < to; i++) dni += year.dni[i]!
  // A mean over the whole interval, the sun up in part of it or in all.
  return dni > 0 ? sum.beam / dni : 0
}

function shineThroughout(
  into: MinuteSky,
  room: IntervalRoom,
  from: number,
  to: number,
  ghi: number,
  beam: number,
): void {
  const { year, clean, sum } = room
  let cleanest = 0
  for (let i = from; i < to; i++) cleanest += clean[i]! * year.sine[i]!
  const gap = cleanest - sum.beam
  const share = gap > 0 ? Math.min(1, (beam - sum.beam) / gap) : 0
  const diffuse = sum.ghi > 0 ? (ghi - sum.beam - share * gap) / sum.ghi : 0
  for (let i = from; i < to; i++) {
    const dni = year.dni[i]! + share * (clean[i]! - year.dni[i]!)
    into.dni[i] = dni
    into.dhi[i] = diffuse * year.ghi[i]!
    into.ghi[i] = into.dhi[i]! + dni * year.sine[i]!
  }
}

/**
 * Holds the global at the limit that is passed "extremely rarely": 1.2 · I0n · sin(h)^1.2 + 50 W/m².
 *
 * Source: C. N. Long and E. G. Dutton, "BSRN Global Network recommended QC tests, V2.0," 2002.
 */
function holdBelowBrightest(into: MinuteSky, year: SunYear, from: number, to: number): void {
  for (let i = from; i < to; i++) {
    const sine = year.sine[i]!
    const most = 1.2 * year.dniExtra[Math.floor(i / 1440)]! * sine ** 1.2 + 50
    if (!(into.ghi[i]! > most)) continue
    into.ghi[i] = most
    into.dhi[i] = most - into.dni[i]! * sine
  }
}
