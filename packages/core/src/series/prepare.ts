// A checked house made ready: all that its year fixes, worked out once for every sky and stack.

import { type Calendar, calendarOf } from '../axis/calendar.js'
import { agedPeakKw } from '../equipment/array.js'
import type { ArrayInput, House } from '../house/house.js'
import { InputError } from '../house/problem.js'
import { groupOf } from '../house/solar-groups.js'
import { type Demand, demandOf } from '../load/demand.js'
import { type LoadRecords, recordKey } from '../load/meter-record.js'
import { airOfYear } from '../sky/air.js'
import { clearSkyYear, withoutLight } from '../sky/clear.js'
import { horizonFrom } from '../sky/horizon.js'
import { type PlaneGeometry, planeGeometry } from '../sky/plane.js'
import { recordAirC, recordClearness, recordLagMinutes, recordSky } from '../sky/record.js'
import type { Sky } from '../sky/sky.js'
import { type SunYear, sunYear } from '../sky/sun-year.js'
import { type TypicalSky, typicalSky } from '../sky/typical.js'
import type { WeatherRecord } from '../sky/weather-record.js'
import { lastOf } from '../units/once.js'
import { ownColumn, sharedColumn } from '../units/year-column.js'
import { LEAST_LOGGED_DAYS, type LoggedArray, loggedArray } from './logged-array.js'

/** Records that a house file names, by the name it gives them. */
export interface HouseFiles extends LoadRecords {
  readonly weather?: ReadonlyMap<string, WeatherRecord>
}

export interface PreparedArray {
  readonly input: ArrayInput
  readonly geometry: PlaneGeometry
  /** Peak power less losses and age. [kW] */
  readonly peakKw: number
  /** Its logged output; null for one that is modelled. */
  readonly log: LoggedArray | null
  /** Which group of AC-coupled solar it belongs to; -1 behind a tracker or off the island. */
  readonly group: number
}

export interface Prepared {
  readonly house: House
  readonly calendar: Calendar
  readonly demand: Demand
  readonly sun: SunYear
  readonly arrays: readonly PreparedArray[]
  readonly record: WeatherRecord | null
  /** Monthly clearness and air, given or taken from the record. */
  readonly clearness: readonly number[]
  readonly airC: readonly number[]
  /** What was understood or assumed, one sentence each. */
  readonly notes: readonly string[]
}

/** Calendar and sun of a place and year; house after house at one place shares them. */
const sunOver = lastOf(
  ({ year, site, sky }: House) => [year, site, sky.linkeTurbidity],
  (house) => {
    const calendar = calendarOf(house.year, house.site.timezone)
    return { calendar, sun: sunYear(house, calendar) }
  },
)

/**
 * @param options.shared  makes columns of the loads in memory that threads share, too
 * @throws                InputError where a named file is missing from `files`
 */
export function prepare(
  house: House,
  files: HouseFiles = {},
  options: { readonly shared?: boolean } = {},
): Prepared {
  const { calendar, sun } = sunOver(house)
  const record = recordOf(house, files)
  const clearness = house.sky.clearness ?? recordClearness(sun, record as WeatherRecord)
  const airC = house.sky.airC ?? (record === null ? null : recordAirC(sun, record))
  if (airC === null) {
    throw new InputError(
      'sky.airC',
      'given [°C]: the weather file has no air temperature',
      undefined,
    )
  }
  const meanAirC = airOfYear(airC, calendar, null, 0, 0, house.site.latitudeDeg >= 0)
  const demand = demandOf(
    house,
    calendar,
    files,
    meanAirC,
    options.shared === true ? sharedColumn : ownColumn,
  )
  const arrays = house.arrays.map((input) => prepareArray(house, input, sun, files))
  return {
    house,
    calendar,
    demand,
    sun,
    arrays,
    record,
    clearness,
    airC,
    notes: [...demand.notes, ...arrays.flatMap(logNotes), ...skyNotes(house, record, sun)],
  }
}

function recordOf(house: House, files: HouseFiles): WeatherRecord | null {
  if (house.sky.file === undefined) return null
  const record = files.weather?.get(house.sky.file)
  if (record === undefined) {
    throw new InputError('sky.file', `given with its record ${house.sky.file}`, undefined)
  }
  return record
}

function prepareArray(
  house: House,
  input: ArrayInput,
  sun: SunYear,
  files: HouseFiles,
): PreparedArray {
  const plane = { tiltDeg: input.tiltDeg, azimuthDeg: input.azimuthDeg }
  const geometry = planeGeometry(
    sun.sun,
    input.horizon === undefined ? plane : { ...plane, horizon: horizonFrom(input.horizon) },
    sun.sine,
  )
  return {
    input,
    geometry,
    peakKw: agedPeakKw(input),
    log: logOf(input, sun.calendar, files),
    group: groupOf(house, input),
  }
}

