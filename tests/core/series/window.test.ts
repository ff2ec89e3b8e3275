// What the island gets to see: over New Year, in the middle of hours, whatever the window.

import { checkHouse, newScratch, prepare, typicalOf, windowOf } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { hourly } from '../../../packages/core/src/series/hourly.js'
import { plainHouse, solar } from '../plain-house.js'

const prepared = prepare(checkHouse(plainHouse({ arrays: [solar('throttles')] })))
const YEAR = prepared.calendar.n
const DAY = 1440
const sky = typicalOf(prepared, 1, 3)
const window = (year: number, from: number, to: number) =>
  windowOf(prepared, sky, newScratch(prepared), year, from, to)

describe('a window', () => {
  it('goes on over New Year in the next synthetic year, after the last in the first', () => {
    for (const [year, next] of [
      [0, 1],
      [2, 0],
    ] as const) {
      const over = window(year, YEAR - DAY, YEAR + 2 * DAY)
      const january = window(next, 0, 2 * DAY)
      expect(over.acKw[0]!.slice(DAY)).toEqual(january.acKw[0])
      expect(over.acKw[0]!.slice(DAY)).not.toEqual(window(year, 0, 2 * DAY).acKw[0])
      expect(over.acKw[0]!.slice(0, DAY)).toEqual(window(year, YEAR - DAY, YEAR).acKw[0])
      expect(over.placeC.slice(24)).toEqual(january.placeC)
    }
  })

  it('shows the same minutes however it is cut', () => {
    const long = window(1, 100 * DAY, 104 * DAY)
    const late = window(1, 101 * DAY + 777, 103 * DAY + 13)
    expect(late.acKw[0]).toEqual(long.acKw[0]!.slice(DAY + 777, 3 * DAY + 13))
    // Irradiation is told of whole days.
    expect(late.dayGhi).toEqual(long.dayGhi.slice(1, 4))
    expect(late.firstDay).toBe(101)
    expect(late.placeC[0]).toBe(long.placeC[24 + 12])
  })

  it('gives no more than the solar inverter is rated for, and nothing at night', () => {
    const acKw = window(0, 170 * DAY, 172 * DAY).acKw[0]!
    expect(Math.max(...acKw)).toBeLessThanOrEqual(4)
    expect(Math.max(...acKw)).toBeGreaterThan(2)
    expect([...acKw.subarray(0, 150)].every((kw) => kw === 0)).toBe(true)
  })
})

describe('an hourly column', () => {
  it('is met in the middle of its hour and straight between', () => {
    const column = Float64Array.of(0, 60, 0)
    // The middle of minute 29 is 29.5, that of the first hour 30.
    expect((hourly(column, 29) + hourly(column, 30)) / 2).toBeCloseTo(0.25, 9)
    expect(hourly(column, 59) + hourly(column, 60)).toBeCloseTo(60, 9)
    expect((hourly(column, 89) + hourly(column, 90)) / 2).toBeCloseTo(59.5, 9)
    expect([hourly(column, 0), hourly(column, 179)]).toEqual([0, 0])
  })
})
