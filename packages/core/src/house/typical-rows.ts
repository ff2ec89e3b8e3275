// The table of typical loads: what a survey writes down where nobody has read the plate.
//
// Each row is a load without its name, as a person could write it, and what it rests on. The plate
// and the customer always win. "Lists" are appliance powers as suppliers and makers publish them;
// "cp" is common practice, no source; "memory" was not looked up. Starts of motors: 5 to 8 times
// the rated current is printed for those on the mains (NEMA MG 1 practice); the rest is cp.
// The page of all rows is in this package's README, kept in step by a test.

import type { LoadInput } from './house.js'

/** A load as the table has it. */
export interface TypicalRow {
  readonly load: Partial<Omit<LoadInput, 'name' | 'like' | 'taken'>> & Pick<LoadInput, 'tier'>
  readonly source: string
}

const CP = 'common practice, no source'
const OFF_4H = '4 h: USDA, FDA, CDC'
const SPARE = `power: appliance lists; rest ${CP}`

const FRIDGE = { hours: 4, keeps: 'food' } as const
const HEATING_DAYS = { below: 15.5 }
const MEALS = ['06:30-09:00', '12:00-13:30', '17:00-19:30']
const WAKING = ['06:30-22:30']
const WASHING = ['08:00-20:00']
const SHOWERS = ['06:30-08:30', '20:00-22:30']

