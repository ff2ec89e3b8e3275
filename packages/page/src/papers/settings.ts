// Every setting of a house file that an installer enters on a device, with its value.
//
// A field that is added to the schema has to be placed here, or among those that no device is told
// (a test holds both lists against the schema).

import {
  bringsInverter,
  DEFAULTS,
  type Default,
  type SolarInverter,
  solarGroups,
  usedDefaults,
} from '@tideover/core'
import { cutName } from './html.js'
import { equippedOf, type PapersInput } from './input.js'
import { percent, short } from './numbers.js'
import { comfortSteps } from './steps.js'

export interface SettingRow {
  /** The device it is entered on. */
  readonly device: string
  readonly label: string
  /** With its unit. */
  readonly value: string
  /** Paths in the house file. */
  readonly paths: readonly string[]
  /** From the file, or the basis of the default. */
  readonly from: string
}

type Entry = readonly [label: string, value: string, ...paths: string[]]

/** Comfort steps shown in full; further ones lie lower by equal parts. */
const MOST_STEPS = 4

export function settingRows(input: PapersInput): SettingRow[] {
  const origin = originOf(input.plain)
  return [
    rowsOf('gateway', gateway(input)),
    rowsOf('battery inverter', batteryInverter(input)),
    rowsOf('battery', battery(input)),
    rowsOf('relay of the comfort loads', comfort(input)),
    ...solar(input),
    rowsOf('generator', generator(input)),
  ]
    .flat()
    .map((row) => ({ ...row, from: origin(row.paths) }))
}

function rowsOf(device: string, entries: readonly Entry[]): Omit<SettingRow, 'from'>[] {
  return entries.map(([label, value, ...paths]) => ({ device, label, value, paths }))
}

function gateway({ prepared: { house } }: PapersInput): Entry[] {
  const { reconnectSeconds, mainFuseA, exportLimitKw, oneInputForEither } = house.gateway
  const limit = exportLimitKw === undefined ? 'none' : `${short(exportLimitKw)} kW`
  return [
    ['grid code (country setting)', house.site.gridCode ?? 'not named', 'site.gridCode'],
    ['takes the grid back after', `${short(reconnectSeconds)} s`, 'gateway.reconnectSeconds'],
    ['import limit, main fuse', `${short(mainFuseA)} A`, 'gateway.mainFuseA'],
    ['export limit', limit, 'gateway.exportLimitKw'],
    [
      'one input for generator or solar',
      oneInputForEither ? 'yes: one at a time' : 'no: one each',
      'gateway.oneInputForEither',
    ],
  ]
}

const WAYS = { sun: 'DC-coupled sun', generator: 'generator', person: 'person' } as const

function batteryInverter(input: PapersInput): Entry[] {
  const { house, plant } = equippedOf(input)
  const { inverter } = house
  const wakes = inverter.wakesOn.map((way) => WAYS[way]).join(', ') || 'nothing but the grid'
  return [
    ['phases of the island', String(inverter.phases), 'inverter.phases'],
    ['its phase', inverter.phases === 3 ? 'all three' : inverter.phase, 'inverter.phase'],
    ['charge limit, AC side', `${short(plant.chargeAcKw)} kW`, 'inverter.chargeKw'],
    [
      'all loads off at / back at charge',
      `${percent(inverter.loadsOffAt)} / ${percent(inverter.loadsBackAt)}`,
      'inverter.loadsOffAt',
      'inverter.loadsBackAt',
    ],
    ['when empty', inverter.whenEmpty, 'inverter.whenEmpty'],
    ...(inverter.whenEmpty === 'retries'
      ? ([
          ['tries again at (local time)', inverter.retryAt.join(', '), 'inverter.retryAt'],
        ] as const)
      : []),
    ['empty, it wakes on', wakes, 'inverter.wakesOn'],
    [
      'overload',
      inverter.onOverload === 'sheds' ? 'load relay sheds' : 'trips',
      'inverter.onOverload',
    ],
  ]
}

function battery(input: PapersInput): Entry[] {
  const { house, plant, modules } = equippedOf(input)
  return [
    ['modules fitted', String(modules), 'stack.modules'],
    ['reserve held back for a cut', percent(house.stack.reserve), 'stack.reserve'],
    ['charge limit of the stack', `${short(plant.chargeKw)} kW`, 'stack.chargeKw'],
    ['discharge limit of the stack', `${short(plant.dischargeKw)} kW`, 'stack.dischargeKw'],
  ]
}

function comfort(input: PapersInput): Entry[] {
  const steps = comfortSteps(input)
  const paths = ['comfort.dropBelow', 'comfort.returnAt']
  const shown = steps.length > MOST_STEPS ? steps.slice(0, MOST_STEPS - 1) : steps
  const entries = shown.map(({ names, dropBelow, returnAt }, i): Entry => {
    const which = steps.length === 1 ? 'all of them' : `step ${i + 1}, ${someOf(names)}`
    return [`${which}: off below / back above`, pair(dropBelow, returnAt), ...paths]
  })
  const last = steps.at(-1)
  if (last === undefined || shown.length === steps.length) return entries
  const apart = short(100 * (steps[0]!.dropBelow - steps[1]!.dropBelow))
  return [
    ...entries,
    [
      `steps ${shown.length + 1} to ${steps.length}, each ${apart} points lower; the last`,
      pair(last.dropBelow, last.returnAt),
      ...paths,
    ],
  ]
}

function someOf(names: readonly string[]): string {
  const first = cutName(names[0]!, 20)
  return names.length === 1 ? first : `${first} and ${names.length - 1} more`
}

