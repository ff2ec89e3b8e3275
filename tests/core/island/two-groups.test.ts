// Two kinds of AC-coupled solar on one island: each with its answer and its wait.

import { Event } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { type Given, liveHouse, minutesOf, solar } from '../plain-house.js'

const TRIPS = solar('trips', 180)
const THROTTLES = { ...solar('throttles', 60), name: 'new' }
const SLOW = { ...solar('trips', 300), name: 'slow' }

function day(arrays: Record<string, unknown>[], ac: Given[], startShare = 0.5, minutes = 120) {
  return liveHouse({ arrays }, { minutes, critical: 0.39, ac }, startShare)
}

describe('one that trips beside one that throttles', () => {
  it('come in after their own waits', () => {
    const t = day([TRIPS, THROTTLES], [1, 0.5])
    expect([...t.solarIn.slice(0, 5)]).toEqual([0, 2, 2, 3, 3])
    expect(t.solarUsedKw[1]).toBeCloseTo(0.5, 12)
    expect(t.solarUsedKw[3]).toBeCloseTo(1.5, 12)
  })

  it('the one that throttles makes room: 3 kW to store and 2 taken, nobody trips', () => {
    const t = day([TRIPS, THROTTLES], [2, 1.39])
    expect(minutesOf(t, Event.solarTrips)).toEqual([])
    expect(t.solarUsedKw[30]).toBeCloseTo(2 + 0.45, 8)
  })

  it('the one that trips goes out when its own surplus is too much; the other goes on', () => {
    const t = day([TRIPS, THROTTLES], [(i) => (i >= 30 && i < 40 ? 3 : 1), 1])
    // Out at 30, tried again after 3 minutes out, and so on; the last trip at 38 ends at 42.
    expect(minutesOf(t, Event.solarTrips)).toEqual([30, 34, 38])
    expect(t.solarUsedKw[31]).toBeCloseTo(1, 12)
    expect(t.solarUsedKw[50]).toBeCloseTo(2, 8)
    expect(minutesOf(t, Event.solarTooTrips)).toEqual([])
  })

  it('near full the one that trips is held out, the other serves the load', () => {
    const t = day([TRIPS, THROTTLES], [0.3, 1], 0.95)
    expect(minutesOf(t, Event.solarHeldOut)).toEqual([3])
    expect(t.solarIn[60]).toBe(2)
    expect(t.solarUsedKw[60]).toBeGreaterThanOrEqual(0.45)
  })
})

describe('two that trip', () => {
  it('go out together: the frequency is one for all; each comes back by its own wait', () => {
    const t = day([TRIPS, SLOW], [(i) => (i === 30 ? 3 : 1), 1])
    expect(minutesOf(t, Event.solarTrips)).toEqual([30])
    expect(minutesOf(t, Event.solarTooTrips)).toEqual([30])
    expect([...t.solarIn.slice(29, 37)]).toEqual([3, 0, 0, 0, 0, 1, 1, 3])
  })

  it('what fits alone and not together comes and goes with the slower one', () => {
    // 1.5 kW each, 2.61 kW to store where 2 are taken: the slow one is back after 5 minutes.
    const t = day([TRIPS, SLOW], [1.5, 1.5])
    expect(minutesOf(t, Event.solarTooTrips).slice(0, 3)).toEqual([5, 11, 17])
    expect(minutesOf(t, Event.solarTrips).slice(0, 3)).toEqual([5, 11, 17])
    expect([...t.solarIn.slice(5, 12)]).toEqual([0, 0, 0, 0, 1, 1, 0])
  })
})

describe('with the grid back', () => {
  it('each waits again before it feeds, and what it gives then is counted', () => {
    const t = liveHouse(
      { arrays: [TRIPS, THROTTLES] },
      { minutes: 40, critical: 0.39, ac: [1, 0.5], gridUp: (i) => i >= 10 },
      0.5,
    )
    expect([...t.solarUsedKw.slice(9, 14)].map((kw) => Math.round(kw * 10) / 10)).toEqual([
      1.5, 0, 0.5, 0.5, 1.5,
    ])
  })
})
