// The load table on one page.

import { CONSEQUENCES, type LoadRow, type LoadTable, type Tier } from '@tideover/core'
import { bullets, round, table, toleranceText } from './lines.js'
import { wrap } from './wrap.js'

const TIERS: readonly (readonly [Tier, string])[] = [
  ['critical', 'must stay on'],
  ['comfort', 'while it lasts'],
  ['gridOnly', 'off in a cut'],
]

/** Fields that say when a load runs. */
const HOURS = ['cycle', 'events', 'charging', 'byAir', 'at', 'runs']
/** Fields that say for how long it may be off. */
const GAP = ['toleratesMinutes', ...CONSEQUENCES]

export function loadText(answer: LoadTable): string {
  const lines = [`${answer.house}: loads, to be checked with the customer.`]
  if (answer.slips.length > 0) lines.push('', 'Look at first:', ...bullets(answer.slips))
  const head = [
    '',
    'W',
    'h a day',
    'Jan kWh',
    'Jul kWh',
    'most kW',
    'start kVA',
    'phase',
    'may be off',
  ]
  const rows: string[][] = [head]
  for (const [tier, name] of TIERS) {
    const loads = answer.loads.filter((row) => row.tier === tier)
    if (loads.length === 0) continue
    const { januaryKwhADay, julyKwhADay } = answer.sums[tier]
    rows.push([
      name.toUpperCase(),
      '',
      '',
      januaryKwhADay.toFixed(2),
      julyKwhADay.toFixed(2),
      '',
      '',
      '',
      '',
    ])
    rows.push(...loads.map(cells))
  }
  lines.push('', ...table(rows), '')
  lines.push(
    wrap(
      'Energy is a mean day of the month, hours are those of January. A start is of one piece; - ' +
        'where a meter or a profile shows none.',
    ),
  )
  if (answer.loads.some(({ taken }) => taken.length > 0)) {
    lines.push(wrap('* typical of its kind, not of this house: read the plate, ask the customer.'))
  }
  if (answer.loads.some(({ standsIn }) => standsIn.january || standsIn.july)) {
    lines.push(
      wrap(
        '? no reading near that month: recorded days of other months stand in, be they of a holiday.',
      ),
    )
  }
  if (answer.loads.some(({ tier }) => tier === 'gridOnly')) {
    lines.push(wrap('What is off in a cut has to be wired outside the island.'))
  }
  const notes = [
    ...answer.loads.flatMap(keptText),
    ...answer.loads.filter(({ contains }) => contains.length > 0).map(containsText),
  ]
  if (notes.length + answer.warnings.length > 0) {
    lines.push('', 'Assumed:', ...bullets([...notes, ...answer.warnings]))
  }
  for (const { file, notes: read } of answer.read)
    lines.push('', `Read, ${file}:`, ...bullets(read))
  lines.push('', 'Caution:', ...bullets(answer.cautions))
  return lines.join('\n')
}

function cells(row: LoadRow): string[] {
  const name = row.pieces > 1 ? `${row.name} (${row.pieces})` : row.name
  const mark = (value: string, ...fields: string[]): string =>
    fields.some((field) => row.taken.includes(field)) ? `${value}*` : value
  return [
    `  ${mark(name, 'tier')}`,
    row.w === null ? row.from : mark(round(row.w), 'w', 'byAir'),
    mark(row.hoursADay.toFixed(1), ...HOURS),
    `${row.januaryKwhADay.toFixed(2)}${row.standsIn.january ? '?' : ''}`,
    `${row.julyKwhADay.toFixed(2)}${row.standsIn.july ? '?' : ''}`,
    row.mostKw.toFixed(2),
    row.startKva === null
      ? '-'
      : mark(row.startKva.toFixed(2), 'w', 'byAir', 'startingMultiple', 'powerFactor'),
    row.phase,
    row.tier === 'critical' ? mark(toleranceText(row.toleratesMinutes), ...GAP) : '',
  ]
}

function keptText({ name, toleranceBasis }: LoadRow): string[] {
  return toleranceBasis === null ? [] : [`${name}: ${toleranceBasis}.`]
}

function containsText({ name, contains }: LoadRow): string {
  return `${name} holds ${contains.join(', ')}: taken out of it, counted once.`
}
