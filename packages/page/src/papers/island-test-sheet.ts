// Paper 4: a test with the grid off, its predicted readings, and what only measurement tells.

import { type Finding, monthName, type TestReading, type TestRun } from '@tideover/core'
import { peakLines } from './circuit-list.js'
import { BLANK, type Html, line, list, row, sheet, table, tag } from './html.js'
import { frameOf, type PapersInput, wordsOf } from './input.js'
import { short, wholePercent } from './numbers.js'

/** Waits of the solar inverters are told apart up to so many. */
const MOST_WAITS = 3

export function islandTestSheet(input: PapersInput): string {
  return sheet(
    'island-test',
    frameOf(input, 4, 'Island test', 'By a licensed person, with the grid off'),
    [
      tag('h3', 'Steps'),
      list(steps(input), 'ol'),
      tag('h3', 'Predicted and measured'),
      readings(input),
      thresholds(input),
      ...peakLines(input),
      tag('h3', 'Only measurement tells'),
      measured(input),
      tag(
        'p',
        'Limits come from local codes, the data sheets and the network operator, not from this ' +
          'sheet. A licensed person tests, decides and signs.',
      ),
      tag('div.lines', [line('tested by'), line('licence'), line('signature'), line('date')]),
    ],
  )
}

function steps(input: PapersInput): string[] {
  const { test, prepared } = input
  const { bond, operator } = wordsOf(input)
  const stated = `${short(test.statedKw)} kW`
  const hasSet = prepared.house.generator !== undefined
  return [
    `Tell the household and, where it asks, the ${operator}. Medical devices on a supply of their own. Solar isolated${hasSet ? ', generator off' : ''}, every load of the island off.`,
    `Charge to ${wholePercent(test.startShare)}, the battery near ${test.placeC} °C (colder, less of it is within reach). Set ${stated} of plain heaters, read it on a meter.`,
    'Open the main switch. Write down the gap, voltage, frequency and the charge. Prove the ' +
      `${bond} made.`,
    'Read power and charge after 10, 30 and 60 min. Then the same with only the loads that must ' +
      'stay on: they come and go, so compare the mean.',
    'Start the hardest load with everything else on. Then solar in: time its wait; at full sun ' +
      'with a nearly full battery read voltage and frequency.',
    `Close the main switch: time the return, prove the ${bond} released.`,
  ]
}

function readings({ test, ride }: PapersInput): Html {
  const of = (what: string, { fresh, aged }: { fresh: TestRun; aged: TestRun }): Html[] =>
    fresh.readings.map((reading, i) => {
      const worn = aged.readings[i]!
      return row([
        `${what}, after ${reading.minutes} min`,
        reading.isOn
          ? `${short(reading.dischargeKw)} / ${short(reading.batteryKw)} kW`
          : 'goes off',
        charge(reading),
        charge(worn),
        BLANK,
        BLANK,
        BLANK,
      ])
    })
  return table(
    [
      `from ${wholePercent(test.startShare)}, no sun`,
      'inverter gives / battery gives',
      'charge if new',
      `assumed, ${wholePercent(test.health)}`,
      'kW read',
      'charge read',
      'pass',
    ],
    [
      ...of(`${short(test.statedKw)} kW set`, test.stated),
      ...of(
        `must-stay-on mean in ${monthName(ride.month)}, ${short(test.meanKw, 3)} kW`,
        test.mean,
      ),
    ],
    [36, 16, 10, 10, 10, 10, 8],
  )
}

function charge({ isOn, share }: TestReading): string {
  return isOn ? wholePercent(share) : 'off'
}

/** Thresholds shown in full; the ones between lie by equal parts. */
const MOST_THRESHOLDS = 6

function thresholds({ test }: PapersInput): Html {
  const all = test.thresholds
  const shown =
    all.length > MOST_THRESHOLDS ? [...all.slice(0, MOST_THRESHOLDS - 2), ...all.slice(-2)] : all
  const after = (hours: number | null): string => (hours === null ? '-' : `${short(hours, 1)} h`)
  const rows = shown.map(({ what, share, newKwh, agedKwh, newHours, agedHours }) =>
    row([
      what,
      wholePercent(share),
      `${short(newKwh, 1)} / ${short(agedKwh, 1)} kWh`,
      `${after(newHours)} / ${after(agedHours)}`,
      BLANK,
      BLANK,
    ]),
  )
  return table(
    [
      'as it empties',
      'charge',
      'stored, new / aged',
      `after, at ${short(test.statedKw)} kW`,
      'charge read',
      'pass',
    ],
    rows,
    [30, 10, 19, 18, 14, 9],
  )
}

function measured(input: PapersInput): Html {
  const { house } = input.prepared
  const { bond, electrode } = wordsOf(input)
  const figureOf = (id: string, name: string): Finding['numbers'][number] | undefined =>
    input.check.findings.find((f) => f.id === id)?.numbers.find((f) => f.name === name)
  const fault = figureOf('fault-current', 'fault current, about')
  const startKva = input.prepared.demand.peakKva[0]!.reduce((most, kva) => Math.max(most, kva), 0)
  const waits = [...new Set(house.arrays.flatMap((a) => a.inverter?.reconnectSeconds ?? []))]
  const seconds = waits.slice(0, MOST_WAITS).map((wait) => `${short(wait)} s`)
  const assumed: (readonly [string, string])[] = [
    [`resistance of the ${electrode}`, ''],
    [`${bond}: made on the island, released with the grid back`, ''],
    [
      'loop impedance or fault current on the island, disconnection times',
      typeof fault?.value === 'number' ? `about ${Math.floor(fault.value)} A` : '',
    ],
    ['each residual-current device trips on the island', ''],
    ['most at the hardest start, all loads on', `${short(startKva)} kVA`],
    ['changeover gap', `${short(house.gateway.changeoverMs)} ms claimed`],
    ...(seconds.length === 0 ? [] : [['wait before solar comes in', seconds.join(', ')] as const]),
    ['voltage and frequency at full solar, nearly full battery', ''],
    ['wait before the grid is taken back', `${short(house.gateway.reconnectSeconds)} s`],
  ]
  return table(
    ['what', 'assumed', 'measured', 'limit, and from where', 'pass'],
    assumed.map(([what, value]) => row([what, value, BLANK, BLANK, BLANK])),
    [42, 15, 16, 19, 8],
  )
}
