// From this minute: hours by hand, the same as a trace, and the last minute for the cord.

import {
  checkHouse,
  firstOf,
  lossesOf,
  type NowAnswer,
  newState,
  nowAnswer,
  onGrid,
  onHousesYear,
  type Prepared,
  prepare,
  Runs,
  rideLoads,
  step,
  traceCut,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { faultsOf, plainHouse, solar, UTC_2025 } from '../plain-house.js'

/** So warm that the cold puts nothing out of reach. */
const WARM = { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(38) }
const EVENING = Date.UTC(2025, 0, 14, 18)
const PERSON = { minutes: 30, from: '07:00', to: '22:00' }
const GENERATOR = {
  ...{ ratedKw: 3, tankL: 12, cansL: 20, start: 'by hand', readySeconds: 140 },
  litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
}

const ready = (changes: object): Prepared =>
  prepare(checkHouse(plainHouse({ sky: WARM, ...changes })))
const asked = (prepared: Prepared, soc: number): NowAnswer =>
  nowAnswer(prepared, { atMs: EVENING, soc })

describe('a lossless house without sun', () => {
  // 55 % less 5 points of 10 kWh are 5.0; 0.39 and 0.06 kW down to 1.0: 533.3 min.
  const found = asked(ready({}), 0.55)

  it('lasts the energy above its lower limit over the load', () => {
    expect(found.takenSoc).toBeCloseTo(0.5, 12)
    for (const { lasts } of Object.values(found.skies)) {
      expect(lasts.givesOutAt).toBe(Math.ceil((60 * 4) / 0.45))
      expect(lasts.hours * 60).toBeCloseTo(534, 9)
      expect(lasts.first).toEqual({ name: 'pump', lostAt: 534 })
    }
  })

  it('without a generator there is nothing to start', () => {
    expect(found.skies.dull).toMatchObject({ batteryAlone: null, start: null, startInHours: null })
  })

  it('a load off from now adds what its energy is worth', () => {
    // Comfort off at 1.1 kWh: 3.9 / 0.45 + 0.1 / 0.35 h with the lamp, 4 / 0.35 h without it.
    const loads = [
      { name: 'pump', tier: 'critical', w: 290 },
      { name: 'lamp', tier: 'comfort', w: 100 },
    ]
    const { switchOff, allThatMayGo } = asked(
      ready({ loads, comfort: { dropBelow: 0.11, returnAt: 0.3 } }),
      0.55,
    )
    const minutes = 60 * (4 / 0.35 - 3.9 / 0.45 - 0.1 / 0.35)
    expect(switchOff).toMatchObject([{ name: 'lamp', tier: 'comfort', beyond: false }])
    expect(Math.abs(60 * switchOff[0]!.addsHours - minutes)).toBeLessThanOrEqual(2)
    expect(allThatMayGo!.addsHours).toBe(switchOff[0]!.addsHours)
  })

  it('the changeover is past: what would have been lost in it is on', () => {
    // 3 kW of comfort load and 2.4 running at the changeover are more than 5 kVA; at 35 % the
    // comfort load has been off since 40 %.
    const loads = [
      { name: 'pump', tier: 'critical', w: 2400, powerFactor: 1 },
      { name: 'heater', tier: 'comfort', w: 3000, powerFactor: 1 },
    ]
    const prepared = ready({ loads })
    expect(traceCut(prepared, { startMs: EVENING, hours: 1, startSoc: 0.35 }).trace.states[0]).toBe(
      'off, overload',
    )
    const { lasts } = asked(prepared, 0.4).skies.dull
    expect(lasts.givesOutAt).toBe(Math.ceil((60 * 2.5) / 2.46))
  })

  it('at its lower limit it is off from the first minute', () => {
    const { lasts } = asked(ready({}), 0.15).skies.dull
    expect(lasts).toMatchObject({ hours: 0, givesOutAt: 0 })
  })
})

describe('a house with sun, comfort loads and a generator with a cord', () => {
  const prepared = prepare(
    checkHouse(
      plainHouse({
        arrays: [solar('trips')],
        generator: GENERATOR,
        person: PERSON,
        loads: [
          { name: 'pump', tier: 'critical', w: 290, toleratesMinutes: 3 },
          { name: 'fridge', tier: 'critical', w: 90, holdOver: { hours: 4 } },
          { name: 'lamp', tier: 'comfort', w: 200, at: ['16:00-23:00'] },
        ],
      }),
    ),
  )
  const found = asked(prepared, 0.62)
  const soc = 0.62 - 0.05

  it.each(['dull', 'none', 'clear'] as const)('is a trace from that minute: %s', (sky) => {
    const question = { startMs: EVENING, hours: 48, startSoc: soc, sky }
    const { lasts, batteryAlone } = found.skies[sky]
    for (const [mine, generator] of [
      [lasts, true],
      [batteryAlone!, false],
    ] as const) {
      const { trace, courses, compiled } = traceCut(prepared, { ...question, generator })
      const lost = (at: number | null) => (at === null || at >= trace.n ? null : at)
      expect(mine.loads.map(({ lostAt }) => lost(lostAt))).toEqual(
        courses.map(({ lostAt }) => lostAt),
      )
      const down = trace.levels.findIndex((level) => level > compiled.rules.lastLevel)
      expect(mine.givesOutAt).toBe(down)
      expect(mine.sunAt).toBe(
        sky === 'none' ? null : trace.solarAvailableKw.findIndex((kw) => kw > 0.05),
      )
    }
  })

  it('the log of the evening says what goes off', () => {
    const { batteryAlone } = found.skies.dull
    const at = batteryAlone!.comfortOffAt!
    expect(batteryAlone!.events.find(({ minute }) => minute === at)!.text).toMatch(
      /^Comfort loads off/,
    )
  })

  it.each(['dull', 'none'] as const)(
    'the cord pulled in the latest minute saves the pump, one later does not: %s',
    (sky) => {
      const { start, batteryAlone } = found.skies[sky]
      // 140 s are three whole minutes, and the pump bears three.
      expect(start!.at).toBe(batteryAlone!.givesOutAt! - 3 + 3)
      expect(walked(prepared, sky, soc, start!.at)).toBeNull()
      expect(walked(prepared, sky, soc, start!.at + 1)).not.toBeNull()
      expect(start!.powerAt).toBe(start!.at + 3)
    },
  )

  it('somebody called in their hours goes by 21:59 and pulls it half an hour later', () => {
    const { startInHours } = found.skies.dull
    expect(startInHours).toMatchObject({ goAt: 239, at: 269, powerAt: 272 })
  })

  it('its fuel: what was burnt and what is left are what was there', () => {
    const { burntL, fuelLeftL, ranHours } = found.skies.dull.start!
    expect(burntL + fuelLeftL).toBeCloseTo(32, 9)
    // Between what it burns without load and at full load.
    expect(burntL / ranHours).toBeGreaterThan(0.6)
    expect(burntL / ranHours).toBeLessThan(1.5)
  })
})

describe('the latest start', () => {
  const withSet = (generator: object, soc = 0.55, more: object = {}) =>
    asked(ready({ generator, person: PERSON, ...more }), soc).skies.dull

  it('of a load that bears no gap is the time to power before the loss, by hand', () => {
    const { start } = withSet(GENERATOR)
    expect(start).toMatchObject({ at: 534 - 3, powerAt: 534 })
  })

  it('runs dry when its tank is, where there are no cans', () => {
    // 3 kW x 0.8 charge 2 kW of stack; a tank of 1 l lasts an hour or so.
    const small = { ...GENERATOR, tankL: 1, cansL: 0 }
    const { start } = withSet(small)
    const hours = (start!.fuelOutAt! - start!.powerAt) / 60
    expect(hours).toBeGreaterThan(1 / 1.5)
    expect(hours).toBeLessThan(1 / 0.6)
    expect(start!.fuelLeftL).toBe(0)
    expect(start!.nextLossAt).toBeGreaterThan(start!.fuelOutAt!)
  })

  it('there is none for a set that the load stalls, and none is needed where nothing is lost', () => {
    const weak = withSet({ ...GENERATOR, ratedKw: 0.3 })
    expect(weak.start).toBeNull()
    const loads = [{ name: 'radio', tier: 'critical', w: 20 }]
    const long = withSet(GENERATOR, 1, { loads })
    expect(long.batteryAlone!.givesOutAt).toBeNull()
    expect(long.start).toBeNull()
  })

  it('chance is left out of it: a set that fails every start is asked as one that starts', () => {
    const unlucky = { ...GENERATOR, startFailsShare: 1 }
    expect(withSet(unlucky).start!.at).toBe(531)
  })
})

/**
 * First loss up to the end of the least run (30 min by default) of a set that somebody starts in a
 * minute, walked with `step` alone; null where none.
 */
function walked(prepared: Prepared, sky: 'dull' | 'none', soc: number, at: number): number | null {
  const question = { startMs: EVENING, hours: 48, startSoc: soc, sky }
  const { columns, rules, ...rest } = traceCut(prepared, question).compiled
  const state = newState(rules, onGrid(soc * rest.plant.usableKwh))
  state.outOfOrder = true
  const levels = new Uint8Array(at + 40)
  for (let i = 0; i < levels.length; i++) {
    if (i === at) state.outOfOrder = false
    // Called in minute `at`: so it stands at its end, three minutes before its power.
    step(state, i, columns, rules)
    if (i === at) Object.assign(state, { generator: Runs.starting, generatorFrom: at + 3 })
    levels[i] = state.level
  }
  const loads = rideLoads(prepared.demand)
  return firstOf(lossesOf(levels, rules, loads, columns.from))?.at ?? null
}

describe('the date', () => {
  const london = { year: 2025, zone: 'Europe/London' }

  it("is taken onto the house's year by month, day and the clock on the wall", () => {
    const there = Object.fromEntries(
      // An ordinary day; one after the clock change of its own year; a day that 2025 lacks; seconds.
      ['2026-07-01T17:00Z', '2026-03-29T17:00Z', '2024-02-29T18:00Z', '2025-07-01T17:00:59Z'].map(
        (at) => [at, new Date(onHousesYear(london, Date.parse(at))).toISOString()],
      ),
    )
    expect(there).toEqual({
      '2026-07-01T17:00Z': '2025-07-01T17:00:00.000Z',
      '2026-03-29T17:00Z': '2025-03-29T18:00:00.000Z',
      '2024-02-29T18:00Z': '2025-02-28T18:00:00.000Z',
      '2025-07-01T17:00:59Z': '2025-07-01T17:00:00.000Z',
    })
  })

  it('another year is lived as that of the house, and said', () => {
    const prepared = ready({})
    const there = nowAnswer(prepared, { atMs: Date.UTC(2031, 0, 14, 18), soc: 0.55 })
    const here = asked(prepared, 0.55)
    expect([there.otherYear, here.otherYear]).toEqual([true, false])
    expect(there).toEqual({ ...here, otherYear: true })
    expect(UTC_2025.startMs + here.minute * 60000).toBe(EVENING)
  })
})

it('a charge that is no share is refused', () => {
  const prepared = ready({})
  const need = 'soc: a number 0..1 [share of 1]'
  const faults = [62, -0.1, Number.NaN].flatMap((soc) => faultsOf(() => asked(prepared, soc)))
  expect(faults).toEqual([`${need}; 62 % is written 0.62`, need, need])
})
