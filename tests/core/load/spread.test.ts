// Minutes drawn within recorded intervals, against minutes that a meter recorded.
//
// Two weeks of a real house metered every minute are averaged to 15, 30 and 60 minutes, spread
// again, and compared with the record. Powers, lengths and bounds are common practice and were
// written down before the comparison; no number was changed after it. One rule was: what runs on
// was first what the hour before and the hour after draw at least. That passed too, but cut what
// runs for half an hour into pieces and scattered a seventh too much from quarter hours; it is now
// the two neighbours.
//
// How flat compares, as measured: it scatters 5 to 21 % too little and loses 10 to 50 % of the
// week's peak; drawn minutes scatter 4 to 8 % too much and peak 8 to 26 % too high. Recorded
// minutes over 6 kW are 0.63 % of the first week and 0.06 % of the second; flat ones 0 to 0.45 and
// 0, drawn ones 0.9 and 0.2 to 0.3: on the cautious side.
//
// Truth: G. Hebrail and A. Berard, Individual Household Electric Power Consumption, UCI Machine
// Learning Repository, data set 235, CC BY 4.0.

import { readFileSync } from 'node:fs'
import { calendarOf, checkHouse, demandOf, type MeterRecord } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

const UTC_2008 = calendarOf(2008, 'UTC')
const SEEDS = [1, 2, 3, 4, 5, 6, 7, 8]
const STEPS = [15, 30, 60] as const
const WEEKS = ['2008-01-14', '2008-06-16'] as const
const WEEK_MINUTES = 7 * 1440

function recorded(week: string): Float64Array {
  const url = new URL(`../../../data-samples/household-${week}-week-1min.csv`, import.meta.url)
  const rows = readFileSync(url, 'utf8').trim().split(/\r?\n/).slice(1)
  return Float64Array.from(rows, (row) => Number(row.split(',')[1]))
}

function meansOf(kw: Float64Array, step: number): Float64Array {
  return Float64Array.from({ length: kw.length / step }, (_, k) => {
    let sum = 0
    for (let i = k * step; i < (k + 1) * step; i++) sum += kw[i]!
    return sum / step
  })
}

/** The record as the house lives it, from the minute in which the record begins. */
function lived(means: Float64Array, startMs: number, step: number, seed = 1): Float64Array {
  const record: MeterRecord = { name: 'm.csv', startMs, stepMinutes: step, kw: means, notes: [] }
  const loads = [{ name: 'whole', tier: 'critical', file: 'm.csv' }]
  const house = checkHouse(plainHouse({ year: 2008, seed, loads }))
  const { kw } = demandOf(house, UTC_2008, { meters: new Map([['m.csv', record]]) }).critical[0]!
  const from = (startMs - UTC_2008.startMs) / 60_000
  return kw.slice(from, from + means.length * step)
}

/** What an inverter feels of a week: its scatter and peak [kW], share of minutes over a power. */
interface Felt {
  readonly deviation: number
  readonly peak: number
  readonly over: readonly number[]
}

const LIMITS_KW = [2, 3, 4, 6]

function felt(kw: Float64Array): Felt {
  const mean = kw.reduce((sum, value) => sum + value, 0) / kw.length
  const square = kw.reduce((sum, value) => sum + (value - mean) ** 2, 0) / kw.length
  return {
    deviation: Math.sqrt(square),
    peak: Math.max(...kw),
    over: LIMITS_KW.map((limit) => kw.filter((value) => value > limit).length / kw.length),
  }
}

function average(all: readonly Felt[]): Felt {
  const of = (value: (each: Felt) => number): number =>
    all.reduce((sum, each) => sum + value(each), 0) / all.length
  return {
    deviation: of(({ deviation }) => deviation),
    peak: of(({ peak }) => peak),
    over: LIMITS_KW.map((_, i) => of(({ over }) => over[i]!)),
  }
}

