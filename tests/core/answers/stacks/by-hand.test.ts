// Stacks of a lossless house: hours are energy over load, so every figure is told by hand.
//
// A module holds 4 kWh. From a reserve of 0.5, less 0.05 for the reading, to 0.1 it gives 1.4 kWh,
// which carry 350 W for 4 h. Each module adds as much.

import {
  checkHouse,
  prepare,
  type RideQuestion,
  rideStacks,
  stackLimits,
  stackRows,
  stacksAnswer,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../../plain-house.js'

const STACK = {
  module: { usableKwh: 4, chargeKw: 2, dischargeKw: 5, price: 1000 },
  ...{ modules: 1, modulesMax: 8, health: 1, place: 'shed' },
  ...{ electronicsW: 0, selfDischargePerMonth: 0 },
}
const LOSSLESS = {
  // So warm that no spell of cold air puts charge out of reach.
  sky: { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(35) },
  inverter: { ratedKva: 5, idleW: 0, roundTrip: 1 },
  stack: STACK,
  loads: [{ name: 'pump', tier: 'critical', w: 350 }],
}

const SMALL_INVERTER = { ratedKva: 0.3, idleW: 0, roundTrip: 1 }

/** A minute of rounding at each end. [h] */
const MINUTE = 1 / 60 + 1e-9

function asked(question: Partial<RideQuestion>, changes: object = {}) {
  const prepared = prepare(checkHouse(plainHouse({ ...LOSSLESS, ...changes })))
  return stacksAnswer(prepared, {}, { month: 2, hours: 11, ...question })
}

describe('a lossless house of 4 h a module', () => {
  const answer = asked({ share: 1 })

  it('lasts 4 h times its modules, from every start', () => {
    expect(answer.stacks.map(({ modules }) => modules)).toEqual([1, 2, 3, 4, 5, 6, 7, 8])
    for (const { modules, worstHours, p05Hours, medianHours, usableKwh, price } of answer.stacks) {
      for (const hours of [worstHours, p05Hours, medianHours]) {
        expect(Math.abs(hours! - 4 * modules)).toBeLessThanOrEqual(MINUTE)
      }
      expect(usableKwh).toBeCloseTo(4 * modules, 9)
      expect(price).toBe(1000 * modules)
    }
  })

  it('gains 4 h with each module, 250 an hour', () => {
    expect(answer.stacks[0]).toMatchObject({ addedHours: null, pricePerAddedHour: null })
    for (const { addedHours, addedWorstHours, pricePerAddedHour } of answer.stacks.slice(1)) {
      expect(Math.abs(addedHours! - 4)).toBeLessThanOrEqual(MINUTE)
      expect(Math.abs(addedWorstHours! - 4)).toBeLessThanOrEqual(MINUTE)
      expect(pricePerAddedHour! * addedHours!).toBeCloseTo(1000, 9)
    }
  })

  it('needs exactly three modules for 11 h, for two last 8', () => {
    expect(answer.stacks.map(({ share }) => share)).toEqual([0, 0, 1, 1, 1, 1, 1, 1])
    expect(answer.stacks.map(({ met }) => met)).toEqual([false, false, ...Array(6).fill(true)])
    expect(answer).toMatchObject({ smallest: 3, met: true, shareTarget: 1 })
  })

  it('needs six modules more for another 24 h, in the middle case and at worst', () => {
    const modules = answer.nextSteps.filter(({ kind }) => kind === 'module')
    const steps = modules.toSorted((a, b) => a.price! - b.price!)
    expect(steps.map(({ what, price }) => [what, price])).toEqual([
      ['one module more, 2 in all', 1000],
      ['6 modules more, 7 in all', 6000],
    ])
    expect(steps[0]!.anotherDay).toEqual({ worst: false, median: false })
    expect(steps[1]!.anotherDay).toEqual({ worst: true, median: true })
    expect(Math.abs(steps[1]!.gained.worstHours! - 24)).toBeLessThanOrEqual(2 * MINUTE)
  })

  it('starts its steps from the stack asked for', () => {
    const from = asked({ modules: 3 }, { stack: { ...STACK, modulesMax: 5 } })
    expect(from.stepsFrom).toBe(3)
    expect(from.nextSteps[0]!.what).toBe('one module more, 4 in all')
    expect(Math.abs(from.nextSteps[0]!.gained.medianHours! - 4)).toBeLessThanOrEqual(MINUTE)
  })
})

describe('targets', () => {
  it('refuses more modules than the base takes', () => {
    expect(() => asked({ modules: 9 })).toThrow('modules must be a whole number 1..8')
  })

  it('no stack of a base for two modules lasts 11 h', () => {
    const answer = asked({ share: 0.5 }, { stack: { ...STACK, modulesMax: 2 } })
    expect(answer).toMatchObject({ smallest: null, met: false })
  })

  it('without a target nothing is met or missed', () => {
    const answer = asked({}, { stack: { ...STACK, modulesMax: 2 } })
    expect(answer).toMatchObject({ smallest: null, met: null, shareTarget: null })
    expect(answer.stacks.map(({ met }) => met)).toEqual([null, null])
  })

  it('a house without a price gives none', () => {
    const { price: _, ...module } = STACK.module
    const answer = asked({}, { stack: { ...STACK, module, modulesMax: 2 } })
    expect(answer.stacks[1]).toMatchObject({ price: null, pricePerAddedHour: null })
    expect(answer.nextSteps[0]).toMatchObject({ price: null, pricePerHour: null })
    expect(answer.advice.join(' ')).toContain('price not given')
  })

  it('a base that is full says so', () => {
    const answer = asked({}, { stack: { ...STACK, modulesMax: 1 } })
    expect(answer.nextSteps.filter(({ kind }) => kind === 'module')).toEqual([])
    expect(answer.advice).toContain(
      'The base takes no more than 1 module (stack.modulesMax): none can be added.',
    )
  })
})

describe('limits that no module moves', () => {
  /** Two modules last 8 h of the 7 asked for. */
  const binding = (changes: object, question = { month: 2, hours: 7 }) => {
    const house = checkHouse(plainHouse({ ...LOSSLESS, ...changes }))
    const prepared = prepare(house)
    const ridden = rideStacks(prepared, question, () => {})
    const rows = stackRows(house, ridden, undefined)
    const [equipped, figures] = [ridden.equipped.at(-1)!, ridden.figures.at(-1)!]
    const limits = stackLimits(prepared, question, rows, equipped, figures)
    return { names: limits.binding.map(({ limit }) => limit), limits, rows }
  }
  const TWO = { ...STACK, modulesMax: 2 }

  it('energy alone: none, and the share rises to the last stack', () => {
    expect(binding({ stack: TWO }).limits).toEqual({ stopsAt: null, binding: [], said: [] })
  })

  it('energy that ends short of the cut: none binds, and no stack lasts more cuts', () => {
    const { limits } = binding({ stack: TWO }, { month: 2, hours: 20 })
    expect(limits).toMatchObject({ stopsAt: 1, binding: [] })
    expect(limits.said.join(' ')).toContain('the added hours end short of the cut')
  })

  it('a stack that gives 0.3 kW loses 0.35 kW at the changeover, with any number of modules', () => {
    const { names, limits, rows } = binding({ stack: { ...TWO, dischargeKw: 0.3 } })
    expect(names).toEqual(['discharge'])
    expect(rows.map(({ changeoverLostShare, share }) => [changeoverLostShare, share])).toEqual([
      [1, 0],
      [1, 0],
    ])
    expect(limits).toMatchObject({ stopsAt: 1, binding: [{ share: 1 }] })
    expect(limits.said.join(' ')).toContain('More modules do not mend that')
    expect(limits.said.join(' ')).toContain('at the changeover')
  })

  it('an inverter of 0.3 kVA does not carry 0.35 kW', () => {
    expect(binding({ inverter: SMALL_INVERTER, stack: TWO }).names).toEqual(['inverter'])
  })

  it('both too small: neither alone makes a difference', () => {
    const { names } = binding({ inverter: SMALL_INVERTER, stack: { ...TWO, dischargeKw: 0.3 } })
    expect(names).toEqual(['inverter and discharge'])
  })

  it('0.05 kW into the stack leave the sun of June unused', () => {
    const array = { name: 'roof', peakKw: 4, tiltDeg: 30, azimuthDeg: 180 }
    const inverter = { ratedKw: 4, onIsland: 'throttles' }
    const arrays = [{ ...array, inverter }]
    const stack = { ...TWO, chargeKw: 0.05 }
    expect(binding({ arrays, stack }, { month: 6, hours: 24 }).names).toEqual(['charge'])
  })
})
