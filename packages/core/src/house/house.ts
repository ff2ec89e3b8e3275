// Everything in one house file, checked: the only shape the simulator trusts.
//
// Fields that may be left out are filled from `defaults.ts` before anybody sees a House;
// those that stay optional have a meaning of their own when absent, said beside them.

import type { SurveyFields } from './survey-lines.js'

export type Tier = 'critical' | 'comfort' | 'gridOnly'
export type Place = 'house' | 'attached garage' | 'shed'
export type OnIsland = 'throttles' | 'trips' | 'throttles to a floor'
export type WhenEmpty = 'collapses' | 'holds' | 'retries'
/** `person`: somebody forms the island without its loads once the sun can fill the stack. */
export const WAKES_ON = ['sun', 'generator', 'person'] as const
export type WakesOn = (typeof WAKES_ON)[number]
export const PHASES = ['L1', 'L2', 'L3'] as const
export type Phase = (typeof PHASES)[number]
/** The phase something stands on, or all of them. */
export type PhaseOrThree = Phase | 'three'
/** Public standards by which the network operator lets inverters connect. */
export const GRID_CODES = ['G98', 'G99', 'IEEE1547', 'AS4777', 'EN50549'] as const
export type GridCode = (typeof GRID_CODES)[number]

export interface Site {
  /** North positive. [deg] */
  latitudeDeg: number
  /** East positive. [deg] */
  longitudeDeg: number
  /** Above the sea. [m] */
  elevationM: number
  /** IANA name. */
  timezone: string
  /** The code the installation connects under; nothing is said of thresholds when absent. */
  gridCode?: GridCode | undefined
}

export interface SkyInput {
  /** Monthly Linke turbidity, January first. */
  linkeTurbidity: number[]
  /** Monthly mean of global over extraterrestrial irradiation, January first; from `file` when absent. */
  clearness?: number[] | undefined
  /** Monthly mean air temperature, January first; from `file` when absent. [°C] */
  airC?: number[] | undefined
  /** Monthly ground albedo, January first. */
  albedo: number[]
  /** Taken off the mean air for loads that follow it, to their cautious side. [K] */
  airMarginK: number
  /** A weather file beside the house file. */
  file?: string | undefined
}

export interface SolarInverter {
  /** [kW] */
  ratedKw: number
  /** AC over DC, 0..1 */
  efficiency: number
  /** What it does when the island cannot take its power. */
  onIsland: OnIsland
  /** From the forming of the island to the first power. [s] */
  reconnectSeconds: number
  /** From the first power to all of it. [s] */
  rampSeconds: number
  /** Share of its power below which one that throttles to a floor trips. 0..1 */
  floorShare: number
  /** `trips`: share of usable capacity above which it is out on the island. */
  outAbove: number
  /** `trips`: share of usable capacity below which it is let in again. */
  backBelow: number
  /** The island's phase when absent. */
  phase?: PhaseOrThree | undefined
  /** Rise of frequency, as a share of nominal, that takes it from full power to none. */
  droop: number
}

export interface ArrayInput {
  name: string
  /** Power at 1000 W/m² and a cell at 25 °C. [kW] */
  peakKw: number
  /** From horizontal. [deg] */
  tiltDeg: number
  /** Clockwise from north. [deg] */
  azimuthDeg: number
  /** The AC-coupled inverter; an array without one is DC-coupled through a tracker at the stack. */
  inverter?: SolarInverter | undefined
  /** Name of the array whose inverter it shares; `inverter` is then that one. */
  onInverterOf?: string | undefined
  /** A log of the AC output beside the house file: it goes before every model. */
  file?: string | undefined
  /** Header of the column to read in it, where several could be meant. */
  column?: string | undefined
  /** Zone of its stamps where they name none: an IANA name, or `UTC+1`; the site's when absent. */
  zone?: string | undefined
  /** Most a DC-coupled array's tracker passes on. [kW] */
  trackerKw?: number | undefined
  /** Soiling, cables, mismatch, shade not in the horizon. 0..1 */
  lossShare: number
  /** [years] */
  ageYears: number
  /** Change of power per kelvin of cell temperature. [1/K], negative */
  perKelvin: number
  /** Pairs of azimuth and altitude of what stands in the way. [deg] */
  horizon?: [number, number][] | undefined
}

export interface Gateway {
  /** Wait before a grid that is back is taken. [s] */
  reconnectSeconds: number
  mainFuseA: number
  /** Gap at the changeover as the data sheet claims it. [ms] */
  changeoverMs: number
  /** Whether one input takes either the generator or the AC-coupled solar. */
  oneInputForEither: boolean
  /** Agreed with the network operator; none when absent. [kW] */
  exportLimitKw?: number | undefined
}

