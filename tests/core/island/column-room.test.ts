// Columns made in the same room, window after window, are those made in a room of their own.

import {
  ColumnRoom,
  type Columns,
  checkHouse,
  compile,
  equip,
  newScratch,
  prepare,
  typicalOf,
  windowOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse, solar } from '../plain-house.js'

const PREPARED = prepare(
  checkHouse(
    plainHouse({
      arrays: [solar('trips'), solar('throttles to a floor')],
      generator: {
        ratedKw: 3,
        tankL: 20,
        litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
        start: 'automatic',
      },
      loads: [
        { name: 'fridge', tier: 'critical', w: 90, cycle: { onMinutes: 14, offMinutes: 31 } },
        { name: 'kettle', tier: 'comfort', w: 2400, at: ['07:00-07:05'] },
      ],
    }),
  ),
)
const { house, calendar, demand } = PREPARED
const { plant, rules } = equip(PREPARED, {})
const SKY = typicalOf(PREPARED, 1, 2)

/** Ten days of July, and eight over the turn of the year. */
const WINDOWS = [
  [190 * 1440, 200 * 1440],
  [362 * 1440 + 7, 370 * 1440],
].map(([from, to]) => windowOf(PREPARED, SKY, newScratch(PREPARED), 0, from!, to!))

describe('a room', () => {
  it('hands out what it handed out before, all 0 again, and larger where more is asked', () => {
    const room = new ColumnRoom()
    const first = room.floats(4).fill(7)
    expect([...room.copy(first)]).toEqual([7, 7, 7, 7])
    room.clear()
    const again = room.floats(3)
    expect([...again]).toEqual([0, 0, 0])
    expect(again.buffer).toBe(first.buffer)
    expect(room.flags(100)).toHaveLength(100)
  })

  it('holds the same columns when others were made in it before', () => {
    const room = new ColumnRoom()
    for (const window of [...WINDOWS, ...WINDOWS]) {
      const [fresh, reused] = [new ColumnRoom(), room].map((each) => {
        each.clear()
        return compile(house, calendar, demand, plant, rules, window, undefined, each).columns
      })
      for (const name of ['delta', 'forced', 'deltaGenerator', 'overload', 'personAt'] as const) {
        expect(reused![name], name).toEqual(fresh![name])
      }
    }
  })
})

it('a minute burns what it burns, whatever was asked before', () => {
  const [window] = WINDOWS
  const columns = () => compile(house, calendar, demand, plant, rules, window!).columns
  const asked = columns()
  // Minutes a power of two apart, and two increments in one minute.
  const minutes = [5, 5 + 8192, 5, 6, 5 + 4096, 5]
  const answers = minutes.flatMap((i) => [0.01, 0.02].map((kwh) => litresOf(asked, i, kwh)))
  const alone = minutes.flatMap((i) => [0.01, 0.02].map((kwh) => litresOf(columns(), i, kwh)))
  expect(answers).toEqual(alone)
  expect(new Set(answers).size).toBeGreaterThan(1)
})

function litresOf(columns: Columns, minute: number, delta: number): number {
  const of = { delta, litres: Number.NaN }
  columns.burn(0, minute, of)
  return of.litres
}
