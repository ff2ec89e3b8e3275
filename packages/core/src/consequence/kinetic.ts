// How warm a medicine has been, in one figure.

/** Activation energy of the figure. [J/mol]; WHO, glossary of prequalified devices: 83.144 kJ/mol */
const ACTIVATION_J = 83144
/** Gas constant. [J/(mol K)]; CODATA 2018 */
const GAS_J = 8.314462618
const ZERO_K = 273.15

/**
 * Mean kinetic temperature: the steady temperature that would age a medicine as much.
 *
 *     T = (dH / R) / -ln(mean of exp(-dH / (R T_i)))
 *
 * @param celsius  temperatures at even steps. [n], n >= 1, [°C]
 * @returns        [°C]
 *
 * Source: the equation of J. D. Haynes, J. Pharm. Sci. 60, 927 (1971), from memory, with the
 * activation energy of the World Health Organization's glossary.
 */
export function meanKineticC(celsius: Float64Array): number {
  let sum = 0
  for (const c of celsius) sum += Math.exp(-ACTIVATION_J / (GAS_J * (c + ZERO_K)))
  return ACTIVATION_J / GAS_J / -Math.log(sum / celsius.length) - ZERO_K
}
