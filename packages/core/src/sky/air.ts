// Air temperature where there is no record: the month's mean, warm afternoons, and days that
// differ from each other, so that garages do freeze.
//
// Common practice, no source: day-to-day anomalies of 3 K with a memory of 0.7; in winter clear
// days are colder, in summer warmer (0.3 of the anomaly goes with the sky); 6 K between night and
// afternoon on a clear day, 2 K on a dull one, warmest at 15 h local time.

import type { Calendar } from '../axis/calendar.js'
import { normalLuck } from '../units/luck.js'
import { isWinter } from './daily-index.js'
import { linkeTurbidity as monthlyAt } from './turbidity.js'

const ANOMALY_K = 3
const ANOMALY_MEMORY = 0.7
const WITH_THE_SKY = 0.3
const AIR_STREAM = 6
const RUN_IN_DAYS = 30

/**
 * Hourly air temperature of a synthetic year.
 *
 * @param monthlyC  monthly means, January first. [°C]
 * @param scores    the sky's daily scores, or null for a year without anomalies
 * @returns         New Float64Array [hours of the axis], [°C]
 */
export function airOfYear(
  monthlyC: readonly number[],
  calendar: Calendar,
  scores: Float64Array | null,
  seed: number,
  year: number,
  northern: boolean,
): Float64Array {
  const out = new Float64Array(Math.ceil(calendar.n / 60))
  const { days } = calendar
  let anomaly = 0
  for (let d = -RUN_IN_DAYS; d < days.length; d++) {
    const noise = normalLuck(seed, AIR_STREAM, year * days.length + d)
    anomaly = ANOMALY_MEMORY * anomaly + Math.sqrt(1 - ANOMALY_MEMORY ** 2) * noise
    if (d < 0) continue
    const day = days[d]!
    const score = scores?.[d] ?? 0
    const sign = isWinter(day.month, northern) ? -WITH_THE_SKY : WITH_THE_SKY
    const mixed = sign * score + Math.sqrt(1 - WITH_THE_SKY ** 2) * anomaly
    const mean = monthlyAt(monthlyC, day.dayOfYear) + (scores === null ? 0 : ANOMALY_K * mixed)
    const swing = 2 + Math.min(1, Math.max(-1, score))
    for (let i = day.start; i < day.end; i += 60) {
      const hour = calendar.wallMinute[i]! / 60
      out[Math.floor(i / 60)] = mean + swing * Math.cos((2 * Math.PI * (hour + 0.5 - 15)) / 24)
    }
  }
  return out
}
