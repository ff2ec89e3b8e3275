// Fuel by hand, failing against the very house without its set, and what is said of each case.

import {
  checkHouse,
  equip,
  generatorPlan,
  type House,
  lastingShares,
  monthRides,
  monthSky,
  monthWalks,
  outcomesOf,
  type PlanQuestion,
  prepare,
  rideLoads,
  type SetWalk,
  traceCut,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse, solar } from '../plain-house.js'

// 10 kWh new, 0.45 kW drawn in all, no sun, never cold: every cut is alike. The set gives 0.8 of
// its 2 kW, so 1.15 kW charge; it is wanted at 2.5 kWh and stops at 8.
const HOT = { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(35) }
const SET = {
  ratedKw: 2,
  tankL: 5,
  litresPerHour: { none: 0.6, half: 0.8, full: 1.4 },
  start: 'automatic',
  readySeconds: 60,
}

function house(changes: Record<string, unknown> = {}, set: Record<string, unknown> = {}): House {
  return checkHouse(plainHouse({ sky: HOT, generator: { ...SET, ...set }, ...changes }))
}

function plan(checked: House, question: Partial<PlanQuestion> = {}) {
  return generatorPlan(prepare(checked), { days: 1, years: 1, months: [6], ...question })
}

describe('the fuel of a cut of one day, by hand', { timeout: 120_000 }, () => {
  // From 45 % of 10 kWh: 2.0 / 0.45 = 4.44 h to the call, a minute to be ready (two in whole
  // minutes), 5.5 / 1.15 = 4.78 h of running, 5.5 / 0.45 = 12.22 h without, then to the end.
  const FIRST = 2.0 / 0.45 + 1 / 60
  const RUN = 5.5 / 1.15
  const HOURS = RUN + (24 - FIRST - RUN - 5.5 / 0.45 - 1 / 60)
  // Between half and full load: 0.8 + 0.6 · (2 · 0.8 - 1) = 1.16 l/h.
  const LITRES_AN_HOUR = 1.16
  const answer = plan(house())
  const figures = answer.closer.skies.dull!

  it('runs 7.3 h in two starts', () => {
    expect(Math.abs(figures.runHours.mean - HOURS)).toBeLessThan(4 / 60)
    expect(figures.runHours.worst).toBeCloseTo(figures.runHours.mean, 9)
    expect(figures.setStarts).toEqual({ mean: 2, oneIn20: 2, worst: 2 })
  })

  it('burns its hours times the litres of an hour at 0.8 of rating', () => {
    // The last minute of a run is cut short at the stop charge.
    const byHand = figures.runHours.mean * LITRES_AN_HOUR
    expect(Math.abs(figures.litres.mean - byHand)).toBeLessThan(LITRES_AN_HOUR / 60)
  })

  it('gives what the house drew and the stack gained', () => {
    const startMs = Date.UTC(2025, 5, 10)
    const { trace } = traceCut(prepare(house({}, { tankL: 20 })), { startMs, hours: 24 })
    const gave = trace.generatorKw.reduce((sum, kw) => sum + kw / 60, 0)
    // Powers stand on a grid of their own: 0.39 kW to some tenths of a milliwatt.
    expect(gave).toBeCloseTo(24 * 0.45 + trace.storedKwh.at(-1)! - 4.5, 4)
    // Every cut is alike, that of the trace too.
    expect(20 - trace.fuelL.at(-1)!).toBeCloseTo(figures.litres.mean, 6)
  })

  it('every cut is the middle and the worst; it starts by itself', () => {
    const { middle, worst } = answer.closer
    expect(worst!.litres).toBe(middle.litres)
    expect(middle.visits.map(({ starts, pours }) => [starts, pours])).toEqual([
      ['by itself', false],
      ['by itself', false],
    ])
    // Called 4.44 h after the start of the cut.
    const hours = (Date.parse(middle.visits[0]!.time) - Date.parse(middle.start)) / 3600_000
    expect(Math.abs(hours - 2.0 / 0.45)).toBeLessThan(2 / 60)
  })

  it('with nobody to pour the tank is counted as never empty; its 5 l run out', () => {
    expect(figures.pours.worst).toBe(0)
    expect(figures.litres.mean).toBeGreaterThan(5)
    expect(answer.closer.dryShare).toBe(1)
  })

  it('what stands in cans and nobody pours does not keep it from running dry', () => {
    expect(plan(house({}, { cansL: 50 })).closer.dryShare).toBe(1)
  })

  it('somebody who is there pours once the tank is empty', () => {
    const filled = plan(house({ person: { minutes: 10, from: '00:00', to: '24:00' } }))
    expect(filled.closer.skies.dull!.pours.mean).toBe(1)
    expect(filled.closer.middle.visits.filter(({ pours }) => pours)).toHaveLength(1)
  })
})

