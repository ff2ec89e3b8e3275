// More sun: each array larger, or steeper in the dark months.

import { monthRange } from '../../axis/calendar.js'
import type { ArrayInput } from '../../house/house.js'
import { type HouseFiles, type Prepared, prepare } from '../../series/prepare.js'
import { type Change, short } from './change.js'

/** Larger arrays, and a steeper one in the dark months. */
export function sunChanges(prepared: Prepared, files: HouseFiles, month: number): Change[] {
  return prepared.house.arrays.flatMap((array) => [
    ...[1.5, 2].map((factor) => larger(prepared, files, array, factor)),
    ...steeper(prepared, files, array, month),
  ])
}

/** An inverter or a tracker grows with what stands on it; logged output grows with its array. */
function larger(
  prepared: Prepared,
  files: HouseFiles,
  { name, peakKw }: ArrayInput,
  factor: number,
): Change {
  const { house } = prepared
  const perKw = house.prices?.arrayPerKw
  const arrays = scaled(house.arrays, name, factor)
  return {
    kind: 'array',
    what: `${name} ${factor} times as large, ${short(factor * peakKw)} kW, its inverter with it`,
    price: perKw === undefined ? null : perKw * (factor - 1) * peakKw,
    givesUp: null,
    warnings: [],
    prepared: () => {
      const changed = prepare({ ...house, arrays }, files)
      return { ...changed, arrays: changed.arrays.map((array) => loggedMore(array, name, factor)) }
    },
  }
}

/** @param factor  by which one array grows, by its name */
function scaled(arrays: readonly ArrayInput[], name: string, factor: number): ArrayInput[] {
  const grown = arrays.map((array) =>
    array.name === name ? { ...array, peakKw: watts(factor * array.peakKw) } : array,
  )
  const peakOn = (list: readonly ArrayInput[], owner: string): number =>
    list
      .filter((array) => (array.onInverterOf ?? array.name) === owner)
      .reduce((sum, { peakKw }) => sum + peakKw, 0)
  return grown.map((array) => {
    const owner = array.onInverterOf ?? array.name
    const more = peakOn(grown, owner) / peakOn(arrays, owner)
    const { inverter, trackerKw } = array
    return {
      ...array,
      ...(inverter === undefined
        ? {}
        : { inverter: { ...inverter, ratedKw: watts(more * inverter.ratedKw) } }),
      ...(trackerKw === undefined ? {} : { trackerKw: watts(more * trackerKw) }),
    }
  })
}

/** Whole watts, as a file would have them. [kW] */
function watts(kw: number): number {
  return Math.round(1000 * kw) / 1000
}

function loggedMore<A extends Prepared['arrays'][number]>(array: A, name: string, by: number): A {
  const { log } = array
  if (log === null || array.input.name !== name) return array
  return { ...array, log: { ...log, times: by * log.times } }
}

/** The tilts of a frame for the winter. [deg] */
const STEEP = { least: 60, most: 70 } as const

/** Square to the noon sun of the middle of the month; nothing where that sun is high. */
function steeper(
  prepared: Prepared,
  files: HouseFiles,
  { name, tiltDeg, file }: ArrayInput,
  month: number,
): Change[] {
  const { house, calendar, sun } = prepared
  const [from, to] = monthRange(calendar, month)
  const middle = Math.floor((from + to) / 2 / 1440) * 1440
  const highest = sun.sine.subarray(middle, middle + 1440).reduce((a, b) => Math.max(a, b), 0)
  const square = 90 - (Math.asin(highest) * 180) / Math.PI
  const tilt = Math.min(STEEP.most, Math.max(STEEP.least, 5 * Math.round(square / 5)))
  // A log knows nothing of another tilt.
  if (file !== undefined || square < STEEP.least - 10 || tiltDeg >= tilt) return []
  const arrays = house.arrays.map((array) =>
    array.name === name ? { ...array, tiltDeg: tilt } : array,
  )
  return [
    {
      kind: 'tilt',
      what: `${name} on a frame at ${tilt}°, for the low sun`,
      price: null,
      givesUp: null,
      warnings: [],
      prepared: () => prepare({ ...house, arrays }, files),
    },
  ]
}
