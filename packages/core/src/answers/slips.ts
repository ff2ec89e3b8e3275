// What looks like a slip of the pen in a house file; said first, not refused.

import { clockMinute, DAY_MINUTES } from '../axis/calendar.js'
import type { ArrayInput, House, LoadInput } from '../house/house.js'
import { generatorStartingKva } from '../island/generator-columns.js'
import type { Prepared } from '../series/prepare.js'

/** A single household appliance above this is more likely watts written where they were not meant. */
const LARGE_LOAD_W = 15000
const COLD = /fridge|freezer|refrigerator/i
const LARGE_FRIDGE_W = 1000
const SMALL_LOAD_W = 1
/** Loads that no house has of a few watts. */
const HEAVY =
  /kettle|shower|cooker|oven|hob|heater|iron|toaster|dryer|washer|pump|freezer|fridge|microwave|charger/i
const LEAST_HEAVY_W = 10
/** What a house hardly runs day and night; common practice, no source. */
const LARGE_BASE_W = 1000
/** Hours by which the clock of a zone may differ from the sun; the widest real zones stay below. */
const ZONE_HOURS = 3.4
/** DC over AC rating above which one of them is likely wrong. */
const MOST_DC_OVER_AC = 3

/**
 * A house that heats and drives with electricity takes less in a year, a fridge alone more; common
 * practice, no source.
 */
const LARGE_YEAR_KWH = 40000
const SMALL_YEAR_KWH = 100

/** What looks like a slip of the pen: to be looked at before the answer is believed. */
export function slipsOf({ house }: Pick<Prepared, 'house'>): string[] {
  return [
    ...house.loads.flatMap(loadWarnings),
    ...house.loads.flatMap((load) => motorSlips(load, house)),
    ...placeSlips(house),
    ...house.arrays.flatMap((a) => arraySlips(a, house)),
    ...generatorSlips(house),
    ...stackSlips(house),
    ...personSlips(house),
    ...house.loads.flatMap(hourSlips),
  ]
}

/** Slips of a load line: kilowatts where watts were meant, and the like. */
function loadWarnings(load: LoadInput): string[] {
  if (load.profile !== undefined) return profileWarnings(load.name, load.profile.kwhPerYear)
  if (load.w === undefined) return []
  const most = COLD.test(load.name) ? LARGE_FRIDGE_W : LARGE_LOAD_W
  if (load.w >= most) {
    return [
      `${load.name}: ${load.w} W is a lot for one of it; is it ${load.w / 1000} W or kW meant?`,
    ]
  }
  const least = HEAVY.test(load.name) ? LEAST_HEAVY_W : SMALL_LOAD_W
  if (load.w < least) {
    return [`${load.name}: ${load.w} W is very little; were kilowatts meant? w is in watts.`]
  }
  const { at, cycle, events, charging, byAir } = load
  const isAlways = [at, cycle, events, charging, byAir].every((field) => field === undefined)
  const watts = load.w * load.pieces
  if (isAlways && watts >= LARGE_BASE_W) {
    return [
      `${load.name}: ${watts} W day and night, ${((watts * 24) / 1000).toFixed(0)} kWh a day; are ` +
        'its hours (at), its cycle or its events missing?',
    ]
  }
  return []
}

/** Loads with a motor in them. */
const MOTOR = /pump|fridge|freezer|refrigerator|compressor|air.?con/i
/** Those that lift water start hard. */
const HARD = /well|borehole|sump/i
/** What a motor draws as it starts, over its running power; common practice, no source. */
const STARTS_TIMES = 5
/** Of what is carried: from here on a start of those that start hard is asked about. */
const HARD_SHARE = 0.5

/** A motor of which no start is known, where inverter or generator may not carry it. */
function motorSlips(load: LoadInput, house: House): string[] {
  const { name, tier, w = 0, powerFactor, startingMultiple, motorHp } = load
  if (tier === 'gridOnly' || !MOTOR.test(name)) return []
  if (startingMultiple > 1 || motorHp !== undefined) return []
  const startKva = (STARTS_TIMES * w) / 1000 / powerFactor
  const [carries, who] = leastCarried(house)
  if (startKva <= (HARD.test(name) ? HARD_SHARE : 1) * carries) return []
  return [
    `${name}: counted as no motor, for it has no startingMultiple; a pump or compressor draws some ` +
      `${STARTS_TIMES} times its power as it starts: ${startKva.toFixed(1)} kVA, and the ${who} ` +
      `carries ${carries.toFixed(1)}.`,
  ]
}

/** What carries a start on the island: inverter or generator, whichever carries less. [kVA] */
function leastCarried(house: House): readonly [number, string] {
  const { inverter, generator } = house
  const own = inverter.startingKva ?? inverter.ratedKva
  const set = generator === undefined ? Infinity : generatorStartingKva(house)
  return set < own ? [set, 'generator'] : [own, 'battery inverter']
}