describe.each(WEEKS)('the week from %s', (week) => {
  const truth = recorded(week)
  const startMs = Date.parse(`${week}T00:00Z`)

  describe.each(STEPS)('from steps of %d min', (step) => {
    const means = meansOf(truth, step)
    const drawn = SEEDS.map((seed) => lived(means, startMs, step, seed))
    const found = average(drawn.map(felt))
    const flat = felt(Float64Array.from(truth, (_, i) => means[Math.floor(i / step)]!))
    const real = felt(truth)

    it('keeps the energy of every interval to half a step of the series grid', () => {
      expect(truth).toHaveLength(WEEK_MINUTES)
      for (const kw of drawn) {
        for (const [k, mean] of meansOf(kw, step).entries()) {
          expect(Math.abs(mean - means[k]!)).toBeLessThanOrEqual(0.5 / 1048576 + 1e-12)
        }
      }
    })

    // Powers of single appliances are known to a third or so, of which the scatter takes its
    // square root and shares it with what is known: a fifth.
    it('scatters as the record does, to a fifth, and nearer to it than held flat', () => {
      const miss = ({ deviation }: Felt): number => Math.abs(deviation / real.deviation - 1)
      expect(miss(found)).toBeLessThan(0.2)
      expect(miss(found)).toBeLessThan(miss(flat))
    })

    // The peak of a week is two or three appliances that chance to meet: one kettle more or less
    // of eight kilowatts is a third.
    it('peaks as the record does, to a quarter below and a third above', () => {
      expect(found.peak / real.peak).toBeGreaterThan(0.75)
      expect(found.peak / real.peak).toBeLessThan(1.35)
    })

    // What an inverter of that rating would be asked for: the order of magnitude counts, so half
    // to twice; where it is rare, within a hundredth of the week.
    it.each(LIMITS_KW)('is over %d kW about as long as the record is', (limit) => {
      const [is, was] = [found, real].map(({ over }) => over[LIMITS_KW.indexOf(limit)]!) as [
        number,
        number,
      ]
      const near = is >= was / 2 && is <= was * 2
      expect(near || Math.abs(is - was) <= 0.01).toBe(true)
    })
  })
})

describe('the year in quarter hours', () => {
  // Source: data-samples/README.md: 2008 reaches 10.348 kW by the minute, 8.383 by the quarter hour.
  it('peaks as its minutes do, within the bounds of the weeks', () => {
    const url = new URL('../../../data-samples/household-2008-15min.csv', import.meta.url)
    const rows = readFileSync(url, 'utf8').trim().split('\n').slice(1)
    const means = Float64Array.from(rows, (row) => Number(row.split(',')[1]))
    expect(Math.max(...means)).toBe(8.383)
    const peaks = [1, 2, 3].map((seed) =>
      lived(means, UTC_2008.startMs, 15, seed).reduce((most, kw) => Math.max(most, kw)),
    )
    const peak = peaks.reduce((sum, each) => sum + each) / peaks.length
    expect(peak / 10.348).toBeGreaterThan(0.75)
    expect(peak / 10.348).toBeLessThan(1.35)
  })
})

describe('the luck of an interval', () => {
  const startMs = Date.parse('2008-03-03T00:00Z')
  const means = Float64Array.from({ length: 7 * 48 }, (_, k) => ((k * 7919) % 2003) / 700)
  const week = lived(means, startMs, 30)

  it('is its own: a record that begins two days later has the same minutes', () => {
    const later = lived(means.slice(2 * 48), startMs + 2 * 86_400_000, 30)
    // What runs on is known from the neighbours, and the first and last interval have others now.
    expect(later.slice(30, -30)).toEqual(week.slice(2 * 1440 + 30, -30))
  })

  it('depends on the seed of the house and the name of the load', () => {
    expect(lived(means, startMs, 30)).toEqual(week)
    expect(lived(means, startMs, 30, 2)).not.toEqual(week)
    const loads = ['left', 'right'].map((name) => ({ name, tier: 'critical', file: 'm.csv' }))
    const record: MeterRecord = { name: 'm.csv', startMs, stepMinutes: 30, kw: means, notes: [] }
    const house = checkHouse(plainHouse({ year: 2008, loads }))
    const [left, right] = demandOf(house, UTC_2008, {
      meters: new Map([['m.csv', record]]),
    }).critical
    expect(left!.kw).not.toEqual(right!.kw)
  })

  it('leaves a steady load steady, and takes a lonely half-hour of 1.5 kWh for appliances', () => {
    const steady = lived(new Float64Array(7 * 48).fill(1), startMs, 30)
    expect(new Set(steady)).toEqual(new Set([1]))
    const lonely = new Float64Array(7 * 48).fill(0.2)
    lonely[60] = 3
    const kw = lived(lonely, startMs, 30).subarray(1800, 1830)
    expect(Math.max(...kw)).toBeGreaterThan(3.5)
    expect(kw.filter((value) => value < 2.5).length).toBeGreaterThan(2)
  })
})
