// Thermostats after a time off: all at once, for a while. Losses of 60 W in all, 10 kWh.

import { calendarOf, checkHouse, demandOf, Event, TOGETHER_FOR } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, liveHouse, minutesOf, plainHouse } from '../plain-house.js'

const minutes = 1440
const together = {
  criticalKw: new Float64Array(minutes).fill(0.25),
  comfortKw: [],
  kvaPerKw: [1],
  cycling: [[]],
  formingKva: [new Float64Array(minutes).fill(2.64)],
}
const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }
/** Dark at minute 134 from a fifth of charge; DC-coupled sun wakes it after minute 300. */
const scene = { minutes, critical: 0.39, dc: (i: number) => (i >= 300 ? 3 : 0), together }

describe('loads that come back after a quarter of an hour off', () => {
  it('run together for 40 minutes, then each by its own clock', () => {
    const t = liveHouse({ arrays: [DC_ARRAY] }, scene, 0.2)
    const [back] = minutesOf(t, Event.thermostats)
    expect(back).toBe(minutesOf(t, Event.loadsBack)[0])
    expect(t.servedCriticalKw[back!]).toBeCloseTo(0.39 + 0.25, 12)
    expect(t.servedCriticalKw[back! + TOGETHER_FOR - 1]).toBeCloseTo(0.39 + 0.25, 12)
    expect(t.servedCriticalKw[back! + TOGETHER_FOR]).toBeCloseTo(0.39, 12)
    expect(t.demandCriticalKw[back!]).toBe(t.servedCriticalKw[back!])
  })

  it('a minute off changes nothing: a trip that the next try mends', () => {
    const peakKva = (_: number, i: number): number => (i === 30 ? 12 : 1)
    const t = liveHouse({ inverter: INVERTER }, { ...scene, dc: 0, peakKva }, 0.9)
    expect(minutesOf(t, Event.loadsBack)).toEqual([31])
    expect(minutesOf(t, Event.thermostats)).toEqual([])
  })

  it('all start in one minute: 10 kVA that the inverter cannot carry put it out again', () => {
    const heavy = { ...together, formingKva: [new Float64Array(minutes).fill(10.64)] }
    const t = liveHouse({ arrays: [DC_ARRAY] }, { ...scene, together: heavy }, 0.2)
    const [back] = minutesOf(t, Event.thermostats)
    expect(t.servedCriticalKw[back!]).toBe(0)
    expect(minutesOf(t, Event.overload)).toContain(back)
  })
})

it('what they owe is their power with the thermostat on, less what the cycle draws', () => {
  const fridge = {
    name: 'fridge',
    tier: 'critical',
    w: 90,
    pieces: 2,
    cycle: { onMinutes: 15, offMinutes: 30 },
    startingMultiple: 6,
    powerFactor: 0.6,
  }
  const house = checkHouse(plainHouse({ loads: [fridge] }))
  const demand = demandOf(house, calendarOf(2025, 'UTC'))
  const owed = demand.together!.criticalKw
  for (let i = 0; i < 500; i++) expect(owed[i]! + demand.criticalKw[i]!).toBeCloseTo(0.18, 5)
  // Two motors at six times 90 W and a power factor of 0.6, both in one minute.
  const forming = demand.together!.formingKva[0]!
  for (let i = 0; i < 500; i++) expect(forming[i]!).toBeCloseTo((2 * 6 * 0.09) / 0.6, 5)
})