/** Rows by kind, in the order of a walk through the house. */
export const TYPICAL_ROWS = {
  fridge: {
    load: {
      ...{ tier: 'critical', w: 100, cycle: { onMinutes: 12, offMinutes: 36 } },
      ...{ powerFactor: 0.7, startingMultiple: 6, holdOver: FRIDGE },
    },
    source: `power: appliance lists, 100-120 W; ${OFF_4H}; rest ${CP}`,
  },
  'larder fridge': {
    load: {
      ...{ tier: 'critical', w: 110, cycle: { onMinutes: 10, offMinutes: 40 } },
      ...{ powerFactor: 0.7, startingMultiple: 6, holdOver: FRIDGE },
    },
    source: `power: appliance lists, 100-120 W; ${OFF_4H}; rest ${CP}`,
  },
  'fridge-freezer': {
    load: {
      ...{ tier: 'critical', w: 125, cycle: { onMinutes: 14, offMinutes: 31 } },
      ...{ powerFactor: 0.7, startingMultiple: 6, holdOver: FRIDGE },
    },
    source: `power: appliance lists, 100-150 W; mean 38.5 W: Ofgem, 1 kWh in 26 h; ${OFF_4H}; rest ${CP}`,
  },
  freezer: {
    load: {
      ...{ tier: 'critical', w: 160, cycle: { onMinutes: 15, offMinutes: 45 } },
      ...{ powerFactor: 0.7, startingMultiple: 6, holdOver: { hours: 24, keeps: 'frozen' } },
    },
    source: `power: appliance lists, 150-200 W; 24 h half full: USDA, FDA, CDC; rest ${CP}`,
  },
  'medicine fridge': {
    load: {
      ...{ tier: 'critical', w: 90, cycle: { onMinutes: 14, offMinutes: 31 } },
      ...{ powerFactor: 0.7, startingMultiple: 6, holdOver: { hours: 1, keeps: 'medicine' } },
    },
    source: `${CP}; what it may be off is for maker and pharmacist to say`,
  },
  'oxygen concentrator': {
    load: { tier: 'critical', w: 350, powerFactor: 0.8, startingMultiple: 3, toleratesMinutes: 0 },
    source: CP,
  },
  'breathing aid': {
    load: { tier: 'critical', w: 60, at: ['22:00-07:30'], powerFactor: 0.6, toleratesMinutes: 0 },
    source: CP,
  },
  'hoist or bed': {
    load: {
      ...{ tier: 'critical', w: 200, events: { perDay: 8, minutes: 1, at: WAKING } },
      ...{ powerFactor: 0.7, startingMultiple: 3, toleratesMinutes: 60 },
    },
    source: CP,
  },
  stairlift: {
    load: { tier: 'critical', w: 25, powerFactor: 0.6, toleratesMinutes: 240 },
    source: `${CP}; its charger, the lift runs on a battery`,
  },
  'boiler electronics and fan': {
    load: { tier: 'critical', w: 100, runs: HEATING_DAYS, powerFactor: 0.8, toleratesMinutes: 120 },
    source: `power: 30-120 W, memory; 15.5 °C: base of British degree days; rest ${CP}`,
  },
  'heating pump': {
    load: {
      ...{ tier: 'critical', w: 40, runs: HEATING_DAYS },
      ...{ powerFactor: 0.6, startingMultiple: 1.2, toleratesMinutes: 120 },
    },
    source: `modern, power 5-45 W, memory; 15.5 °C: base of British degree days; rest ${CP}`,
  },
  'old heating pump': {
    load: {
      ...{ tier: 'critical', w: 90, runs: HEATING_DAYS },
      ...{ powerFactor: 0.8, startingMultiple: 4, toleratesMinutes: 120 },
    },
    source: `power 60-100 W, memory; 15.5 °C: base of British degree days; rest ${CP}`,
  },
  'solid-fuel boiler pump': {
    load: {
      ...{ tier: 'critical', w: 90, runs: 'heating season' },
      ...{ powerFactor: 0.8, startingMultiple: 4 },
      overheats: { waterL: 20, heatKw: 15, fromC: 60 },
    },
    source: `power 60-100 W, memory; gap: 20 l from 60 to 95 °C at 15 kW, m c dT / P; rest ${CP}`,
  },
  'pellet boiler': {
    load: {
      ...{ tier: 'critical', w: 120, runs: HEATING_DAYS },
      ...{ powerFactor: 0.8, startingMultiple: 3, toleratesMinutes: 3 },
    },
    source: `fan and feed, its igniter is a row of its own; ${CP}`,
  },
  'pellet igniter': {
    load: {
      ...{ tier: 'critical', w: 400, runs: HEATING_DAYS, events: { perDay: 6, minutes: 8 } },
      ...{ powerFactor: 1, toleratesMinutes: 60 },
    },
    source: CP,
  },
  'borehole pump': {
    load: {
      ...{ tier: 'critical', w: 750, events: { perDay: 12, minutes: 6, at: WAKING } },
      ...{ powerFactor: 0.75, startingMultiple: 6, toleratesMinutes: 120 },
    },
    source: CP,
  },
  'pressure set': {
    load: {
      ...{ tier: 'critical', w: 600, events: { perDay: 30, minutes: 2, at: WAKING } },
      ...{ powerFactor: 0.75, startingMultiple: 5, toleratesMinutes: 60 },
    },
    source: CP,
  },
  'sump pump': {
    load: {
      ...{ tier: 'critical', w: 400, events: { perDay: 24, minutes: 3 } },
      ...{ powerFactor: 0.7, startingMultiple: 5, toleratesMinutes: 30 },
    },
    source: `${CP}; of a wet week, count it on site`,
  },
  'sewage pump': {
    load: {
      ...{ tier: 'critical', w: 600, events: { perDay: 8, minutes: 4 } },
      ...{ powerFactor: 0.7, startingMultiple: 5, toleratesMinutes: 240 },
    },
    source: CP,
  },
  router: {
    load: { tier: 'critical', w: 10, powerFactor: 0.5, toleratesMinutes: 0 },
    source: `power: appliance lists, 7-10 W; rest ${CP}`,
  },
  'phone base': {
    load: { tier: 'critical', w: 5, powerFactor: 0.5, toleratesMinutes: 0 },
    source: CP,
  },
  alarm: {
    load: { tier: 'critical', w: 12, powerFactor: 0.5, toleratesMinutes: 0 },
    source: CP,
  },
  lights: {
    load: { tier: 'comfort', w: 60, at: ['06:30-08:30', '16:00-23:00'], powerFactor: 0.9 },
    source: `${CP}; LED, the rooms in use`,
  },
  television: {
    load: { tier: 'comfort', w: 110, at: ['18:00-22:30'], powerFactor: 0.9 },
    source: CP,
  },
  laptop: {
    load: { tier: 'comfort', w: 60, at: ['09:00-12:00', '19:00-21:00'], powerFactor: 0.6 },
    source: CP,
  },
  'desktop computer': {
    load: { tier: 'comfort', w: 150, at: ['09:00-12:00', '19:00-21:00'], powerFactor: 0.9 },
    source: CP,
  },
  'house fans': {
    load: { tier: 'comfort', w: 40, powerFactor: 0.6, startingMultiple: 1.2 },
    source: CP,
  },
  'fish tank': {
    load: { tier: 'comfort', w: 120, cycle: { onMinutes: 15, offMinutes: 30 }, powerFactor: 0.95 },
    source: `${CP}; heater, light and pump as one`,
  },
  'garage door': {
    load: {
      ...{ tier: 'comfort', w: 400, events: { perDay: 4, minutes: 1, at: WAKING } },
      ...{ powerFactor: 0.7, startingMultiple: 4 },
    },
    source: CP,
  },
  'shower pump': {
    load: {
      ...{ tier: 'comfort', w: 600, events: { perDay: 2, minutes: 8, at: SHOWERS } },
      ...{ powerFactor: 0.75, startingMultiple: 5 },
    },
    source: CP,
  },
  kettle: {
    load: {
      ...{ tier: 'comfort', w: 3000, powerFactor: 1 },
      ...{ events: { perDay: 6, minutes: 3, at: WAKING } },
    },
    source: `power: appliance lists, 2200-3000 W; rest ${CP}`,
  },
  microwave: {
    load: {
      ...{ tier: 'comfort', w: 1300, powerFactor: 0.9, startingMultiple: 2 },
      ...{ events: { perDay: 2, minutes: 4, at: MEALS } },
    },
    source: CP,
  },
  toaster: {
    load: {
      ...{ tier: 'comfort', w: 1000, powerFactor: 1 },
      ...{ events: { perDay: 1, minutes: 3, at: ['06:30-09:00'] } },
    },
    source: CP,
  },
  hob: {
    load: {
      ...{ tier: 'gridOnly', w: 3500, powerFactor: 1 },
      ...{ events: { perDay: 1.5, minutes: 25, at: MEALS } },
    },
    source: CP,
  },
  oven: {
    load: {
      ...{ tier: 'gridOnly', w: 2200, powerFactor: 1 },
      ...{ events: { perDay: 0.6, minutes: 45, at: ['11:00-13:00', '17:00-19:00'] } },
    },
    source: CP,
  },
  cooker: {
    load: {
      ...{ tier: 'gridOnly', w: 5000, powerFactor: 1 },
      ...{ events: { perDay: 1.5, minutes: 30, at: MEALS } },
    },
    source: `${CP}; hob and oven as one`,
  },
  'washing machine': {
    load: {
      ...{ tier: 'gridOnly', w: 2100, powerFactor: 0.95, startingMultiple: 1.5 },
      ...{ events: { perDay: 0.7, minutes: 25, at: WASHING } },
    },
    source: `${CP}; the minutes in which it heats`,
  },
  dishwasher: {
    load: {
      ...{ tier: 'gridOnly', w: 2000, powerFactor: 0.95, startingMultiple: 1.5 },
      ...{ events: { perDay: 0.7, minutes: 30, at: ['13:00-14:30', '19:00-21:00'] } },
    },
    source: `${CP}; the minutes in which it heats`,
  },
  'tumble dryer': {
    load: {
      ...{ tier: 'gridOnly', w: 2500, powerFactor: 0.95, startingMultiple: 1.5 },
      ...{ events: { perDay: 0.5, minutes: 60, at: WASHING } },
    },
    source: CP,
  },
  'electric shower': {
    load: {
      ...{ tier: 'gridOnly', w: 8500, powerFactor: 1 },
      ...{ events: { perDay: 2, minutes: 8, at: SHOWERS } },
    },
    source: CP,
  },
  'immersion heater': {
    load: {
      ...{ tier: 'gridOnly', w: 3000, powerFactor: 1 },
      ...{ events: { perDay: 1, minutes: 90, at: ['04:00-06:00'] } },
    },
    source: SPARE,
  },
  'heat pump': {
    load: {
      ...{ tier: 'gridOnly', powerFactor: 0.95, startingMultiple: 1.2, runs: 'heating season' },
      byAir: [
        [-10, 2200],
        [0, 1100],
        [7, 600],
        [15, 0],
      ],
    },
    source: `${CP}; a small house, driven by an inverter`,
  },
  'car charger': {
    load: {
      ...{ tier: 'gridOnly', w: 7400, powerFactor: 1 },
      ...{ charging: { kwhPerDay: 7 }, at: ['00:30-04:30'] },
    },
    source: `${CP}; 32 A, some 40 km a day`,
  },
} as const satisfies Record<string, DeepReadonly<TypicalRow>>

/** Rows are constants. */
type DeepReadonly<T> = { readonly [K in keyof T]: T[K] extends object ? DeepReadonly<T[K]> : T[K] }

/** A kind of load in the table. */
export type TypicalKind = keyof typeof TYPICAL_ROWS

export const TYPICAL_KINDS = Object.keys(TYPICAL_ROWS) as [TypicalKind, ...TypicalKind[]]
