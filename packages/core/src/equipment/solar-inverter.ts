// What a solar inverter hands on.

/**
 * AC power of one minute: one efficiency, cut off at the rating.
 *
 * @param dcKw        [kW], >= 0
 * @param efficiency  0..1, the weighted figure of the data sheet
 * @param ratedKw     AC rating. [kW], > 0
 * @returns           [kW], 0..ratedKw. NaN wherever an input is NaN
 */
export function solarInverterAcKw(dcKw: number, efficiency: number, ratedKw: number): number {
  return Math.min(dcKw * efficiency, ratedKw)
}
