// Paper 3: every load by tier, with room for its circuit and its protective device.

import type { LoadRow, Tier } from '@tideover/core'
import { BLANK, cutName, type Html, line, row, sheet, table, tag } from './html.js'
import { frameOf, type PapersInput, wordsOf } from './input.js'
import { short } from './numbers.js'

const TIERS: readonly (readonly [Tier, string])[] = [
  ['critical', 'Must stay on: on the island'],
  ['comfort', 'While it lasts: on the island, dropped first'],
  ['gridOnly', 'Off in a cut: has to be wired outside the island'],
]
const HEAD = [
  'load',
  'phase',
  'W each',
  'pcs',
  'W in all',
  'start kVA',
  'kWh a day, Jan',
  'Jul',
  'circuit',
  'protective device',
]
const WIDTHS = [28, 8, 8, 5, 8, 7, 8, 7, 9, 12]
/** Rows that fit on one sheet; the rest is summed in a row of its own. */
const MOST_ROWS = 36
/** Beyond so many rows each name keeps to one line. */
const ROOMY_ROWS = 24
/** Beyond so many the type is smaller. */
const DENSE_ROWS = 26

export function circuitList(input: PapersInput): string {
  const { loads } = input.loads
  const { board } = wordsOf(input)
  const room = loads.length > DENSE_ROWS ? '.dense' : loads.length > ROOMY_ROWS ? '' : '.roomy'
  const signs = loads.length > ROOMY_ROWS ? 30 : 60
  const shown = new Set(loads.slice(0, loads.length > MOST_ROWS ? MOST_ROWS - 1 : MOST_ROWS))
  const rows = TIERS.flatMap(([tier, title]) => {
    const all = loads.filter((load) => load.tier === tier)
    if (all.length === 0) return []
    const rest = all.filter((load) => !shown.has(load))
    return [
      row([tag('td', title, ` colspan="${HEAD.length}"`)], ' class="group"'),
      ...all.filter((load) => shown.has(load)).map((load) => loadRow(load, signs)),
      ...(rest.length === 0 ? [] : [sumRow(`and ${rest.length} more, see the house file`, rest)]),
      sumRow('together', all),
    ]
  })
  const island = loads.filter(({ tier }) => tier !== 'gridOnly')
  return sheet(
    `circuit-list${room}`,
    frameOf(input, 3, 'Backed-up circuits', `For the installer, and at the ${board}`),
    [
      table(HEAD, [...rows, sumRow('all loads of the island', island)], WIDTHS),
      ...peakLines(input),
      tag(
        'p',
        'W in all is what is connected, not what runs at once; m marks the most of a metered minute ' +
          'or of a profile. A start is of one piece, - where a meter or a profile shows none. kWh are ' +
          'those of a mean day.' +
          (loads.some(({ taken }) => taken.length > 0)
            ? ' * typical of its kind, not of this house: read the plate.'
            : ''),
      ),
      tag('div.lines', [line('installer'), line('date')]),
    ],
  )
}

function loadRow(load: LoadRow, signs: number): Html {
  const mark = load.taken.length > 0 ? '*' : ''
  return row([
    `${cutName(load.name, signs)}${mark}`,
    load.phase,
    load.w === null ? load.from : short(load.w, 0),
    String(load.pieces),
    load.w === null ? `m ${short(1000 * load.mostKw, 0)}` : short(load.w * load.pieces, 0),
    load.startKva === null ? '-' : short(load.startKva),
    load.januaryKwhADay.toFixed(2),
    load.julyKwhADay.toFixed(2),
    BLANK,
    BLANK,
  ])
}

/** Watts that are connected; the most of a minute where a meter or a profile tells no more. */
function connectedW(loads: readonly LoadRow[]): number {
  return loads.reduce(
    (sum, { w, pieces, mostKw }) => sum + (w === null ? 1000 * mostKw : w * pieces),
    0,
  )
}

function sumRow(name: string, loads: readonly LoadRow[]): Html {
  const sum = (value: (load: LoadRow) => number): string =>
    loads.reduce((total, load) => total + value(load), 0).toFixed(2)
  return row(
    [
      name,
      '',
      '',
      '',
      short(connectedW(loads), 0),
      '',
      sum((load) => load.januaryKwhADay),
      sum((load) => load.julyKwhADay),
      '',
      '',
    ],
    ' class="sum"',
  )
}

/** What runs at once, and the hardest start, as the check found them. */
export function peakLines({ check }: PapersInput): Html[] {
  const ids = ['running-peak', 'starting-peak', 'peaks-fit', 'restart-peak']
  return check.findings.filter(({ id }) => ids.includes(id)).map(({ what }) => tag('p', what))
}
