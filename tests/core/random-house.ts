// Houses at random, for laws that hold in all of them.

import { checkHouse, type House } from '@tideover/core'
import fc from 'fast-check'
import { type ByHand, DC_ARRAY, plainHouse, solar } from './plain-house.js'

/** Two days. */
export const RANDOM_MINUTES = 2 * 1440

/** Steps of random length and height, mulberry32 behind them. */
function blocks(seed: number, longest: number, height: (u: number) => number): Float64Array {
  let state = seed | 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const out = new Float64Array(RANDOM_MINUTES)
  for (let i = 0; i < RANDOM_MINUTES; ) {
    const end = i + 1 + Math.floor(next() * longest)
    const value = height(next())
    while (i < Math.min(end, RANDOM_MINUTES)) out[i++] = value
  }
  return out
}

/** Any number of a range, and as often a round one. */
export const share = (min: number, max: number): fc.Arbitrary<number> =>
  fc.oneof(
    fc.double({ min, max, noNaN: true }),
    fc.integer({ min: 0, max: 10 }).map((tenth) => min + ((max - min) * tenth) / 10),
  )

/** A house of every kind, with columns of random steps; round numbers among them. */
export const randomHouse = fc
  .record({
    seed: fc.integer(),
    coupling: fc.constantFrom(
      'none',
      'throttles',
      'trips',
      'throttles to a floor',
      'dc',
      'both',
    ) as fc.Arbitrary<'none' | 'throttles' | 'trips' | 'throttles to a floor' | 'dc' | 'both'>,
    waits: fc.constantFrom(0, 20, 60, 180, 300),
    second: fc.constantFrom('none', 'throttles', 'trips') as fc.Arbitrary<
      'none' | 'throttles' | 'trips'
    >,
    wakes: fc.constantFrom('by default', 'by nothing', 'by a person'),
    startFailsShare: fc.constantFrom(0, 0, 0.5),
    ratedKva: share(1, 12),
    roundTrip: share(0.75, 1),
    idleW: share(0, 150),
    chargeShare: share(0.3, 1),
    usableKwh: share(1, 8),
    moduleChargeKw: share(0.3, 6),
    dischargeKw: share(0.5, 8),
    modules: fc.integer({ min: 1, max: 3 }),
    health: share(0.5, 1),
    heaterW: fc.constantFrom(0, 50),
    whenEmpty: fc.constantFrom('collapses', 'holds', 'retries'),
    onOverload: fc.constantFrom('trips', 'sheds'),
    loadsOffAt: share(0.02, 0.2),
    sunKw: share(0, 8),
    loadKw: share(0.05, 1.5),
    steps: fc.integer({ min: 0, max: 3 }),
    coldest: fc.constantFrom(-20, 2, 8, 25, 40),
    startShare: share(0, 1),
    generator: fc.constantFrom('none', 'automatic', 'by hand'),
    stopAt: fc.constantFrom(0.5, 0.8, 1),
    grid: fc.constantFrom('gone', 'comes and goes') as fc.Arbitrary<'gone' | 'comes and goes'>,
  })
  .map((r): { given: ByHand; startShare: number } => {
    const ac = r.coupling !== 'none' && r.coupling !== 'dc'
    const dc = r.coupling === 'dc' || r.coupling === 'both'
    const arrays = [
      ...(r.coupling === 'none' || r.coupling === 'dc' || r.coupling === 'both'
        ? []
        : [solar(r.coupling, r.waits)]),
      ...(r.coupling === 'both' ? [solar('throttles', r.waits)] : []),
      ...(ac && r.second !== 'none' ? [{ ...solar(r.second, 240), name: 'second' }] : []),
      ...(dc ? [DC_ARRAY] : []),
    ]
    const wakesOn = { 'by default': undefined, 'by nothing': [], 'by a person': ['person'] }[
      r.wakes
    ]
    const { ratedKva, roundTrip, idleW, whenEmpty, loadsOffAt } = r
    const chargeKw = r.chargeShare * ratedKva
    const loadsBackAt = loadsOffAt + 0.1
    const module = {
      usableKwh: r.usableKwh,
      chargeKw: r.moduleChargeKw,
      dischargeKw: r.dischargeKw,
    }
    const generator = {
      ratedKw: 4,
      tankL: 6,
      litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
      start: r.generator,
      leastRunMinutes: 20,
      stopAt: r.stopAt,
      startFailsShare: r.startFailsShare,
    }
    const house: House = checkHouse(
      plainHouse({
        arrays,
        inverter: {
          ...{ ratedKva, roundTrip, idleW, chargeKw, whenEmpty, loadsOffAt, loadsBackAt },
          onOverload: r.onOverload,
          ...(wakesOn === undefined ? {} : { wakesOn }),
        },
        stack: { module, modules: r.modules, health: r.health, heaterW: r.heaterW },
        person: { minutes: 25 },
        ...(r.generator === 'none' ? {} : { generator }),
      }),
    )
    const sun = (more: number): Float64Array =>
      blocks(r.seed + more, 45, (u) => (u < 0.4 ? 0 : r.sunKw * u))
    const load = (more: number): Float64Array =>
      blocks(r.seed + more, 60, (u) => (u < 0.15 ? 0 : r.loadKw * u))
    const columns = {
      ac: ac ? sun(1) : null,
      dc: dc ? sun(2) : null,
      critical: load(3),
      comfort: Array.from({ length: r.steps }, (_, step) => load(4 + step)),
      up: blocks(r.seed + 9, 500, (u) => (u < 0.4 ? 1 : 0)),
      warmth: blocks(r.seed + 10, 12, (u) => r.coldest + 15 * u),
    }
    const given: ByHand = {
      house,
      minutes: RANDOM_MINUTES,
      critical: (i) => columns.critical[i]!,
      comfort: columns.comfort.map((kw) => (i: number) => kw[i]!),
      ac: [(i) => columns.ac?.[i] ?? 0, (i) => (columns.ac?.[i] ?? 0) / 3],
      dc: (i) => columns.dc?.[i] ?? 0,
      placeC: (hour) => columns.warmth[hour]!,
      ...(r.grid === 'gone' ? {} : { gridUp: (i: number) => columns.up[i] === 1 }),
    }
    return { given, startShare: r.startShare }
  })
