// The sun above the air: what a day could give at most, and how long it is.
//
// The daily figures are the geometry of one day: a single declination, the centre of the disc, no
// refraction. Real sunrise to sunset is some ten minutes longer.
//
// Spencer's series is used for the distance only. His declination fits the calendar of about 1950:
// in 2025 it is 0.5° off in September, and the level day at 58° N would come out 3 % too bright in
// November and 3 % too dark in February.

/** Irradiance of the sun at its mean distance. [W/m²]; Kopp & Lean 2011, doi:10.1029/2010GL045777 */
export const SOLAR_CONSTANT = 1361

const RAD = Math.PI / 180

/**
 * Irradiance on a plane that faces the sun above the air.
 *
 *     I0n = S · (1.000110 + 0.034221 cos B + 0.001280 sin B + 0.000719 cos 2B + 0.000077 sin 2B)
 *     B = 2π (day - 1) / 365
 *
 * @param dayOfYear      1..366, fractions allowed
 * @param solarConstant  [W/m²], default 1361; published figures use 1353 to 1367
 * @returns              [W/m²]
 *
 * Source: J. W. Spencer, "Fourier series representation of the position of the sun," Search,
 * vol. 2, no. 5, p. 172, 1971.
 */
export function extraterrestrialNormal(dayOfYear: number, solarConstant = SOLAR_CONSTANT): number {
  const b = (2 * Math.PI * (dayOfYear - 1)) / 365
  const distance =
    1.00011 +
    0.034221 * Math.cos(b) +
    0.00128 * Math.sin(b) +
    0.000719 * Math.cos(2 * b) +
    0.000077 * Math.sin(2 * b)
  return solarConstant * distance
}

/**
 * Declination of the sun at noon UTC, one value a day, on the calendar of 2025.
 *
 * Within 0.01° of an almanac in 2025, within 0.35° in the years around, for the calendar slips by
 * a day against the seasons. `sunColumns` does not use it.
 *
 * @param dayOfYear  1..366, fractions allowed
 * @returns          [°], -23.5..23.5
 *
 * Source: The Astronomical Almanac, low-precision formulas for the sun, as in J. J. Michalsky,
 * Solar Energy, vol. 40, no. 3, pp. 227-235, 1988. doi:10.1016/0038-092X(88)90045-X
 */
export function declinationDeg(dayOfYear: number): number {
  // Noon of 1 January 2025 is 9132 days after noon of 1 January 2000.
  const days = 9131 + dayOfYear
  const anomaly = (357.528 + 0.9856003 * days) * RAD
  const longitudeDeg =
    280.46 + 0.9856474 * days + 1.915 * Math.sin(anomaly) + 0.02 * Math.sin(2 * anomaly)
  const obliquity = (23.439 - 4e-7 * days) * RAD
  return Math.asin(Math.sin(obliquity) * Math.sin(longitudeDeg * RAD)) / RAD
}

/**
 * Hour angle of sunset, centre of the disc, without refraction.
 *
 *     cos ws = -tan φ · tan δ
 *
 * @param latitudeDeg     [°], north positive, -90..90
 * @param declinationDeg  [°]
 * @returns               [rad], 0 in polar night, π under the midnight sun
 *
 * Source: R. G. Allen et al., FAO Irrigation and Drainage Paper 56, 1998, eq. 25.
 */
export function sunsetHourAngleRad(latitudeDeg: number, declinationDeg: number): number {
  const cosine = -Math.tan(latitudeDeg * RAD) * Math.tan(declinationDeg * RAD)
  return Math.acos(Math.min(1, Math.max(-1, cosine)))
}

/**
 * Irradiation on level ground above the air over one day of fixed declination.
 *
 *     H0 = 24/π · I0n · (ws sin φ sin δ + cos φ cos δ sin ws)
 *
 * @param latitudeDeg     [°], north positive, -90..90
 * @param declinationDeg  [°]
 * @param dniExtra        Extraterrestrial normal. [W/m²]
 * @returns               [kWh/m²], 0 in polar night
 *
 * Source: FAO Irrigation and Drainage Paper 56, eq. 21.
 */
export function levelDayKwhM2(
  latitudeDeg: number,
  declinationDeg: number,
  dniExtra: number,
): number {
  const latitude = latitudeDeg * RAD
  const declination = declinationDeg * RAD
  const ws = sunsetHourAngleRad(latitudeDeg, declinationDeg)
  const height =
    ws * Math.sin(latitude) * Math.sin(declination) +
    Math.cos(latitude) * Math.cos(declination) * Math.sin(ws)
  // In polar night rounding may leave a trace below zero.
  return Math.max(0, ((24 / Math.PI) * dniExtra * height) / 1000)
}

/**
 * Extraterrestrial irradiation on level ground over one day: the divisor of a daily clearness.
 *
 * @param latitudeDeg    [°], north positive, -90..90
 * @param dayOfYear      1..366
 * @param solarConstant  [W/m²], default 1361
 * @returns              [kWh/m²], 0 in polar night
 */
export function extraterrestrialDaily(
  latitudeDeg: number,
  dayOfYear: number,
  solarConstant = SOLAR_CONSTANT,
): number {
  const dniExtra = extraterrestrialNormal(dayOfYear, solarConstant)
  return levelDayKwhM2(latitudeDeg, declinationDeg(dayOfYear), dniExtra)
}

/**
 * Time from sunrise to sunset of the centre of the disc, without refraction.
 *
 * @param latitudeDeg  [°], north positive, -90..90
 * @param dayOfYear    1..366
 * @returns            [h], 0 in polar night, 24 under the midnight sun
 */
export function dayLengthHours(latitudeDeg: number, dayOfYear: number): number {
  return (24 / Math.PI) * sunsetHourAngleRad(latitudeDeg, declinationDeg(dayOfYear))
}
