// Loads that follow the air; powers and days by hand from flat months and straight lines.

import { checkHouse, type Prepared, prepare } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { hourlyKw, onShares, powerAt } from '../../../packages/core/src/load/by-air.js'
import { faultsOf, plainHouse } from '../plain-house.js'

const CURVE: [number, number][] = [
  [-10, 2600],
  [0, 1800],
  [7, 1200],
  [15, 0],
]

function prepared(line: object, airC: number | number[], more = {}): Prepared {
  const loads = [{ name: 'it', tier: 'critical', ...line }]
  const months = Array.isArray(airC) ? airC : new Array(12).fill(airC)
  const sky = { clearness: new Array(12).fill(0.4), airC: months, ...more }
  return prepare(checkHouse(plainHouse({ loads, sky })))
}

const column = (p: Prepared): Float64Array => p.demand.critical[0]!.kw
const kwhOf = (kw: Float64Array): number => kw.reduce((sum, value) => sum + value / 60, 0)

describe('a curve of air and power', () => {
  // By hand: half way from -10 to 0 half way from 2600 to 1800; from 7 to 15 150 W a kelvin.
  it.each([
    [-30, 2600],
    [-10, 2600],
    [-5, 2200],
    [0, 1800],
    [9, 900],
    [15, 0],
    [30, 0],
  ])('at %d °C gives %d W', (airC, w) => {
    expect(powerAt(CURVE, airC)).toBeCloseTo(w, 9)
  })

  it('is met at the mean air of the month less the margin, with 2 K of swing each way', () => {
    const p = prepared({ byAir: CURVE }, 5, { airMarginK: 3 })
    const kw = column(p)
    // 5 - 3 = 2 °C: the warmest hour 14:30-15:30 has +2, the coldest -2, by the hour of the clock:
    // cos of half an hour either side of 15 h.
    const near = Math.cos((2 * Math.PI * 0.5) / 24)
    const warm = 1800 - (600 / 7) * (2 + 2 * near)
    expect(kw[14 * 60]! * 1000).toBeCloseTo(warm, 2)
    const cold = 1800 - (600 / 7) * (2 - 2 * near)
    expect(kw[2 * 60]! * 1000).toBeCloseTo(cold, 2)
    // The swing is over by midnight: the mean of the day is that of 2 °C, from 0 to 4 one line.
    expect((kwhOf(kw) / 8760) * 1000).toBeCloseTo(1800 - (600 / 7) * 2, 2)
  })

  it('a margin of none takes less, a curve for cooling takes it on the warm side', () => {
    const none = prepared({ byAir: CURVE }, 5, { airMarginK: 0 })
    expect((kwhOf(column(none)) / 8760) * 1000).toBeCloseTo(1800 - (600 / 7) * 5, 2)
    const cooler = prepared(
      {
        byAir: [
          [20, 0],
          [35, 1500],
        ],
      },
      25,
      { airMarginK: 3 },
    )
    expect((kwhOf(column(cooler)) / 8760) * 1000).toBeCloseTo(800, 2)
  })

  it('follows the months, the same whatever the sky, and says so', () => {
    const airC = [0, 0, 5, 8, 12, 16, 18, 18, 15, 10, 5, 1]
    const p = prepared({ byAir: CURVE }, airC)
    const noon = (day: number): number => column(p)[day * 1440 + 720]!
    expect(noon(14)).toBeGreaterThan(noon(100))
    expect(noon(195)).toBe(0)
    expect(p.notes).toContain(
      'it: power by the mean air of the season, taken 3 K to its cautious side and alike in every ' +
        'sky and year; a colder spell draws more.',
    )
  })

  it('starts once when it begins, not at every hour that is colder', () => {
    const at = ['06:00-12:00']
    const p = prepared({ byAir: CURVE, at, startingMultiple: 3, powerFactor: 1 }, 5)
    const [peak, running] = [p.demand.peakKva[0]!, p.demand.runningKva[0]!]
    const starts = Array.from({ length: 1440 }, (_, i) => i).filter((i) => peak[i]! > running[i]!)
    expect(starts).toEqual([360])
    // Its size is the top of the curve: 2.6 kVA running, twice as much on top.
    expect(peak[360]! - running[360]!).toBeCloseTo(5.2, 9)
    expect(p.demand.formingKva[0]!.every((kva) => kva >= 0)).toBe(true)
  })
})

