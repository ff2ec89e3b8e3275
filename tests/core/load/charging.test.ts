// A vehicle at its charger; energies and minutes by hand.

import { calendarOf, checkHouse, demandOf } from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { faultsOf, plainHouse, UTC_2025 } from '../plain-house.js'

const LONDON = calendarOf(2025, 'Europe/London')

function column(line: object, calendar = UTC_2025): Float64Array {
  const loads = [{ name: 'car', tier: 'critical', ...line }]
  return demandOf(checkHouse(plainHouse({ loads })), calendar).critical[0]!.kw
}

const kwh = (kw: Float64Array): number => kw.reduce((sum, value) => sum + value / 60, 0)

it('7 kWh at 7 kW are an hour from the start of the span', () => {
  const kw = column({ w: 7000, charging: { kwhPerDay: 7 }, at: ['00:30-04:30'] })
  expect([kw[29], kw[30], kw[89], kw[90]]).toEqual([0, 7, 7, 0])
  expect(kwh(kw)).toBeCloseTo(365 * 7, 6)
})

it('the last minute is a part of one: 1 kWh at 2 kW and a half are 24 minutes, 1.02 are 24.48', () => {
  const on = (kwhPerDay: number): number[] => {
    const kw = column({ w: 2500, charging: { kwhPerDay }, at: ['10:00-20:00'] })
    return [...kw.subarray(600, 626)].filter((value) => value > 0)
  }
  expect(on(1)).toHaveLength(24)
  expect(on(1.02)).toHaveLength(25)
  expect(on(1.02).at(-1)).toBeCloseTo(0.48 * 2.5, 5)
})

it('on its days, through midnight: Fridays at 22:00, 40 kWh at 10 kW end at 02:00', () => {
  const kw = column({ w: 10000, charging: { kwhPerDay: 40 }, at: ['22:00-06:00'], days: ['fri'] })
  // Friday 3 January 2025 is day 2.
  const from = 2 * 1440 + 22 * 60
  expect([kw[from - 1], kw[from], kw[from + 239], kw[from + 240]]).toEqual([0, 10, 10, 0])
  expect(kwh(kw)).toBeCloseTo(52 * 40, 6)
})

it('a night past the end of the year is charged in its first minutes', () => {
  const kw = column({ w: 10000, charging: { kwhPerDay: 40 }, at: ['22:00-06:00'], months: [12] })
  expect([kw[0], kw[119], kw[120]]).toEqual([10, 10, 0])
  expect(kwh(kw)).toBeCloseTo(31 * 40, 6)
})

it('every charging day has its energy, to the minute grid, the nights of the clock change too', () => {
  const any = fc.record({
    w: fc.integer({ min: 1400, max: 22000 }),
    share: fc.double({ min: 0.01, max: 1, noNaN: true }),
    hour: fc.integer({ min: 0, max: 23 }),
  })
  fc.assert(
    fc.property(any, ({ w, share, hour }) => {
      const kwhPerDay = (share * w * 5) / 1000
      const at = [`${hour}:30-${(hour + 5) % 24}:30`]
      const total = kwh(column({ w, charging: { kwhPerDay }, at }, LONDON))
      // Powers are rounded to 1e-6 kW: 300 minutes a day at most, 1e-6/60 kWh each.
      expect(Math.abs(total - 365 * kwhPerDay)).toBeLessThan((365 * 300 * 1e-6) / 60)
    }),
    { numRuns: 15 },
  )
})

describe('what is refused', () => {
  const faults = (line: object): string[] => faultsOf(() => column(line))

  it('more than the span gives, no span, two spans', () => {
    const charging = { kwhPerDay: 40 }
    expect(faults({ w: 7400, charging, at: ['00:30-05:30'] })).toEqual([
      'loads[0].charging.kwhPerDay: at most 37, what 7400 W give in 00:30-05:30 [kWh]',
    ])
    const need = 'loads[0].at: one span in which it charges, such as ["00:30-05:30"]'
    expect(faults({ w: 7400, charging })).toEqual([need])
    expect(faults({ w: 7400, charging, at: ['00:30-05:30', '12:00-14:00'] })).toEqual([need])
  })
})
