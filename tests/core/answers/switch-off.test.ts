// What to switch off: a lossless house without sun by hand, and one kettle two ways.

import {
  checkHouse,
  equip,
  monthRides,
  monthSky,
  prepare,
  rideLoads,
  type SwitchOffAnswer,
  skyFigures,
  switchOffAnswer,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse, solar } from '../plain-house.js'

/** So warm that the cold puts nothing out of reach (none above 25 °C, see the core's README). */
const WARM = { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(38) }
const COMFORT = { dropBelow: 0.11, returnAt: 0.3 }

const load = (name: string, tier: string, w: number) => ({ name, tier, w })

function answer(changes: object, question: object = {}): SwitchOffAnswer {
  const plain = plainHouse({ sky: WARM, comfort: COMFORT, ...changes })
  const prepared = prepare(checkHouse(plain))
  return switchOffAnswer(prepared, { month: 2, hours: 24, startSoc: 0.5, ...question })
}

/**
 * Minutes by hand: 10 kWh start at 5.0; all loads and 60 W of idle draw and electronics down to
 * 1.1 kWh, where comfort goes off, then the critical ones down to 1.0, where all goes off.
 */
const byHand = (allKw: number, criticalKw: number): number =>
  60 * (3.9 / (allKw + 0.06) + 0.1 / (criticalKw + 0.06))

describe('four loads on a lossless house without sun', () => {
  const loads = [
    load('pump', 'critical', 240),
    load('radio', 'critical', 50),
    load('fan', 'comfort', 30),
    load('lamp', 'comfort', 100),
  ]
  const found = answer({ loads })
  const row = (name: string) => found.loads.find((each) => each.name === name)!
  /** A ride ends on a whole minute, each of two spans a begun one. */
  const near = (hours: number | null | undefined, minutes: number) =>
    expect(Math.abs(60 * hours! - minutes)).toBeLessThanOrEqual(3)

  it('with everything on it lasts as by hand, from every start', () => {
    for (const hours of Object.values(found.base)) near(hours, byHand(0.42, 0.29))
  })

  it('a load off adds exactly what its energy is worth', () => {
    near(row('lamp').alone!.medianHours, byHand(0.32, 0.29) - byHand(0.42, 0.29))
    near(row('fan').alone!.medianHours, byHand(0.39, 0.29) - byHand(0.42, 0.29))
    near(row('lamp').alone!.worstHours, byHand(0.32, 0.29) - byHand(0.42, 0.29))
    expect(row('lamp').kwhADay).toBeCloseTo(2.4, 4)
  })

  it('the order: what adds most, then the next given that, then what must stay on', () => {
    expect(found.loads.map(({ name, place }) => [name, place])).toEqual([
      ['lamp', 1],
      ['fan', 2],
      ['pump', 3],
      ['radio', null],
    ])
    near(row('fan').adds!.medianHours, byHand(0.29, 0.29) - byHand(0.32, 0.29))
    near(row('fan').lasts!.medianHours, byHand(0.29, 0.29))
    near(row('pump').lasts!.medianHours, byHand(0.05, 0.05))
  })

  it('a load that must stay on is weighed by what the others gain', () => {
    near(row('pump').alone!.medianHours, byHand(0.18, 0.05) - byHand(0.42, 0.29))
    near(row('pump').aloneLasts!.medianHours, byHand(0.18, 0.05))
  })

  it('the only load that must stay on has nobody who gains', () => {
    const { loads: rows } = answer({ loads: [load('pump', 'critical', 240)] })
    expect(rows).toMatchObject([{ name: 'pump', alone: null, place: null }])
  })

  it('a comfort step that is empty leaves the others where they were', () => {
    // Two steps: 11 and 10.5 %. With the first load off the second still goes at 10.5 %.
    const steps = answer({
      loads: [
        load('pump', 'critical', 240),
        { ...load('fan', 'comfort', 300), dropOrder: 1 },
        { ...load('lamp', 'comfort', 100), dropOrder: 2 },
      ],
    })
    const lasts = steps.loads.find(({ name }) => name === 'fan')!.aloneLasts!
    near(lasts.medianHours, 60 * (3.95 / 0.4 + 0.05 / 0.3))
  })
})