function logOf(input: ArrayInput, calendar: Calendar, files: HouseFiles): LoggedArray | null {
  if (input.file === undefined) return null
  const record = files.outputs?.get(recordKey(input))
  if (record === undefined) {
    throw new InputError(`array ${input.name}`, `given with its log ${input.file}`, undefined)
  }
  const log = loggedArray(record, calendar)
  if (log.days === 0) {
    throw new InputError(record.name, 'a log of at least one whole local day', 'less than that')
  }
  return log
}

function logNotes({ input, log, geometry }: PreparedArray): string[] {
  if (log === null) return []
  const { days, covered } = log
  const without = Math.round(geometry.beamShare.length / 1440) - covered
  const logged = `${input.name}: ${days} whole day${days === 1 ? ' was' : 's were'} logged`
  const need = `${LEAST_LOGGED_DAYS} within 15 days of a date tell its dull days from its bright ones`
  if (covered === 0) {
    return [`${logged}, too few to stand for the array (${need}): the model stands in.`]
  }
  return [
    `${logged}; a day takes the logged day of its season at the same rank of brightness.` +
      (without > 0
        ? ` On ${without} days of the year too few are near (${need}): the model stands in.`
        : ''),
  ]
}

/** A station this near has the weather of the house; common practice, no source. [km] */
const NEAR_KM = 100
/** Clouds move the middle of a day's light by less. [min] */
const IN_STEP_MINUTES = 40

function skyNotes(house: House, record: WeatherRecord | null, sun: SunYear): string[] {
  if (record === null) {
    return [
      'No wind record: 1 m/s is taken, and days no brighter than 0.8 of the mean count as windy.',
    ]
  }
  const notes: string[] = []
  const away = record.site === null ? 0 : distanceKm(house.site, record.site)
  if (away > NEAR_KM) {
    const { latitudeDeg, longitudeDeg } = record.site as NonNullable<WeatherRecord['site']>
    notes.push(
      `${record.name} was recorded at ${latitudeDeg}, ${longitudeDeg}, ${Math.round(away)} km from ` +
        'the house: is it the right file?',
    )
  }
  if (record.typicalYear) {
    notes.push(
      `${record.name} is a typical year: its unusual months were removed, so it tells no worst case.`,
    )
  }
  const lag = Math.round(recordLagMinutes(sun, record))
  if (Math.abs(lag) > IN_STEP_MINUTES) {
    notes.push(
      `The light of ${record.name} comes ${Math.abs(lag)} min ${lag < 0 ? 'before' : 'after'} the sun of the house: do its stamps mark the start or the end of an interval, and is its offset from UTC right?`,
    )
  }
  if (house.sky.clearness === undefined) {
    notes.push('Skies typical and dull take their monthly clearness from the weather file.')
  }
  return notes
}

const EARTH_KM = 6371

type Place = { readonly latitudeDeg: number; readonly longitudeDeg: number }

/** Great-circle distance by the haversine formula. [km] */
function distanceKm(a: Place, b: Place): number {
  const rad = Math.PI / 180
  const half = (deg: number): number => Math.sin((deg * rad) / 2) ** 2
  const across =
    Math.cos(a.latitudeDeg * rad) *
    Math.cos(b.latitudeDeg * rad) *
    half(b.longitudeDeg - a.longitudeDeg)
  return 2 * EARTH_KM * Math.asin(Math.sqrt(half(b.latitudeDeg - a.latitudeDeg) + across))
}

/** Winters behind the skies `dull` and `none`. */
export const DULL_YEARS = 200

/** @param years  synthetic years of `typical` */
export function typicalOf(prepared: Prepared, seed: number, years: number): TypicalSky {
  return typicalSky(prepared.sun, prepared.clearness, prepared.airC, seed, years)
}

/** The skies without a choice of years, and the record's. */
export function plainSky(prepared: Prepared, kind: 'clear' | 'none' | 'file'): Sky {
  if (kind === 'clear') return clearSkyYear(prepared.sun, prepared.airC)
  if (kind === 'none') return withoutLight(clearSkyYear(prepared.sun, prepared.airC))
  if (prepared.record === null) {
    throw new InputError('sky.file', 'given for the sky file', undefined)
  }
  return recordSky(prepared.sun, prepared.record, prepared.airC, prepared.house.seed)
}
