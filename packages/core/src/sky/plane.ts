// Light on a tilted plane, behind its glass.
//
// In order: beam held below the clear beam at low sun, beam on the plane, light of the sky, light
// from the ground. The geometry of a plane depends on time only and is worked out once; synthetic
// years then fill the plane without a single sine.

import { InputError } from '../house/problem.js'
import { sharedColumn } from '../units/year-column.js'
import { type Horizon, horizonAltitudeDeg, skyViewFactor } from './horizon.js'
import { beamModifier, cosIncidence, diffuseModifier, GLASS_B0 } from './incidence.js'
import type { SunColumns } from './sun.js'
import {
  groundShareOfTilt,
  hayDaviesSky,
  isotropicSky,
  type PerezMinute,
  perezSky,
  SIN_LOWEST,
  type SkyModel,
  skyShareOfTilt,
} from './transposition.js'

const RAD = Math.PI / 180
const MINUTES_A_DAY = 1440

/** Below this altitude the beam may not exceed the clear beam. [°] */
const LOW_SUN_DEG = 10

/** A plane of modules. */
export interface Plane {
  /** From horizontal. [°], 0..90 */
  readonly tiltDeg: number
  /** Where it faces, clockwise from north. [°], 0..360 */
  readonly azimuthDeg: number
  /** Hills, trees, roofs; none where left out. */
  readonly horizon?: Horizon
  /** Loss coefficient of the glass, default 0.05; 0 for the bare plane. */
  readonly b0?: number
}

/** What time alone fixes for a plane. Made by `planeGeometry`. */
export interface PlaneGeometry {
  /** Apparent altitude of the sun, as handed in. [n], [°] */
  readonly altitudeDeg: Float64Array
  /** Sine of it; any value up to 0 while the sun is down. [n] */
  readonly sinAltitude: Float64Array
  /** cos θ times glass, 0 where the sun is down, behind the plane or behind the horizon. [n] */
  readonly beamShare: Float64Array
  /** Shares of sky, ground and horizon band, glass and hidden sky taken off. */
  readonly skyShare: number
  readonly groundShare: number
  readonly horizonShare: number
}

/** Irradiance on level ground on the minute axis. */
export interface SkyColumns {
  /** Global horizontal, direct normal, diffuse horizontal. [n], [W/m²] */
  readonly ghi: Float64Array
  readonly dni: Float64Array
  readonly dhi: Float64Array
  /** Extraterrestrial normal by day: day d is minutes [1440 d, 1440 (d + 1)). [W/m²], > 0 */
  readonly dniExtra: Float64Array
  /** Direct normal of the clear sky; without it the beam is not capped. [n], [W/m²] */
  readonly dniClear?: Float64Array
}

/**
 * The geometry of a plane under a sun.
 *
 * @param sinAltitude  Sine of the altitude where it is there already. [n], <= 0 while the sun is down
 * @throws InputError if tilt or azimuth is not a number in range
 */
export function planeGeometry(
  sun: SunColumns,
  plane: Plane,
  sinAltitude: Float64Array = sineOf(sun),
): PlaneGeometry {
  const { tiltDeg, azimuthDeg, horizon, b0 = GLASS_B0 } = plane
  checkPlane(tiltDeg, azimuthDeg, b0)
  const n = sun.altitudeDeg.length
  const beamShare = sharedColumn(n)
  for (let i = 0; i < n; i++) {
    const altitude = sun.altitudeDeg[i]!
    const azimuth = sun.azimuthDeg[i]!
    if (altitude <= 0 || (horizon && altitude < horizonAltitudeDeg(horizon, azimuth))) continue
    const cosine = cosIncidence(altitude, azimuth, tiltDeg, azimuthDeg)
    beamShare[i] = cosine <= 0 ? 0 : cosine * beamModifier(cosine, b0)
  }
  const passed = diffuseModifier(b0)
  const open = horizon ? skyViewFactor(horizon, tiltDeg, azimuthDeg) : 1
  return {
    altitudeDeg: sun.altitudeDeg,
    sinAltitude,
    beamShare,
    skyShare: skyShareOfTilt(tiltDeg) * open * passed,
    groundShare: groundShareOfTilt(tiltDeg) * passed,
    horizonShare: Math.sin(tiltDeg * RAD) * open * passed,
  }
}

