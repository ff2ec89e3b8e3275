// The rules of a house file: every field, its unit, its range.
//
// This is the only place where a house is judged field by field; `check-house.ts` adds what
// needs two fields at once, and the JSON Schema for editors is derived from here.

import { z } from 'zod'
import { clockMinute, isZone } from '../axis/calendar.js'
import { DEFAULTS } from './defaults.js'
import {
  checkedText,
  choice,
  group,
  list,
  months,
  number,
  share,
  span,
  text,
  yesNo,
} from './fields.js'
import { HOLIDAY_NEED, isHolidayText } from './holidays.js'
import { GRID_CODES, PHASES, PROFILE_KINDS, WAKES_ON, WEEKDAYS } from './house.js'
import { buffer, holdOver, hotWater, overheats } from './kept-rules.js'
import { LOCKED_ROTOR_LETTERS } from './locked-rotor.js'
import { money, prices } from './price-rules.js'
import { surveyFields } from './survey-rules.js'

const site = group('Where the house stands', {
  latitudeDeg: number('Latitude, north positive', { unit: 'deg', min: -90, max: 90 }),
  longitudeDeg: number('Longitude, east positive', { unit: 'deg', min: -180, max: 180 }),
  elevationM: number('Height above the sea', { unit: 'm', min: -430, max: 6000 }),
  timezone: checkedText(
    'Time zone of the clock on the wall',
    'an IANA time zone such as Europe/London',
    isZone,
  ),
  gridCode: choice('Code the installation connects under', GRID_CODES).optional(),
})

const anyPhase = choice('Phase; that of the island when left out', [...PHASES, 'three'])

const sky = group('Where irradiance and air come from', {
  linkeTurbidity: months('Linke turbidity', { unit: '', min: 1, max: 10 }).default([
    ...DEFAULTS['sky.linkeTurbidity'].value,
  ]),
  clearness: months('Clearness, global over extraterrestrial', {
    unit: 'share of 1',
    min: 0.05,
    max: 0.85,
  }).optional(),
  airC: months('Mean air temperature', { unit: '°C', min: -60, max: 50 }).optional(),
  albedo: months('Ground albedo', { unit: 'share of 1', min: 0, max: 1 }).default([
    ...DEFAULTS['sky.albedo'].value,
  ]),
  airMarginK: number('Taken off the mean air for loads that follow it, to their cautious side', {
    unit: 'K',
    min: 0,
    max: 30,
  }).default(DEFAULTS['sky.airMarginK'].value),
  file: text('Weather file, beside the house file').optional(),
})

const solarInverter = group('The AC-coupled solar inverter', {
  ratedKw: number('AC rating', { unit: 'kW', above: 0, max: 100 }),
  efficiency: share('AC over DC', 0.5).default(DEFAULTS['arrays[].inverter.efficiency'].value),
  onIsland: choice('What it does when the island cannot take its power', [
    'throttles',
    'trips',
    'throttles to a floor',
  ]).default(DEFAULTS['arrays[].inverter.onIsland'].value),
  reconnectSeconds: number('Wait before it gives power again', {
    unit: 's',
    min: 0,
    max: 3600,
  }).default(DEFAULTS['arrays[].inverter.reconnectSeconds'].value),
  rampSeconds: number('From the first power to all of it', {
    unit: 's',
    min: 0,
    max: 3600,
  }).default(DEFAULTS['arrays[].inverter.rampSeconds'].value),
  floorShare: share('Share of its power below which it trips instead of throttling').default(
    DEFAULTS['arrays[].inverter.floorShare'].value,
  ),
  outAbove: share('Charge above which one that trips is out on the island', 0.5).default(
    DEFAULTS['arrays[].inverter.outAbove'].value,
  ),
  backBelow: share('Charge below which it is let in again', 0.1).default(
    DEFAULTS['arrays[].inverter.backBelow'].value,
  ),
  phase: anyPhase.optional(),
  droop: share('Rise of frequency that takes it from full power to none', 0.02, 0.12).default(
    DEFAULTS['arrays[].inverter.droop'].value,
  ),
})

const FILE_FIELDS = {
  column: text('Header of the column to read in the file').optional(),
  zone: checkedText(
    'Zone of its stamps where they name none; that of the site when left out',
    'an IANA time zone, or UTC+1 and the like',
    (value) => isZone(value) || /^UTC([+-]\d{1,2}(:\d\d)?)?$/.test(value),
  ).optional(),
}

