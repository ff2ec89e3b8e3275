// Many seeded years from monthly mean clearness: good Januaries and bad ones.

import { InputError } from '../house/problem.js'
import { airOfYear } from './air.js'
import {
  DARKEST_DAY,
  type DayLaw,
  dailyScores,
  dayIndex,
  dayLaw,
  rankOfScore,
} from './daily-index.js'
import type { Sky } from './sky.js'
import { newSunSums, type SunYear, sumSun } from './sun-year.js'
import {
  type DayHours,
  fillDayHours,
  newCloudSpells,
  newDayHours,
  spreadHour,
} from './within-day.js'

/**
 * A month whose clear days bring less than this is polar: its clearness is twilight and low sun, which
 * no clear sky knows, so it is held within what the sky can give. [W/m² · min a day], 0.25 kWh/m²
 */
const POLAR_DAY = 15_000

export interface TypicalSky extends Sky {
  /** Hourly sums of one local day, by its index in the calendar. */
  fillHours(year: number, day: number, into: DayHours): void
}

/**
 * @param clearness  monthly mean of global over extraterrestrial irradiation, January first
 * @param monthlyC   monthly mean air temperature. [°C]
 * @param years      synthetic years, numbered from 0
 * @throws           InputError where a month is asked to be brighter than the clear sky allows, but
 *                   for months of polar winter
 */
export function typicalSky(
  year: SunYear,
  clearness: readonly number[],
  monthlyC: readonly number[],
  seed: number,
  years: number,
): TypicalSky {
  const { calendar } = year
  const northern = calendarIsNorthern(year)
  const laws = monthLaws(year, clearness)
  const scores = new Map<number, Float64Array>()
  const hours = newDayHours()
  const spells = newCloudSpells()
  const scoresOf = (k: number): Float64Array => {
    const found = scores.get(k) ?? dailyScores(seed, k, calendar, northern)
    scores.set(k, found)
    return found
  }
  const fillHours = (k: number, d: number, into: DayHours): void => {
    const day = calendar.days[d]!
    const index = dayIndex(laws[day.month - 1]!, scoresOf(k)[d]!)
    fillDayHours(into, year, day.start, day.end, index, seed, k * 366 + d)
  }
  return {
    kind: 'typical',
    years,
    hasExtremes: true,
    dayRank: (k, d) => rankOfScore(scoresOf(k)[d]!),
    fillHours,
    fill(k, from, to, into) {
      for (let d = calendar.dayOf[from]!; d < calendar.days.length; d++) {
        const day = calendar.days[d]!
        if (day.start >= to) return
        fillHours(k, d, hours)
        for (let h = 0; h < hours.count; h++) {
          const a = day.start + 60 * h
          const b = Math.min(day.end, a + 60)
          if (b <= from || a >= to) continue
          const number = (k * 366 + d) * 32 + h
          spreadHour(into, spells, year, a, b, hours.ghi[h]!, hours.dhi[h]!, seed, number)
        }
      }
    },
    airC: (k) => airOfYear(monthlyC, calendar, scoresOf(k), seed, k, northern),
    windMs: () => null,
  }
}

/** The half of the year in which the clear sky gives less tells the hemisphere. */
function calendarIsNorthern(year: SunYear): boolean {
  const sum = newSunSums()
  const quarter = Math.floor(year.calendar.n / 4)
  sumSun(year, quarter, 3 * quarter, sum)
  const middle = sum.extra
  sumSun(year, 0, quarter, sum)
  const first = sum.extra
  sumSun(year, 3 * quarter, year.calendar.n, sum)
  return middle >= first + sum.extra
}

function monthLaws(year: SunYear, clearness: readonly number[]): DayLaw[] {
  return clearness.map((value, m) => {
    const days = year.calendar.days.filter((day) => day.month === m + 1)
    const sum = newSunSums()
    sumSun(year, days[0]!.start, days.at(-1)!.end, sum)
    // Polar night: no law is needed, and none can be solved.
    if (!(sum.ghi > 0)) return dayLaw(0.5)
    const index = (value * sum.extra) / sum.ghi
    const most = (0.99 * sum.ghi) / sum.extra
    const least = ((DARKEST_DAY + 0.01) * sum.ghi) / sum.extra
    if (!(index <= 0.99 && index >= DARKEST_DAY + 0.01)) {
      if (sum.ghi < POLAR_DAY * days.length) {
        return dayLaw(Math.min(0.99, Math.max(DARKEST_DAY + 0.01, index)))
      }
      const need = `${least.toFixed(3)}..${most.toFixed(3)}, what this sky can give in the mean of that month`
      throw new InputError(`sky.clearness[${m}]`, need, value)
    }
    return dayLaw(index)
  })
}
