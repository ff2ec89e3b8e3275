// Minutes within a recorded interval: a half-hour of 1.5 kWh is a kettle and a cooker, not 3 kW.
//
// The energy of an interval is the meter's; what the minutes do within it is drawn:
//
//     mean ─┐  blocks: appliances that go on and off, at drawn power, length and place
//           │  small things: lights, screens, a fridge; a drawn power of 0.3 kW at most
//           └  what runs on: the least of this mean and its two neighbours'
//
// What three intervals in a row draw is taken as one thing that runs through, not as three that
// each stop. What blocks would have to carry beyond 3 kW on average runs through as well: several
// things are on, and none of them is known to stop. All settings are common practice, no source,
// but for the powers of a kettle (2.2 to 3 kW) and a water heater (3 kW), which makers and suppliers
// print; no number is fitted. Chance is indexed by the load, the recorded interval and the draw.

import { luck } from '../units/luck.js'
import { nameHash } from './name-hash.js'

/** Records on steps up to this show their peaks well enough and stay as they are. [min] */
export const SPREAD_ABOVE = 5

/** Lights, screens, a fridge, above what runs on. [kW] */
const SMALL_KW = 0.3
/** The most that blocks carry on average. [kW] */
const BLOCKS_KW = 3

/** Least and most power [kW] and length [min] of what a house switches, each as likely. */
const APPLIANCES = [
  { kw: [2.2, 3], minutes: [2, 4] }, // kettle
  { kw: [1.2, 2.2], minutes: [3, 10] }, // cooker, between clicks of its thermostat
  { kw: [0.7, 1.8], minutes: [3, 10] }, // microwave, toaster, iron, vacuum cleaner
  { kw: [1.8, 2.3], minutes: [10, 25] }, // washing machine or dishwasher, heating
  { kw: [2, 3], minutes: [20, 60] }, // water heater, fan heater
] as const

const STREAM = 47
/** Powers are whole numbers of 2^-20 kW, so that sums are exact. */
const GRID = 1048576

/** Intervals of a column that holds one mean in each. */
export interface Intervals {
  /** First minute of each, and n behind the last. [intervals + 1] */
  readonly starts: ArrayLike<number>
  /** Number of the recorded interval each is taken from. [intervals] */
  readonly ids: ArrayLike<number>
}

/**
 * Spreads the means of a column over their minutes, in place. The sum of each interval stays the
 * same to the last bit.
 *
 * @param kw    constant within each interval, on the series grid. [n], [kW], >= 0
 * @param seed  of the house
 * @param name  of the load: two meters do not share their kettle
 */
export function spreadMeans(
  kw: Float64Array,
  { starts, ids }: Intervals,
  seed: number,
  name: string,
): void {
  const count = ids.length
  const means = Float64Array.from({ length: count }, (_, k) => kw[starts[k]!]!)
  const stream = streamOf(name)
  for (let k = 0; k < count; k++) {
    const mean = means[k]!
    const runsOn = Math.min(means[k - 1] ?? mean, mean, means[k + 1] ?? mean)
    let draws = 0
    const draw = (): number => luck(seed, stream + draws++, ids[k]!)
    fill(kw.subarray(starts[k]!, starts[k + 1]!), mean, runsOn, draw)
  }
}

/** One interval: what runs through it, and blocks until its energy is used. */
function fill(minutes: Float64Array, mean: number, runsOn: number, draw: () => number): void {
  const small = Math.min(mean - runsOn, draw() * SMALL_KW)
  const blocks = Math.min(BLOCKS_KW, mean - runsOn - small)
  const through = Math.round((mean - blocks) * GRID)
  minutes.fill(through)
  let left = (Math.round(mean * GRID) - through) * minutes.length
  while (left > 0) left -= addBlock(minutes, left, draw)
  for (let i = 0; i < minutes.length; i++) minutes[i]! /= GRID
}

/**
 * One appliance on and off again. The last minute is a part of one where the energy ends in it.
 *
 * @param left  energy that may be used. [GRID kW·min]
 * @returns     what it uses, > 0
 */
function addBlock(minutes: Float64Array, left: number, draw: () => number): number {
  const appliance = APPLIANCES[Math.floor(draw() * APPLIANCES.length)]!
  const power = Math.round(between(appliance.kw, draw()) * GRID)
  const most = Math.min(Math.round(between(appliance.minutes, draw())), minutes.length)
  const used = Math.min(left, power * most)
  const length = Math.ceil(used / power)
  const from = Math.floor(draw() * (minutes.length - length + 1))
  for (let i = 0; i < length; i++) minutes[from + i]! += Math.min(power, used - i * power)
  return used
}

function between([least, most]: readonly [number, number], share: number): number {
  return least + (most - least) * share
}

function streamOf(name: string): number {
  return Math.imul(nameHash(name, STREAM), 0x9e3779b1)
}
