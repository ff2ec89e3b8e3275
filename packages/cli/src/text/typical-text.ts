// The table of typical loads as text.

import type { TypicalLine } from '@tideover/core'
import { table, toleranceText } from './lines.js'
import { wrap } from './wrap.js'

const TIERS = { critical: 'must stay on', comfort: 'while it lasts', gridOnly: 'off in a cut' }

export function typicalText(lines: readonly TypicalLine[]): string {
  const head = ['kind', 'W', 'power factor', 'start', 'in a cut', 'may be off']
  const rows = table([head, ...lines.map(cells)])
  return [
    'Typical loads: `like: fridge` in a load of the house file takes what it leaves out.',
    '',
    rows[0] as string,
    ...lines.flatMap(({ runs, source }, i) => [
      rows[i + 1] as string,
      ...[`${runs}.`, `${source}.`].flatMap((text) =>
        wrap(text, 74)
          .split('\n')
          .map((line) => `    ${line}`),
      ),
    ]),
    '',
    wrap('The plate and the customer win: every field that is stated goes before the table.'),
  ].join('\n')
}

function cells(line: TypicalLine): string[] {
  const { kind, w, powerFactor, startingMultiple, tier, toleratesMinutes } = line
  return [
    kind,
    String(w),
    String(powerFactor),
    startingMultiple === 1 ? '' : `x ${startingMultiple}`,
    TIERS[tier],
    toleratesMinutes === null ? '' : toleranceText(toleratesMinutes),
  ]
}