function sineOf({ altitudeDeg }: SunColumns): Float64Array {
  return altitudeDeg.map((altitude) => Math.sin(altitude * RAD))
}

/**
 * Irradiance on the plane for minutes [from, to), written into `into`.
 *
 *     E = DNI · beamShare + sky + GHI · albedo · groundShare
 *
 * Below an altitude of 10° the beam is held at the clear beam and what is cut off goes to the
 * diffuse light, so that GHI = DNI sin h + DHI stays true; an hour's beam divided by a small sine
 * would shine else as no sun does. Light recorded while the sun is down is taken as even.
 *
 * @param into      Receives [W/m²], >= 0; NaN wherever an input is NaN. [n]
 * @param from, to  Minutes [from, to) of the axis
 * @param albedo    Of the ground, 0..1; fill month by month where it changes
 * @param model     Default Hay & Davies
 * @throws InputError if a column is too short
 */
export function fillPlane(
  into: Float64Array,
  from: number,
  to: number,
  sky: SkyColumns,
  geometry: PlaneGeometry,
  albedo: number,
  model: SkyModel = 'hay-davies',
): void {
  checkLengths(to, into, sky, geometry)
  const { ghi, dni, dhi, dniExtra, dniClear } = sky
  const { altitudeDeg, sinAltitude, beamShare, skyShare } = geometry
  const ground = albedo * geometry.groundShare
  const perez = perezScratch(geometry)
  for (let i = from; i < to; i++) {
    const sine = sinAltitude[i]!
    const share = beamShare[i]!
    const extra = dniExtra[Math.floor(i / MINUTES_A_DAY)]!
    let beam = dni[i]!
    let diffuse = dhi[i]!
    if (sine <= 0) {
      into[i] = isotropicSky(diffuse, skyShare) + ghi[i]! * ground
      continue
    }
    const clear = dniClear?.[i] ?? Number.POSITIVE_INFINITY
    if (beam > clear && altitudeDeg[i]! < LOW_SUN_DEG) {
      diffuse += (beam - clear) * sine
      beam = clear
    }
    let fromSky: number
    if (model === 'hay-davies') {
      const beamRatio = share / Math.max(SIN_LOWEST, sine)
      fromSky = hayDaviesSky(diffuse, beam, extra, skyShare, beamRatio)
    } else if (model === 'isotropic') {
      fromSky = isotropicSky(diffuse, skyShare)
    } else {
      perez.dhi = diffuse
      perez.dni = beam
      perez.dniExtra = extra
      perez.altitudeDeg = altitudeDeg[i]!
      perez.cosIncidence = share
      fromSky = perezSky(perez)
    }
    into[i] = beam * share + fromSky + ghi[i]! * ground
  }
}

function perezScratch(geometry: PlaneGeometry): PerezMinute {
  const { skyShare, horizonShare } = geometry
  const minute = { dhi: 0, dni: 0, dniExtra: 0, altitudeDeg: 0, cosIncidence: 0 }
  return { ...minute, skyShare, horizonShare }
}

function checkPlane(tiltDeg: number, azimuthDeg: number, b0: number): void {
  if (!(tiltDeg >= 0 && tiltDeg <= 90)) {
    throw new InputError('tiltDeg', 'a number 0..90 [°]', tiltDeg)
  }
  if (!(azimuthDeg >= 0 && azimuthDeg <= 360)) {
    throw new InputError('azimuthDeg', 'a number 0..360 [°]', azimuthDeg)
  }
  if (!(b0 >= 0 && b0 < 1)) throw new InputError('b0', 'a number 0..1', b0)
}

function checkLengths(
  to: number,
  into: Float64Array,
  sky: SkyColumns,
  geometry: PlaneGeometry,
): void {
  const columns: Record<string, Float64Array> = {
    into,
    ghi: sky.ghi,
    dni: sky.dni,
    dhi: sky.dhi,
    beamShare: geometry.beamShare,
  }
  if (sky.dniClear) columns.dniClear = sky.dniClear
  for (const [name, column] of Object.entries(columns)) {
    if (!(column.length >= to)) {
      throw new InputError(name, `a column of at least ${to} minutes`, column.length)
    }
  }
  if (!(sky.dniExtra.length * MINUTES_A_DAY >= to)) {
    throw new InputError('dniExtra', `a value for each day of ${to} minutes`, sky.dniExtra.length)
  }
}
