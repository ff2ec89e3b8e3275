// The spells behind the skies `dull` and `none`.
//
// `dull`: for each day a cut may meet first, the synthetic winter in which the yield on
// the planes over the days of the cut is undercut once in R winters.
//
// 200 synthetic winters are ranked for each day on its own, over N whole days from it; the winter
// at rank 200/R is taken and lived as it is: its N days, and after them its further course.
// The N days are those of the first N noons of the cut, so that a cut in the evening does not
// spend its dull day on an afternoon already past.
//
// `none` is no light at all in the cold: the winters are ranked by the air of the same days and of
// the day before them, for a garage remembers it.

import type { TypicalSky } from '../sky/typical.js'
import { newDayHours } from '../sky/within-day.js'
import { loggedDay } from './logged-array.js'
import type { Prepared } from './prepare.js'

export interface SpellDay {
  /** Index in the calendar of the first day of the spell. */
  readonly day: number
  /** The synthetic year that is lived. */
  readonly year: number
}

/** Days of the cut: hours over 24, rounded up, at least 1. */
export function daysOfCut(hours: number): number {
  return Math.max(1, Math.ceil(hours / 24))
}

/**
 * The winter to live for spells that begin on each of some days.
 *
 * @param typical  a typical sky of `DULL_YEARS` years
 * @param days     first and one past the last calendar day; days past the year's end wrap
 * @param length   N, days of the cut
 * @param winters  R, the return period, 1..DULL_YEARS
 */
export function dullYears(
  prepared: Prepared,
  typical: TypicalSky,
  days: readonly [number, number],
  length: number,
  winters: number,
): SpellDay[] {
  return dullYearsOf(prepared, typical, days, [length], winters)[0]!
}

/** The same for cuts of several lengths, whose yields are worked out once. [lengths][days] */
export function dullYearsOf(
  prepared: Prepared,
  typical: TypicalSky,
  days: readonly [number, number],
  lengths: readonly number[],
  winters: number,
): SpellDay[][] {
  const [first, last] = days
  const yields = planeYields(prepared, typical, first, last - 1 + Math.max(...lengths))
  return lengths.map((length) => rankedYears(yields, days, length, typical.years, winters))
}

/** The same by how cold the air is. */
export function coldYears(
  prepared: Prepared,
  typical: TypicalSky,
  days: readonly [number, number],
  length: number,
  winters: number,
): SpellDay[] {
  const [first, last] = days
  const air = dailyAir(prepared, typical, first - 1, last - 1 + length)
  return rankedYears(air, days, length + 1, typical.years, winters)
}

/** For each day the winter at rank years/R of its sums over `length` days, the least first. */
function rankedYears(
  values: readonly Float64Array[],
  [first, last]: readonly [number, number],
  length: number,
  years: number,
  winters: number,
): SpellDay[] {
  const rank = Math.max(0, Math.floor(years / winters) - 1)
  return Array.from({ length: last - first }, (_, offset) => {
    const sums = values.map((year, k) => {
      let sum = 0
      for (let d = offset; d < offset + length; d++) sum += year[d]!
      return { k, sum }
    })
    sums.sort((a, b) => a.sum - b.sum || a.k - b.k)
    return { day: first + offset, year: sums[rank]!.k }
  })
}

/** Mean air temperature by synthetic year and day. [years][days], [°C] */
function dailyAir(
  { calendar }: Prepared,
  typical: TypicalSky,
  first: number,
  last: number,
): Float64Array[] {
  const { days } = calendar
  return Array.from({ length: typical.years }, (_, k) => {
    const out = new Float64Array(last - first)
    // Days before and after the year are those of the numbered years beside it.
    const years = new Map<number, Float64Array>()
    for (let at = first; at < last; at++) {
      const lap = Math.floor(at / days.length)
      const year = (k + lap + typical.years) % typical.years
      const air = years.get(year) ?? typical.airC(year)
      years.set(year, air)
      const { start, end } = days[at - lap * days.length]!
      let sum = 0
      for (let i = start; i < end; i += 60) sum += air[Math.floor(i / 60)]!
      out[at - first] = sum / Math.ceil((end - start) / 60)
    }
    return out
  })
}

/** Yield on all planes by synthetic year and day, up to a common factor. [years][days] */
function planeYields(
  prepared: Prepared,
  typical: TypicalSky,
  first: number,
  last: number,
): Float64Array[] {
  const planes = prepared.arrays.map((array) => ({
    array,
    ratios: new Map<number, Float64Array>(),
  }))
  const { days } = prepared.calendar
  const hours = newDayHours()
  return Array.from({ length: typical.years }, (_, k) => {
    const out = new Float64Array(last - first)
    for (let at = first; at < last; at++) {
      const d = at % days.length
      const year = (k + Math.floor(at / days.length)) % typical.years
      typical.fillHours(year, d, hours)
      let sum = 0
      for (const { array, ratios } of planes) {
        const { log } = array
        const logged = log === null ? null : loggedDay(log, d, typical.dayRank?.(year, d))
        if (logged !== null) {
          // kW · min as the light of a thousand W/m² on as many kilowatts.
          for (const kw of logged) sum += 1000 * kw
          continue
        }
        const ratio = ratios.get(d) ?? beamRatios(prepared, array.geometry, d)
        ratios.set(d, ratio)
        const { skyShare, groundShare } = array.geometry
        for (let h = 0; h < hours.count; h++) {
          const [ghi, dhi] = [hours.ghi[h]!, hours.dhi[h]!]
          sum += array.peakKw * ((ghi - dhi) * ratio[h]! + dhi * skyShare + 0.2 * ghi * groundShare)
        }
      }
      out[at - first] = sum
    }
    return out
  })
}

/** Beam on the plane over beam on level ground, hour by hour of a day, under a clear sky. */
function beamRatios(
  prepared: Prepared,
  geometry: { readonly beamShare: Float64Array },
  d: number,
): Float64Array {
  const { sun, calendar } = prepared
  const day = calendar.days[d]!
  const out = new Float64Array(26)
  for (let h = 0; day.start + 60 * h < day.end; h++) {
    let plane = 0
    let level = 0
    for (let i = day.start + 60 * h; i < Math.min(day.end, day.start + 60 * h + 60); i++) {
      plane += sun.dni[i]! * geometry.beamShare[i]!
      level += sun.dni[i]! * sun.sine[i]!
    }
    out[h] = level > 0 ? plane / level : 0
  }
  return out
}
