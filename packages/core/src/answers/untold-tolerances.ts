// Loads of which nobody said how long they may be off.

import { CONSEQUENCES } from '../house/house.js'
import type { Prepared } from '../series/prepare.js'

/** Critical loads whose tolerance the file leaves out: none is allowed, which may decide all. */
export function untoldTolerances({ house }: Prepared, plain: unknown): string[] {
  const given = (plain as { loads?: Readonly<Record<string, unknown>>[] } | undefined)?.loads
  if (given === undefined) return []
  const names = house.loads
    .filter(
      ({ tier, taken = [] }, i) =>
        tier === 'critical' &&
        ['toleratesMinutes', ...CONSEQUENCES].every(
          (key) => given[i]?.[key] === undefined && !taken.includes(key),
        ),
    )
    .map(({ name }) => name)
  if (names.length === 0) return []
  return [
    `${names.join(', ')}: toleratesMinutes is left out and counts as 0, so the first minute off ends ` +
      'the ride. Ask what it really bears. (The gap of the changeover itself is not counted here; ' +
      'check tells it.)',
  ]
}
