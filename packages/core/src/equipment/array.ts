// What an array of modules gives at its terminals.
//
// Nothing is cut at nameplate here: a cold bright minute gives more, and an island has to take it.

/** Light at which nameplate is stated. [W/m²] */
const STANDARD_WM2 = 1000
/** Cell temperature at which nameplate is stated. [°C] */
const STANDARD_CELL_C = 25

/** Share of nameplate an array loses each year; common practice, 0.003 to 0.008. */
const AGEING_PER_YEAR = 0.005

/** What is known of an array's size and wear. */
export interface ArraySize {
  /** Nameplate under standard conditions. [kW], > 0 */
  readonly peakKw: number
  /** Wiring, soiling, mismatch and all else that is lost every day. 0..1 */
  readonly lossShare: number
  /** [years], >= 0 */
  readonly ageYears: number
}

/**
 * Nameplate less losses and age: what the array gives under standard conditions today.
 *
 *     P = peak · (1 - loss) · (1 - ageing · years), not below 0
 *
 * @param ageingPerYear  0..1, default 0.005
 * @returns              [kW]
 */
export function agedPeakKw(array: ArraySize, ageingPerYear = AGEING_PER_YEAR): number {
  const aged = Math.max(0, 1 - ageingPerYear * array.ageYears)
  return array.peakKw * (1 - array.lossShare) * aged
}

/**
 * DC power of one minute.
 *
 *     P = peak · G/1000 · (1 + perKelvin · (Tc - 25)), not below 0
 *
 * @param planeWm2   Light on the plane behind the glass. [W/m²], >= 0
 * @param cellC      [°C]
 * @param peakKw     From `agedPeakKw`. [kW]
 * @param perKelvin  Change of power with cell temperature, -0.0035 for -0.35 %/K. [1/K], <= 0
 * @returns          [kW]. NaN wherever an input is NaN
 *
 * Source: the linear power coefficient of every data sheet (IEC 61215, IEC 60891).
 */
export function arrayDcKw(
  planeWm2: number,
  cellC: number,
  peakKw: number,
  perKelvin: number,
): number {
  const warmth = 1 + perKelvin * (cellC - STANDARD_CELL_C)
  return Math.max(0, ((peakKw * planeWm2) / STANDARD_WM2) * warmth)
}