describe('one event in the evening', () => {
  const kettle = ({ events }: SwitchOffAnswer) => events.find(({ name }) => name === 'kettle')!
  const pump = [load('pump', 'critical', 290)]

  it('a kettle costs its energy over the mean draw, and the rides say the same', () => {
    // 3 kW for 3 min of the table of typical loads are 0.15 kWh; 0.35 kW are drawn: 25.7 min.
    const found = kettle(answer({ loads: pump }))
    expect(found).toMatchObject({ carries: 'yes', by: 'rides', evenings: 28, overOn: 0 })
    expect(found.byEnergyMinutes).toBeCloseTo((60 * 0.15) / 0.35, 3)
    expect(Math.abs(found.byRidesMinutes! - (60 * 0.15) / 0.35)).toBeLessThanOrEqual(1)
    expect(found.costsMinutes).toBe(found.byRidesMinutes)
  })

  it('where rides are not seen to end, by energy alone', () => {
    const found = kettle(answer({ loads: [load('pump', 'critical', 20)] }, { startSoc: 'full' }))
    expect(found).toMatchObject({ by: 'energy', byRidesMinutes: null })
    expect(found.costsMinutes).toBeCloseTo((60 * 0.15) / 0.08, 2)
  })

  it('a shower of 8.5 kW on an inverter of 5 kVA is a no, and no minutes', () => {
    const { events } = answer({ loads: pump })
    expect(events.find(({ name }) => name === 'electric shower')).toMatchObject({
      carries: 'no',
      why: 'it takes 8.5 kVA, the battery inverter is rated 5 kVA',
      costsMinutes: null,
    })
  })

  it('a start that is too hard is a no as well', () => {
    const own = {
      ...{ ...load('kettle', 'comfort', 2000), at: ['07:00-07:04'] },
      ...{ startingMultiple: 6, powerFactor: 1 },
    }
    const found = kettle(answer({ loads: [...pump, own] }))
    expect(found).toMatchObject({ from: 'house', kw: 2, minutes: 4, carries: 'no' })
    expect(found.why).toBe('it takes 12 kVA in its start, the battery inverter carries 10 kVA')
  })

  it('beside 2.5 kW that is always on a kettle of 3 kW is too much, every evening', () => {
    // 2.5 kW at 0.9 are 2.8 kVA, and 3 beside them 5.8 of 5.
    const big = [load('heater', 'critical', 2500)]
    const stack = {
      ...{ module: { usableKwh: 40, chargeKw: 8, dischargeKw: 8 }, modules: 1, health: 1 },
      ...{ electronicsW: 10, selfDischargePerMonth: 0 },
    }
    const found = kettle(answer({ loads: big, stack }))
    expect(found).toMatchObject({ carries: 'not beside all that is on', overOn: 28, evenings: 28 })
    expect(found.roomKva).toBeCloseTo(2, 9)
  })
})

it('its base is what a ride of the same month says', () => {
  const plain = plainHouse({
    arrays: [solar('trips')],
    loads: [load('pump', 'critical', 200), load('lamp', 'comfort', 100)],
  })
  const prepared = prepare(checkHouse(plain))
  const question = { month: 3, hours: 24 }
  const { base } = switchOffAnswer(prepared, question)
  const choice = { kind: 'dull' as const, month: 3, cutHours: 24, years: 30, winters: 10, seed: 1 }
  const loads = rideLoads(prepared.demand)
  const rides = monthRides(prepared, monthSky(prepared, choice), equip(prepared, {}), loads, {
    ...question,
    horizon: 2880,
  })
  const figures = skyFigures(prepared, rides, loads, { hours: 24, winters: 10 })
  const { medianHours, p05Hours, worstHours } = figures
  expect(base).toEqual({ medianHours, p05Hours, worstHours })
})