const array = group('One solar array', {
  name: text('Name'),
  peakKw: number('Peak power', { unit: 'kW', above: 0, max: 200 }),
  tiltDeg: number('Tilt from horizontal', { unit: 'deg', min: 0, max: 90 }),
  azimuthDeg: number('Azimuth, clockwise from north', { unit: 'deg', min: 0, max: 360 }),
  inverter: solarInverter.optional(),
  onInverterOf: text('Name of the array whose inverter it shares').optional(),
  file: text('Log of its AC output, beside the house file').optional(),
  ...FILE_FIELDS,
  trackerKw: number('Limit of the tracker of a DC-coupled array', {
    unit: 'kW',
    above: 0,
    max: 200,
  }).optional(),
  lossShare: share('Soiling, cables, mismatch', 0, 0.6).default(
    DEFAULTS['arrays[].lossShare'].value,
  ),
  ageYears: number('Age', { unit: 'years', min: 0, max: 50 }).default(
    DEFAULTS['arrays[].ageYears'].value,
  ),
  perKelvin: number('Change of power per kelvin', { unit: '1/K', min: -0.01, max: 0 }).default(
    DEFAULTS['arrays[].perKelvin'].value,
  ),
  horizon: list(
    'Azimuth and altitude of what stands in the way [deg]',
    z.tuple(
      [
        number('Azimuth', { unit: 'deg', min: 0, max: 360 }),
        number('Altitude', { unit: 'deg', min: 0, max: 90 }),
      ],
      { error: () => 'a pair [azimuth, altitude] [deg]' },
    ),
    1,
  ).optional(),
})

/** Around noon, when a roof gives most. */
const RETRY_AT = ['10:00-10:10', '12:00-12:10', '14:00-14:10']

const inverter = group('The grid-forming inverter', {
  ratedKva: number('Continuous rating', { unit: 'kVA', above: 0, max: 100 }),
  startingKva: number('The most it carries for a second', {
    unit: 'kVA',
    above: 0,
    max: 300,
  }).optional(),
  minuteKva: number('The most it carries for a minute', {
    unit: 'kVA',
    above: 0,
    max: 300,
  }).optional(),
  chargeKw: number('Charge limit at the AC side', { unit: 'kW', above: 0, max: 100 }).optional(),
  idleW: number('Draw with no load', { unit: 'W', min: 0, max: 1000 }).optional(),
  roundTrip: share('AC to AC at a third of rating', 0.5).default(
    DEFAULTS['inverter.roundTrip'].value,
  ),
  whenEmpty: choice('What happens when the stack is empty', [
    'collapses',
    'holds',
    'retries',
  ]).default(DEFAULTS['inverter.whenEmpty'].value),
  wakesOn: list(
    'What brings a dark, empty stack back beside the grid',
    choice('A way to wake it', WAKES_ON),
  ).optional(),
  onOverload: choice('What an overload does', ['trips', 'sheds']).default(
    DEFAULTS['inverter.onOverload'].value,
  ),
  retryAt: list('Spans in which an empty island tries again', span('A span'), 1).default(
    () => RETRY_AT,
  ),
  loadsOffAt: share('Charge at which the loads go off', 0, 0.9).default(
    DEFAULTS['inverter.loadsOffAt'].value,
  ),
  loadsBackAt: share('Charge at which they come back', 0, 1).default(
    DEFAULTS['inverter.loadsBackAt'].value,
  ),
  phases: z
    .literal([1, 3], { error: () => '1 or 3' })
    .describe('Phases of the island: 1 or 3')
    .default(DEFAULTS['inverter.phases'].value),
  phase: choice('Phase of a single-phase island', PHASES).default(DEFAULTS['inverter.phase'].value),
})

