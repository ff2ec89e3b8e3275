// From level ground to a tilted plane: three models of the sky's diffuse light.
//
// All three take the share of the sky before the plane (`skyShare`) and the plane's beam relative
// to level ground (`beamRatio`), so that glass and horizon can be put into these two beforehand.

import { relativeAirMass } from './air-mass.js'

const RAD = Math.PI / 180

/** How the sky's diffuse light is brought onto the plane. */
export type SkyModel = 'hay-davies' | 'isotropic' | 'perez'

/** Below an altitude of 1° the beam ratio grows no more. */
export const SIN_LOWEST = Math.sin(1 * RAD)

// Perez 1990 holds its circumsolar ratio from an altitude of 5° downwards.
const SIN_LOWEST_PEREZ = Math.sin(5 * RAD)

/** Share of an evenly bright sky before a plane. Source: B. Y. H. Liu and R. C. Jordan, 1960 */
export function skyShareOfTilt(tiltDeg: number): number {
  return (1 + Math.cos(tiltDeg * RAD)) / 2
}

/** Share of an evenly bright ground before a plane. Source: Liu & Jordan, as `skyShareOfTilt` */
export function groundShareOfTilt(tiltDeg: number): number {
  return (1 - Math.cos(tiltDeg * RAD)) / 2
}

/**
 * Sky diffuse on a plane, evenly bright sky.
 *
 * @param dhi       Diffuse horizontal. [W/m²]
 * @param skyShare  0..1
 * @returns         [W/m²]
 *
 * Source: B. Y. H. Liu and R. C. Jordan, "The interrelationship and characteristic distribution of
 * direct, diffuse and total solar radiation," Solar Energy, vol. 4, no. 3, pp. 1-19, 1960.
 */
export function isotropicSky(dhi: number, skyShare: number): number {
  return dhi * skyShare
}

/**
 * Sky diffuse on a plane: the share A = DNI/I0n comes from the sun's direction, the rest evenly.
 *
 *     D = DHI · ((1 - A) · skyShare + A · beamRatio)
 *
 * @param dhi        Diffuse horizontal. [W/m²]
 * @param dni        Direct normal. [W/m²]
 * @param dniExtra   Extraterrestrial normal. [W/m²], > 0
 * @param skyShare   0..1
 * @param beamRatio  cos θ / sin h, >= 0
 * @returns          [W/m²]
 *
 * Source: J. E. Hay and J. A. Davies, "Calculation of the solar radiation incident on an inclined
 * surface," Proc. First Canadian Solar Radiation Data Workshop, pp. 59-72, 1980.
 */
export function hayDaviesSky(
  dhi: number,
  dni: number,
  dniExtra: number,
  skyShare: number,
  beamRatio: number,
): number {
  const circumsolar = Math.min(1, dni / dniExtra)
  return dhi * ((1 - circumsolar) * skyShare + circumsolar * beamRatio)
}

/** What Perez 1990 takes of one minute. */
export interface PerezMinute {
  /** Diffuse horizontal, direct normal, extraterrestrial normal. [W/m²] */
  dhi: number
  dni: number
  dniExtra: number
  /** Apparent altitude of the sun. [°], > 0 */
  altitudeDeg: number
  /** Share of the sky before the plane, 0..1 */
  skyShare: number
  /** cos θ from the front, >= 0 */
  cosIncidence: number
  /** sin β: how much the plane sees of the bright or dark band along the horizon */
  horizonShare: number
}

// Upper ends of the bins of clearness; the eighth is open.
const PEREZ_BINS = Float64Array.of(1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2)

// Table 6 of the paper, all sites: F11 F12 F13 F21 F22 F23, one row a bin.
const PEREZ_1990 = Float64Array.of(
  ...[-0.008, 0.588, -0.062, -0.06, 0.072, -0.022],
  ...[0.13, 0.683, -0.151, -0.019, 0.066, -0.029],
  ...[0.33, 0.487, -0.221, 0.055, -0.064, -0.026],
  ...[0.568, 0.187, -0.295, 0.109, -0.152, -0.014],
  ...[0.873, -0.392, -0.362, 0.226, -0.462, 0.001],
  ...[1.132, -1.237, -0.412, 0.288, -0.823, 0.056],
  ...[1.06, -1.6, -0.359, 0.264, -1.127, 0.131],
  ...[0.678, -0.327, -0.25, 0.156, -1.377, 0.251],
)

/**
 * Sky diffuse on a plane: an even sky, a bright sun's surrounding and a band along the horizon.
 *
 *     ε = ((DHI + DNI)/DHI + 1.041 z³) / (1 + 1.041 z³)   Δ = m · DHI / I0n
 *     F1 = max(0, F11 + F12 Δ + F13 z)                     F2 = F21 + F22 Δ + F23 z
 *     D = DHI · ((1 - F1) · skyShare + F1 · cos θ / max(sin 5°, sin h) + F2 · horizonShare)
 *
 * z is the zenith angle [rad], m the relative air mass of Kasten & Young 1989.
 *
 * @returns  [W/m²], not below 0
 *
 * Source: R. Perez, P. Ineichen, R. Seals, J. Michalsky and R. Stewart, "Modeling daylight
 * availability and irradiance components from direct and global irradiance," Solar Energy,
 * vol. 44, no. 5, pp. 271-289, 1990. doi:10.1016/0038-092X(90)90055-H
 */
export function perezSky(minute: PerezMinute): number {
  const { dhi, dni, dniExtra, altitudeDeg } = minute
  if (dhi === 0) return 0
  const zenith = (90 - altitudeDeg) * RAD
  const bend = 1.041 * zenith ** 3
  const clearness = ((dhi + dni) / dhi + bend) / (1 + bend)
  const brightness = (relativeAirMass(altitudeDeg) * dhi) / dniExtra
  let bin = 0
  while (bin < 7 && PEREZ_BINS[bin]! <= clearness) bin++
  const f = (k: number): number => PEREZ_1990[bin * 6 + k]!
  const circumsolar = Math.max(0, f(0) + f(1) * brightness + f(2) * zenith)
  const horizon = f(3) + f(4) * brightness + f(5) * zenith
  const lowest = Math.max(SIN_LOWEST_PEREZ, Math.sin(altitudeDeg * RAD))
  const share =
    (1 - circumsolar) * minute.skyShare +
    (circumsolar * minute.cosIncidence) / lowest +
    horizon * minute.horizonShare
  return dhi * Math.max(0, share)
}
