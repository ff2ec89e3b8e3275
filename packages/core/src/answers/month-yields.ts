// What the arrays give in one month of many synthetic years: good Januaries and bad ones.

import { mean } from 'simple-statistics'
import { monthRange } from '../axis/calendar.js'
import { type Prepared, typicalOf } from '../series/prepare.js'
import { acSumKw, newScratch, windowOf } from '../series/window.js'

/** One month of one synthetic year; kWh of all arrays on the island, as if all could be taken. */
export interface MonthYield {
  readonly year: number
  /** Mean of its days. [kWh a day] */
  readonly meanKwh: number
  /** Mean of its darkest days in a row. [kWh a day] */
  readonly darkestKwh: number
  /** Day of the month on which those begin, from 1. */
  readonly darkestFrom: number
}

export interface MonthYieldsQuestion {
  /** 1..12 */
  readonly month: number
  /** Synthetic years; default 30. */
  readonly years?: number
  /** Days in a row; default 3. */
  readonly days?: number
  readonly seed?: number
}

/** One entry a synthetic year, in the order of their numbers. */
export function monthYields(prepared: Prepared, question: MonthYieldsQuestion): MonthYield[] {
  const { month, years = 30, days = 3, seed = prepared.house.seed } = question
  const { calendar } = prepared
  const [from, to] = monthRange(calendar, month)
  const sky = typicalOf(prepared, seed, years)
  const scratch = newScratch(prepared)
  const local = calendar.days.filter((day) => day.month === month)
  return Array.from({ length: years }, (_, year) => {
    const window = windowOf(prepared, sky, scratch, year, from, to)
    const daily = local.map(({ start, end }) => {
      let kwh = 0
      for (let i = start - from; i < end - from; i++) {
        kwh += (acSumKw(window, i) + window.dcKw[i]!) / 60
      }
      return kwh
    })
    const spells = daily
      .slice(0, daily.length - days + 1)
      .map((_, first) => mean(daily.slice(first, first + days)))
    const darkestKwh = Math.min(...spells)
    return {
      year,
      meanKwh: mean(daily),
      darkestKwh,
      darkestFrom: spells.indexOf(darkestKwh) + 1,
    }
  })
}
