// Kettles, cookers, pumps: so many a day at likely hours, counted by hand.

import { calendarOf, checkHouse, demandOf, monthRange } from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faultsOf, plainHouse, UTC_2025 } from '../plain-house.js'

const LONDON = calendarOf(2025, 'Europe/London')

interface Line {
  readonly name: string
  readonly [field: string]: unknown
}

function columns(lines: Line[], calendar = UTC_2025, house = {}): Float64Array[] {
  const loads = lines.map((line) => ({ tier: 'critical', w: 1000, ...line }))
  const demand = demandOf(checkHouse(plainHouse({ loads, ...house })), calendar)
  return demand.critical.map(({ kw }) => kw)
}

const column = (events: object, calendar = UTC_2025, house = {}): Float64Array =>
  columns([{ name: 'kettle', events }], calendar, house)[0]!

/** Lengths of the runs of minutes with power, and where each begins. */
function runs(kw: Float64Array): { at: number; length: number }[] {
  const found: { at: number; length: number }[] = []
  for (let i = 0; i < kw.length; i++) {
    if (!(kw[i]! > 0)) continue
    if (kw[i - 1]! > 0) found.at(-1)!.length++
    else found.push({ at: i, length: 1 })
  }
  return found
}

const minutesOn = (kw: Float64Array): number => kw.filter((value) => value > 0).length

const AT = ['06:30-09:00', '16:00-22:00']

describe('the number of a year', () => {
  // The fraction is carried over, so the count is within one of its mean: no bound of chance.
  it.each([
    [6, 3],
    [0.3, 45],
    [2.37, 4],
    [0.01, 10],
  ])('%d a day of %i minutes is the mean, to one', (perDay, minutes) => {
    const on = minutesOn(column({ perDay, minutes, at: AT }))
    expect(on % minutes).toBe(0)
    expect(Math.abs(on / minutes - 365 * perDay)).toBeLessThan(1)
  })

  it('of any house and mean holds, in any span of days, and none is cut', () => {
    const any = fc.record({
      perDay: fc.double({ min: 0.02, max: 20, noNaN: true }),
      minutes: fc.integer({ min: 1, max: 40 }),
      seed: fc.integer({ min: 0, max: 1e6 }),
      from: fc.integer({ min: 0, max: 300 }),
    })
    fc.assert(
      fc.property(any, ({ perDay, minutes, seed, from }) => {
        const kw = column({ perDay, minutes }, UTC_2025, { seed })
        const on = minutesOn(kw)
        expect(on % minutes).toBe(0)
        expect(Math.abs(on / minutes - 365 * perDay)).toBeLessThan(1)
        // 60 days anywhere: one more may run in from before and one out behind.
        const span = minutesOn(kw.subarray(from * 1440, (from + 60) * 1440)) / minutes
        expect(Math.abs(span - 60 * perDay)).toBeLessThan(3)
      }),
      { numRuns: 12 },
    )
  })

  it('on the days it runs: 1.5 on each of 104 Saturdays and Sundays', () => {
    const line = {
      name: 'oven',
      days: ['sat', 'sun'],
      events: { perDay: 1.5, minutes: 50, at: AT },
    }
    const [kw] = columns([line])
    expect(minutesOn(kw!)).toBeGreaterThanOrEqual(155 * 50)
    expect(minutesOn(kw!)).toBeLessThanOrEqual(157 * 50)
    for (const { at } of runs(kw!)) {
      expect([6, 7]).toContain(UTC_2025.days[UTC_2025.dayOf[at]!]!.weekday)
    }
  })
})

