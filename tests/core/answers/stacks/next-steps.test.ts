// A step is ridden as `ride` rides the house file in which somebody has made that change.

import {
  changesOf,
  checkHouse,
  type HouseFiles,
  type MeterRecord,
  type NextStep,
  type Prepared,
  prepare,
  rideLoads,
  runRideJob,
  type StacksAnswer,
  skyFigures,
  stacksAnswer,
  variantsOf,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { faultsOf } from '../../plain-house.js'

// An invented house whose battery lasts some hours in February.
const ROOF = {
  ...{ name: 'roof', peakKw: 2, tiltDeg: 30, azimuthDeg: 180 },
  inverter: { ratedKw: 2, onIsland: 'throttles' },
}
const PUMP = { name: 'pump', tier: 'critical', w: 150, toleratesMinutes: 2 }
const LINE = { name: 'line amplifier', tier: 'critical', w: 60, toleratesMinutes: 2 }
const LAMP = { name: 'lamp', tier: 'comfort', w: 120 }
const PLAIN = {
  house: 'Made up',
  site: { latitudeDeg: 51, longitudeDeg: 4, elevationM: 10, timezone: 'Europe/Brussels' },
  sky: {
    clearness: [0.3, 0.35, 0.4, 0.43, 0.46, 0.47, 0.46, 0.45, 0.42, 0.37, 0.31, 0.27],
    airC: [3, 4, 7, 10, 14, 17, 19, 18, 15, 11, 7, 4],
  },
  arrays: [ROOF],
  inverter: { ratedKva: 3 },
  stack: {
    module: { usableKwh: 4, chargeKw: 2, dischargeKw: 2, price: 900 },
    ...{ modules: 1, modulesMax: 2, place: 'house' },
  },
  loads: [PUMP, LINE, LAMP],
  comfort: { dropBelow: 0.3, returnAt: 0.6 },
  prices: { arrayPerKw: 700, generator: 400 },
}
const QUESTION = { month: 2, hours: 12, years: 1 }

function asked(changes: object = {}, files: HouseFiles = {}): StacksAnswer {
  return stacksAnswer(prepare(checkHouse({ ...PLAIN, ...changes }), files), files, QUESTION)
}

function step(answer: StacksAnswer, begin: string): NextStep {
  const found = answer.nextSteps.find(({ what }) => what.startsWith(begin))
  if (found === undefined) throw new Error(`no step ${begin}`)
  return found
}

/** As `ride` rides it, of its skies the one wanted. */
function rideUnderDull(changed: Prepared) {
  const { sky, batches } = runRideJob(changed, QUESTION, { sky: 'dull', years: null })
  const { horizon } = variantsOf(changed, QUESTION, 'dull').main!
  const month = { sky, batches: batches.main!, horizon }
  return skyFigures(changed, month, rideLoads(changed.demand), { hours: 12, winters: 10 })
}

/** Up to the hours that a ride follows. */
function expectRidden(found: NextStep, changes: object, files: HouseFiles = {}): void {
  const changed = prepare(checkHouse({ ...PLAIN, ...changes }), files)
  const dull = rideUnderDull(changed)
  expect(found.share).toBe(dull.share)
  for (const key of ['worstHours', 'p05Hours', 'medianHours'] as const) {
    expect(Math.min(found[key]!, dull.horizonHours), key).toBe(dull[key])
  }
}

describe('each step', () => {
  const answer = asked()

  it('a module', () => {
    expectRidden(step(answer, 'one module'), { stack: { ...PLAIN.stack, modules: 2 } })
  })

  it('an array twice as large, its inverter with it, at its price', () => {
    const twice = step(answer, 'roof 2 times')
    expect(twice.price).toBe(700 * 2)
    expect(step(answer, 'roof 1.5 times').price).toBe(700)
    expectRidden(twice, {
      arrays: [{ ...ROOF, peakKw: 4, inverter: { ...ROOF.inverter, ratedKw: 4 } }],
    })
  })

  it('a steeper array: square to the noon sun of February, 51 + 13 degrees', () => {
    // The declination in the middle of February is -13 degrees (handbook tables).
    const steep = step(answer, 'roof on a frame at 65°')
    expect(steep.price).toBeNull()
    expectRidden(steep, { arrays: [{ ...ROOF, tiltDeg: 65 }] })
  })

  it('the smallest invented generator that carries the critical loads, by hand, its tank only', () => {
    const set = step(answer, 'a generator of 2.2 kW started by hand (07:00 to 22:00')
    expect(set.price).toBe(400)
    expectRidden(set, {
      generator: {
        ...{ ratedKw: 2.2, tankL: 8.8, start: 'by hand' },
        litresPerHour: { none: 0.2 * 2.2, half: 0.35 * 2.2, full: 0.55 * 2.2 },
      },
      person: {},
    })
    expect(set.warnings.join(' ')).toContain('carbon monoxide')
  })

  it('the load that gives most, at no price; what gives up a critical load says so', () => {
    const steps = answer.nextSteps.filter(({ kind }) => kind === 'load')
    const loads = steps.toSorted((a, b) => a.what.localeCompare(b.what))
    // 120 W above 30 % of charge, or 60 W, or 150 W all the time: the pump gives most.
    expect(loads.map(({ what, price, givesUp }) => [what, price, givesUp])).toEqual([
      ['lamp off in a cut', 0, null],
      ['pump off in a cut', 0, 'pump'],
    ])
    expectRidden(loads[0]!, { loads: [PUMP, LINE, { ...LAMP, tier: 'gridOnly' }] })
    expectRidden(loads[1]!, { loads: [{ ...PUMP, tier: 'gridOnly' }, LINE, LAMP] })
    // Two lines: comfort off; critical to comfort or off.
    expect(answer.loadsTried).toBe(5)
    expect(answer.advice.filter((text) => text.startsWith('Take first'))[0]).not.toContain('pump')
    expect(answer.advice.join(' ')).toContain('Only if the customer can do without pump')
  })

  it('is sorted: hours for money, then without a price, then what is given up, then the rest', () => {
    const { comparedBy, nextSteps } = answer
    const rank = nextSteps.map(({ gained, pricePerHour, givesUp }) =>
      (gained[comparedBy] ?? 0) < 1 ? 3 : givesUp !== null ? 2 : pricePerHour === null ? 1 : 0,
    )
    expect(rank).toEqual(rank.toSorted())
    const priced = nextSteps
      .filter((_, i) => rank[i] === 0)
      .map(({ pricePerHour }) => pricePerHour!)
    expect(priced.length).toBeGreaterThan(1)
    expect(priced).toEqual(priced.toSorted((a, b) => a - b))
  })
})

describe('the step that costs nothing', () => {
  it('is taken first where a target is not met: fewer modules reach it then', () => {
    const loads = [{ ...PUMP, w: 120 }, LINE, LAMP]
    const plain = { ...PLAIN, loads, comfort: { dropBelow: 0.1, returnAt: 0.2 } }
    const withoutLamp = { ...plain, loads: [loads[0], LINE, { ...LAMP, tier: 'gridOnly' }] }
    const answerOf = (house: object) =>
      stacksAnswer(prepare(checkHouse(house)), {}, { month: 2, hours: 4, years: 1, share: 0.5 })
    const answer = answerOf(plain)
    // The house without its lamp, asked by itself, knows how many it needs.
    const { smallest, freeStep } = answerOf(withoutLamp)
    expect(freeStep).toBeNull()
    expect(answer.smallest).toBeGreaterThan(smallest!)
    expect(answer.freeStep).toEqual({ what: 'lamp off in a cut', smallest })
    expect(answer.advice.join(' ')).toContain(
      `With one step that costs nothing (lamp off in a cut) ${smallest} module`,
    )
  })
})

describe('what is never offered', () => {
  const offered = (changes: object) => {
    const { others, loads } = changesOf(prepare(checkHouse({ ...PLAIN, ...changes })), {}, 2)
    return [...others, ...loads].map(({ kind }) => kind)
  }

  it('a load on which health or a fire hangs, or the last critical one', () => {
    const loads = [
      { name: 'oxygen', tier: 'critical', w: 300 },
      { name: 'stove pump', tier: 'critical', w: 60 },
      { name: 'small fridge', tier: 'critical', w: 60, holdOver: { hours: 4, keeps: 'medicine' } },
    ]
    expect(offered({ loads })).not.toContain('load')
    expect(offered({ loads: [PUMP] })).not.toContain('load')
    expect(offered({ loads: [PUMP, LINE] })).toContain('load')
  })

  it('a generator where there is one', () => {
    const generator = {
      ...{ ratedKw: 2, tankL: 5, start: 'automatic' },
      litresPerHour: { none: 0.4, half: 0.7, full: 1.1 },
    }
    expect(offered({ generator })).not.toContain('generator')
    expect(offered({})).toContain('generator')
  })

  it('another tilt for an array that is steep already', () => {
    expect(offered({ arrays: [{ ...ROOF, tiltDeg: 70 }] })).not.toContain('tilt')
    expect(offered({})).toContain('tilt')
  })
})

it('without any light more sun adds nothing, and the answer says so', () => {
  const { nextSteps, advice } = stacksAnswer(
    prepare(checkHouse(PLAIN)),
    {},
    { ...QUESTION, sky: 'none' },
  )
  for (const { kind, gained } of nextSteps) {
    if (kind !== 'array' && kind !== 'tilt') continue
    expect(Object.values(gained)).toEqual([0, 0, 0, 0])
  }
  expect(advice.join(' ')).toContain('More sun adds nothing here in February (no sun)')
})

it('a logged array twice as large gives what a log of twice the power would', () => {
  const filesOf = (by: number): HouseFiles => {
    const kw = Float64Array.from({ length: 366 * 24 }, (_, h) =>
      h % 24 >= 10 && h % 24 < 14 ? (by * (Math.floor(h / 24) % 7)) / 10 : 0,
    )
    const startMs = Date.UTC(2024, 0, 1)
    const record: MeterRecord = { name: 'log.csv', startMs, stepMinutes: 60, kw, notes: [] }
    return { outputs: new Map([['log.csv', record]]) }
  }
  const arrays = [{ ...ROOF, file: 'log.csv' }]
  const house = checkHouse({ ...PLAIN, arrays })
  const { others } = changesOf(prepare(house, filesOf(1)), filesOf(1), 2)
  expect(others.map(({ kind }) => kind)).toEqual(['array', 'array', 'generator'])
  const [step, byHand] = [others[1]!.prepared(), prepare(house, filesOf(2))].map(rideUnderDull)
  for (const key of ['share', 'worstHours', 'p05Hours', 'medianHours', 'bestHours'] as const) {
    expect(step![key], key).toBe(byHand![key])
  }
})

it('prices of a house file are money, not below nothing', () => {
  expect(
    faultsOf(() => checkHouse({ ...PLAIN, prices: { arrayPerKw: -1, generator: -2 } })),
  ).toEqual([
    'prices.arrayPerKw: a number 0..1000000 [money]',
    'prices.generator: a number 0..1000000 [money]',
  ])
})

describe('each step for a generator by hand, and for a stack in the cold', () => {
  const LITRES = { none: 0.4, half: 0.7, full: 1.1 }
  const generator = { ratedKw: 2, tankL: 3, cansL: 2, start: 'by hand', litresPerHour: LITRES }
  const person = { minutes: 30, from: '08:00', to: '20:00' }
  const stack = { ...PLAIN.stack, place: 'shed', modulesMax: 1 }
  const changes = { generator, person, stack }
  const answer = asked(changes)

  it('more fuel, in cans where somebody pours them and in the tank where nobody does', () => {
    const more = step(answer, '20 l more fuel in cans, 25 l with the tank')
    expectRidden(more, { ...changes, generator: { ...generator, cansL: 22 } })
    expect(more.warnings.join(' ')).toContain('never in the living space')
    const alone = { generator: { ...generator, cansL: 0, start: 'automatic' } }
    const { others } = changesOf(prepare(checkHouse({ ...PLAIN, ...alone })), {}, 2)
    expect(others.map(({ what }) => what)).toContain('20 l more fuel in a larger tank, 23 l')
  })

  it('somebody at any hour, who is asked first, and what helps where nobody is woken', () => {
    const anyHour = step(answer, 'somebody to start the generator at any hour')
    expectRidden(anyHour, { ...changes, person: { ...person, from: '00:00', to: '24:00' } })
    expect(anyHour.price).toBe(0)
    expect(anyHour.warnings).toEqual(['It counts only if somebody has agreed to be woken.'])
    expect(answer.nextSteps[0]).toBe(anyHour)
    const instead = answer.advice.find((text) => text.startsWith('Where nobody has agreed'))
    expect(instead).toBeDefined()
    expect(instead).not.toContain('at any hour')
  })

  it('a set that starts by itself', () => {
    expectRidden(step(answer, 'a generator of the same size that starts by itself'), {
      ...changes,
      generator: { ...generator, start: 'automatic' },
    })
  })

  it('a warmer place', () => {
    expectRidden(step(answer, 'the battery in an attached garage, not in a shed'), {
      ...changes,
      stack: { ...stack, place: 'attached garage' },
    })
  })

  it('none of it where it is so already', () => {
    const kindsOf = (more: object) =>
      changesOf(prepare(checkHouse({ ...PLAIN, ...changes, ...more })), {}, 2).others.map(
        ({ kind }) => kind,
      )
    expect(kindsOf({})).toEqual(['array', 'array', 'tilt', 'place', 'fuel', 'person', 'start'])
    const settled = {
      generator: { ...generator, start: 'automatic' },
      stack: { ...stack, place: 'house' },
    }
    expect(kindsOf(settled)).toEqual(['array', 'array', 'tilt', 'fuel'])
    const awake = { person: { ...person, from: '00:00', to: '24:00' } }
    expect(kindsOf(awake)).toEqual(['array', 'array', 'tilt', 'place', 'fuel', 'start'])
  })
})