export interface GridFormingInverter {
  ratedKva: number
  /** The most it carries for the second of a motor's start; 2 x rated when absent. [kVA] */
  startingKva?: number | undefined
  /** The most it carries for a minute; 1.1 x rated when absent. [kVA] */
  minuteKva?: number | undefined
  /** Its own charge limit at the AC side; ratedKva when absent. [kW] */
  chargeKw?: number | undefined
  /** Draw with no load; 1.2 % of rating when absent. [W] */
  idleW?: number | undefined
  /** AC to AC, out and back, at a third of rating. 0..1 */
  roundTrip: number
  /** `sheds` only where a fast load relay drops the comfort loads. */
  onOverload: 'trips' | 'sheds'
  whenEmpty: WhenEmpty
  /** What brings a dark, empty stack back beside the grid; sun only behind a DC-coupled tracker. */
  wakesOn: WakesOn[]
  /** `retries`: wall-clock spans in which an empty island forms again to let solar in. */
  retryAt: string[]
  /** Share of usable capacity at which the loads go off. */
  loadsOffAt: number
  /** Share of usable capacity at which they come back. */
  loadsBackAt: number
  /** Phases of the island. */
  phases: 1 | 3
  /** The phase a single-phase island stands on. */
  phase: Phase
}

export interface StackInput {
  module: {
    usableKwh: number
    chargeKw: number
    dischargeKw: number
    price?: number | undefined
  }
  /** What cables and base let the whole stack take and give; its modules' when absent. [kW] */
  chargeKw?: number | undefined
  dischargeKw?: number | undefined
  modules: number
  /** The most the base allows. */
  modulesMax: number
  /** Share of usable capacity that ordinary days may not touch. */
  reserve: number
  /** Share of the nameplate capacity that age has left. */
  health: number
  place: Place
  /** Draw of the electronics of one module. [W] */
  electronicsW: number
  /** Share of capacity lost in a month. */
  selfDischargePerMonth: number
  /** Heater of one module, on below 5 °C. [W] */
  heaterW: number
}

/** Something kept cold, by the time it is stated to hold without power. */
export interface HoldOver {
  /** From `fromC` to `untilC`, door shut, in a room at `atC`. [h] */
  hours: number
  keeps: ColdKeeps
  /** What it runs at; 5, or -18 for frozen, when absent. [°C] */
  fromC?: number | undefined
  /** The temperature that the stated hours reach; `limitC` when absent. [°C] */
  untilC?: number | undefined
  /** Where it is lost; 8, or 0 for frozen, when absent. [°C] */
  limitC?: number | undefined
  /** The room of the stated hours; 20 when absent. [°C] */
  atC?: number | undefined
  /** The room in this house during the cut; `atC` when absent. [°C] */
  roomC?: number | undefined
}

export const COLD_KEPT = ['food', 'frozen', 'medicine'] as const
export type ColdKeeps = (typeof COLD_KEPT)[number]

/** A boiler that burns solid fuel, where its pump stops. */
export interface Overheats {
  /** Water in the boiler itself. [l] */
  waterL: number
  /** Heat of the fire. [kW] */
  heatKw: number
  /** 70 when absent. [°C] */
  fromC?: number | undefined
  /** Where it is lost; 95 when absent. [°C] */
  limitC?: number | undefined
  /** Heat that a fire which dies down with the power still gives; it burns on when absent. [kWh] */
  stillKwh?: number | undefined
}

/** A sump that fills, or a pressure vessel that empties, while its pump stands. */
export interface Buffer {
  /** From where the pump starts to where it is too late. [l] */
  litres: number
  /** What comes or goes. [l/min] */
  litresPerMinute: number
}

/** A cylinder of hot water. */
export interface HotWater {
  /** [l] */
  litres: number
  /** Drawn in a day, at `useC`. [l] */
  litresADay: number
  /** 60 when absent. [°C] */
  fromC?: number | undefined
  /** 40 when absent. [°C] */
  useC?: number | undefined
  /** 10 when absent. [°C] */
  coldC?: number | undefined
  /** What the cylinder loses; 1.5 when absent. [kWh a day] */
  lossKwhADay?: number | undefined
}

/** What tells how long a load bears a gap, beside a plain `toleratesMinutes`. */
export const CONSEQUENCES = ['holdOver', 'overheats', 'buffer', 'hotWater'] as const

