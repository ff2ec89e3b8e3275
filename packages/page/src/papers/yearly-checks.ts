// Paper 5: what to look at once a year, and when the answer no longer holds.

import { BLANK, type Html, line, list, row, sheet, table, tag } from './html.js'
import { frameOf, type PapersInput, wordsOf } from './input.js'
import { short, wholePercent } from './numbers.js'

/** Columns to write in. */
const YEARS = 6

export function yearlyChecks(input: PapersInput): string {
  const blanks = Array.from({ length: YEARS }, () => BLANK)
  const rows = checks(input).map(([what, assumed]) => row([what, assumed, ...blanks]))
  const years = Array.from({ length: YEARS }, () => '20__')
  return sheet(
    'yearly-checks',
    frameOf(input, 5, 'Yearly checks', 'Before winter, or the season of storms'),
    [
      table(['check', 'assumed', ...years], rows, [32, 20, ...years.map(() => 8)]),
      tag('h3', 'The answer expires when'),
      list(expires(input)),
      tag('div.lines', [line('next check due'), line('electrician'), line('first installed')]),
    ],
  )
}

function checks(input: PapersInput): (readonly [string, string])[] {
  const { ride, prepared } = input
  const { house } = prepared
  const { dial, operator } = wordsOf(input)
  return [
    ['battery health as it reads, of nameplate', `${wholePercent(ride.health)} or more`],
    ['reserve set', wholePercent(house.stack.reserve)],
    ['modules in use, none with a fault', String(ride.modules)],
    ...testCut(input),
    ['loads that must stay on stay on; what is off comes back', 'tick'],
    ['residual-current devices by their test button', 'tick'],
    [`coldest seen at the battery (${house.stack.place})`, coldest(input)],
    ...generatorChecks(input),
    ['terminals torqued, visual check, by a licensed person', 'name'],
    ['solar back by itself after the test', 'tick'],
    ['settings as on the settings sheet, after updates too', 'tick'],
    [`telephone numbers on the card right${dial === '' ? '' : ` (${operator}: ${dial})`}`, 'tick'],
    ['loads added or changed since', 'name them'],
    ['checked by', 'initials'],
  ]
}

/** The longest reading that a new and an aged battery both hold the stated load for. */
function testCut({ test }: PapersInput): (readonly [string, string])[] {
  const { fresh, aged } = test.stated
  const held = aged.readings.findLastIndex(({ isOn }, i) => isOn && fresh.readings[i]!.isOn)
  const [reading, worn] = [fresh.readings[held], aged.readings[held]]
  if (reading === undefined || worn === undefined) return []
  return [
    [
      `test cut: charge from ${wholePercent(test.startShare)} after ${reading.minutes} min at ` +
        `${short(test.statedKw)} kW`,
      `${wholePercent(reading.share)} new, ${wholePercent(worn.share)} when the answer expires`,
    ],
  ]
}

function generatorChecks({ prepared: { house } }: PapersInput): (readonly [string, string])[] {
  const { generator } = house
  if (generator === undefined) return []
  const { leastShare, ratedKw, leastRunMinutes, tankL, cansL, start } = generator
  return [
    [
      'generator run under load, outdoors',
      `${short(leastRunMinutes)} min at ${short(leastShare * ratedKw)} kW or more`,
    ],
    start === 'automatic'
      ? ['its starting battery, and a start by itself', 'tick']
      : ['started from cold by who has to do it', 'tick'],
    ['fuel in tank and cans', `${short(tankL)} l and ${short(cansL)} l`],
    ['date the fuel was bought; changed by its maker’s advice', 'date'],
    ['carbon monoxide alarm sounds', 'tick'],
  ]
}

/** The check's coldest, where the place gets cold at all. */
function coldest({ check }: PapersInput): string {
  const cold = check.findings.find(({ id }) => id === 'cold-place')
  const lowest = cold?.numbers.find(({ name }) => name === 'coldest')?.value
  return typeof lowest === 'number'
    ? `${short(lowest, 1)} °C; it takes no charge below 0`
    : 'above 10 °C'
}

function expires({ prepared: { house, arrays }, ride }: PapersInput): Html[] {
  const items = [
    `the battery reads below ${wholePercent(ride.health)} of its nameplate capacity`,
    `the reserve is set below ${wholePercent(house.stack.reserve)}, or modules are fewer than ${ride.modules}`,
    'a load is added, or moved to the island: ask again before it is connected',
    ...(arrays.length === 0
      ? []
      : ['a solar inverter, its setting or the roof changes, or a tree or building shades it']),
    ...(house.generator === undefined
      ? []
      : ['the generator or its fuel changes, or it failed to start once']),
    ...(house.person === undefined
      ? []
      : [
          `nobody is there any more from ${house.person.from} to ${house.person.to} who can tend it`,
        ]),
    'a test cut reads less than the island test predicts for the battery as assumed',
  ]
  return [...items, 'somebody comes to depend on it for health'].map((text) => tag('span', text))
}
