// Energies live on a grid of 2^-36 kWh.
//
// Sums of numbers on the grid are exact below 131 072 kWh, so the order of adding does not
// matter and two simulations that ought to agree can be compared with ===.

/** Spacing of the grid. [kWh] */
export const GRID_KWH = 2 ** -36

// In [2^16, 2^17) doubles are 2^-36 apart, so adding 98 304 (the middle) rounds to the grid.
const SHIFT = 98304

/**
 * The nearest energy on the grid, ties to even.
 *
 * @param kwh  [kWh], |kwh| < 32 768
 */
export function onGrid(kwh: number): number {
  return kwh + SHIFT - SHIFT
}

/**
 * Powers and irradiances are rounded to 2^-20 (1e-6) before the island, because sin and exp may
 * differ in the last bit between engines.
 *
 * @param value  [kW] or [W/m²], |value| < 2^31
 */
export function onSeriesGrid(value: number): number {
  return Math.round(value * 1048576) / 1048576
}
