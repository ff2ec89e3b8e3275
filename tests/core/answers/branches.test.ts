// A generator that may not start: both ways weighed, by hand, against chance drawn many times, and
// against the plain answers of a set that always starts and of one that never does.

import {
  type BatchRides,
  checkHouse,
  equip,
  lastingShares,
  type MonthRides,
  monthCurve,
  monthRides,
  monthSky,
  monthWalks,
  plainGap,
  prepare,
  type RideLoad,
  riddenUnder,
  rideLoads,
  rideOfTrace,
  runRideJob,
  type Sky,
  shareFigures,
  skyFigures,
  startsFrom,
  startsOfMonth,
  traceCut,
  variantsOf,
  weighed,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse, solar, UTC_2025 } from '../plain-house.js'

const P = 0.1
const BURNS = { tankL: 60, litresPerHour: { none: 0.6, half: 0.8, full: 1.4 } }
const SET = { ratedKw: 2, start: 'automatic', readySeconds: 60, ...BURNS }

describe('weighed by hand', () => {
  // p = 0.25; rides in minutes of five starts of one hour of the clock:
  //   0 a later try fails, 1 all succeed, 2 the first fails, 3 the set changes nothing, 4 as 1.
  // Known are 0, 1 and 4, of which one met a later failure; 2 is not known.
  const chance = 0.25
  const batch = (minutes: readonly number[]): BatchRides => ({
    ...{ year: 0, from: 0, lostAtOnce: 0, windy: new Uint8Array(5) },
    without: new Uint16Array(5),
    rides: {
      minutes: Uint16Array.from(minutes),
      beyond: Uint8Array.from(minutes, (m) => (m === 60 ? 1 : 0)),
      endedBy: Int16Array.from(minutes, (m) => (m === 60 ? -1 : 0)),
      byLoad: [Uint16Array.from(minutes)],
      lostAfter: [Uint16Array.from(minutes)],
    },
  })
  const month: MonthRides = {
    sky: { kind: 'dull', years: 200, hasExtremes: true } as Sky,
    horizon: 60,
    batches: [batch([40, 60, 10, 5, 60])],
    branches: {
      chance,
      starts: [batch([60, 60, 60, 5, 60])],
      fails: [batch([10, 10, 10, 5, 10])],
    },
  }
  const prepared = {
    calendar: UTC_2025,
    house: { gateway: { reconnectSeconds: 0 } },
  } as ReturnType<typeof prepare>
  const load: RideLoad = {
    ...{ name: 'pump', consequence: plainGap(0) },
    ...{ wantedIn: new Int32Array(1440), wantedUpTo: null },
  }

  it('each branch gets its part, and all of them make five starts', () => {
    const weights = weighed(prepared, month).map((each) => [each.branch, ...each.weights!])
    // 0.75 · (1 + 1/3) = 1 for the later failure, 0.75 · (1 - 1/3) = 0.5 for the one not known.
    expect(weights).toEqual([
      ['drawn', 1, 0.75, 0, 1, 0.75],
      ['starts', 0, 0, 0.5, 0, 0],
      ['fails', 0.25, 0.25, 0.25, 0, 0.25],
    ])
  })

  it('share, hours and the curve are those of the weighed rides', () => {
    const found = skyFigures(prepared, month, [load], { hours: 0.5, winters: 10 })
    // 30 minutes last: 1 + 0.75 + 0.75 + 0.5 of 5.
    expect(found.share).toBeCloseTo(3 / 5, 12)
    expect(found.starts).toBe(5)
    // Rising: 5 min weighs 1, 10 min 1, 40 min 1, 60 min 2; place 0.5 · 4 = 2 is the third.
    expect([found.worstHours, found.medianHours, found.bestHours]).toEqual([5 / 60, 40 / 60, 1])
    expect(found.atLeastHours).toBe(true)
    expect(found.loads[0]).toMatchObject({ share: found.share, medianHours: 40 / 60 })
    expect(found.failedStarts).toEqual({
      chance,
      ...{ shareIfStarts: 4 / 5, shareIfFails: 0, worst: 'drawn' },
      lostShare: expect.closeTo(1 / 5, 12),
    })
  })

  it('where nothing of an hour is known, later tries are taken to succeed', () => {
    const { batches, branches } = month
    const unknown = { ...month, batches: branches!.fails }
    expect(weighed(prepared, unknown).map(({ weights }) => weights![0])).toEqual([0, 0.75, 0.25])
    expect(weighed(prepared, { batches })).toEqual([
      { ...batches[0], branch: 'drawn', weights: null },
    ])
  })
})

