// The cloudless sky: the most that sun and air let through.
//
// Variant: Ineichen & Perez 2002 with the factor exp(0.01 m^1.8) of Perez et al. 2002 on the global,
// held from an air mass of 8 (altitude 7° at sea level) downwards, where it would run away; air mass
// by Kasten & Young 1989 with the pressure of the elevation; beam held down by the clearest possible
// sky of the same global. Without the factor ('plain') an altitude of 10° comes out 16 to 21 % darker
// than ESRA, Haurwitz and a measured winter day, and a northern December has no higher sun.

import { absoluteAirMass, relativeAirMass, standardPressurePa } from './air-mass.js'

const RAD = Math.PI / 180

// Common practice: with it the global stays within 15 % of Haurwitz down to an altitude of 2°.
const LIFT_UP_TO_AIR_MASS = 8

/** One minute of irradiance, written in place. */
export interface Irradiance {
  /** Global horizontal. [W/m²] */
  ghi: number
  /** Direct normal: beam on a plane that faces the sun. [W/m²] */
  dni: number
  /** Diffuse horizontal. [W/m²] */
  dhi: number
}

/** With the factor exp(0.01 m^1.8) on the global, or without it as some publish the model. */
export type ClearSkyVariant = 'lifted' | 'plain'

/** What the elevation of a place fixes once and for all. Made by `clearSkySite`. */
export interface ClearSkySite {
  readonly variant: ClearSkyVariant
  readonly pressurePa: number
  readonly fh1: number
  readonly fh2: number
  readonly globalScale: number
  readonly globalDecay: number
  readonly beamScale: number
}

/**
 * The coefficients of the model at an elevation.
 *
 *     fh1 = exp(-z/8000)   fh2 = exp(-z/1250)
 *     cg1 = 5.09e-5 z + 0.868   cg2 = 3.92e-5 z + 0.0387   b = 0.664 + 0.163/fh1
 *
 * @param elevationM  Above sea level. [m], -400..5000 (fitted to stations up to 1600 m)
 * @param variant     Default 'lifted'
 */
export function clearSkySite(
  elevationM: number,
  variant: ClearSkyVariant = 'lifted',
): ClearSkySite {
  const fh1 = Math.exp(-elevationM / 8000)
  return {
    variant,
    pressurePa: standardPressurePa(elevationM),
    fh1,
    fh2: Math.exp(-elevationM / 1250),
    globalScale: 5.09e-5 * elevationM + 0.868,
    globalDecay: 3.92e-5 * elevationM + 0.0387,
    beamScale: 0.664 + 0.163 / fh1,
  }
}

/**
 * Clear-sky irradiance of one minute, written into `out`; all zero with the sun on or below the
 * horizon.
 *
 * @param site            From `clearSkySite`
 * @param altitudeDeg     Apparent altitude of the sun. [°]
 * @param dniExtra        Extraterrestrial normal irradiance. [W/m²]
 * @param linkeTurbidity  Linke turbidity for air mass 2, 1 (clean and dry) .. 8
 * @param out             Receives ghi, dni, dhi. NaN wherever an input is NaN
 *
 * Source: P. Ineichen and R. Perez, "A new airmass independent formulation for the Linke turbidity
 * coefficient," Solar Energy, vol. 73, no. 3, pp. 151-157, 2002. doi:10.1016/S0038-092X(02)00045-2;
 * factor: R. Perez et al., "A new operational model for satellite-derived irradiances," Solar
 * Energy, vol. 73, no. 5, pp. 307-317, 2002. doi:10.1016/S0038-092X(02)00122-6
 */
export function clearSky(
  site: ClearSkySite,
  altitudeDeg: number,
  dniExtra: number,
  linkeTurbidity: number,
  out: Irradiance,
): void {
  if (altitudeDeg <= 0) {
    out.ghi = 0
    out.dni = 0
    out.dhi = 0
    return
  }
  const day = clearDay(site, dniExtra, linkeTurbidity)
  clearMinute(day, altitudeDeg, Math.sin(altitudeDeg * RAD), out)
}

/** What stays the same over a day. Made by `clearDay`. */
export interface ClearDay {
  readonly site: ClearSkySite
  readonly dniExtra: number
  /** Linke turbidity less 1. */
  readonly haze: number
  /** The least part of the global that is diffuse. */
  readonly leastDiffuse: number
}

/** @param dniExtra, linkeTurbidity  as for `clearSky` */
export function clearDay(site: ClearSkySite, dniExtra: number, linkeTurbidity: number): ClearDay {
  const least = (0.1 - 0.2 * Math.exp(-linkeTurbidity)) / (0.1 + 0.882 / site.fh1)
  // Very clean air (TL below 0.7) would make it negative.
  return { site, dniExtra, haze: linkeTurbidity - 1, leastDiffuse: Math.max(0, least) }
}

/** The same as `clearSky` for many minutes of a day. @param altitudeDeg [°], > 0 */
export function clearMinute(
  day: ClearDay,
  altitudeDeg: number,
  sinAltitude: number,
  out: Irradiance,
): void {
  const airMass = absoluteAirMass(relativeAirMass(altitudeDeg, sinAltitude), day.site.pressurePa)
  clearAtAirMass(day, sinAltitude, airMass, out)
}

/**
 * The same with sine of altitude and air mass given; how published figures are stated.
 *
 *     GHI = cg1 · I0n · sin h · exp(-cg2 · m · (fh1 + fh2 · (TL - 1)) + 0.01 · min(m, 8)^1.8)
 *     DNI = min(b · I0n · exp(-0.09 · m · (TL - 1)),
 *               GHI / sin h · (1 - (0.1 - 0.2 exp(-TL)) / (0.1 + 0.882/fh1)))
 *     DHI = GHI - DNI · sin h
 *
 * @param sinAltitude  > 0
 * @param airMass      Absolute air mass, > 0
 */
export function clearSkyAtAirMass(
  site: ClearSkySite,
  sinAltitude: number,
  airMass: number,
  dniExtra: number,
  linkeTurbidity: number,
  out: Irradiance,
): void {
  clearAtAirMass(clearDay(site, dniExtra, linkeTurbidity), sinAltitude, airMass, out)
}

function clearAtAirMass(
  { site, dniExtra, haze, leastDiffuse }: ClearDay,
  sinAltitude: number,
  airMass: number,
  out: Irradiance,
): void {
  const globalPath = -site.globalDecay * airMass * (site.fh1 + site.fh2 * haze)
  const lift = site.variant === 'plain' ? 0 : 0.01 * Math.min(airMass, LIFT_UP_TO_AIR_MASS) ** 1.8
  const globalNormal = site.globalScale * dniExtra * Math.exp(globalPath + lift)
  const beam = site.beamScale * dniExtra * Math.exp(-0.09 * airMass * haze)
  const dni = Math.min(beam, globalNormal * (1 - leastDiffuse))
  out.ghi = globalNormal * sinAltitude
  out.dni = dni
  out.dhi = (globalNormal - dni) * sinAltitude
}
