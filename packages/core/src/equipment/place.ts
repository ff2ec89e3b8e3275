// How cold the stack gets, and what the cold takes.
//
// The place follows the air with a lag (first order); a room of the house does not fall below
// 15 °C. Limits and lags are common practice, no source, but for "no charge below 0 °C",
// which cell makers publish (lithium plating).

import type { Place } from '../house/house.js'

const LAG_HOURS: Readonly<Record<Place, number>> = { house: 48, 'attached garage': 24, shed: 8 }
const HOUSE_FLOOR_C = 15

/** A heater holds the stack here, and draws only while the place is colder. [°C] */
export const HEATED_C = 5

/**
 * Temperature of the place of the stack at the end of each hour.
 *
 *     T += (T_air - T) · (1 - exp(-1/lag))
 *
 * @param airC  hourly air temperature. [n], [°C]
 * @returns     New Float64Array [n], [°C]
 */
export function placeTemperature(airC: Float64Array, place: Place): Float64Array {
  const out = new Float64Array(airC.length)
  const gain = 1 - Math.exp(-1 / LAG_HOURS[place])
  let level = meanOf(airC.subarray(0, 24))
  for (let h = 0; h < airC.length; h++) {
    level += (airC[h]! - level) * gain
    out[h] = place === 'house' ? Math.max(level, HOUSE_FLOOR_C) : level
  }
  return out
}

function meanOf(values: Float64Array): number {
  let sum = 0
  for (const value of values) sum += value
  return sum / values.length
}

/**
 * Charge limit by temperature, as a share of capacity in an hour (C-rate).
 *
 * 0 below 0 °C, 0.1 to 5, 0.2 to 10, rising to no limit at 15; falling from 45 to 0 at 55 °C.
 *
 * @returns  [1/h], Infinity where temperature sets no limit
 */
export function chargeRateLimit(stackC: number): number {
  if (!(stackC >= 0) || stackC >= 55) return 0
  if (stackC < 5) return 0.1
  if (stackC < 10) return 0.2
  if (stackC < 15) return 0.2 + (0.3 * (stackC - 10)) / 5
  if (stackC > 45) return (0.5 * (55 - stackC)) / 10
  return Number.POSITIVE_INFINITY
}

/**
 * Share of usable capacity that the cold puts out of reach: a tenth at 0 °C, nothing at 25,
 * growing in the same line below 0 up to a half. Stored energy is untouched; the floor rises.
 */
export function coldShare(stackC: number): number {
  if (stackC >= 25) return 0
  return Math.min(0.5, (0.1 * (25 - stackC)) / 25)
}