describe('quiet hours', { timeout: 120_000 }, () => {
  it('a set by itself starts by the clock outside them only', () => {
    const { quiet } = plan(house(), { quiet: { from: '20:00', to: '08:00' } }).closer
    expect(quiet!.runHours.mean).toBeGreaterThan(quiet!.heldBack!.runHours.mean)
    expect(quiet!.heldBack!.litres.mean).toBeGreaterThan(0)
  })

  it('change nothing where nobody was there in them anyway', () => {
    const person = { minutes: 10, from: '09:00', to: '19:00' }
    const checked = house({ person }, { start: 'by hand', cansL: 40 })
    const { quiet, lasting } = plan(checked, { quiet: { from: '20:00', to: '08:00' } }).closer
    expect(quiet!.heldBack!.runHours).toEqual(quiet!.runHours)
    expect(quiet!.heldBack!.share).toBe(lasting.share)
  })

  it('that leave two spans are counted only', () => {
    const person = { minutes: 10, from: '07:00', to: '22:00' }
    const checked = house({ person }, { start: 'by hand', cansL: 40 })
    const { quiet } = plan(checked, { quiet: { from: '13:00', to: '14:00' } }).closer
    expect(quiet!.heldBack).toBeNull()
  })

  it('of the whole day let nobody start it', () => {
    const person = { minutes: 10, from: '07:00', to: '22:00' }
    const checked = house({ person }, { start: 'by hand', cansL: 40 })
    const { quiet, withoutSet } = plan(checked, { quiet: { from: '07:00', to: '22:00' } }).closer
    expect(quiet!.heldBack!.litres.mean).toBe(0)
    expect(quiet!.heldBack!.share).toBe(withoutSet.share)
  })
})