const stack = group('The battery stack', {
  module: group('One module', {
    usableKwh: number('Usable energy, new', { unit: 'kWh', above: 0, max: 200 }),
    chargeKw: number('Charge limit', { unit: 'kW', above: 0, max: 200 }),
    dischargeKw: number('Discharge limit', { unit: 'kW', above: 0, max: 200 }),
    price: money('Price, in the money of the house').optional(),
  }),
  chargeKw: number('Charge limit of the whole stack', {
    unit: 'kW',
    above: 0,
    max: 500,
  }).optional(),
  dischargeKw: number('Discharge limit of the whole stack', {
    unit: 'kW',
    above: 0,
    max: 500,
  }).optional(),
  modules: number('Modules fitted', { unit: '', min: 1, max: 100, whole: true }),
  modulesMax: number('Modules the base allows', {
    unit: '',
    min: 1,
    max: 100,
    whole: true,
  }).optional(),
  reserve: share('Charge that ordinary days may not touch').default(
    DEFAULTS['stack.reserve'].value,
  ),
  health: share('Capacity that age has left', 0.3).default(DEFAULTS['stack.health'].value),
  place: choice('Where it stands', ['house', 'attached garage', 'shed']).default(
    DEFAULTS['stack.place'].value,
  ),
  electronicsW: number('Draw of the electronics of a module', {
    unit: 'W',
    min: 0,
    max: 200,
  }).default(DEFAULTS['stack.electronicsW'].value),
  selfDischargePerMonth: share('Self-discharge in a month', 0, 0.2).default(
    DEFAULTS['stack.selfDischargePerMonth'].value,
  ),
  heaterW: number('Heater of a module, on below 5 °C', { unit: 'W', min: 0, max: 1000 }).default(
    DEFAULTS['stack.heaterW'].value,
  ),
})

const load = group('One load', {
  name: text('Name'),
  tier: choice('Must stay on, while it lasts, or off in a cut', [
    'critical',
    'comfort',
    'gridOnly',
  ]).optional(),
  w: number('Power of one piece while it runs', { unit: 'W', above: 0, max: 100000 }).optional(),
  pieces: number('How many of it', { unit: '', min: 1, max: 1000, whole: true }).default(
    DEFAULTS['loads[].pieces'].value,
  ),
  ...surveyFields,
  at: list('Hours in which it runs', span('A span'), 1).optional(),
  days: list('Weekdays on which it runs', choice('A weekday', WEEKDAYS), 1).optional(),
  file: text('Meter file, beside the house file').optional(),
  ...FILE_FIELDS,
  seasonal: choice('Standard profile whose season scales a short meter file', ['H0']).optional(),
  beforeArrays: list(
    'Arrays that did not stand yet when the meter file was recorded',
    text('Name of an array'),
  ).optional(),
  profile: group('A standard profile, a mean of many houses, where there is no meter file', {
    kind: choice('Household profile of 1999 or of 2025', PROFILE_KINDS),
    kwhPerYear: number('Energy of a calendar year', { unit: 'kWh', above: 0, max: 1e6 }),
  }).optional(),
  contains: list(
    'Loads that the metered or standard figure already holds',
    text('Name of another load'),
  ).optional(),
  toleratesMinutes: number('Longest gap that does no harm', {
    unit: 'min',
    min: 0,
    max: 20160,
  }).default(DEFAULTS['loads[].toleratesMinutes'].value),
  holdOver: holdOver.optional(),
  overheats: overheats.optional(),
  buffer: buffer.optional(),
  hotWater: hotWater.optional(),
  powerFactor: share('Power factor while it runs', 0.1).default(
    DEFAULTS['loads[].powerFactor'].value,
  ),
  startingMultiple: number('Starting over running current', {
    unit: '',
    min: 1,
    max: 12,
  }).default(DEFAULTS['loads[].startingMultiple'].value),
  motorHp: number('Rating on the plate of a motor', { unit: 'hp', above: 0, max: 100 }).optional(),
  lockedRotorCode: choice('Letter of the locked rotor', LOCKED_ROTOR_LETTERS).optional(),
  phase: anyPhase.optional(),
  dropOrder: number('Comfort loads with a lower number go off first', {
    unit: '',
    min: 1,
    max: 9,
    whole: true,
  }).default(DEFAULTS['loads[].dropOrder'].value),
})

const litres = { unit: 'l/h', min: 0, max: 100 }

