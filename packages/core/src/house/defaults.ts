// What a house file may leave out, the value taken then, and what that value rests on.
//
// The reader's own data sheet always wins. An answer lists the defaults it rests on; the page of
// all of them is the table in this package's README, kept in step by a test.

import { CONSEQUENCES } from './house.js'
import { BOILER, COLD, HOT_WATER, ROOM_C } from './kept.js'
import { takenFrom, typicalRow, withTypicalLoads } from './typical-loads.js'

const CP = 'common practice, no source'

export interface Default {
  /** What is taken where the field is absent; a text where it follows from other fields. */
  readonly value: unknown
  readonly unit: string
  readonly basis: string
}

/** Defaults by path; `[]` stands for each entry of a list. */
export const DEFAULTS = {
  year: { value: 2025, unit: '', basis: 'the calendar of dates and weekdays' },
  seed: { value: 1, unit: '', basis: 'any whole number; the same seed gives the same figures' },
  'sky.linkeTurbidity': {
    value: [3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3, 3],
    unit: '',
    basis: CP,
  },
  'sky.albedo': {
    value: [0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2],
    unit: '',
    basis: CP,
  },
  'sky.airMarginK': {
    value: 3,
    unit: 'K',
    basis: 'one standard deviation of daily air as `typical` draws it; common practice, no source',
  },
  'arrays[].lossShare': { value: 0.14, unit: 'share of 1', basis: CP },
  'arrays[].ageYears': { value: 0, unit: 'years', basis: 'a new array, losing 0.5 % a year' },
  'arrays[].perKelvin': { value: -0.0035, unit: '1/K', basis: CP },
  'arrays[].trackerKw': { value: 'peakKw of a DC-coupled array', unit: 'kW', basis: CP },
  'arrays[].inverter.efficiency': { value: 0.96, unit: 'share of 1', basis: CP },
  'arrays[].inverter.onIsland': {
    value: 'trips',
    unit: '',
    basis: `${CP}; an old inverter whose answer nobody knows`,
  },
  'arrays[].inverter.reconnectSeconds': { value: 60, unit: 's', basis: CP },
  'arrays[].inverter.rampSeconds': { value: 0, unit: 's', basis: CP },
  'arrays[].inverter.floorShare': {
    value: 0.68,
    unit: 'share of 1',
    basis: 'droop of 10 % from 50.4 Hz just below a trip at 52.0 Hz, from memory',
  },
  'arrays[].inverter.outAbove': { value: 0.92, unit: 'share of 1', basis: CP },
  'arrays[].inverter.backBelow': { value: 0.85, unit: 'share of 1', basis: CP },
  'arrays[].inverter.phase': { value: "the island's", unit: '', basis: 'no other is named' },
  'arrays[].inverter.droop': { value: 0.1, unit: 'share of 1', basis: 'from memory, 0.02-0.12' },
  'gateway.reconnectSeconds': { value: 20, unit: 's', basis: CP },
  'gateway.mainFuseA': { value: 60, unit: 'A', basis: CP },
  'gateway.changeoverMs': {
    value: 20,
    unit: 'ms',
    basis: `${CP}; a claim, \`check\` plans with 1 s at least`,
  },
  'gateway.oneInputForEither': { value: true, unit: '', basis: 'the cautious end' },
  'inverter.startingKva': { value: '2 x ratedKva', unit: 'kVA', basis: CP },
  'inverter.minuteKva': { value: '1.1 x ratedKva', unit: 'kVA', basis: CP },
  'inverter.chargeKw': { value: 'ratedKva', unit: 'kW', basis: CP },
  'inverter.idleW': { value: '1.2 % of ratedKva', unit: 'W', basis: CP },
  'inverter.roundTrip': { value: 0.87, unit: 'share of 1', basis: 'from memory, 0.85-0.92' },
  'inverter.onOverload': { value: 'trips', unit: '', basis: CP },
  'inverter.retryAt': {
    value: '10:00-10:10, 12:00-12:10 and 14:00-14:10',
    unit: '',
    basis: CP,
  },
  'inverter.whenEmpty': { value: 'collapses', unit: '', basis: CP },
  'inverter.wakesOn': {
    value: 'DC-coupled sun and the generator, where there are any',
    unit: '',
    basis: `${CP}; the manual of battery and inverter wins`,
  },
  'inverter.loadsOffAt': { value: 0.1, unit: 'share of 1', basis: CP },
  'inverter.loadsBackAt': { value: 0.2, unit: 'share of 1', basis: CP },
  'inverter.phases': { value: 1, unit: '', basis: CP },
  'inverter.phase': { value: 'L1', unit: '', basis: 'a name only' },
  'stack.reserve': { value: 0.5, unit: 'share of 1', basis: CP },
  'stack.health': { value: 0.8, unit: 'share of 1', basis: `${CP}; about the tenth year` },
  'stack.place': { value: 'attached garage', unit: '', basis: CP },
  'stack.modulesMax': { value: 'modules', unit: '', basis: 'no room for more' },
  'stack.chargeKw': {
    value: 'the sum of its modules',
    unit: 'kW',
    basis: 'no other limit is named',
  },
  'stack.dischargeKw': {
    value: 'the sum of its modules',
    unit: 'kW',
    basis: 'no other limit is named',
  },
  'stack.electronicsW': { value: 10, unit: 'W', basis: CP },
  'stack.selfDischargePerMonth': { value: 0.02, unit: 'share of 1', basis: CP },
  'stack.heaterW': { value: 0, unit: 'W', basis: 'no heater' },
  'comfort.dropBelow': { value: 0.4, unit: 'share of 1', basis: CP },
  'comfort.returnAt': { value: 0.6, unit: 'share of 1', basis: CP },
  heatingMonths: {
    value: 'October to April north of the equator, April to October south of it',
    unit: '',
    basis: CP,
  },
  holidays: { value: 'none', unit: '', basis: 'no day is named' },
  'loads[].pieces': { value: 1, unit: '', basis: 'one of it' },
  'loads[].runs': { value: 'always', unit: '', basis: 'all the year' },
  'loads[].toleratesMinutes': { value: 0, unit: 'min', basis: 'the cautious end: no gap at all' },
  'loads[].holdOver.keeps': { value: 'food', unit: '', basis: 'what a kitchen fridge holds' },
  'loads[].holdOver.fromC': {
    value: `${COLD.food.fromC}, or ${COLD.frozen.fromC} for frozen`,
    unit: '°C',
    basis: CP,
  },
  'loads[].holdOver.limitC': {
    value: `${COLD.food.limitC}, or ${COLD.frozen.limitC} for frozen`,
    unit: '°C',
    basis: 'WHO, +2 to +8 °C for medicines; chilled food in Great Britain from memory; thawing',
  },
  'loads[].holdOver.untilC': { value: 'limitC', unit: '°C', basis: 'the hours reach the limit' },
  'loads[].holdOver.atC': { value: ROOM_C, unit: '°C', basis: CP },
  'loads[].holdOver.roomC': { value: 'atC', unit: '°C', basis: 'no other is named' },
  'loads[].overheats.fromC': { value: BOILER.fromC, unit: '°C', basis: CP },
  'loads[].overheats.limitC': {
    value: BOILER.limitC,
    unit: '°C',
    basis: 'thermal discharge valves open at about this, trade glossaries',
  },
  'loads[].overheats.stillKwh': { value: 'no end', unit: 'kWh', basis: 'the fire burns on' },
  'loads[].hotWater.fromC': { value: HOT_WATER.fromC, unit: '°C', basis: CP },
  'loads[].hotWater.useC': { value: HOT_WATER.useC, unit: '°C', basis: CP },
  'loads[].hotWater.coldC': { value: HOT_WATER.coldC, unit: '°C', basis: CP },
  'loads[].hotWater.lossKwhADay': {
    value: HOT_WATER.lossKwhADay,
    unit: 'kWh a day',
    basis: CP,
  },
  'loads[].powerFactor': { value: 0.9, unit: 'share of 1', basis: CP },
  'loads[].startingMultiple': { value: 1, unit: '', basis: 'no motor' },
  'loads[].phase': { value: "the island's", unit: '', basis: 'no other is named' },
  'loads[].dropOrder': { value: 1, unit: '', basis: 'all comfort loads go together' },
  'generator.cansL': { value: 0, unit: 'l', basis: 'nothing beside the tank' },
  'generator.startingKva': { value: '1.5 x ratedKw', unit: 'kVA', basis: `${CP}; 1-2` },
  'generator.mostShare': { value: 0.8, unit: 'share of 1', basis: `${CP}; 0.7-0.9` },
  'generator.leastShare': {
    value: 0.3,
    unit: 'share of 1',
    basis: 'NFPA 110 for exercise under load, from memory',
  },
  'generator.startFailsShare': {
    value: 0,
    unit: 'share of 1',
    basis: 'it starts when asked; the answer without it stands beside',
  },
  'generator.hoursBetweenFailures': { value: 'no failure', unit: '', basis: 'as above' },
  'generator.readySeconds': { value: 140, unit: 's', basis: CP },
  'generator.leastRunMinutes': { value: 30, unit: 'min', basis: CP },
  'generator.startAt': { value: 0.25, unit: 'share of 1', basis: CP },
  'generator.stopAt': { value: 0.8, unit: 'share of 1', basis: CP },
  'person.minutes': { value: 30, unit: 'min', basis: CP },
  'person.from': { value: '07:00', unit: '', basis: CP },
  'person.to': { value: '22:00', unit: '', basis: CP },
} as const satisfies Record<string, Default>

