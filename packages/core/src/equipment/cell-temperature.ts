// How warm a module gets.

/** Heat loss of an open rack: still air [W/(m²·K)] and with wind [W·s/(m³·K)]. */
const FAIMAN_U0 = 25
const FAIMAN_U1 = 6.84

/**
 * Module temperature of one minute from light, air and wind; the cell is taken to be as warm.
 *
 *     T = Ta + G / (u0 + u1 · v)
 *
 * Steady state: it answers a passing cloud at once, where a real module lags by some minutes.
 * The defaults were fitted to modules on an open rack; a roof close behind them runs warmer.
 *
 * @param planeWm2  Light on the plane. [W/m²], >= 0
 * @param airC      Air in the shade. [°C]
 * @param windMs    Wind at the modules. [m/s], >= 0
 * @param u0        [W/(m²·K)], > 0, default 25
 * @param u1        [W·s/(m³·K)], >= 0, default 6.84
 * @returns         [°C]. NaN wherever an input is NaN
 *
 * Source: D. Faiman, "Assessing the outdoor operating temperature of photovoltaic modules,"
 * Prog. Photovolt., vol. 16, no. 4, pp. 307-315, 2008. doi:10.1002/pip.813
 */
export function cellTemperatureC(
  planeWm2: number,
  airC: number,
  windMs: number,
  u0 = FAIMAN_U0,
  u1 = FAIMAN_U1,
): number {
  return airC + planeWm2 / (u0 + u1 * windMs)
}
