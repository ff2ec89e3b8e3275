// Haze of the month, day by day.

// Middle of each month, in days from the start of a year of 365.
const MID_MONTH = [15.5, 45, 74.5, 105, 135.5, 166, 196.5, 227.5, 258, 288.5, 319, 349.5] as const

/**
 * Linke turbidity of a day: straight lines between the middles of the months, December and January
 * joined. A month's value is met in its middle; its mean is bent a little towards its neighbours.
 *
 * @param monthly    Twelve values, January first, >= 1
 * @param dayOfYear  1..366; the day's middle counts, and day 366 is taken for 1 January
 * @returns          Linke turbidity; NaN if `monthly` lacks a month
 */
export function linkeTurbidity(monthly: readonly number[], dayOfYear: number): number {
  const day = (dayOfYear - 0.5) % 365
  let next = 0
  while (next < 12 && MID_MONTH[next]! <= day) next++
  const before = (next + 11) % 12
  const after = next % 12
  const from = MID_MONTH[before]! - (next === 0 ? 365 : 0)
  const to = MID_MONTH[after]! + (next === 12 ? 365 : 0)
  const a = monthly[before]!
  const b = monthly[after]!
  return a + ((b - a) * (day - from)) / (to - from)
}
