// The energy law and the limits, in every minute of many random houses.

import {
  acForBattery,
  batteryKw,
  checkHouse,
  type House,
  inverterLossKw,
  lossBeyondIdle,
  type Plant,
  plantOf,
  type Trace,
} from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ByHand, DC_ARRAY, islandOf, live, plainHouse, solar } from '../plain-house.js'

const MINUTES = 2 * 1440
const LAW_KWH = 1e-9
/** Columns are rounded to 2^-37 kWh a minute, which is 4e-10 kW. */
const ROUNDING_KW = 1e-9

/** Steps of random length and height, mulberry32 behind them. */
function blocks(seed: number, longest: number, height: (u: number) => number): Float64Array {
  let state = seed | 0
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
  const out = new Float64Array(MINUTES)
  for (let i = 0; i < MINUTES; ) {
    const end = i + 1 + Math.floor(next() * longest)
    const value = height(next())
    while (i < Math.min(end, MINUTES)) out[i++] = value
  }
  return out
}

const share = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const randomHouse = fc
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
    const arrays = [
      ...(r.coupling === 'none' || r.coupling === 'dc' || r.coupling === 'both'
        ? []
        : [solar(r.coupling, r.waits)]),
      ...(r.coupling === 'both' ? [solar('throttles', r.waits)] : []),
      ...(r.coupling === 'dc' || r.coupling === 'both' ? [DC_ARRAY] : []),
    ]
    const ac = r.coupling !== 'none' && r.coupling !== 'dc'
    const dc = r.coupling === 'dc' || r.coupling === 'both'
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
    }
    const house: House = checkHouse(
      plainHouse({
        arrays,
        inverter: {
          ...{ ratedKva, roundTrip, idleW, chargeKw, whenEmpty, loadsOffAt, loadsBackAt },
          onOverload: r.onOverload,
        },
        stack: { module, modules: r.modules, health: r.health, heaterW: r.heaterW },
        ...(r.generator === 'none' ? {} : { generator, person: { minutes: 25 } }),
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
      minutes: MINUTES,
      critical: (i) => columns.critical[i]!,
      comfort: columns.comfort.map((kw) => (i: number) => kw[i]!),
      ac: (i) => columns.ac?.[i] ?? 0,
      dc: (i) => columns.dc?.[i] ?? 0,
      placeC: (hour) => columns.warmth[hour]!,
      ...(r.grid === 'gone' ? {} : { gridUp: (i: number) => columns.up[i] === 1 }),
    }
    return { given, startShare: r.startShare }
  })

/** What the law leaves over in a minute. [kWh] */
function residualKwh(t: Trace, i: number): number {
  const kw =
    t.solarUsedKw[i]! +
    t.generatorKw[i]! +
    t.gridKw[i]! -
    t.servedCriticalKw[i]! -
    t.servedComfortKw[i]! -
    t.lossKw[i]!
  return kw / 60 - (t.storedKwh[i]! - t.startStoredKwh[i]!)
}

/** Every rule that a minute of a trace breaks, by name. */
function broken(t: Trace, i: number, plant: Plant, house: House): string[] {
  const eps = ROUNDING_KW
  const onGrid = t.states[i] === 'grid'
  const standing = plant.standingKw + plant.heaterKw
  const rules: Record<string, boolean> = {
    'energy law': Math.abs(residualKwh(t, i)) <= LAW_KWH,
    'a minute starts where the one before ended':
      i === 0 || t.startStoredKwh[i] === t.storedKwh[i - 1],
    'nothing critical served that is not wanted':
      t.servedCriticalKw[i]! <= t.demandCriticalKw[i]! + eps,
    'nothing of comfort served that is not wanted':
      t.servedComfortKw[i]! <= t.demandComfortKw[i]! + eps,
    'served >= 0': t.servedCriticalKw[i]! >= 0 && t.servedComfortKw[i]! >= 0,
    'solar used <= available': t.solarUsedKw[i]! <= t.solarAvailableKw[i]! + eps,
    'solar used >= 0': t.solarUsedKw[i]! >= -eps,
    'generator >= 0': t.generatorKw[i]! >= -eps,
    'generator <= rated': t.generatorKw[i]! <= (house.generator?.ratedKw ?? 0) + eps,
    'no grid in a cut': onGrid || t.gridKw[i] === 0,
    'loss >= 0': t.lossKw[i]! >= -eps,
    'charge within the limit of the inverter': t.chargeKw[i]! <= plant.chargeAcKw + eps,
    'discharge within what is carried for a minute': t.dischargeKw[i]! <= plant.minuteKva + eps,
    'discharge within the rating for more than a minute':
      i === 0 ||
      t.dischargeKw[i]! <= plant.ratedKw + eps ||
      // A level served for its first minute may follow a heavier one.
      Math.min(t.dischargeKw[i]!, t.dischargeKw[i - 1]!) <= plant.ratedKw + eps,
    'never charge and discharge together': t.chargeKw[i] === 0 || t.dischargeKw[i] === 0,
    'charge and discharge >= 0': t.chargeKw[i]! >= 0 && t.dischargeKw[i]! >= 0,
    'stack charge limit': -t.batteryKw[i]! <= plant.chargeKw + eps,
    'stack discharge limit': t.batteryKw[i]! <= Math.max(plant.dischargeKw, standing) + eps,
    'stored >= 0': t.storedKwh[i]! >= 0,
    'stored <= capacity': t.storedKwh[i]! <= plant.usableKwh + 1e-10,
    'never generator and AC-coupled solar':
      t.generatorKw[i]! <= eps || !house.arrays.some((a) => a.inverter) || dcOnly(t, i, house),
    'fuel never grows': i === 0 || t.fuelL[i]! <= t.fuelL[i - 1]!,
    'nothing is NaN': !Number.isNaN(t.storedKwh[i]! + t.lossKw[i]! + t.fuelL[i]!),
  }
  return Object.keys(rules).filter((name) => !rules[name])
}

