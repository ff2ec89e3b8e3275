// Hills, trees and roofs that stand before the sun.
//
// The beam is blocked while the centre of the sun is below the horizon line. What hides the sky is
// taken as black, so diffuse light is reduced by the share of the sky that the plane still sees.

import { InputError } from '../house/problem.js'

const RAD = Math.PI / 180
const FULL_TURN = 360
const STEP_DEG = 1
const FLAT = [[0, 0]] as const

/** A horizon line, ready to be asked. Made by `horizonFrom`. */
export interface Horizon {
  /** Rising; the last point before north and the first after it are repeated. [°], -360..720 */
  readonly azimuthDeg: Float64Array
  /** [°], 0..90 */
  readonly altitudeDeg: Float64Array
}

/**
 * A horizon line from pairs of azimuth and altitude, in any order.
 *
 * @param pairs  [azimuth clockwise from north, altitude]. [°], 0..360 and 0..90; 360 is north, as
 *               0 is; without a pair the horizon is flat
 * @throws InputError if a pair is out of range, or two at one azimuth differ in altitude
 */
export function horizonFrom(pairs: readonly (readonly [number, number])[]): Horizon {
  const sorted = [...heightByAzimuth(pairs.length > 0 ? pairs : FLAT)]
  sorted.sort((a, b) => a[0] - b[0])
  const n = sorted.length
  const azimuthDeg = new Float64Array(n + 2)
  const altitudeDeg = new Float64Array(n + 2)
  for (let i = -1; i <= n; i++) {
    const point = sorted[(i + n) % n]!
    azimuthDeg[i + 1] = point[0] + (i < 0 ? -FULL_TURN : i === n ? FULL_TURN : 0)
    altitudeDeg[i + 1] = point[1]
  }
  return { azimuthDeg, altitudeDeg }
}

function heightByAzimuth(pairs: readonly (readonly [number, number])[]): Map<number, number> {
  const heights = new Map<number, number>()
  pairs.forEach(([azimuth, altitude], i) => {
    if (!(azimuth >= 0 && azimuth <= FULL_TURN)) {
      throw new InputError(`horizon[${i}][0]`, 'an azimuth 0..360 [°]', azimuth)
    }
    if (!(altitude >= 0 && altitude <= 90)) {
      throw new InputError(`horizon[${i}][1]`, 'an altitude 0..90 [°]', altitude)
    }
    const known = heights.get(azimuth % FULL_TURN)
    if (known !== undefined && known !== altitude) {
      throw new InputError(`horizon[${i}][1]`, `the ${known} given at that azimuth [°]`, altitude)
    }
    heights.set(azimuth % FULL_TURN, altitude)
  })
  return heights
}

/**
 * Altitude of the horizon line towards an azimuth, by straight lines between its points.
 *
 * @param azimuthDeg  [°], 0..360
 * @returns           [°], 0..90
 */
export function horizonAltitudeDeg(horizon: Horizon, azimuthDeg: number): number {
  const { azimuthDeg: at, altitudeDeg: height } = horizon
  let next = 1
  while (next < at.length - 1 && at[next]! <= azimuthDeg) next++
  const a = at[next - 1]!
  const b = at[next]!
  const low = height[next - 1]!
  const high = height[next]!
  return low + ((high - low) * (azimuthDeg - a)) / (b - a)
}

/**
 * Share of the evenly bright sky before a plane that the horizon leaves open.
 *
 *     V = ∫∫ over sky above the horizon of cos θ dΩ / ∫∫ over the whole sky of cos θ dΩ
 *
 * cos θ counts where it is positive. Summed over cells of 1° by 1°; for a level plane and an even
 * horizon of altitude h it is cos² h.
 *
 * @param tiltDeg     From horizontal. [°], 0..180
 * @param azimuthDeg  Clockwise from north. [°]
 * @returns           0..1; 1 for a plane that sees no sky at all
 */
export function skyViewFactor(horizon: Horizon, tiltDeg: number, azimuthDeg: number): number {
  const sinTilt = Math.sin(tiltDeg * RAD)
  const cosTilt = Math.cos(tiltDeg * RAD)
  let whole = 0
  let open = 0
  for (let azimuth = STEP_DEG / 2; azimuth < FULL_TURN; azimuth += STEP_DEG) {
    const horizonDeg = horizonAltitudeDeg(horizon, azimuth)
    const toward = sinTilt * Math.cos((azimuth - azimuthDeg) * RAD)
    for (let altitude = STEP_DEG / 2; altitude < 90; altitude += STEP_DEG) {
      const cosAltitude = Math.cos(altitude * RAD)
      const cosIncidence = cosTilt * Math.sin(altitude * RAD) + toward * cosAltitude
      if (cosIncidence <= 0) continue
      const seen = cosIncidence * cosAltitude
      whole += seen
      open += seen * openShare(altitude, horizonDeg)
    }
  }
  return whole > 0 ? open / whole : 1
}

/** Share of a cell around an altitude that lies above the horizon line. */
function openShare(altitudeDeg: number, horizonDeg: number): number {
  return Math.min(1, Math.max(0, (altitudeDeg + STEP_DEG / 2 - horizonDeg) / STEP_DEG))
}
