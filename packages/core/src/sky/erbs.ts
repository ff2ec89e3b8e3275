// How much of an hour's light is diffuse.

/**
 * Diffuse share of the global horizontal irradiation of an *hour*, from its clearness.
 *
 *     kt <= 0.22        1 - 0.09 kt
 *     0.22 < kt <= 0.8  0.9511 - 0.1604 kt + 4.388 kt² - 16.638 kt³ + 12.336 kt⁴
 *     kt > 0.8          0.165
 *
 * Made from hourly sums of four stations in the United States and one in Australia. A single
 * minute is brighter or darker than its hour allows, so split the hour and then switch the beam.
 *
 * @param kt  Global horizontal over extraterrestrial horizontal, >= 0
 * @returns   0.165..1; NaN for NaN
 *
 * Source: D. G. Erbs, S. A. Klein and J. A. Duffie, "Estimation of the diffuse radiation fraction
 * for hourly, daily and monthly-average global radiation," Solar Energy, vol. 28, no. 4,
 * pp. 293-302, 1982. doi:10.1016/0038-092X(82)90302-4
 */
export function erbsDiffuseFraction(kt: number): number {
  if (kt <= 0) return 1
  if (kt <= 0.22) return 1 - 0.09 * kt
  if (kt > 0.8) return 0.165
  return 0.9511 + kt * (-0.1604 + kt * (4.388 + kt * (-16.638 + kt * 12.336)))
}
