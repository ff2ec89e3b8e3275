// Where something that was met is met no longer: found by asking again and again, not by a slope.

/**
 * The least whole number above `from` at which it is lost, or null where it still holds at `most`.
 *
 * Steps double until one loses it; the span between is then halved. In between it is taken to be
 * lost once and for all.
 *
 * @param from   whole; it holds here
 * @param most   whole; no further is looked
 * @param holds  whether it holds at a whole number
 */
export function firstLost(
  from: number,
  most: number,
  holds: (at: number) => boolean,
): number | null {
  let good = from
  let bad = Number.NaN
  for (let by = 1; Number.isNaN(bad); by *= 2) {
    const at = Math.min(most, from + by)
    if (!holds(at)) bad = at
    else if (at === most) return null
    else good = at
  }
  while (bad - good > 1) {
    const middle = (good + bad) >> 1
    if (holds(middle)) good = middle
    else bad = middle
  }
  return bad
}
