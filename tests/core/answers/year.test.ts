// The worst of the year: the table, starts apart, the story of one, and what would cure it, by hand.

import {
  apartFromEachOther,
  calendarOf,
  checkHouse,
  type DayWorst,
  energyLedger,
  type MonthRides,
  monthRow,
  type Prepared,
  prepare,
  type SkyFigures,
  startStory,
  stepsFor,
  traceCut,
  typicalOf,
  worstOfDays,
  yearFrom,
  yearMonth,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const SAMPLES = new URL('../../../data-samples/', import.meta.url).pathname

/** Start s of 1 January rides s minutes; those from 15 to 16 h count as windy. */
const BY_HAND = {
  horizon: 1440,
  batches: [
    {
      year: 0,
      from: 0,
      rides: { minutes: Int32Array.from({ length: 1440 }, (_, s) => s) },
      windy: Uint8Array.from({ length: 1440 }, (_, s) => (s >= 900 && s < 960 ? 1 : 0)),
    },
  ],
} as unknown as MonthRides

describe('a month by the hour', () => {
  const prepared = { calendar: UTC_2025 } as Prepared
  const row = (worstHours: number | null) =>
    monthRow(prepared, BY_HAND, { worstHours } as SkyFigures, { month: 1, hours: 16 })

  it('tells each hour of the clock for itself', () => {
    const { byHour } = row(0)
    expect(byHour.map(({ hours }) => hours[0])).toEqual(Array.from({ length: 24 }, (_, h) => h))
    // 16 hours are 960 minutes: no start before 16 h lasts so long, every later one does.
    expect(byHour.map(({ share }) => share)).toEqual([
      ...new Array(16).fill(0),
      ...new Array(8).fill(1),
    ])
    // Rides of 1020 to 1079 minutes: 0.05 x 59 = 2.95, 0.5 x 59 = 29.5, the lower rank of each.
    expect(byHour[17]).toEqual({
      ...{ hours: [17, 18], starts: 60, share: 1, shareByPattern: { any: 1, windy: null } },
      ...{ worstHours: 1020 / 60, p05Hours: 1022 / 60, medianHours: 1049 / 60 },
    })
  })

  it('takes the lesser of all starts and those of windy days', () => {
    const { byThreeHours } = row(0)
    expect(byThreeHours).toHaveLength(8)
    // 15 to 18 h: 120 of 180 last, none of the windy hour from 15 to 16.
    expect(byThreeHours[5]).toMatchObject({
      ...{ hours: [15, 18], starts: 180, share: 0 },
      shareByPattern: { any: 120 / 180, windy: 0 },
    })
  })

  it('says no worst where none may be said', () => {
    expect(row(null).byHour.map(({ worstHours }) => worstHours)).toEqual(new Array(24).fill(null))
  })

  it('keeps to the clock on the wall where an hour is left out', () => {
    const london = calendarOf(2025, 'Europe/London')
    const from = london.days.find(({ month, day }) => month === 3 && day === 30)!.start
    const batches = BY_HAND.batches.map((batch) => ({ ...batch, from }))
    const spring = monthRow(
      { calendar: london } as Prepared,
      { ...BY_HAND, batches },
      { worstHours: 0 } as SkyFigures,
      { month: 3, hours: 16 },
    )
    // 1440 starts from midnight of a day of 1380: its hour from 1 to 2 h is not there, and the
    // first of the next day is counted with its own.
    expect(spring.byHour.map(({ starts }) => starts)).toEqual([120, 0, ...new Array(22).fill(60)])
  })
})

describe('worst starts apart from each other', () => {
  it('are the shortest of each day that does not last the cut, the earliest of equals', () => {
    expect(worstOfDays(UTC_2025, BY_HAND, 960)).toEqual([
      { year: 0, day: 0, minute: 0, rideMinutes: 0 },
    ])
    expect(worstOfDays(UTC_2025, BY_HAND, 0)).toEqual([])
  })

  const worst = (day: number, rideMinutes: number, year = 0): DayWorst => ({
    ...{ year, day, minute: day * 1440, rideMinutes },
  })
  const apart = (days: readonly DayWorst[], years: number, apartDays = 14): number[][] =>
    apartFromEachOther(days, UTC_2025, years, apartDays, 5).map(({ year, day }) => [year, day])

  it('take the shortest first and skip its neighbours', () => {
    const days = [worst(10, 200), worst(11, 190), worst(24, 210), worst(25, 220), worst(100, 300)]
    // 11 is the shortest; 10 and 24 are 1 and 13 days from it, 25 is 14.
    expect(apart(days, 1)).toEqual([
      [0, 11],
      [0, 25],
      [0, 100],
    ])
  })

  it('are at most five', () => {
    const days = Array.from({ length: 365 }, (_, d) => worst(d, 100))
    expect(apart(days, 1)).toEqual([0, 14, 28, 42, 56].map((day) => [0, day]))
  })

  it('hold the turn of the year for no gap; other numbered years are other weather', () => {
    expect(apart([worst(2, 100), worst(360, 110)], 1)).toEqual([[0, 2]])
    expect(apart([worst(2, 100, 0), worst(2, 110, 1)], 2)).toEqual([
      [0, 2],
      [1, 2],
    ])
    // Day 360 of year 0 is 7 days before day 2 of year 1.
    expect(apart([worst(2, 100, 1), worst(360, 110, 0)], 2)).toEqual([[1, 2]])
  })
})

// 5 kWh at 0.8 health in a room of 15 °C, which puts 0.04 of it out of reach; 390 W of load, 60 W of
// idle draw and electronics, no losses on the way. From the reserve of 0.5 less 0.05:
// (0.45 - 0.1 - 0.04) x 4 kWh / 0.45 kW = 165.3 min. Full: 0.86 x 4 / 0.45 = 458.7 min.
// A second module (10 W more): 0.31 x 8 / 0.46 = 323.5 min.
const PLAIN = {
  house: 'Small',
  site: { latitudeDeg: 58.2, longitudeDeg: -6.4, elevationM: 25, timezone: 'UTC' },
  sky: { clearness: new Array(12).fill(0.35), airC: new Array(12).fill(0) },
  arrays: [{ name: 'roof', peakKw: 2, tiltDeg: 35, azimuthDeg: 180, inverter: { ratedKw: 2 } }],
  inverter: { ratedKva: 3, idleW: 50, roundTrip: 1 },
  stack: {
    module: { usableKwh: 5, chargeKw: 2, dischargeKw: 3 },
    ...{ modules: 1, modulesMax: 2, place: 'house', electronicsW: 10, selfDischargePerMonth: 0 },
  },
  loads: [{ name: 'pump', tier: 'critical', w: 390 }],
}

describe('a year without sun', () => {
  const prepared = prepare(checkHouse(PLAIN))
  const answerOf = (hours: number) => {
    const question = { hours, sky: 'none' } as const
    const months = Array.from({ length: 12 }, (_, i) => yearMonth(prepared, question, i + 1))
    return yearFrom(prepared, question, months, { plain: PLAIN })
  }
  const answer = answerOf(3)
  const [worst] = answer.worst!

  it('is as hard in every month, and its worst starts are fourteen days apart', () => {
    expect(answer.hardestMonth).toBe(1)
    expect(answer.months.map(({ figures }) => figures.share)).toEqual(new Array(12).fill(0))
    expect(answer.worst!.map(({ start, rideMinutes }) => [start, rideMinutes])).toEqual(
      ['01-01', '01-15', '01-29', '02-12', '02-26'].map((day) => [`2025-${day}T00:00Z`, 166]),
    )
    expect(answer.spell).toEqual({ winters: 10, days: 1 })
  })

  it('tells where the energy went', () => {
    const hours = 166 / 60
    const { energy } = worst!
    expect(energy.startKwh).toBeCloseTo(1.8, 9)
    expect([energy.solarKwh, energy.generatorKwh, energy.comfortKwh]).toEqual([0, 0, 0])
    // Powers stand on the grid of the series, about a milliwatt apart.
    expect(energy.criticalKwh).toBeCloseTo(0.39 * hours, 5)
    expect(energy.standingKwh).toBeCloseTo(0.06 * hours, 5)
    expect(energy.conversionKwh).toBeCloseTo(0, 5)
    expect(energy.leftKwh).toBeCloseTo(1.8 - 0.45 * hours, 5)
    expect([worst!.endedBy, worst!.lostAt]).toEqual(['pump', '2025-01-01T02:46Z'])
  })

  it('lists the steps, the smallest first, and names the first that lasts', () => {
    // Nobody starts a set between midnight and 7 h, and twice no light is none.
    expect(worst!.tried.map(({ id, rideMinutes, lasts }) => [id, rideMinutes, lasts])).toEqual([
      ['full', 459, true],
      ['module', 324, true],
      ['array', 166, false],
      ['generator', 166, false],
    ])
    expect(worst!.cure).toBe('full')
  })

  it('has no worst start where every one lasts', () => {
    const easy = answerOf(2)
    expect(easy.worst).toEqual([])
    expect(easy.months.map(({ figures }) => figures.share)).toEqual(new Array(12).fill(1))
  })

  it('tells no worst from one year', () => {
    const question = { hours: 3, sky: 'typical', years: 1 } as const
    const months = Array.from({ length: 12 }, () => yearMonth(prepared, question, 1))
    const { worst, years } = yearFrom(prepared, question, months, { plain: PLAIN })
    expect([worst, years]).toEqual([null, 1])
  })
})

describe.each([
  ['croft', '2025-03-21T23:49Z', 20],
  ['croft', '2025-04-10T18:00Z', 40],
  ['surgery', '2025-08-29T00:30Z', 60],
])('where the energy of the %s went from %s', (name, start, hours) => {
  const { house, files } = loadHouse(`${SAMPLES}${name}.yaml`)
  const story = traceCut(prepare(house, files), { startMs: Date.parse(start), hours })

  it.each([0, 1, 300, hours * 60])('closes to the energy law after %i minutes', (minutes) => {
    const { startKwh, solarKwh, generatorKwh, ...out } = energyLedger(story, minutes)
    const gone = Object.values(out).reduce((sum, kwh) => sum + kwh, 0)
    expect(Math.abs(startKwh + solarKwh + generatorKwh - gone)).toBeLessThanOrEqual(1e-9 * minutes)
    for (const kwh of Object.values(out)) expect(kwh).toBeGreaterThanOrEqual(-1e-12)
  })
})

describe('what ended a ride', () => {
  it('is told where it was too much at once, and not where the charge ran low', () => {
    const pump = { name: 'pump', tier: 'critical', w: 390 }
    const shower = { name: 'shower', tier: 'comfort', w: 8500, at: ['10:00-10:10'] }
    const storyOf = (loads: object[]) => {
      const prepared = prepare(checkHouse(plainHouse({ loads })))
      const startMs = Date.UTC(2025, 0, 14, 9)
      const story = traceCut(prepared, { startMs, hours: 48, sky: 'none', startSoc: 0.5 })
      return startStory(prepared, story, typicalOf(prepared, 1, 1))
    }
    // An inverter of 5 kVA, from 9 to 10 o'clock.
    expect(storyOf([pump, shower])).toMatchObject({ rideMinutes: 60, tooMuch: ['shower', 'pump'] })
    expect(storyOf([pump]).tooMuch).toEqual([])
  })
})

describe('the steps of a house', () => {
  const stepsOf = (name: string) => {
    const { house, files, plain } = loadHouse(`${SAMPLES}${name}.yaml`)
    const prepared = prepare(house, files)
    return { prepared, steps: [...stepsFor(prepared, {}, { plain, files })] }
  }

  it('leave out what it has or cannot have', () => {
    const croft = stepsOf('croft')
    expect(croft.steps.map(({ id }) => id)).toEqual([
      ...['comfort off', 'full', 'full, comfort off', 'person at any hour', 'fuel', 'module'],
      ...['array', 'start by itself'],
    ])
    expect(stepsOf('surgery').steps.map(({ id }) => id)).toEqual([
      ...['comfort off', 'full', 'full, comfort off', 'module', 'array', 'generator'],
    ])
    const { house, plain } = loadHouse(`${SAMPLES}croft.yaml`)
    const most = { modules: 5, startSoc: 'full' } as const
    const ids = [...stepsFor(prepare(house), most, { plain })].map(({ id }) => id)
    expect(ids).toEqual([
      ...['comfort off', 'person at any hour', 'fuel', 'array', 'start by itself'],
    ])
  })

  it('change one thing alone: a metered load is what it was beside new arrays', () => {
    const { prepared, steps } = stepsOf('bungalow')
    const array = steps.find(({ id }) => id === 'array')!.prepared
    expect(array.arrays.map(({ peakKw }) => peakKw)).toEqual([
      ...prepared.arrays.map(({ peakKw }) => peakKw),
      ...prepared.arrays.map(({ peakKw }) => peakKw),
    ])
    expect(array.demand.comfortKw).toEqual(prepared.demand.comfortKw)
    const off = steps.find(({ id }) => id === 'comfort off')!.prepared
    expect(off.demand.comfortKw).toEqual([])
    expect(off.demand.criticalKw).toEqual(prepared.demand.criticalKw)
  })
})
