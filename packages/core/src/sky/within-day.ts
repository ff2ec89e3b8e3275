// From a day's brightness to its hours, and from an hour to its minutes.
//
// Hours scatter about the day with a memory of 0.54 from one to the next (V. A. Graham and
// K. G. T. Hollands, "A method to generate synthetic hourly solar radiation globally", Solar
// Energy 44, 333-341, 1990, abstract) and keep the day's sum. Erbs splits the hour; then sun and
// cloud alternate inside it, 3 to 20 minutes at a time (common practice, no source), the beam
// being that of the clear sky or nothing, so that the hour's beam is kept.

import { luck, normalLuck } from '../units/luck.js'
import { erbsDiffuseFraction } from './erbs.js'
import { newSunSums, type SunSums, type SunYear, sumSun } from './sun-year.js'

const HOUR_MEMORY = 0.54
/** Scatter of an hour's logit about its day's. */
const HOUR_SCATTER = 0.9
const SHORTEST_SPELL = 3
const LONGEST_SPELL = 20

const HOUR_STREAM = 3
const SPELL_STREAM = 4
const ORDER_STREAM = 5

/** Hours of one local day; 25 at most. Sums over the hour [W/m² · min]. */
export interface DayHours {
  count: number
  readonly ghi: Float64Array
  readonly dhi: Float64Array
  /** What the clear sky would give in each hour; overwritten with the rest. */
  readonly clear: readonly SunSums[]
}

export function newDayHours(): DayHours {
  return {
    count: 0,
    ghi: new Float64Array(26),
    dhi: new Float64Array(26),
    clear: Array.from({ length: 26 }, newSunSums),
  }
}

/**
 * Hourly sums of a day that is `index` of the clear day.
 *
 * @param dayNumber  counts days over all synthetic years: the day's luck
 */
export function fillDayHours(
  into: DayHours,
  year: SunYear,
  from: number,
  to: number,
  index: number,
  seed: number,
  dayNumber: number,
): void {
  into.count = Math.ceil((to - from) / 60)
  const scatter = new Float64Array(into.count)
  let level = 0
  for (let h = 0; h < into.count; h++) {
    const a = from + 60 * h
    sumSun(year, a, Math.min(to, a + 60), into.clear[h]!)
    const noise = normalLuck(seed, HOUR_STREAM, dayNumber * 32 + h)
    level = h === 0 ? noise : HOUR_MEMORY * level + Math.sqrt(1 - HOUR_MEMORY ** 2) * noise
    scatter[h] = Math.exp(-HOUR_SCATTER * level)
  }
  const odds = dayOdds(into.clear, scatter, index)
  for (let h = 0; h < into.count; h++) {
    const { ghi: clear, beam: clearBeam, extra } = into.clear[h]!
    const ghi = clear / (1 + odds * scatter[h]!)
    const dhi = extra > 0 ? ghi * erbsDiffuseFraction(ghi / extra) : ghi
    into.ghi[h] = ghi
    into.dhi[h] = Math.max(dhi, ghi - clearBeam)
  }
}

/** The odds of dark over bright at which the day's clear-weighted mean is its index. */
function dayOdds(sums: readonly SunSums[], scatter: Float64Array, index: number): number {
  let whole = 0
  for (let h = 0; h < scatter.length; h++) whole += sums[h]!.ghi
  if (!(whole > 0)) return 1
  const wanted = index * whole
  let low = -12
  let high = 12
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    const odds = Math.exp(middle)
    let got = 0
    for (let h = 0; h < scatter.length; h++) got += sums[h]!.ghi / (1 + odds * scatter[h]!)
    if (got > wanted) low = middle
    else high = middle
  }
  return Math.exp((low + high) / 2)
}

/** Irradiance columns on the axis of the year. [n], [W/m²] */
export interface MinuteSky {
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
}

/** Room for the spells of one hour; made once for each sky. */
export interface CloudSpells {
  readonly hour: SunSums
  readonly end: Int32Array
  readonly order: Float64Array
}

export function newCloudSpells(): CloudSpells {
  return { hour: newSunSums(), end: new Int32Array(21), order: new Float64Array(21) }
}

/**
 * Spreads the sums of an hour over its minutes [from, to).
 *
 * Light recorded where the clear sky gives none is dropped.
 *
 * @param ghi, dhi    sums over the hour. [W/m² · min], dhi <= ghi
 * @param hourNumber  counts hours over all synthetic years: the hour's luck
 * @param bright      the beam between clouds, as a share of the clear beam: below 1 in haze
 */
export function spreadHour(
  into: MinuteSky,
  spells: CloudSpells,
  year: SunYear,
  from: number,
  to: number,
  ghi: number,
  dhi: number,
  seed: number,
  hourNumber: number,
  bright = 1,
): void {
  const { hour } = spells
  sumSun(year, from, to, hour)
  const beam = Math.min(ghi - dhi, bright * hour.beam)
  const diffuse = hour.ghi > 0 ? (ghi - beam) / hour.ghi : 0
  for (let i = from; i < to; i++) {
    into.dhi[i] = diffuse * year.ghi[i]!
    into.dni[i] = 0
  }
  if (beam > 0) switchBeam(into, spells, year, from, to, beam, seed, hourNumber, bright)
  for (let i = from; i < to; i++) into.ghi[i] = into.dhi[i]! + into.dni[i]! * year.sine[i]!
}

/** Lets the beam through, spell by spell in a seeded order, until the hour has its sum. */
function switchBeam(
  into: MinuteSky,
  spells: CloudSpells,
  year: SunYear,
  from: number,
  to: number,
  beam: number,
  seed: number,
  hourNumber: number,
  bright: number,
): void {
  let count = 0
  let at = from
  while (at < to) {
    const u = luck(seed, SPELL_STREAM, hourNumber * 32 + count)
    at += SHORTEST_SPELL + Math.floor(u * (LONGEST_SPELL - SHORTEST_SPELL + 1))
    spells.end[count] = Math.min(at, to)
    spells.order[count] = luck(seed, ORDER_STREAM, hourNumber * 32 + count)
    count++
  }
  let left = beam
  while (left > 0) {
    let next = -1
    for (let s = 0; s < count; s++) {
      if (spells.order[s]! < 2 && (next < 0 || spells.order[s]! < spells.order[next]!)) next = s
    }
    if (next < 0) return
    spells.order[next] = 2
    for (
      let i = next === 0 ? from : spells.end[next - 1]!;
      i < spells.end[next]! && left > 0;
      i++
    ) {
      const dni = bright * year.dni[i]!
      const level = dni * year.sine[i]!
      if (!(level > 0)) continue
      const share = Math.min(1, left / level)
      into.dni[i] = share * dni
      left -= share * level
    }
  }
}