describe('a load of cold days', () => {
  const line = { w: 60, runs: { below: 15.5 } }

  it('runs in the heating season on days below its limit: 212 days of 10 °C, none of 19', () => {
    expect(kwhOf(column(prepared(line, 10)))).toBeCloseTo((212 * 24 * 60) / 1000, 2)
    expect(kwhOf(column(prepared(line, 19)))).toBe(0)
    // 17 °C less the margin of 3 is below 15.5; without a margin it is not.
    expect(kwhOf(column(prepared(line, 17)))).toBeGreaterThan(300)
    expect(kwhOf(column(prepared(line, 17, { airMarginK: 0 })))).toBe(0)
  })

  it('has whole days, and the days between two months by a straight line', () => {
    // October 20 °C in its middle, November 10 °C: from 288.5 to 319 days the line falls 10 K;
    // 15.5 + 3 = 18.5 °C is passed 0.15 of 30.5 days behind 288.5, at 293.1: day 294 is the first
    // whose middle (293.5) lies behind.
    const airC = [5, 5, 5, 10, 15, 20, 20, 20, 20, 20, 10, 5]
    const kw = column(prepared(line, airC))
    const first = kw.findIndex((value, i) => i > 200 * 1440 && value > 0)
    expect(first).toBe(293 * 1440)
  })
})

describe('a fridge whose on-time follows its room', () => {
  const cycle = { onMinutes: 15, offMinutes: 30, insideC: 5 }
  const dutyOf = (p: Prepared): number => kwhOf(column(p)) / 8760 / 0.09

  // Newton: 15 of 45 min at 20 °C, 15 K above inside; at 35 °C 30 K, twice as much; at 12.5 half.
  it.each([
    ['heated', 5, 1 / 3],
    ['heated', 32, 2 / 3],
    ['unheated', 32, 2 / 3],
    ['unheated', 9.5, 1 / 6],
    ['unheated', -5, 0],
    ['unheated', 50, 1],
  ] as const)('in a %s room with air of %d °C and 3 K is on for %d', (room, airC, share) => {
    const p = prepared({ w: 90, cycle: { ...cycle, room } }, airC)
    expect(onShares({ ...cycle, room }, { ...p, airC: p.demand.airC })[0]).toBeCloseTo(share, 9)
    // Whole minutes, their fraction carried over; the year has 11 680 cycles.
    expect(dutyOf(p)).toBeCloseTo(share, 4)
  })

  it('without a temperature inside keeps its times, whatever the air', () => {
    const [cold, hot] = [0, 40].map((airC) =>
      column(prepared({ w: 90, cycle: { onMinutes: 14, offMinutes: 31 } }, airC)),
    )
    expect(cold).toEqual(hot)
  })

  it('is a thermostat still: it comes back with the others after a time off', () => {
    const p = prepared({ w: 90, cycle: { ...cycle, room: 'unheated' } }, 9.5)
    const owed = p.demand.together!.criticalKw
    // On or owed, it is 90 W in every minute.
    for (let i = 0; i < 1440; i++) expect(owed[i]! + column(p)[i]!).toBeCloseTo(0.09, 5)
  })
})

describe('what is refused', () => {
  const faults = (line: object): string[] => faultsOf(() => prepared(line, 10))

  it('a curve that does not rise, one without power, a power beside it', () => {
    expect(
      faults({
        byAir: [
          [0, 100],
          [0, 50],
        ],
      }),
    ).toEqual(['loads[0].byAir: pairs rising in air temperature [°C]'])
    expect(
      faults({
        byAir: [
          [0, 0],
          [5, 0],
        ],
      }),
    ).toEqual(['loads[0].byAir: pairs with some power above 0 [W]'])
    expect(faults({ byAir: CURVE, w: 100 })).toEqual(['loads[0].w: left out beside byAir'])
    expect(faults({ byAir: [[0, 100]] })).toEqual(['loads[0].byAir: a list of at least 2'])
  })

  it('a room without an inside, a season that is none', () => {
    expect(faults({ w: 90, cycle: { onMinutes: 1, offMinutes: 1, room: 'heated' } })).toEqual([
      'loads[0].cycle.insideC: given beside room [°C]',
    ])
    expect(faults({ w: 90, runs: { under: 10 } })).toEqual([
      'loads[0].runs: always, heating season, or { below: a number -30..40 [°C] }',
    ])
  })
})

it('the curve is held by the hour', () => {
  const p = prepared({ byAir: CURVE }, 5)
  const hours = hourlyKw(CURVE, { ...p, airC: p.demand.airC })
  for (let i = 0; i < 2880; i++) expect(column(p)[i]).toBe(hours[Math.floor(i / 60)])
})