export interface LoadInput extends SurveyFields {
  name: string
  tier: Tier
  /** Power of one piece while it runs. [W] */
  w?: number | undefined
  pieces: number
  /** Wall-clock spans in which it runs: `06:30-08:00`. */
  at?: string[] | undefined
  /** Weekdays on which it runs; all when absent. */
  days?: Weekday[] | undefined
  /** A meter file beside the house file, in place of `w`. */
  file?: string | undefined
  /** Header of the column to read in it, where several could be meant. */
  column?: string | undefined
  /** Zone of its stamps where they name none: an IANA name, or `UTC+1`; the site's when absent. */
  zone?: string | undefined
  /** Scales recorded days to the season of the day they stand for; they stay as they are when absent. */
  seasonal?: 'H0' | undefined
  /** Arrays that did not stand yet when the file was recorded. */
  beforeArrays?: string[] | undefined
  /** A standard profile, in place of `w` where there is no meter file. */
  profile?: { kind: ProfileKind; kwhPerYear: number } | undefined
  /** Names of loads that the metered or standard figure already holds; they are taken out of it. */
  contains?: string[] | undefined
  /** The longest gap that does no harm, where none of the four below tells it. [min] */
  toleratesMinutes: number
  holdOver?: HoldOver | undefined
  overheats?: Overheats | undefined
  buffer?: Buffer | undefined
  hotWater?: HotWater | undefined
  /** True power over apparent power while it runs. 0..1 */
  powerFactor: number
  /** Apparent power at the start over that while running. */
  startingMultiple: number
  /** Rating on a motor's plate; with its letter it goes before `startingMultiple`. [hp] */
  motorHp?: number | undefined
  /** Letter of the locked rotor on a motor's plate. */
  lockedRotorCode?: string | undefined
  /** The island's phase when absent. */
  phase?: PhaseOrThree | undefined
  /** Comfort loads with a lower number go off first. */
  dropOrder: number
}

export const WEEKDAYS = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'] as const
export type Weekday = (typeof WEEKDAYS)[number]

/** Household profiles of BDEW: of 1999, and of 2025. */
export const PROFILE_KINDS = ['H0', 'H25'] as const
export type ProfileKind = (typeof PROFILE_KINDS)[number]

export interface Comfort {
  /** Share of usable capacity below which comfort loads go off. */
  dropBelow: number
  /** Share at which they return. */
  returnAt: number
}

export interface GeneratorInput {
  ratedKw: number
  tankL: number
  /** Litres kept in cans, poured in by whoever tends the set. [l] */
  cansL: number
  /** As a data sheet gives it. [l/h] */
  litresPerHour: { none: number; half: number; full: number }
  start: 'automatic' | 'by hand'
  /** The most it gives in the second of a motor's start; 1.5 x rated when absent. [kVA] */
  startingKva?: number | undefined
  /** Share of rating that load and charge together may take. */
  mostShare: number
  /** Share of rating below which an engine should not run for long. */
  leastShare: number
  /** Share of starts that fail; the set is then out of order until the grid is back. */
  startFailsShare: number
  /** Mean running hours between failures; none is lived when absent. [h] */
  hoursBetweenFailures?: number | undefined
  /** From the call to power. [s] */
  readySeconds: number
  leastRunMinutes: number
  /** Share of usable capacity at which it is wanted, and at which it stops. */
  startAt: number
  stopAt: number
}

export interface Person {
  /** From the call to the deed. [min] */
  minutes: number
  /** Wall clock; outside these hours nobody comes. */
  from: string
  to: string
}

/** In the money of the house; what is left out is not known. */
export interface Prices {
  /** Of a kilowatt of peak power more, fitted. */
  arrayPerKw?: number | undefined
  /** Of a small generator started by hand. */
  generator?: number | undefined
}

export interface House {
  house: string
  /** Set where the house is an invention. */
  invented?: boolean | undefined
  /** Gives dates and weekdays. */
  year: number
  seed: number
  site: Site
  sky: SkyInput
  arrays: ArrayInput[]
  gateway: Gateway
  inverter: GridFormingInverter
  stack: StackInput
  comfort: Comfort
  /** Months in which the heating runs, 1..12. */
  heatingMonths: number[]
  /** Public holidays, `MM-DD` for every year or `YYYY-MM-DD`; they count as Sundays. */
  holidays: string[]
  loads: LoadInput[]
  generator?: GeneratorInput | undefined
  person?: Person | undefined
  prices?: Prices | undefined
}
