// A house with one thing changed, to see what hangs on it.

import type { House, Place } from '../house/house.js'
import type { Demand } from '../load/demand.js'
import type { Prepared } from '../series/prepare.js'
import type { Sky } from '../sky/sky.js'

/** Places of a stack, the warmest in winter first. */
export const PLACES: readonly Place[] = ['house', 'attached garage', 'shed']

/** What is tried as more fuel: two cans as they are sold. [l] */
export const MORE_FUEL_L = 20

/** Every load of the island draws so much more while it runs; what a start adds stays as it is. */
export function withGrowth(prepared: Prepared, growth: number): Prepared {
  return { ...prepared, demand: grown(prepared.demand, growth) }
}

function grown(demand: Demand, growth: number): Demand {
  const more = (kw: Float64Array): Float64Array => kw.map((value) => (1 + growth) * value)
  // Starts come on top of what runs, and what runs has grown.
  const over = (kva: readonly Float64Array[]): Float64Array[] =>
    kva.map((column, level) =>
      column.map((value, i) => value + growth * demand.runningKva[level]![i]!),
    )
  const { together } = demand
  return {
    ...demand,
    critical: demand.critical.map(({ load, kw }) => ({ load, kw: more(kw) })),
    criticalKw: more(demand.criticalKw),
    comfortKw: demand.comfortKw.map(more),
    gridOnlyKw: more(demand.gridOnlyKw),
    peakKva: over(demand.peakKva),
    runningKva: demand.runningKva.map(more),
    formingKva: over(demand.formingKva),
    together: together && {
      ...together,
      criticalKw: more(together.criticalKw),
      comfortKw: together.comfortKw.map(more),
      formingKva: over(together.formingKva),
    },
  }
}

export function withPlace(prepared: Prepared, place: Place): Prepared {
  const { house } = prepared
  return { ...prepared, house: { ...house, stack: { ...house.stack, place } } }
}

/** Nobody is there to reset, to pour or to pull a cord. */
export function withNobody(house: House): House {
  return { ...house, person: undefined }
}

/** The arrays give nothing on the island; the days stay as bright as they are. */
export function withoutSolar(prepared: Prepared): Prepared {
  return { ...prepared, arrays: [] }
}

/** The same light in colder air; loads that follow the air stay as they are. @param kelvin > 0 */
export function colder(sky: Sky, kelvin: number): Sky {
  return { ...sky, airC: (year) => sky.airC(year).map((airC) => airC - kelvin) }
}