// 10 kWh new, 0.45 kW drawn in all, no sun, never cold: every cut is alike. From 45 % the set is
// wanted after 2.0 / 0.45 = 4.4 h, fills 5.5 kWh at 0.8 · 2 - 0.45 = 1.15 kW and is wanted again
// after 21.5 h and 38.5 h. Without its first start the loads are off after 3.5 / 0.45 = 7.8 h,
// without its second after 24.8 h.
const houseOf = (startFailsShare: number) =>
  prepare(
    checkHouse(
      plainHouse({
        sky: { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(35) },
        generator: {
          ...SET,
          startFailsShare,
        },
      }),
    ),
  )

it('comes to what weighing every try of a sample comes to', { timeout: 60_000 }, () => {
  // Sun that trips, somebody with hours and a tank to fill; two tries or three in 30 hours.
  const prepared = prepare(
    checkHouse(
      plainHouse({
        arrays: [solar('trips')],
        person: {},
        loads: [{ name: 'pump', tier: 'critical', w: 390, toleratesMinutes: 20 }],
        generator: { ...SET, start: 'by hand', startFailsShare: P },
      }),
    ),
  )
  const loads = rideLoads(prepared.demand)
  const span = { month: 2, hours: 30, horizon: 30 * 60 }
  const choice = { kind: 'dull', month: 2, cutHours: 30, years: 1, winters: 10, seed: 1 } as const
  const sky = monthSky(prepared, choice)
  const equipped = equip(prepared, {})
  const ridden = monthRides(prepared, sky, equipped, loads, span)
  const sampled = { hours: 30, everyMinutes: 60, branches: true }
  const walks = monthWalks(prepared, sky, [equipped], loads, sampled)[0]!
  const lasting = (startFailsShare: number): number => {
    const chances = { startFailsShare, hoursBetweenFailures: null }
    return lastingShares(prepared.calendar, walks, ridden.batches, span.horizon, chances).any!
  }
  const { shareByPattern, failedStarts } = skyFigures(prepared, ridden, loads, {
    ...{ hours: 30, winters: 10 },
  })
  const ifStarts = shareFigures(prepared, { batches: ridden.branches!.starts }, 30)
  const weighedLoss = ifStarts.shareByPattern.any! - shareByPattern.any!
  expect(failedStarts!.chance).toBe(P)
  expect(weighedLoss).toBeGreaterThan(0.02)
  // Luck is left in later tries alone: no more than if one try were drawn in each sampled cut.
  const error = Math.sqrt((P * (1 - P)) / walks.length)
  expect(Math.abs(weighedLoss - (lasting(0) - lasting(P)))).toBeLessThan(error)
})

