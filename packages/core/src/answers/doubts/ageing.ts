// How a battery is taken to age: in a straight line from new.
//
//     health = 1 - rate · years
//
// Common practice, no source: 2 % of the nameplate a year, 1 to 3 % by heat and use.

export const AGEING_A_YEAR = 0.02
export const AGEING_RANGE = [0.01, 0.03] as const

/** @param years  >= 0, from new */
export function healthAt(years: number, rate = AGEING_A_YEAR): number {
  return 1 - rate * years
}

/** Years from new to a health, 0..1. */
export function yearsTo(health: number, rate = AGEING_A_YEAR): number {
  // 0.2 over 0.02 is 10, not a hair less.
  return Number(((1 - health) / rate).toFixed(9))
}
