// How much fuel may be kept at home, where that is known.

import type { House } from '../../house/house.js'

export interface FuelRule {
  /** Of petrol, without telling anybody. [l] */
  readonly petrolL: number
  /** Largest can. [l] */
  readonly plasticCanL: number
  readonly metalCanL: number
  readonly basis: string
}

/** Great Britain, by the zone of its clock; null where no rule is known here: ask. */
export function fuelRule({ site }: Pick<House, 'site'>): FuelRule | null {
  if (site.timezone !== 'Europe/London') return null
  return {
    petrolL: 30,
    plasticCanL: 10,
    metalCanL: 20,
    basis: 'pages of fire services on the petroleum regulations of 2014, Great Britain',
  }
}
