// The skies without chance: clear all day, or no light at all.

import { airOfYear } from './air.js'
import type { Sky } from './sky.js'
import { fillClearDiffuse, type SunYear } from './sun-year.js'

/** A cloudless sky all year. A bright figure; never shown alone, nor first. */
export function clearSkyYear(year: SunYear, monthlyC: readonly number[]): Sky {
  return {
    ...still(year, monthlyC),
    kind: 'clear',
    dayRank: () => 1,
    fill(_, from, to, into) {
      into.ghi.set(year.ghi.subarray(from, to), from)
      into.dni.set(year.dni.subarray(from, to), from)
      fillClearDiffuse(into.dhi, year, from, to)
    },
  }
}

/** Snow on the modules, or a solar inverter that stays off: the air of a sky without its light. */
export function withoutLight(sky: Sky): Sky {
  return {
    ...sky,
    kind: 'none',
    fill(_, from, to, into) {
      into.ghi.fill(0, from, to)
      into.dni.fill(0, from, to)
      into.dhi.fill(0, from, to)
    },
  }
}

function still(year: SunYear, monthlyC: readonly number[]): Omit<Sky, 'kind' | 'fill'> {
  const air = airOfYear(monthlyC, year.calendar, null, 0, 0, true)
  return { years: 1, hasExtremes: true, airC: () => air, windMs: () => null }
}