/** A longitude that does not fit the clock: latitude and longitude swapped, a sign left out. */
function placeSlips({ site, year }: House): string[] {
  const winter = new Date(Date.UTC(year, 0, 15, 12))
  const summer = new Date(Date.UTC(year, 6, 15, 12))
  const offset = Math.min(...[winter, summer].map((at) => zoneHours(site.timezone, at)))
  const apart = ((site.longitudeDeg / 15 - offset + 36) % 24) - 12
  if (Math.abs(apart) < ZONE_HOURS) return []
  return [
    `site: longitude ${site.longitudeDeg} is ${Math.abs(apart).toFixed(0)} h of sun away from the clock ` +
      `of ${site.timezone}; are latitude and longitude in their places, west with a minus?`,
  ]
}

/** Hours by which a zone is ahead of UTC. */
function zoneHours(zone: string, at: Date): number {
  const format = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' })
  const name = format.formatToParts(at).find(({ type }) => type === 'timeZoneName')?.value ?? ''
  const match = /([+-])(\d\d):(\d\d)/.exec(name)
  if (match === null) return 0
  return (match[1] === '-' ? -1 : 1) * (Number(match[2]) + Number(match[3]) / 60)
}

function arraySlips(
  { name, tiltDeg, azimuthDeg, peakKw, inverter }: ArrayInput,
  { site }: House,
): string[] {
  const slips: string[] = []
  const pole = site.latitudeDeg >= 0 ? 0 : 180
  const fromPole = Math.abs(((azimuthDeg - pole + 540) % 360) - 180)
  if (Math.abs(site.latitudeDeg) > 25 && tiltDeg > 15 && fromPole < 45) {
    slips.push(
      `${name}: azimuth ${azimuthDeg} faces away from the sun; it counts clockwise from north, ` +
        'south is 180.',
    )
  }
  if (inverter !== undefined && peakKw > MOST_DC_OVER_AC * inverter.ratedKw) {
    slips.push(
      `${name}: ${peakKw} kW of modules on an inverter of ${inverter.ratedKw} kW; is one of them wrong?`,
    )
  }
  return slips
}

function generatorSlips({ generator, person }: House): string[] {
  if (generator === undefined || !(generator.cansL > 0) || person !== undefined) return []
  return [
    `generator: ${generator.cansL} l in cans and nobody named to pour them (person): they stay in ` +
      'the cans and are not counted.',
  ]
}

/** Limits of a module beyond this many capacities an hour are watts or amperes; cp, no source. */
const MOST_C_RATE = 3

/** What a person can lift and connect holds less; common practice, no source. [kWh] */
const LARGE_MODULE_KWH = 30

function stackSlips({ stack: { module } }: House): string[] {
  const slips = (['chargeKw', 'dischargeKw'] as const).flatMap((field) =>
    module[field] > MOST_C_RATE * module.usableKwh
      ? [
          `stack.module.${field}: ${module[field]} kW on ${module.usableKwh} kWh fills or empties it in ` +
            `${Math.round((60 * module.usableKwh) / module[field])} min; is a decimal point missing?`,
        ]
      : [],
  )
  if (module.usableKwh <= LARGE_MODULE_KWH) return slips
  return [
    ...slips,
    `stack.module.usableKwh: ${module.usableKwh} kWh is a lot for one module; is it that of the whole stack?`,
  ]
}

function personSlips({ person }: House): string[] {
  if (person === undefined) return []
  const [from, to] = [clockMinute(person.from) ?? 0, clockMinute(person.to) ?? 0]
  if (from <= to) return []
  return [
    `person: from ${person.from} to ${person.to} is the night, nobody by day; are the hours swapped?`,
  ]
}

/** A span this long over midnight is more likely its two ends swapped. [min] */
const LONG_NIGHT = 14 * 60

function hourSlips({ name, at = [] }: LoadInput): string[] {
  return at.flatMap((span) => {
    const [from, to] = span.split('-').map((part) => clockMinute(part.trim()) ?? 0) as [
      number,
      number,
    ]
    const minutes = from > to ? DAY_MINUTES - from + to : 0
    if (minutes <= LONG_NIGHT) return []
    return [
      `${name}: ${span} runs ${(minutes / 60).toFixed(0)} h over midnight; are the hours swapped?`,
    ]
  })
}

function profileWarnings(name: string, kwhPerYear: number): string[] {
  if (kwhPerYear >= LARGE_YEAR_KWH) {
    return [`${name}: ${kwhPerYear} kWh a year is a lot for one house; were Wh meant?`]
  }
  if (kwhPerYear < SMALL_YEAR_KWH) {
    return [`${name}: ${kwhPerYear} kWh a year is very little; were MWh meant?`]
  }
  return []
}