export type DefaultPath = keyof typeof DEFAULTS

/** A default as a house rests on it. */
export interface UsedDefault {
  readonly path: string
  readonly value: string
  readonly basis: string
}

/** The defaults that a plain house (as read from its file) leans on, in the order of the table. */
export function usedDefaults(asked: unknown): UsedDefault[] {
  const used = usedRows(asked)
  const plain = withTypicalLoads(asked)
  for (const [path, { value, unit, basis }] of Object.entries<Default>(DEFAULTS)) {
    const absent = absentAt(plain, path).filter((at) => isAsked(plain, at))
    if (absent.length === 0) continue
    const shown = Array.isArray(value) ? `${value[0]} in every month` : String(value)
    const plainUnit = typeof value === 'number' && unit !== 'share of 1' ? unit : ''
    const where = absent.length > 2 ? [path] : absent
    for (const at of where) used.push({ path: at, value: `${shown} ${plainUnit}`.trim(), basis })
  }
  return used
}

/** What loads that name their kind took from the table of typical loads. */
function usedRows(asked: unknown): UsedDefault[] {
  const loads = (asked as { readonly loads?: unknown } | null)?.loads
  return (Array.isArray(loads) ? loads : []).flatMap((load, i) => {
    const row = typicalRow(load?.like)
    if (row === null) return []
    const value = `${load.like}: ${takenFrom(load).join(', ')}`
    return [{ path: `loads[${i}].like`, value, basis: row.source }]
  })
}

