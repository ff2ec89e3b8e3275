// How well so many synthetic years pin a share.

/** 97.5 % point of the standard normal distribution. */
const Z = 1.959963984540054

/**
 * Wilson's score interval, 95 %.
 *
 * Starts within one January are not independent: one January is one trial, so n is the number of
 * years. The interval says how well those years pin the figure, not how well the climate is known.
 *
 * @param k  successes, 0..n; need not be whole
 * @param n  trials, > 0
 *
 * Source: E. B. Wilson, J. Amer. Statist. Assoc. 22, 209-212 (1927); the form is method 3 of
 * R. G. Newcombe, Statist. Med. 17, 857-872 (1998).
 */
export function wilson95(k: number, n: number): readonly [number, number] {
  const p = k / n
  const z2 = Z * Z
  const middle = (p + z2 / (2 * n)) / (1 + z2 / n)
  const half = (Z / (1 + z2 / n)) * Math.sqrt((p * (1 - p)) / n + z2 / (4 * n * n))
  return [Math.max(0, middle - half), Math.min(1, middle + half)]
}