describe('one event', () => {
  it('begins within its hours by the clock on the wall, summer and winter', () => {
    const kw = column({ perDay: 5, minutes: 4, at: AT }, LONDON)
    const found = runs(kw)
    for (const { at } of found) {
      const wall = LONDON.wallMinute[at]!
      expect((wall >= 390 && wall < 540) || (wall >= 960 && wall < 1320)).toBe(true)
    }
    // It is there in every hour that it may begin in.
    expect(new Set(found.map(({ at }) => Math.floor(LONDON.wallMinute[at]! / 60))).size).toBe(9)
  })

  it('runs its length past its hours and over midnight, and none overlaps the next', () => {
    const kw = column({ perDay: 1, minutes: 60, at: ['23:30-24:00'] })
    const found = runs(kw)
    // 365 or 366 and each whole, but that of the last evening, which would leave the year.
    expect(found.every(({ length }) => length === 60)).toBe(true)
    expect([364, 365]).toContain(found.length)
    expect(new Set(kw)).toEqual(new Set([0, 1]))
  })

  it('fills the hour to the brim and no further: 12 of 5 minutes begin in one hour', () => {
    const kw = column({ perDay: 12, minutes: 5, at: ['07:00-08:00'] })
    expect(minutesOn(kw)).toBeGreaterThan((365 * 12 - 1) * 5)
    expect(new Set(kw)).toEqual(new Set([0, 1]))
  })

  it('an hour that spring leaves out is owed on the next day', () => {
    const kw = column({ perDay: 1, minutes: 3, at: ['01:00-02:00'] }, LONDON)
    const [from] = monthRange(LONDON, 3)
    const of = (day: number): number =>
      minutesOn(kw.subarray(LONDON.days[58 + day]!.start, LONDON.days[58 + day]!.end))
    expect(LONDON.days[59]!.start).toBe(from)
    expect([of(29), of(30), of(31)]).toEqual([3, 0, 6])
    expect(minutesOn(kw)).toBe(365 * 3)
  })
})

describe('several loads', () => {
  const kettle = { name: 'kettle', events: { perDay: 8, minutes: 3 } }
  const toaster = { name: 'toaster', events: { perDay: 8, minutes: 3 } }

  it('are not in step: two of 24 minutes in 1440 meet as often as chance has it', () => {
    const [a, b] = columns([kettle, toaster])
    let both = 0
    for (let i = 0; i < a!.length; i++) if (a![i]! > 0 && b![i]! > 0) both++
    // Mean 525600 / 60^2 = 146 minutes; events of 3 minutes come in clumps, so about twice the
    // Poisson error of 12: within 4 of them.
    expect(Math.abs(both - 146)).toBeLessThan(4 * 2 * 12)
  })

  it('do not move each other; pieces and seeds differ', () => {
    const [alone] = columns([kettle])
    const beside = columns([{ name: 'pump', w: 60 }, toaster, kettle])
    expect(beside[2]).toEqual(alone)
    const [two] = columns([{ ...kettle, pieces: 2 }])
    expect(minutesOn(two!)).toBeGreaterThan(1.9 * minutesOn(alone!))
    expect(columns([kettle], UTC_2025, { seed: 2 })[0]).not.toEqual(alone)
  })
})

describe('what is refused', () => {
  const faults = (line: object): string[] => faultsOf(() => columns([{ name: 'it', ...line }]))

  it('more than begin in the hours, hours of two kinds, two ways of running', () => {
    const events = { perDay: 13, minutes: 5, at: ['07:00-08:00'] }
    expect(faults({ events })).toEqual([
      'loads[0].events.perDay: at most 12, as many as begin in 60 min',
    ])
    const kettle = { perDay: 3, minutes: 5 }
    expect(faults({ events: kettle, at: ['07:00-08:00'] })).toEqual([
      'loads[0].at: left out beside events, whose hours are events.at',
    ])
    expect(faults({ events: kettle, cycle: { onMinutes: 1, offMinutes: 1 } })).toEqual([
      'loads[0].events: left out beside cycle',
    ])
    expect(faults({ events: { perDay: 0, minutes: 2.5 } })).toEqual([
      'loads[0].events.perDay: a number > 0 and <= 288',
      'loads[0].events.minutes: a whole number 1..720 [min]',
    ])
  })
})