describe('failing', { timeout: 120_000 }, () => {
  it('weighs every branch by hand', () => {
    const start = { minute: 0, askedAt: 0, pours: false }
    const walk: SetWalk = {
      rideMinutes: 300,
      litres: 0,
      ranIn: [],
      tooColdMinutes: 0,
      ranDry: false,
      starts: [
        { ...start, runMinutes: 60, rideIfFails: 100 },
        { ...start, runMinutes: 60, rideIfFails: 200 },
      ],
    }
    const weights = (startFailsShare: number, hoursBetweenFailures: number | null) =>
      outcomesOf(walk, { startFailsShare, hoursBetweenFailures }).map(({ weight }) => weight)
    // 0.1, then 0.9 · 0.1, then 0.9².
    const plain = weights(0.1, null)
    for (const [i, weight] of [0.1, 0.09, 0.81].entries()) expect(plain[i]).toBeCloseTo(weight, 12)
    // An hour of running with one failure an hour is stood in exp(-1) of cases.
    expect(weights(0, 1)[0]).toBeCloseTo(1 - Math.exp(-1), 12)
    expect(weights(0.3, 5).reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12)
  })

  // Trips and pours, comfort loads and a person with hours: what the pass rides must be walked alike.
  const prepared = prepare(
    checkHouse(
      plainHouse({
        arrays: [solar('trips')],
        person: {},
        loads: [
          { name: 'pump', tier: 'critical', w: 390, toleratesMinutes: 20 },
          { name: 'fridge', tier: 'critical', w: 90, holdOver: { hours: 4 } },
          { name: 'television', tier: 'comfort', w: 200, at: ['18:00-22:00'] },
        ],
        generator: { ...SET, start: 'by hand', cansL: 3 },
      }),
    ),
  )
  const choice = { kind: 'dull', month: 2, cutHours: 18, years: 1, winters: 10, seed: 1 } as const
  const sky = monthSky(prepared, choice)
  const loads = rideLoads(prepared.demand)
  const [withSet, without] = [equip(prepared, {}), equip(prepared, { generator: false })]
  const span = { month: 2, hours: 18, horizon: 18 * 60 }
  const walks = monthWalks(prepared, sky, [withSet], loads, {
    ...{ hours: 18, everyMinutes: 60, branches: true },
  })[0]!

  it('a walk lasts as long as the ride of the same start', () => {
    const { batches } = monthRides(prepared, sky, withSet, loads, span)
    expect(walks).toHaveLength(28 * 24)
    for (const { batch, which, rideMinutes } of walks)
      expect(rideMinutes).toBe(batches[batch]!.rides.minutes[which])
  })

  it('a first start that fails leaves the ride of the house without its set', () => {
    const { batches } = monthRides(prepared, sky, without, loads, span)
    const started = walks.filter(({ starts }) => starts.length > 0)
    expect(started.length).toBeGreaterThan(100)
    for (const { batch, which, starts } of started)
      expect(starts[0]!.rideIfFails).toBe(batches[batch]!.rides.minutes[which])
  })

  it('a set that never fails loses nothing, one that always does is not there', () => {
    const shares = (startFailsShare: number, equipped = withSet) => {
      const { batches } = monthRides(prepared, sky, equipped, loads, span)
      const chances = { startFailsShare, hoursBetweenFailures: null }
      return lastingShares(prepared.calendar, walks, batches, span.horizon, chances)
    }
    const lasting = (minutes: readonly number[]): number =>
      minutes.filter((ride) => ride >= span.horizon).length / walks.length
    expect(shares(0).any).toBeCloseTo(lasting(walks.map((walk) => walk.rideMinutes)), 12)
    const failed = walks.map(({ starts, rideMinutes }) => starts[0]?.rideIfFails ?? rideMinutes)
    expect(shares(1).any).toBeCloseTo(lasting(failed), 12)
  })
})

describe('a house without a generator', { timeout: 120_000 }, () => {
  const bare = checkHouse(plainHouse({ sky: HOT }))

  it('is told what a small set by hand would need', () => {
    const answer = plan(bare)
    expect(answer.supposed).toBe(true)
    // 0.39 kW at 0.9: the smallest set carries it.
    expect(answer.set).toMatchObject({ ratedKw: 2, start: 'by hand' })
    // Common practice: 0.45 l for a kWh at half load, 0.36 at full.
    expect(answer.set.litresPerHour.half).toBeCloseTo(0.45 * 1, 9)
    expect(answer.set.litresPerHour.full).toBeCloseTo(0.36 * 2, 9)
    expect(answer.person).toEqual({ minutes: 30, from: '07:00', to: '22:00' })
    expect(answer.closer.dryShare).toBe(0)
    expect(answer.cautions.join(' ')).toContain('carbon monoxide')
  })

  it('or one of a size', () => {
    expect(() => plan(house(), { setKw: 3 })).toThrow('--set must be left out')
    const { set, closer } = plan(bare, { sky: 'typical', setKw: 4.5 })
    expect(set.ratedKw).toBe(4.5)
    // Of one synthetic year no worst is said.
    expect(closer.worst).toBeNull()
    expect(closer.skies.typical!.litres.worst).toBeNull()
    expect(closer.skies.dull!.litres.worst).not.toBeNull()
  })
})
