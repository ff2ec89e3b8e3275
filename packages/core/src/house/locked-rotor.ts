// What a motor draws from standing still, by the letter on its plate.
//
// Source: NEMA MG 1 and NEC 430.7(B), locked-rotor kVA a horsepower. V has no upper end.

const KVA_PER_HP = {
  A: [0, 3.14],
  B: [3.15, 3.54],
  C: [3.55, 3.99],
  D: [4, 4.49],
  E: [4.5, 4.99],
  F: [5, 5.59],
  G: [5.6, 6.29],
  H: [6.3, 7.09],
  J: [7.1, 7.99],
  K: [8, 8.99],
  L: [9, 9.99],
  M: [10, 11.19],
  N: [11.2, 12.49],
  P: [12.5, 13.99],
  R: [14, 15.99],
  S: [16, 17.99],
  T: [18, 19.99],
  U: [20, 22.39],
  V: [22.4, 22.4],
} as const satisfies Record<string, readonly [number, number]>

type LockedRotorLetter = keyof typeof KVA_PER_HP

export const LOCKED_ROTOR_LETTERS = Object.keys(KVA_PER_HP) as [
  LockedRotorLetter,
  ...LockedRotorLetter[],
]

/**
 * Apparent power of a motor with its rotor standing, the middle of its letter's range.
 *
 * @param hp    rating on the plate. [hp], > 0
 * @param code  a letter of `LOCKED_ROTOR_LETTERS`
 * @returns     [kVA]; for V its lower end; NaN for any other letter
 */
export function lockedRotorKva(hp: number, code: string): number {
  const range: readonly [number, number] | undefined = KVA_PER_HP[code as LockedRotorLetter]
  return range === undefined ? Number.NaN : (hp * (range[0] + range[1])) / 2
}