/** Whether what solar gives can all be DC-coupled: asked only of houses that have both. */
function dcOnly(t: Trace, i: number, house: House): boolean {
  return house.arrays.some((array) => array.inverter === undefined) || t.solarUsedKw[i]! === 0
}

describe('random houses over two days', () => {
  it('keep the energy law to 1e-9 kWh and every limit in every minute', () => {
    let minutes = 0
    const lived = new Set<string>()
    fc.assert(
      fc.property(randomHouse, ({ given, startShare }) => {
        const t = live(given, startShare)
        const { plant } = islandOf({ ...given, minutes: 1 })
        for (let i = 0; i < t.n; i++) {
          const faults = broken(t, i, plant, given.house)
          if (faults.length > 0)
            throw new Error(`minute ${i} (${t.states[i]}): ${faults.join('; ')}`)
          lived.add(t.states[i]!)
        }
        minutes += t.n
      }),
      { seed: 20250114, numRuns: 160, endOnFailure: true },
    )
    expect(minutes).toBe(160 * MINUTES)
    expect([...lived].sort()).toEqual([
      'grid',
      'island',
      'island, comfort in part',
      'island, critical only',
      'island, generator',
      'loads off, holding',
      'off, empty',
      'off, overload',
    ])
  })
})

describe('the inverter', () => {
  it('acForBattery inverts batteryKw, charging and discharging', () => {
    fc.assert(
      fc.property(
        share(0.7, 1),
        share(0, 0.03),
        share(-1, 1),
        share(0, 0.2),
        (roundTrip, self, p, standing) => {
          const rated = 5
          const idleW = 1000 * self * rated
          const plain = plainHouse({ inverter: { ratedKva: rated, idleW, roundTrip } })
          const plant = plantOf(checkHouse(plain), 1, 1)
          // Past the vertex more power into the inverter only makes more heat: not invertible.
          const most = plant.quadratic > 0 ? (1 - plant.linear) / (2 * plant.quadratic) : rated
          const acKw = Math.max(-0.999 * most, p * rated)
          const back = acForBattery(plant, batteryKw(plant, acKw, 0, standing), standing)
          expect(Math.abs(back - acKw)).toBeLessThan(1e-6)
        },
      ),
      { seed: 1, numRuns: 500 },
    )
  })

  // H. Schmidt and D. U. Sauer, Sonnenenergie 4, 43-47 (1996): typical set 0.0079, 0.01411, 0.0411
  // (the three from memory; the efficiencies follow from them).
  it.each([
    [0.05, 0.85167],
    [0.1, 0.91139],
    [0.2, 0.94177],
    [0.5, 0.95196],
    [1, 0.94064],
  ])('at %d of rating has the efficiency %d of the typical set', (p, efficiency) => {
    const rated = 4
    const plant: Plant = {
      ...plantOf(checkHouse(plainHouse()), 1, 1),
      ratedKw: rated,
      idleKw: 0.0079 * rated,
      linear: 0.01411,
      quadratic: 0.0411 / rated,
    }
    const acKw = p * rated
    expect(Math.abs(acKw / (acKw + inverterLossKw(plant, acKw)) - efficiency)).toBeLessThan(1e-5)
  })

  it.each([0.8, 0.87, 0.92])('there and back at a third of rating keeps %d', (roundTrip) => {
    const plain = plainHouse({ inverter: { ratedKva: 6, idleW: 60, roundTrip } })
    const plant = plantOf(checkHouse(plain), 1, 1)
    const p = 2
    const intoStack = p - inverterLossKw(plant, p)
    const outOfStack = p + inverterLossKw(plant, p)
    expect((intoStack / p) * (p / outOfStack)).toBeCloseTo(roundTrip, 12)
  })

  it('an idle draw above the whole stated loss leaves nothing for the rest', () => {
    expect(lossBeyondIdle(0.95, 0.05)).toEqual({ linear: 0, quadratic: 0 })
  })
})
