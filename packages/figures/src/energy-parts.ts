// Where the energy of a cut came from and where it went, in parts that close.
//
//     at the start + sun + generator = must stay on + while it lasts + idle + conversion + left

import type { EnergyLedger } from '@tideover/core'
import { AREAS, INK } from './style.js'

/** A cut, or the part of it up to a loss, and what it is called. */
export interface NamedLedger {
  readonly name: string
  readonly energy: EnergyLedger
}

export interface EnergyPart {
  readonly of: keyof EnergyLedger
  /** In a bar. */
  readonly short: string
  /** In the key and in the table. */
  readonly words: string
  readonly color: string
  /** For words on it. */
  readonly ink: string
}

const WHITE = '#ffffff'

export const CAME: readonly EnergyPart[] = [
  { of: 'startKwh', short: 'start', words: 'at the start', color: AREAS.battery, ink: WHITE },
  { of: 'solarKwh', short: 'sun', words: 'sun', color: AREAS.sun, ink: INK },
  {
    of: 'generatorKwh',
    short: 'generator',
    words: 'generator',
    color: AREAS.generator,
    ink: WHITE,
  },
]

export const WENT: readonly EnergyPart[] = [
  {
    of: 'criticalKwh',
    short: 'must stay on',
    words: 'must stay on',
    color: AREAS.critical,
    ink: WHITE,
  },
  {
    of: 'comfortKwh',
    short: 'while it lasts',
    words: 'while it lasts',
    color: AREAS.comfort,
    ink: INK,
  },
  { of: 'standingKwh', short: 'idle', words: 'idle draw, heater', color: AREAS.losses, ink: INK },
  {
    of: 'conversionKwh',
    short: 'inverter',
    words: 'lost in the inverter',
    color: AREAS.conversion,
    ink: INK,
  },
  { of: 'leftKwh', short: 'left', words: 'left in the battery', color: AREAS.battery, ink: WHITE },
]

const HUNDREDTHS = 100

/**
 * Values in whole hundredths whose sum is that of the exact ones, rounded: what is lost by
 * rounding down goes to those with the largest remainders.
 */
export function closing(values: readonly number[]): number[] {
  const exact = values.map((value) => value * HUNDREDTHS)
  const floors = exact.map((value) => Math.floor(value + 1e-7))
  const total = Math.round(exact.reduce((sum, value) => sum + value, 0))
  const short = total - floors.reduce((sum, value) => sum + value, 0)
  const byRemainder = exact
    .map((value, i) => ({ i, rest: value - floors[i]! }))
    .sort((a, b) => b.rest - a.rest || a.i - b.i)
  for (const { i } of byRemainder.slice(0, Math.max(0, short))) floors[i]!++
  return floors.map((value) => value / HUNDREDTHS)
}

/** Parts of one side, closing. [kWh] */
export function partsOf(energy: EnergyLedger, side: readonly EnergyPart[]): number[] {
  return closing(side.map(({ of }) => energy[of]))
}

/**
 * A row for each part, first what came and then what went, each side with its sum: a column a
 * cut. [kWh], in hundredths; a sum is that of the rows above it
 */
export function energyRows(cuts: readonly NamedLedger[]): Record<string, string | number>[] {
  const sides = [
    { side: CAME, first: 'came: ', all: 'came in all' },
    { side: WENT, first: 'went: ', all: 'went in all' },
  ]
  return sides.flatMap(({ side, first, all }) => {
    const columns = cuts.map(({ name, energy }) => ({ name, kwh: partsOf(energy, side) }))
    const row = (what: string, value: (kwh: readonly number[]) => number) => ({
      what,
      ...Object.fromEntries(columns.map(({ name, kwh }) => [`${name} [kWh]`, value(kwh)])),
    })
    return [
      ...side.map(({ words }, i) => row(`${first}${words}`, (kwh) => kwh[i]!)),
      row(all, sumOf),
    ]
  })
}

/** Of hundredths, without the dust of doubles. */
export function sumOf(kwh: readonly number[]): number {
  return Math.round(HUNDREDTHS * kwh.reduce((sum, value) => sum + value, 0)) / HUNDREDTHS
}