const generator = group('A generator', {
  ratedKw: number('Rating', { unit: 'kW', above: 0, max: 200 }),
  tankL: number('Tank', { unit: 'l', above: 0, max: 2000 }),
  cansL: number('Fuel kept in cans', { unit: 'l', min: 0, max: 2000 }).default(
    DEFAULTS['generator.cansL'].value,
  ),
  litresPerHour: group('Fuel as the data sheet gives it', {
    none: number('With no load', litres),
    half: number('At half load', litres),
    full: number('At full load', litres),
  }),
  start: choice('Who starts it', ['automatic', 'by hand']),
  startingKva: number("The most it gives in the second of a motor's start", {
    unit: 'kVA',
    above: 0,
    max: 600,
  }).optional(),
  mostShare: share('Share of rating that load and charge together may take', 0.3).default(
    DEFAULTS['generator.mostShare'].value,
  ),
  leastShare: share('Share of rating below which it should not run for long', 0, 0.7).default(
    DEFAULTS['generator.leastShare'].value,
  ),
  startFailsShare: share('Share of starts that fail').default(
    DEFAULTS['generator.startFailsShare'].value,
  ),
  hoursBetweenFailures: number('Mean running hours between failures', {
    unit: 'h',
    min: 1,
    max: 1e6,
  }).optional(),
  readySeconds: number('From the call to power', { unit: 's', min: 0, max: 3600 }).default(
    DEFAULTS['generator.readySeconds'].value,
  ),
  leastRunMinutes: number('Least run', { unit: 'min', min: 0, max: 1440, whole: true }).default(
    DEFAULTS['generator.leastRunMinutes'].value,
  ),
  startAt: share('Charge at which it is wanted').default(DEFAULTS['generator.startAt'].value),
  stopAt: share('Charge at which it stops').default(DEFAULTS['generator.stopAt'].value),
})

const clock = (doc: string) =>
  checkedText(doc, 'a wall-clock time such as 07:00', (value) => clockMinute(value) !== null)

/** The whole house file. */
export const houseRules = group('A house and its island', {
  $schema: text('The JSON Schema an editor checks against').optional(),
  house: text('Name of the house'),
  invented: yesNo('Whether the house is an invention').optional(),
  year: number('Year that gives dates and weekdays', {
    unit: '',
    min: 1970,
    max: 2100,
    whole: true,
  }).default(DEFAULTS.year.value),
  seed: number('Seed of all chance', { unit: '', min: 0, max: 2147483647, whole: true }).default(
    DEFAULTS.seed.value,
  ),
  site,
  sky,
  arrays: list('Solar arrays; an empty list for a house without', array),
  gateway: group('The gateway that disconnects from the grid', {
    reconnectSeconds: number('Wait before the grid is taken back', {
      unit: 's',
      min: 0,
      max: 3600,
    }).default(DEFAULTS['gateway.reconnectSeconds'].value),
    mainFuseA: number('Main fuse, one phase at 230 V', { unit: 'A', min: 6, max: 400 }).default(
      DEFAULTS['gateway.mainFuseA'].value,
    ),
    changeoverMs: number('Gap at the changeover that the data sheet claims', {
      unit: 'ms',
      min: 0,
      max: 600000,
    }).default(DEFAULTS['gateway.changeoverMs'].value),
    oneInputForEither: yesNo(
      'Whether one input takes either the generator or the AC-coupled solar',
    ).default(DEFAULTS['gateway.oneInputForEither'].value),
    exportLimitKw: number('Export limit agreed with the network operator', {
      unit: 'kW',
      min: 0,
      max: 100,
    }).optional(),
  }).prefault({}),
  inverter,
  stack,
  comfort: group('When comfort loads go and return', {
    dropBelow: share('Charge below which they go off').default(DEFAULTS['comfort.dropBelow'].value),
    returnAt: share('Charge at which they return').default(DEFAULTS['comfort.returnAt'].value),
  }).prefault({}),
  heatingMonths: list(
    'Months in which the heating runs',
    number('A month', { unit: '', min: 1, max: 12, whole: true }),
  ).optional(),
  holidays: list(
    'Public holidays, on which loads and profiles with weekdays run as on a Sunday',
    checkedText('A day', HOLIDAY_NEED, isHolidayText),
  ).default([]),
  loads: list('Loads', load, 1),
  generator: generator.optional(),
  person: group('Who can reset, pour fuel or pull the cord', {
    minutes: number('From the call to the deed', { unit: 'min', min: 0, max: 2880 }).default(
      DEFAULTS['person.minutes'].value,
    ),
    from: clock('Earliest').default(DEFAULTS['person.from'].value),
    to: clock('Latest').default(DEFAULTS['person.to'].value),
  }).optional(),
  prices: prices.optional(),
})
