// Loads of which nobody said how long they may be off.

import { CONSEQUENCES } from '../house/house.js'
import type { Prepared } from '../series/prepare.js'

/**
 * Names of critical loads whose tolerance the file leaves out: no minute off is allowed, which may
 * decide all.
 *
 * @param plain  the house as it was read; without it none are known
 */
export function untoldNames({ house }: Prepared, plain: unknown): string[] {
  const given = (plain as { loads?: Readonly<Record<string, unknown>>[] } | undefined)?.loads
  if (given === undefined) return []
  return house.loads
    .filter(
      ({ tier, taken = [] }, i) =>
        tier === 'critical' &&
        ['toleratesMinutes', ...CONSEQUENCES].every(
          (key) => given[i]?.[key] === undefined && !taken.includes(key),
        ),
    )
    .map(({ name }) => name)
}

/** The same in a sentence. */
export function untoldTolerances(prepared: Prepared, plain: unknown): string[] {
  const names = untoldNames(prepared, plain)
  if (names.length === 0) return []
  return [
    `${names.join(', ')}: toleratesMinutes is left out and counts as 0, so the first minute off ends ` +
      'the ride. Ask what it really bears. (The gap of the changeover itself is not counted here; ' +
      'check tells it.)',
  ]
}
