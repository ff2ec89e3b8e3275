// The door of the library: what comes in wrong is told whole, with path, need and what came.

import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import {
  checkHouse,
  DEFAULTS,
  equip,
  houseJsonSchema,
  InputError,
  prepare,
  solarGroups,
  usedDefaults,
} from '@tideover/core'
import { readHouseFile } from '@tideover/files'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { describe, expect, it } from 'vitest'
import { slipsOf } from '../../../packages/core/src/answers/slips.js'
import { warningsFor } from '../../../packages/core/src/answers/warnings.js'
import { refusal } from '../../files/problems.js'
import { plainHouse } from '../plain-house.js'

type Plain = Record<string, unknown>

/** The small house with one field set, by its path. */
function withField(path: string, value: unknown, house: Plain = plainHouse()): Plain {
  const copy = structuredClone(house)
  const parts = path.split(/[.[\]]+/).filter((part) => part !== '')
  let at: Record<string, unknown> = copy
  for (const part of parts.slice(0, -1)) {
    at[part] ??= {}
    at = at[part] as Record<string, unknown>
  }
  if (value === undefined) delete at[parts.at(-1)!]
  else at[parts.at(-1)!] = value
  return copy
}

const ARRAY = { name: 'roof', peakKw: 1, tiltDeg: 0, azimuthDeg: 0 }
const GENERATOR = {
  ratedKw: 3,
  tankL: 12,
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
  start: 'automatic',
}

