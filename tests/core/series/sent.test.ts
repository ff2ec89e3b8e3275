// A house made ready is data: what threads share of it is sent as it is, and rides the same.

import {
  checkHouse,
  loggedArray,
  loggedDay,
  prepare,
  type RideQuestion,
  runRideJob,
} from '@tideover/core'
import { expect, it } from 'vitest'
import { plainHouse, solar, UTC_2025 } from '../plain-house.js'

const LOADS = [
  { name: 'fridge', tier: 'critical', w: 90, cycle: { onMinutes: 14, offMinutes: 31 } },
  { name: 'lamp', tier: 'comfort', w: 60, at: ['17:00-23:00'] },
]
const QUESTION: RideQuestion = { month: 1, hours: 12, years: 1 }

it('shares its columns with the copy that a thread gets, and rides alike', () => {
  const house = checkHouse(plainHouse({ arrays: [solar('trips')], loads: LOADS }))
  const prepared = prepare(house, {}, { shared: true })
  const sent = structuredClone(prepared)
  // Another column over the same memory: what is written to one is read from the other.
  for (const columns of [
    [prepared.demand.criticalKw, sent.demand.criticalKw],
    [prepared.demand.critical[0]!.kw, sent.demand.critical[0]!.kw],
    [prepared.sun.sine, sent.sun.sine],
    [prepared.arrays[0]!.geometry.beamShare, sent.arrays[0]!.geometry.beamShare],
  ] as const) {
    const [mine, theirs] = columns
    const kept = mine[700]!
    mine[700] = kept + 1
    expect(theirs[700]).toBe(kept + 1)
    mine[700] = kept
  }
  const job = { sky: 'typical', years: [0, 1] } as const
  expect(runRideJob(sent, QUESTION, job)).toEqual(runRideJob(prepared, QUESTION, job))
})

it('sends the log of an array too, and one supposed larger gives so much more', () => {
  // By hand: 1 kW in every minute of 20 days of June.
  const kw = new Float64Array(20 * 1440).fill(1)
  const record = { name: 'log', startMs: Date.UTC(2025, 5, 1), stepMinutes: 1, kw, notes: [] }
  const log = structuredClone(loggedArray(record, UTC_2025))
  expect(loggedDay(log, 160, 0.5)![720]).toBe(1)
  expect(loggedDay({ ...log, times: 1.5 }, 160, 0.5)![720]).toBe(1.5)
  expect(loggedDay(log, 10, 0.5)).toBeNull()
})