/** Concrete paths under which a pattern like `loads[].w` is absent though its parent exists. */
function absentAt(plain: unknown, pattern: string): string[] {
  let found: { at: string; value: unknown }[] = [{ at: '', value: plain }]
  for (const part of pattern.split('.')) {
    const name = part.replace('[]', '')
    found = found.flatMap(({ at, value }) => {
      if (typeof value !== 'object' || value === null) return []
      const below = (value as Record<string, unknown>)[name]
      const here = at === '' ? name : `${at}.${name}`
      if (!part.endsWith('[]'))
        return [{ at: here, value: below ?? (isOptionalGroup(here) ? {} : below) }]
      return Array.isArray(below) ? below.map((v, i) => ({ at: `${here}[${i}]`, value: v })) : []
    })
  }
  return found.filter(({ value }) => value === undefined).map(({ at }) => at)
}

/** Whether a default means anything for this house: no retries where it does not try again. */
function isAsked(plain: unknown, path: string): boolean {
  const house = plain as {
    readonly inverter?: { readonly whenEmpty?: unknown }
    readonly arrays?: readonly { readonly inverter?: { readonly onIsland?: unknown } }[]
    readonly loads?: readonly Readonly<Record<string, unknown>>[]
  }
  if (path === 'sky.airMarginK') return asksForAir(house.loads)
  if (path === 'inverter.retryAt') return house.inverter?.whenEmpty === 'retries'
  const gap = /^loads\[(\d+)\]\.toleratesMinutes$/.exec(path)
  if (gap !== null) {
    const load = house.loads?.[Number(gap[1])]
    return CONSEQUENCES.every((key) => load?.[key] === undefined)
  }
  const match = /^arrays\[(\d+)\]\.(?:inverter\.)?(trackerKw|floorShare|outAbove|backBelow)$/.exec(
    path,
  )
  if (match === null) return true
  const inverter = house.arrays?.[Number(match[1])]?.inverter
  if (match[2] === 'trackerKw') return inverter === undefined
  const onIsland = inverter?.onIsland ?? DEFAULTS['arrays[].inverter.onIsland'].value
  return onIsland === (match[2] === 'floorShare' ? 'throttles to a floor' : 'trips')
}

/** Whether some load follows the air. */
function asksForAir(loads: unknown): boolean {
  return (Array.isArray(loads) ? loads : []).some(
    (load) =>
      load?.byAir !== undefined ||
      load?.cycle?.insideC !== undefined ||
      typeof load?.runs === 'object',
  )
}

/** Groups whose every field has a default: they count as present when left out. */
function isOptionalGroup(path: string): boolean {
  return path === 'comfort' || path === 'gateway'
}