function pair(dropBelow: number, returnAt: number): string {
  return `${percent(dropBelow)} / ${percent(returnAt)}`
}

function solar({ prepared: { house } }: PapersInput): Omit<SettingRow, 'from'>[][] {
  const indexOf = (name: string): number => house.arrays.findIndex((a) => a.name === name)
  const groups = solarGroups(house)
  const ac = groups.map(({ names, inverter }) => {
    const own = names.find((name) => bringsInverter(house.arrays[indexOf(name)]!)) ?? names[0]!
    const device = `solar inverter of ${someOf(names)}`
    return rowsOf(device, ofInverter(inverter, `arrays[${indexOf(own)}].inverter`))
  })
  const grouped = groups.flatMap(({ names }) => names)
  const off = house.arrays.filter(
    ({ inverter, name }) => inverter !== undefined && !grouped.includes(name),
  )
  const dc = house.arrays.filter(({ inverter }) => inverter === undefined)
  const shown = dc.length > 2 ? dc.slice(0, 1) : dc
  const trackers = shown.map(
    ({ name, trackerKw, peakKw }): Entry => [
      `${cutName(name, 20)}: most the tracker passes on`,
      `${short(trackerKw ?? peakKw)} kW`,
      `arrays[${indexOf(name)}].trackerKw`,
    ],
  )
  if (dc.length > shown.length) {
    const rest = dc.slice(shown.length)
    const kw = rest.reduce((sum, { trackerKw, peakKw }) => sum + (trackerKw ?? peakKw), 0)
    trackers.push([`${rest.length} more arrays, together`, `${short(kw)} kW`, 'arrays[].trackerKw'])
  }
  const outside = off.map(
    ({ name, inverter }): Entry => [
      `${cutName(name, 24)}: phase, not the island's`,
      inverter?.phase ?? '',
      `arrays[${indexOf(name)}].inverter.phase`,
    ],
  )
  return [
    ...ac,
    rowsOf('solar off the island', outside.slice(0, 2)),
    rowsOf('DC tracker', trackers),
  ]
}

function ofInverter(inverter: SolarInverter, at: string): Entry[] {
  const { onIsland, reconnectSeconds, rampSeconds, floorShare, outAbove, backBelow } = inverter
  const rows: Entry[] = [
    ['on the island', onIsland, `${at}.onIsland`],
    ['reconnection wait', `${short(reconnectSeconds)} s`, `${at}.reconnectSeconds`],
    ['ramp to full power', `${short(rampSeconds)} s`, `${at}.rampSeconds`],
    ['droop: frequency rise from full to none', percent(inverter.droop), `${at}.droop`],
    ['phase', inverter.phase ?? "the island's", `${at}.phase`],
  ]
  if (onIsland === 'throttles to a floor') {
    rows.push(['trips when throttled below', `${percent(floorShare)} of power`, `${at}.floorShare`])
  }
  if (onIsland === 'trips') {
    const paths = [`${at}.outAbove`, `${at}.backBelow`] as const
    rows.push(['held out above / back below charge', pair(outAbove, backBelow), ...paths])
  }
  return rows
}

function generator({ prepared: { house } }: PapersInput): Entry[] {
  const set = house.generator
  if (set === undefined) return []
  const kw = (share: number): string => `${percent(share)}, ${short(share * set.ratedKw)} kW`
  return [
    ['start', set.start, 'generator.start'],
    [
      'wanted at / stops at charge',
      pair(set.startAt, set.stopAt),
      'generator.startAt',
      'generator.stopAt',
    ],
    ['least run', `${short(set.leastRunMinutes)} min`, 'generator.leastRunMinutes'],
    ['from the call to power', `${short(set.readySeconds)} s`, 'generator.readySeconds'],
    ['load and charge together, most', kw(set.mostShare), 'generator.mostShare'],
    ['load to run it at, least', kw(set.leastShare), 'generator.leastShare'],
  ]
}

const FILE = 'house file'

/** Tells where the values of some paths come from: the file, or the table of defaults. */
function originOf(plain: unknown): (paths: readonly string[]) => string {
  if (plain === undefined || plain === null) return () => 'file or default'
  const used = new Map(usedDefaults(plain).map(({ path, basis }) => [path, basis]))
  const known: Readonly<Record<string, Default>> = DEFAULTS
  return (paths) => {
    const bases = new Set<string>()
    let isFromFile = false
    for (const path of paths) {
      const pattern = path.replace(/\[\d+\]/g, '[]')
      const basis = used.get(path) ?? used.get(pattern)
      if (basis === undefined && isStated(plain, path)) isFromFile = true
      else bases.add(basis ?? known[pattern]?.basis ?? 'none is named')
    }
    const defaults = [...bases].join('; ').replaceAll('common practice, no source', 'cp')
    return [isFromFile ? FILE : '', defaults === '' ? '' : `default: ${defaults}`]
      .filter(Boolean)
      .join('; ')
  }
}

function isStated(plain: unknown, path: string): boolean {
  let found: unknown[] = [plain]
  for (const part of path.split('.')) {
    const [, name, index] = /^(\w+)(?:\[(\d*)\])?$/.exec(part) as RegExpExecArray
    found = found
      .map((value) => (value as Record<string, unknown> | null | undefined)?.[name!])
      .flatMap((value) => (index === '' && Array.isArray(value) ? value : [value]))
      .map((value) =>
        index === undefined || index === '' ? value : (value as unknown[] | undefined)?.[+index],
      )
  }
  return found.some((value) => value !== undefined)
}