describe('a house with faults', () => {
  it('hears of all of them at once, each with path, need and what came', () => {
    const plain = plainHouse({
      site: { latitudeDeg: 91, longitudeDeg: 0, elevationM: 0, timezone: 'Europe/Stornoway' },
      stack: { module: { usableKwh: -5, chargeKw: '2', dischargeKw: 5 }, modules: 1.5 },
      loads: [{ name: 'pump', tier: 'vital', w: Number.NaN }],
    })
    expect(refusal(() => checkHouse(plain)).split('\n')).toEqual([
      'site.latitudeDeg must be a number -90..90 [deg], got 91',
      'site.timezone must be an IANA time zone such as Europe/London, got "Europe/Stornoway"',
      'stack.module.usableKwh must be a number > 0 and <= 200 [kWh], got -5',
      'stack.module.chargeKw must be a number > 0 and <= 200 [kW]; without quotation marks: 2, got "2"',
      'stack.modules must be a whole number 1..100, got 1.5',
      'loads[0].tier must be one of critical, comfort, gridOnly; did you mean critical?, got "vital"',
      'loads[0].w must be a number > 0 and <= 100000 [W], got NaN',
      'loads must be a list with at least one load of tier critical, got a list of 1',
    ])
  })

  it('carries them as data', () => {
    try {
      checkHouse(plainHouse({ seed: -1 }))
      expect.unreachable()
    } catch (error) {
      expect(error).toBeInstanceOf(InputError)
      expect((error as InputError).problems).toEqual([
        { where: 'seed', need: 'a whole number 0..2147483647', got: '-1' },
      ])
    }
  })

  it.each([
    ['usableKwH', 'stack.module.usableKwH', 'usableKwh'],
    ['dischargekw', 'stack.module.dischargekw', 'dischargeKw'],
    ['latitude', 'site.latitude', 'latitudeDeg'],
    ['load', 'load', 'loads'],
  ])('names the nearest known field for %s', (_, path, nearest) => {
    const message = refusal(() => checkHouse(withField(path, 1)))
    expect(message).toMatch(
      new RegExp(`^${path} must be a known field \\(did you mean ${nearest}\\?`),
    )
    expect(message).toMatch(/got an unknown field$/)
  })

  it.each([[null], ['a house'], [[]], [5], [undefined]])('that is none at all: %j', (plain) => {
    expect(refusal(() => checkHouse(plain))).toMatch(/^the house file must be a group of fields \(/)
  })
})

describe('fields that contradict each other', () => {
  it.each([
    [
      'stack.modules',
      { 'stack.modules': 3, 'stack.modulesMax': 2 },
      'at most stack.modulesMax, which is 2',
    ],
    ['inverter.chargeKw', { 'inverter.chargeKw': 6 }, 'at most inverter.ratedKva, which is 5'],
    [
      'inverter.loadsBackAt',
      { 'inverter.loadsBackAt': 0.1 },
      'above inverter.loadsOffAt, which is 0.1',
    ],
    ['inverter.minuteKva', { 'inverter.minuteKva': 4 }, 'at least inverter.ratedKva, which is 5'],
    [
      'inverter.startingKva',
      { 'inverter.startingKva': 5.5, 'inverter.minuteKva': 6 },
      'at least what it carries for longer, 6 kVA',
    ],
    [
      'inverter.wakesOn[0]',
      { 'inverter.wakesOn': ['sun'], arrays: [{ ...ARRAY, inverter: { ratedKw: 1 } }] },
      'left out: AC-coupled solar cannot wake a stack',
    ],
    [
      'inverter.wakesOn[0]',
      { 'inverter.wakesOn': ['generator'] },
      'left out, or a generator given',
    ],
    ['inverter.wakesOn[0]', { 'inverter.wakesOn': ['person'] }, 'left out, or a person given'],
    [
      'arrays[0].inverter.backBelow',
      { arrays: [{ ...ARRAY, inverter: { ratedKw: 1, backBelow: 0.95 } }] },
      'below inverter.outAbove, which is 0.92',
    ],
    [
      'generator.leastShare',
      { generator: { ...GENERATOR, mostShare: 0.5, leastShare: 0.5 } },
      'below generator.mostShare, which is 0.5',
    ],
    [
      'comfort.dropBelow',
      { 'comfort.dropBelow': 0.05 },
      'at least inverter.loadsOffAt, which is 0.1',
    ],
    ['comfort.returnAt', { 'comfort.returnAt': 0.4 }, 'above comfort.dropBelow, which is 0.4'],
    ['sky.clearness', { 'sky.clearness': undefined }, 'given, 12 monthly values'],
    ['sky.airC', { 'sky.airC': undefined }, 'given, 12 monthly values'],
    ['loads[0].w', { 'loads[0].w': undefined }, 'given [W], or a meter file'],
    ['loads[0].w', { 'loads[0].file': 'meter.csv' }, 'left out where a meter file is named'],
    ['loads[0].contains', { 'loads[0].contains': [] }, 'left out where no meter file is named'],
    [
      'person',
      { generator: { ...GENERATOR, start: 'by hand' } },
      'given, for a generator that is started by hand',
    ],
    [
      'generator.stopAt',
      { generator: { ...GENERATOR, stopAt: 0.2 } },
      'above generator.startAt, which is 0.25',
    ],
    [
      'generator.litresPerHour',
      { generator: { ...GENERATOR, litresPerHour: { none: 2, half: 1, full: 3 } } },
      'rising from none over half to full [l/h]',
    ],
  ] as const)('%s', (where, fields, need) => {
    let plain = plainHouse()
    for (const [path, value] of Object.entries(fields)) plain = withField(path, value, plain)
    const message = refusal(() => checkHouse(plain))
    expect(message.split('\n')).toHaveLength(1)
    expect(message.startsWith(`${where} must be ${need}`)).toBe(true)
  })

  it('two things of one name, and contents that are nowhere', () => {
    const loads = [
      { name: 'pump', tier: 'critical', w: 60 },
      { name: 'pump', tier: 'comfort', w: 60 },
      { name: 'meter', tier: 'comfort', file: 'meter.csv', contains: ['kettle', 'meter'] },
    ]
    expect(refusal(() => checkHouse(plainHouse({ loads }))).split('\n')).toEqual([
      'loads[1].name must be a name of its own, loads[0] has it already, got "pump"',
      'loads[2].contains[0] must be the name of another load, got "kettle"',
      'loads[2].contains[1] must be the name of another load, got "meter"',
    ])
  })

  it('solar inverters of one island behave in two ways at most', () => {
    const array = { name: 'a', peakKw: 1, tiltDeg: 0, azimuthDeg: 0, inverter: { ratedKw: 1 } }
    const other = { ...array, name: 'b', inverter: { ratedKw: 1, onIsland: 'throttles' } }
    const third = { ...array, name: 'c', inverter: { ratedKw: 1, reconnectSeconds: 300 } }
    expect(solarGroups(checkHouse(plainHouse({ arrays: [array, other] })))).toHaveLength(2)
    expect(refusal(() => checkHouse(plainHouse({ arrays: [array, other, third] })))).toBe(
      'arrays[2].inverter must be like that of a or b in onIsland and its settings: on the island ' +
        'at most two kinds of solar inverter are followed, got "c"',
    )
    // What stands on another phase is not on the island, and the floor of one that trips is nobody's.
    const away = { ...third, inverter: { ...third.inverter, phase: 'L2' } }
    const same = { ...array, name: 'c', inverter: { ratedKw: 2, floorShare: 0.5 } }
    expect(solarGroups(checkHouse(plainHouse({ arrays: [array, other, away] })))).toHaveLength(2)
    const groups = solarGroups(checkHouse(plainHouse({ arrays: [array, other, same] })))
    expect(groups.map(({ names }) => names)).toEqual([['a', 'c'], ['b']])
  })

  it('a fault of one field and a contradiction elsewhere are told together', () => {
    const plain = withField('inverter.loadsBackAt', 0.05, plainHouse({ year: 1066 }))
    expect(
      refusal(() => checkHouse(plain))
        .split('\n')
        .map((line) => line.split(' ')[0]),
    ).toEqual(['year', 'inverter.loadsBackAt'])
  })
})

describe('defaults', () => {
  it('fill what is left out', () => {
    const house = checkHouse(
      plainHouse({
        stack: { module: { usableKwh: 5, chargeKw: 2, dischargeKw: 2 }, modules: 2 },
        gateway: {},
      }),
    )
    expect(house.stack).toMatchObject({
      modulesMax: 2,
      reserve: 0.5,
      health: 0.8,
      place: 'attached garage',
    })
    expect(house.inverter).toMatchObject({
      whenEmpty: 'collapses',
      loadsOffAt: 0.1,
      loadsBackAt: 0.2,
    })
    expect(house.comfort).toEqual({ dropBelow: 0.4, returnAt: 0.6 })
    expect(house.gateway).toMatchObject({ reconnectSeconds: 20, mainFuseA: 60 })
    expect(house.year).toBe(2025)
  })

  it('the heating runs October to April in the north and April to October in the south', () => {
    const months = (latitudeDeg: number): number[] =>
      checkHouse(withField('site.latitudeDeg', latitudeDeg))
        .heatingMonths.slice()
        .sort((a, b) => a - b)
    expect(months(58)).toEqual([1, 2, 3, 4, 10, 11, 12])
    expect(months(-46)).toEqual([4, 5, 6, 7, 8, 9, 10])
  })

  it('are listed where a house leans on them, and not where it states its own', () => {
    const listed = usedDefaults(plainHouse()).map(({ path }) => path)
    expect(listed).toContain('stack.reserve')
    expect(listed).toContain('comfort.dropBelow')
    expect(listed).toContain('loads[0].toleratesMinutes')
    expect(listed).not.toContain('stack.health')
    expect(listed).not.toContain('inverter.idleW')
    expect(listed.some((path) => path.startsWith('generator'))).toBe(false)
    expect(usedDefaults(plainHouse({ generator: GENERATOR })).map(({ path }) => path)).toContain(
      'generator.startAt',
    )
  })

  it('are what an empty field becomes, one by one', () => {
    const house = checkHouse(plainHouse({ generator: GENERATOR, person: {} })) as unknown as Plain
    let compared = 0
    for (const [path, { value }] of Object.entries(DEFAULTS)) {
      if (path.includes('[]') || typeof value !== 'number') continue
      const found = path.split('.').reduce((at: unknown, part) => (at as Plain)[part], house)
      if (
        usedDefaults(plainHouse({ generator: GENERATOR, person: {} })).some((d) => d.path === path)
      ) {
        expect(found, path).toBe(value)
        compared++
      }
    }
    expect(compared).toBeGreaterThan(10)
  })
})

describe('likely slips', () => {
  const slips = (changes: Plain): string[] => slipsOf({ house: checkHouse(plainHouse(changes)) })
  const warnings = (loads: Plain[]): string[] => slips({ loads })

  it('a fridge of 90 000 W is asked about', () => {
    const found = warnings([{ name: 'insulin fridge', tier: 'critical', w: 90000 }])
    expect(found[0]).toMatch(/^insulin fridge: 90000 W is a lot/)
  })

  it('a pump of 60 W is not, a fridge of 0.09 W is', () => {
    expect(warnings([{ name: 'pump', tier: 'critical', w: 60 }])).toEqual([])
    expect(warnings([{ name: 'fridge', tier: 'critical', w: 0.09 }])[0]).toMatch(
      /^fridge: 0.09 W is very little; were kilowatts meant/,
    )
  })

  it('a kettle of 3 W is: it would take an overload away unseen', () => {
    const pump = { name: 'pump', tier: 'critical', w: 60 }
    const kettle = { name: 'kettle', tier: 'comfort', w: 3 }
    expect(warnings([pump, kettle])[0]).toMatch(/^kettle: 3 W is very little/)
    expect(warnings([pump, { ...kettle, name: 'router' }])).toEqual([])
  })

  it('a kettle without hours would boil day and night', () => {
    const pump = { name: 'pump', tier: 'critical', w: 60 }
    const kettle = { name: 'kettle', tier: 'comfort', w: 2400 }
    expect(warnings([pump, kettle])).toEqual([
      'kettle: 2400 W day and night, 58 kWh a day; are its hours (at), its cycle or its events missing?',
    ])
    expect(warnings([pump, { ...kettle, at: ['07:10-07:14'] }])).toEqual([])
    const lamps = { name: 'lamps', tier: 'comfort', w: 60 }
    expect(warnings([pump, { ...lamps, pieces: 16 }])).toEqual([])
    expect(warnings([pump, { ...lamps, pieces: 17 }])[0]).toMatch(
      /^lamps: 1020 W day and night, 24/,
    )
  })

  it('cans that nobody is named to pour', () => {
    const generator = { ...GENERATOR, cansL: 20 }
    expect(slips({ generator })).toEqual([
      'generator: 20 l in cans and nobody named to pour them (person): they stay in the cans and ' +
        'are not counted.',
    ])
    const person = { minutes: 30, from: '07:00', to: '22:00' }
    expect(slips({ generator, person })).toEqual([])
  })

  it('latitude and longitude swapped, or a minus left out', () => {
    const site = (latitudeDeg: number, longitudeDeg: number, timezone: string): string[] =>
      slips({ site: { latitudeDeg, longitudeDeg, elevationM: 0, timezone } })
    expect(site(-1.1, 54, 'Europe/London')[0]).toContain(
      'are latitude and longitude in their places',
    )
    expect(site(36.1, 79.95, 'America/New_York')).toHaveLength(1)
    for (const [lat, lon, zone] of [
      [54, -1.1, 'Europe/London'],
      [36.1, -79.95, 'America/New_York'],
      [-46.4, 168.3, 'Pacific/Auckland'],
      [-17, 179.9, 'Pacific/Fiji'],
      [42.9, -9.3, 'Europe/Madrid'],
      [39.5, 76, 'Asia/Shanghai'],
    ] as const) {
      expect(site(lat, lon, zone), zone).toEqual([])
    }
  })

  it('a roof that faces the pole, modules far beyond their inverter', () => {
    const roof = {
      name: 'roof',
      peakKw: 4,
      tiltDeg: 35,
      azimuthDeg: 0,
      inverter: { ratedKw: 3.68 },
    }
    expect(slips({ arrays: [roof] })[0]).toMatch(/^roof: azimuth 0 faces away from the sun/)
    expect(slips({ arrays: [{ ...roof, azimuthDeg: 180 }] })).toEqual([])
    expect(slips({ arrays: [{ ...roof, azimuthDeg: 180, peakKw: 40 }] })[0]).toContain('40 kW')
  })

  it('a motor without its start, where the inverter may not carry it', () => {
    // Of 5 kVA: 5 x 800 W at 0.75 are 5.3 kVA, 5 x 700 W are 4.7.
    const sump = { name: 'water pump', tier: 'critical', w: 800, powerFactor: 0.75 }
    const inverter = { ratedKva: 5, startingKva: 5 }
    const of = (load: Plain): string[] => slips({ inverter, loads: [load] })
    expect(of(sump)).toEqual([
      'water pump: counted as no motor, for it has no startingMultiple; a pump or compressor draws some ' +
        '5 times its power as it starts: 5.3 kVA, and the battery inverter carries 5.0.',
    ])
    expect(of({ ...sump, w: 700 })).toEqual([])
    // What lifts water starts hard: from half of it on, 375 W.
    expect(of({ ...sump, name: 'well pump', w: 380 })).toHaveLength(1)
    expect(of({ ...sump, name: 'well pump', w: 370 })).toEqual([])
    const litresPerHour = { none: 0.4, half: 0.7, full: 1.1 }
    const generator = { ratedKw: 2, tankL: 5, start: 'automatic', litresPerHour }
    // A set of 2 kW gives 3 kVA for the second of a start (1.5 times, common practice).
    expect(slips({ inverter, generator, loads: [{ ...sump, w: 700 }] })[0]).toMatch(
      /4\.7 kVA, and the generator carries 3\.0\.$/,
    )
    expect(of({ ...sump, startingMultiple: 4 })).toEqual([])
    expect(of({ ...sump, name: 'dehumidifier' })).toEqual([])
  })

  it('a module of 50 kWh', () => {
    const module = { usableKwh: 50, chargeKw: 5, dischargeKw: 5 }
    expect(slips({ stack: { module, modules: 1, place: 'house' } })).toEqual([
      'stack.module.usableKwh: 50 kWh is a lot for one module; is it that of the whole stack?',
    ])
  })

  it('a comma in a number between braces', () => {
    const message = refusal(() => checkHouse(withField('inverter.68', null)))
    expect(message).toBe(
      'inverter.68 must be written with a decimal point (3.68): a comma parts two fields, got an unknown field',
    )
  })
})

describe('loads that the battery inverter does not carry', () => {
  const warned = (loads: Plain[], inverter: Plain = {}): string => {
    const ratings = { ratedKva: 5, idleW: 50, roundTrip: 1, ...inverter }
    const prepared = prepare(checkHouse(plainHouse({ loads, inverter: ratings })))
    return warningsFor(prepared, equip(prepared, {})).join(' ')
  }
  const pump = { name: 'pump', tier: 'critical', w: 60 }
  const oven = { name: 'oven', tier: 'comfort', w: 5500, powerFactor: 1, at: ['18:00-18:10'] }

  it('are warned of, minute by minute of the year, unless a relay drops them', () => {
    expect(warned([pump, oven])).toContain('In 3650 minutes of the year all loads')
    expect(warned([pump, oven], { onOverload: 'sheds' })).not.toContain('minutes of the year')
    expect(warned([pump, { ...oven, w: 4000 }])).not.toContain('minutes of the year')
  })

  it('nor, starting all at once', () => {
    // Two motors of 1 kVA that never start in one minute: 6 + 6 kVA when the island forms.
    const motor = { tier: 'critical', w: 1000, powerFactor: 1, startingMultiple: 6 }
    const two = [
      { ...motor, name: 'first', at: ['06:00-09:00'] },
      { ...motor, name: 'second', at: ['07:00-08:00'] },
    ]
    expect(warned(two)).toContain('the critical loads reach 12.0 kVA')
    expect(warned(two, { startingKva: 12 })).not.toContain('reach')
  })

  it('nor solar that is taken to throttle down to nothing, under a GB code', () => {
    const site = { latitudeDeg: 52, longitudeDeg: 0, elevationM: 0, timezone: 'UTC' }
    const said = (gridCode: string, onIsland: string): string => {
      const arrays = [{ ...ARRAY, inverter: { ratedKw: 1, onIsland } }]
      const prepared = prepare(checkHouse(plainHouse({ arrays, site: { ...site, gridCode } })))
      return warningsFor(prepared, equip(prepared, {})).join(' ')
    }
    expect(said('G98', 'throttles')).toContain('roof is taken to throttle down to nothing')
    expect(said('G98', 'throttles')).toContain('still gives 68 % just below its trip')
    expect(said('G98', 'throttles to a floor')).not.toContain('down to nothing')
    expect(said('AS4777', 'throttles')).not.toContain('down to nothing')
  })

  it('of a generator that the critical loads would stall', () => {
    const motor = { ...pump, w: 400, powerFactor: 0.8, startingMultiple: 12, at: ['06:00-09:00'] }
    const stalls = (changes: Plain): string => {
      const generator = { ...GENERATOR, ratedKw: 3, ...changes }
      const prepared = prepare(checkHouse(plainHouse({ loads: [motor], generator })))
      return warningsFor(prepared, equip(prepared, {})).join(' ')
    }
    expect(stalls({ startingKva: 5.9 })).toContain(
      'reach 6.0 kVA in a start; the generator gives 5.9 kVA for a second: it stalls',
    )
    expect(stalls({ startingKva: 6 })).not.toContain('it stalls')
    expect(stalls({ startingKva: 6 })).not.toContain('is taken')
    expect(stalls({ startFailsShare: 0.035, hoursBetweenFailures: 200 })).toContain(
      'The generator is taken not to start in 3.5 of 100 tries and to fail once in 200 h of running',
    )
    expect(stalls({ ratedKw: 0.3, startingKva: 6 })).toContain(
      'reach 0.40 kW; the generator is rated 0.30 kW: it stalls',
    )
  })
})

describe('the JSON Schema for editors', () => {
  const validate = new Ajv2020({ strict: false, allErrors: true }).compile(houseJsonSchema())
  const samples = fileURLToPath(new URL('../../../data-samples/', import.meta.url))
  const houses = readdirSync(samples).filter((name) => name.endsWith('.yaml'))

  it.each(houses)('takes %s, as checkHouse does', (name) => {
    const { plain } = readHouseFile(samples + name)
    expect(validate(plain), JSON.stringify(validate.errors)).toBe(true)
    expect(checkHouse(plain).invented).toBe(true)
  })

  it('is a schema of draft 2020-12, three demo houses against it', () => {
    expect(houses).toHaveLength(3)
    expect(houseJsonSchema().$schema).toBe('https://json-schema.org/draft/2020-12/schema')
  })

  it.each([
    ['site.latitudeDeg', 91],
    ['site.latitudeDeg', '58'],
    ['house', ''],
    ['house', undefined],
    ['year', 2025.5],
    ['sky.clearness', [0.3]],
    ['sky.clearness', new Array(12).fill(0.9)],
    ['arrays', undefined],
    ['inverter.ratedKva', 0],
    ['inverter.whenEmpty', 'explodes'],
    ['inverter.loadsOffAt', 10],
    ['stack.module.usableKwh', 0],
    ['stack.modules', 0],
    ['stack.modules', 1.5],
    ['stack.heath', 0.8],
    ['loads', []],
    ['loads[0].tier', 'vital'],
    ['loads[0].w', 0],
    ['loads[0].days', ['monday']],
    ['loads[0].cycle', { onMinutes: 0, offMinutes: 5 }],
    ['loads[0].watts', 60],
    ['generator', { ...GENERATOR, start: 'by magic' }],
    ['person', { minutes: -1 }],
    ['heatingMonths', [13]],
  ])('refuses %s = %j, as checkHouse does', (path, value) => {
    const plain = withField(path, value)
    expect(() => checkHouse(plain)).toThrow(InputError)
    expect(validate(plain)).toBe(false)
  })

  it('says unit and range of every number', () => {
    const text = JSON.stringify(houseJsonSchema())
    expect(text).toContain('Usable energy, new: a number > 0 and <= 200 [kWh]')
    const bare: string[] = []
    const look = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return
      const { type, description } = node as Plain
      if ((type === 'number' || type === 'integer') && description === undefined) bare.push(path)
      for (const [key, below] of Object.entries(node)) look(below, `${path}/${key}`)
    }
    look(houseJsonSchema(), '')
    expect(bare).toEqual([])
  })
})
