// What a load makes of time without power and of time with it.
//
// One number is its state: minutes of tolerance used, a temperature, litres. It is folded over the
// down spells of a cut, so that another tolerance or another fridge re-simulates nothing.

import type { HoldOver } from '../house/house.js'

export interface Consequence {
  /** What was given, in words: `5 to 8 °C in 4 h, door shut, in a room at 20 °C`; null for a plain gap. */
  readonly basis: string | null
  /** State of a load that has long had power. */
  readonly rest: number
  /**
   * Whether a gap begins with the spell; else with the first minute of it in which the load wants
   * power.
   */
  readonly beginsAtOnce: boolean
  /** State at the end of a gap that began in `state`. @param minutes >= 0 */
  afterGap(state: number, minutes: number): number
  /** State after so many minutes with power. @param minutes >= 0 */
  afterSupply(state: number, minutes: number): number
  /**
   * Whole minutes of a gap after which the load is lost: the minute that follows them is the first
   * in which it is. Infinity where it never is.
   */
  lostIn(state: number): number
  /** What people are shown of the state; null for a plain gap. */
  readonly shown: Shown | null
}

export interface Shown {
  /** `temperature`, `water left` */
  readonly word: string
  readonly unit: '°C' | 'l'
  /** Suffix of its column in a file, after the load's name: `temperature_c`. */
  readonly column: string
  /** Where the load is lost, in the unit. */
  readonly limit: number
  /** Beyond this nothing is told. */
  readonly most: number
  /** The state in the unit. */
  value(state: number): number
  /** What is kept cold; null for anything else. */
  readonly keeps: HoldOver['keeps'] | null
}

/** A state that is a temperature. @param limit [°C] */
export function temperatureShown(
  limit: number,
  keeps: Shown['keeps'],
  most: number = Number.POSITIVE_INFINITY,
): Shown {
  const column = 'temperature_c'
  return { word: 'temperature', unit: '°C', column, limit, most, value: (c) => c, keeps }
}

/** Steps of a minute that a moment is rounded to before whole minutes are counted. */
const MOMENTS = 2 ** 20

/**
 * Whole minutes in a length of time: 240 for 239.9999999, which a logarithm makes of four hours.
 * Engines differ in the last bit of a logarithm; rounding hides it.
 */
export function wholeMinutes(minutes: number): number {
  return Math.floor(Math.round(minutes * MOMENTS) / MOMENTS)
}
