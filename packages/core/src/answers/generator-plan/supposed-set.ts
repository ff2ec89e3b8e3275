// A generator for a house that has none: a small petrol set of our own invention, started by hand.

import { DEFAULTS } from '../../house/defaults.js'
import type { GeneratorInput, House, Person } from '../../house/house.js'
import type { Demand } from '../../load/demand.js'
import type { Prepared } from '../../series/prepare.js'

/** Sizes on the shelf; an invention. [kW] */
const SIZES_KW = [2, 3, 5, 7, 10] as const
/** What a start may take of it for a second, over its rating; common practice. */
const START_SHARE = 1.5
/** Tank of such a set; an invention. [l a kW] */
const TANK_L_A_KW = 4
/**
 * Petrol of a small set: 0.45 l a kWh at half load and 0.36 at full, common practice, no source;
 * +- 25 %. No load follows from a straight line through both. [l/h a kW of rating]
 */
const LITRES_A_KW = { none: 0.09, half: 0.225, full: 0.36 } as const

/** The house with a set supposed. @param ratedKw  the smallest that fits where left out */
export function withSupposedSet(prepared: Prepared, ratedKw?: number): Prepared {
  const { house, demand } = prepared
  const generator = supposedSet(ratedKw ?? fittingKw(demand))
  const person: Person = house.person ?? {
    minutes: DEFAULTS['person.minutes'].value,
    from: DEFAULTS['person.from'].value,
    to: DEFAULTS['person.to'].value,
  }
  return { ...prepared, house: { ...house, generator, person } satisfies House }
}

function supposedSet(ratedKw: number): GeneratorInput {
  const { none, half, full } = LITRES_A_KW
  return {
    ratedKw,
    tankL: TANK_L_A_KW * ratedKw,
    cansL: 0,
    litresPerHour: { none: none * ratedKw, half: half * ratedKw, full: full * ratedKw },
    start: 'by hand',
    mostShare: DEFAULTS['generator.mostShare'].value,
    leastShare: DEFAULTS['generator.leastShare'].value,
    startFailsShare: 0,
    readySeconds: DEFAULTS['generator.readySeconds'].value,
    leastRunMinutes: DEFAULTS['generator.leastRunMinutes'].value,
    startAt: DEFAULTS['generator.startAt'].value,
    stopAt: DEFAULTS['generator.stopAt'].value,
  }
}

/** The smallest that carries the critical loads and their hardest start; the largest where none. */
function fittingKw({ criticalKw, peakKva }: Demand): number {
  const mostKw = most(criticalKw)
  const startKva = most(peakKva.at(-1)!)
  const most80 = DEFAULTS['generator.mostShare'].value
  const fits = (kw: number): boolean => mostKw <= most80 * kw && startKva <= START_SHARE * kw
  return SIZES_KW.find(fits) ?? SIZES_KW.at(-1)!
}

function most(column: Float64Array): number {
  return column.reduce((a, b) => Math.max(a, b), 0)
}