describe('a house all of whose cuts are alike', { timeout: 60_000 }, () => {
  const [prepared, always, never] = [houseOf(P), houseOf(0), houseOf(1)]
  const loads = rideLoads(prepared.demand)
  const span = { month: 2, hours: 24, horizon: 30 * 60 }
  const choice = { kind: 'none', month: 2, cutHours: 24, years: 1, winters: 10, seed: 1 } as const
  const sky = monthSky(prepared, choice)
  const ridden = monthRides(prepared, sky, equip(prepared, {}), loads, span)
  const figuresAt = (hours: number, month: MonthRides = ridden) =>
    skyFigures(prepared, month, loads, { hours, winters: 10 })
  const starts = 28 * 1440

  it('the branches are the plain rides of a set that always starts and of one that never does', () => {
    for (const [plain, batches] of [
      [always, ridden.branches!.starts],
      [never, ridden.branches!.fails],
    ] as const) {
      const alone = monthRides(plain, sky, equip(plain, {}), loads, span)
      expect(alone.branches).toBeUndefined()
      expect(alone.batches).toEqual(batches)
      expect(figuresAt(24, alone)).not.toHaveProperty('failedStarts')
    }
  })

  it('a cut that needs one start lasts in 1 - p, whatever the luck', () => {
    const found = figuresAt(24)
    expect(found.shareByPattern.any).toBe(1 - P)
    expect(found.failedStarts).toMatchObject({ chance: P, shareIfStarts: 1, shareIfFails: 0 })
    expect(found.failedStarts!.lostShare).toBe(P)
    // 1 in 10 ends with the first start: so does the shortest, and 1 in 20.
    expect(Math.abs(found.p05Hours - 3.5 / 0.45)).toBeLessThan(2 / 60)
    expect(found.worstHours).toBe(found.p05Hours)
    expect(found.medianHours).toBeGreaterThan(24)
  })

  it('drawn many times it comes to the same', () => {
    // The luck of a minute is that of one start: one binomial draw a start. Four standard errors.
    const drawn = { ...ridden, branches: undefined } as unknown as MonthRides
    const error = Math.sqrt((P * (1 - P)) / starts)
    const share = figuresAt(24, drawn).shareByPattern.any!
    expect(share).not.toBe(figuresAt(24).shareByPattern.any)
    expect(Math.abs(share - (1 - P))).toBeLessThan(4 * error)
  })

  it('a cut that needs two starts lasts in (1 - p)²', () => {
    // The second start is drawn. A minute is the first try of one cut and the second of another,
    // so the variance is at most twice the binomial one.
    const q = (1 - P) ** 2
    const error = Math.sqrt((2 * q * (1 - q)) / starts)
    expect(Math.abs(figuresAt(28).shareByPattern.any! - q)).toBeLessThan(4 * error)
  })

  it('the curve of the month agrees, and the rides of a job put together', () => {
    const question = { month: 2, hours: 24, years: 1, sky: 'none' } as const
    const job = runRideJob(prepared, question, { sky: 'none', years: null })
    const variants = variantsOf(prepared, question, 'none')
    const whole = (name: string) => riddenUnder([job], 'none', name, variants[name]!)!
    // Followed further, so that later failures of other cuts are known.
    expect(figuresAt(24, whole('main')).share).toBeCloseTo(figuresAt(24).share!, 9)
    expect(figuresAt(24, whole('bare')).share).toBe(0)
    expect(whole('bare').branches).toBeUndefined()
    const { byPattern } = monthCurve(prepared, question, 'none', [0, 4, 24])
    expect([...byPattern.any.share.slice(0, 2)]).toEqual([1, 1])
    expect(byPattern.any.share[2]).toBe(1 - P)
    expect(byPattern.any.starts).toBe(starts)
  })

  it('rows of single starts stay as drawn, and say so', () => {
    const question = { hours: 24, sky: 'none' } as const
    const rows = startsOfMonth(prepared, question, 2)
    expect(rows.branches).toBeUndefined()
    const { figures, warnings } = startsFrom(prepared, question, [rows], 2)
    const whole = { ...ridden, branches: undefined } as unknown as MonthRides
    expect(figures.share).toBe(figuresAt(24, whole).share)
    expect(warnings.join(' ')).toContain('Rows are told as the luck of each minute')
    const sure = startsFrom(always, question, [rows], 2).warnings.join(' ')
    expect(sure).not.toContain('luck')
  })

  it('a trace shows the worst ride again, told how the set is to start', () => {
    const { worstStart, worstYear, worstHours, failedStarts } = figuresAt(24)
    const traced = (startFails: number) =>
      rideOfTrace(
        traceCut(prepared, {
          ...{ startMs: Date.parse(worstStart!), hours: 30, sky: 'none', startFails },
          syntheticYear: worstYear!,
        }),
      )?.minutes
    expect(failedStarts!.worst).toBe('fails')
    expect(traced(1)).toBe(Math.round(60 * worstHours!))
    expect(traced(0)).toBeUndefined()
  })

  it('a share of starts outside 0..1, or without a generator, is refused', () => {
    expect(() => equip(prepared, { startFails: 1.5 })).toThrow(
      'start-fails must be a number 0..1 [share of 1], got 1.5',
    )
    const bare = prepare(checkHouse(plainHouse()))
    expect(() => equip(bare, { startFails: 1 })).toThrow('start-fails must be left out')
  })
})
