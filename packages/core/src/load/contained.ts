// What a metered or a standard load already holds is taken out of it, so that nothing counts twice.
//
// Means are taken out of means: over each run of minutes that share one mean the loads inside keep
// their own minutes, and what is left of the run's energy is the rest. A kettle inside a quarter
// hour may so draw more than the quarter hour's mean.

import type { LoadInput } from '../house/house.js'
import { onSeriesGrid } from '../units/energy-grid.js'

/** Less than this over a year is rounding, not a contradiction. [kWh] */
const SHORT_KWH = 0.5

/** Columns of loads, by name. */
export type OtherLoads = ReadonlyMap<string, { readonly kw: Float64Array }>

/**
 * Takes the loads that `load` contains out of its column, in place. [n], [kW], >= 0 after
 *
 * @param kw      constant within each run
 * @param runs    first minute of each run, and n behind the last
 * @param source  what shows the figure, for the note: `meter`
 * @param notes   told where the parts draw more than the whole
 */
export function takeOut(
  kw: Float64Array,
  runs: ArrayLike<number>,
  load: LoadInput,
  others: OtherLoads,
  source: string,
  notes: string[],
): void {
  const inside = (load.contains ?? []).flatMap((name) => others.get(name)?.kw ?? [])
  if (inside.length === 0) return
  let short = 0
  for (let run = 0; run + 1 < runs.length; run++) {
    const [from, to] = [runs[run]!, runs[run + 1]!]
    let left = 0
    for (let i = from; i < to; i++) {
      left += kw[i]!
      for (const part of inside) left -= part[i]!
    }
    if (left < 0) short -= left / 60
    kw.fill(onSeriesGrid(Math.max(0, left) / (to - from)), from, to)
  }
  if (short > SHORT_KWH) {
    notes.push(
      `${load.name}: the loads it contains draw ${short.toFixed(0)} kWh a year more than the ` +
        `${source} shows at the same times; the rest is taken as nothing there.`,
    )
  }
}
