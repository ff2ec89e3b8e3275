// Chance, indexed: the same seed and index give the same number, in whatever order they are drawn.
//
// The mixing steps are the 32-bit finaliser of MurmurHash3 (A. Appleby, public domain), applied
// once for each of the three words. Passing statistical batteries is not needed here; order
// independence and equal figures on every machine are (only 32-bit integer arithmetic is used).

function mix(h: number): number {
  let x = h ^ (h >>> 16)
  x = Math.imul(x, 0x85ebca6b)
  x ^= x >>> 13
  x = Math.imul(x, 0xc2b2ae35)
  return x ^ (x >>> 16)
}

/**
 * A number in the open interval (0, 1).
 *
 * @param seed    whole number, of the house or the call
 * @param stream  whole number, one for each use, so that two uses do not share their luck
 * @param index   whole number: the minute, the hour or the day the chance belongs to
 */
export function luck(seed: number, stream: number, index: number): number {
  const a = mix(seed ^ 0x9e3779b9)
  const b = mix(a ^ stream ^ 0x7f4a7c15)
  const c = mix(b ^ index)
  return ((c >>> 0) + 0.5) / 4294967296
}

/**
 * A standard normal number by Box and Muller (Ann. Math. Statist. 29, 610-611, 1958).
 * Uses the indices 2·index and 2·index + 1 of its stream.
 */
export function normalLuck(seed: number, stream: number, index: number): number {
  const u = luck(seed, stream, 2 * index)
  const v = luck(seed, stream, 2 * index + 1)
  return Math.sqrt(-2 * Math.log(u)) * Math.cos(2 * Math.PI * v)
}
