// How much air the beam has to cross, as a multiple of the air straight up.

const RAD = Math.PI / 180

/** Pressure of the standard atmosphere at sea level. [Pa] */
const SEA_LEVEL_PA = 101325

/**
 * Relative air mass, seen from sea level.
 *
 *     m = 1 / (sin h + 0.50572 · (h + 6.07995)^-1.6364),  h in degrees
 *
 * Straight up the fit gives 0.9997, on the horizon 37.9.
 *
 * @param altitudeDeg  Apparent altitude of the sun. [°], 0..90
 * @param sinAltitude  its sine, where it is known
 * @returns            NaN below the horizon, where no beam comes through
 *
 * Source: F. Kasten and A. T. Young, "Revised optical air mass tables and approximation formula,"
 * Appl. Opt., vol. 28, no. 22, pp. 4735-4738, 1989. doi:10.1364/AO.28.004735
 */
export function relativeAirMass(
  altitudeDeg: number,
  sinAltitude = Math.sin(altitudeDeg * RAD),
): number {
  if (!(altitudeDeg >= 0)) return Number.NaN
  return 1 / (sinAltitude + 0.50572 * (altitudeDeg + 6.07995) ** -1.6364)
}

/**
 * Air pressure of the standard atmosphere at an elevation.
 *
 *     p = 101325 · (1 - 0.0065 z / 288.15)^5.25588
 *
 * @param elevationM  [m], -500..11000
 * @returns           [Pa]
 *
 * Source: U.S. Standard Atmosphere 1976, troposphere (ISO 2533 agrees).
 */
export function standardPressurePa(elevationM: number): number {
  return SEA_LEVEL_PA * (1 - (0.0065 * elevationM) / 288.15) ** 5.25588
}

/**
 * Air mass with the pressure of the place: relative air mass · p / 101325.
 *
 * @param relative    Relative air mass
 * @param pressurePa  [Pa], > 0
 */
export function absoluteAirMass(relative: number, pressurePa: number): number {
  return (relative * pressurePa) / SEA_LEVEL_PA
}
