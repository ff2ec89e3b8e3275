// Litres and run hours of a month's cuts as figures.

import type { MonthWalk } from './month-walks.js'

/** Mean over cuts, what 1 cut in 20 passes, and the worst of them. */
export interface Spread {
  readonly mean: number
  /** Upper nearest rank: 19 of 20 cuts take no more. */
  readonly oneIn20: number
  /** Null from a typical-year file or one synthetic year, which know no worst. */
  readonly worst: number | null
}

export interface FuelFigures {
  /** Cuts walked. */
  readonly starts: number
  /** With tank and cans filled as often as wanted. [l] */
  readonly litres: Spread
  readonly runHours: Spread
  /** How often the set is started in a cut. */
  readonly setStarts: Spread
  /** How often somebody pours from a can. */
  readonly pours: Spread
}

/**
 * @param cutMinutes  what counts of each walk
 * @param hasWorst    whether the sky knows a worst
 */
export function fuelFigures(
  walks: readonly MonthWalk[],
  cutMinutes: number,
  hasWorst: boolean,
): FuelFigures {
  const spread = (values: readonly number[]): Spread => spreadOf(values, hasWorst)
  const within = walks.map((walk) => {
    const end = walk.which + cutMinutes
    return walk.starts.filter(({ minute }) => minute < end)
  })
  return {
    starts: walks.length,
    litres: spread(walks.map(({ litres }) => litres)),
    runHours: spread(walks.map(({ ranIn }) => ranIn.length / 60)),
    setStarts: spread(within.map((starts) => starts.length)),
    pours: spread(within.map((starts) => starts.filter(({ pours }) => pours).length)),
  }
}

export function spreadOf(values: readonly number[], hasWorst: boolean): Spread {
  const sorted = Float64Array.from(values).sort()
  const n = sorted.length
  return {
    mean: sorted.reduce((sum, value) => sum + value, 0) / n,
    oneIn20: sorted[Math.max(0, Math.ceil(0.95 * n) - 1)]!,
    worst: hasWorst ? sorted[n - 1]! : null,
  }
}

/** The walk of the middle of all litres, and that of the most; the earliest of equals. */
export function casesOf(walks: readonly MonthWalk[]): { middle: MonthWalk; worst: MonthWalk } {
  const sorted = [...walks].sort((a, b) => a.litres - b.litres || a.minute - b.minute)
  const most = sorted.at(-1)!.litres
  return {
    middle: sorted[Math.floor(0.5 * (sorted.length - 1))]!,
    worst: sorted.find(({ litres }) => litres === most)!,
  }
}
