// A load that names its kind: what it takes, what wins, what is said.

import {
  checkHouse,
  demandOf,
  type House,
  type LoadInput,
  loadTable,
  prepare,
  rideAnswer,
  toleratedMinutes,
  typicalTable,
  usedDefaults,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { slipsOf } from '../../../packages/core/src/answers/slips.js'
import { faultsOf, plainHouse, UTC_2025 } from '../plain-house.js'

const PUMP = { name: 'pump', tier: 'critical', w: 60 }

const houseOf = (...loads: object[]): House => checkHouse(plainHouse({ loads: [PUMP, ...loads] }))
const loadOf = (load: object): LoadInput => houseOf({ name: 'it', ...load }).loads[1]!

/** Mean over the year. [W] */
function meanW(load: object): number {
  const { columns } = { columns: demandOf(houseOf({ name: 'it', ...load }), UTC_2025) }
  const kw = columns.critical[1]!.kw
  return (1000 * kw.reduce((sum, value) => sum + value, 0)) / kw.length
}

describe('what is left out', () => {
  it('comes from the row: a fridge-freezer draws what Ofgem measured, 38.5 W', () => {
    const load = loadOf({ like: 'fridge-freezer' })
    const { tier, w, taken } = load
    expect([tier, w, toleratedMinutes(load)]).toEqual(['critical', 125, 240])
    expect(taken).toEqual([
      ...['tier', 'w', 'cycle', 'powerFactor', 'startingMultiple', 'holdOver'],
    ])
    // 14 of 45 minutes of 125 W are 38.9; Ofgem's figure is 1 kWh in 26 h.
    expect(Math.abs(meanW({ like: 'fridge-freezer' }) - 1000 / 26)).toBeLessThan(1)
  })

  it('makes a house without one further field: every kind is a whole load', () => {
    const kinds = typicalTable().map(({ kind }) => ({ name: kind, like: kind }))
    const house = checkHouse(plainHouse({ loads: kinds }))
    expect(house.loads).toHaveLength(kinds.length)
    expect(slipsOf({ house })).toEqual([])
    const { demand } = prepare(house)
    for (const level of demand.peakKva) expect(level.every((kva) => kva >= 0)).toBe(true)
    for (const { kw } of demand.critical) expect(kw.some((value) => value > 0)).toBe(true)
  })
})

describe('what is stated wins', () => {
  it('field by field', () => {
    const { w, tier, cycle, taken } = loadOf({ like: 'fridge', w: 77, tier: 'comfort' })
    expect([w, tier, cycle]).toEqual([77, 'comfort', { onMinutes: 12, offMinutes: 36 }])
    expect(taken).not.toContain('w')
    expect(taken).not.toContain('tier')
  })

  it('and takes with it what it excludes', () => {
    const scheduled = loadOf({ like: 'kettle', at: ['07:00-07:05'] })
    expect([scheduled.events, scheduled.at]).toEqual([undefined, ['07:00-07:05']])
    const boiled = loadOf({ like: 'car charger', events: { perDay: 1, minutes: 60 } })
    expect([boiled.charging, boiled.at]).toEqual([undefined, undefined])
    const steady = loadOf({ like: 'heat pump', w: 900 })
    expect([steady.byAir, steady.w, steady.runs]).toEqual([undefined, 900, 'heating season'])
    const later = loadOf({ like: 'car charger', at: ['22:00-06:00'] })
    expect([later.charging, later.at]).toEqual([{ kwhPerDay: 7 }, ['22:00-06:00']])
    const plate = loadOf({ like: 'borehole pump', motorHp: 1, lockedRotorCode: 'L' })
    expect(plate.taken).not.toContain('startingMultiple')
  })

  it('a gap told by what the load keeps goes before the minutes of the table', () => {
    const { taken, holdOver } = loadOf({ like: 'alarm', holdOver: { hours: 4, keeps: 'food' } })
    expect(taken).not.toContain('toleratesMinutes')
    expect(holdOver?.hours).toBe(4)
    const told = loadOf({ like: 'fridge', toleratesMinutes: 90 })
    expect([told.holdOver, toleratedMinutes(told)]).toEqual([undefined, 90])
  })

  it('a meter file leaves tier, power factor and gap to the table', () => {
    const { taken, w } = loadOf({ like: 'fridge', file: 'fridge.csv' })
    expect([taken, w]).toEqual([['tier', 'powerFactor', 'holdOver'], undefined])
  })
})

describe('what is said', () => {
  const house = houseOf(
    { name: 'shower', like: 'electric shower' },
    { name: 'hob', like: 'hob', tier: 'comfort' },
    { name: 'mum’s machine', like: 'oxygen concentrator' },
  )

  it('in every output: what was taken off the island, and that values are typical', () => {
    const { notes } = prepare(house)
    expect(notes[0]).toBe(
      'shower: taken off the island, as is usual for the kind; off in a cut unless tier says ' +
        'otherwise.',
    )
    expect(notes[1]).toMatch(/^shower, hob, mum’s machine: typical values/)
    expect(prepare(houseOf()).notes.join()).not.toContain('typical')
  })

  it('in the load table: the fields, and the source of the row', () => {
    const { loads, cautions } = loadTable(prepare(house))
    const row = (name: string) => loads.find((each) => each.name === name)!
    expect(row('shower')).toMatchObject({ like: 'electric shower', tier: 'gridOnly' })
    expect(row('hob').taken).toEqual(['w', 'powerFactor', 'events'])
    expect(row('hob').source).toBe('common practice, no source')
    expect(row('pump')).toMatchObject({ like: null, taken: [], source: null })
    // By its kind, though its name does not tell.
    expect(cautions.join(' ')).toContain("Nobody's health rests on a simulation")
  })

  it('among the defaults an answer rests on, once a load', () => {
    const used = usedDefaults(plainHouse({ loads: [PUMP, { name: 'it', like: 'alarm' }] }))
    expect(used[0]).toEqual({
      path: 'loads[1].like',
      value: 'alarm: tier, w, powerFactor, toleratesMinutes',
      basis: 'common practice, no source',
    })
    expect(used.map(({ path }) => path)).not.toContain('loads[1].powerFactor')
    expect(used.map(({ path }) => path)).not.toContain('sky.airMarginK')
  })

  it('a gap from the table is no gap left out', () => {
    const plain = plainHouse({ loads: [PUMP, { name: 'it', like: 'fridge' }] })
    const question = { month: 1, hours: 1, years: 1 }
    const ride = rideAnswer(prepare(checkHouse(plain)), question, plain)
    expect(ride.warnings.join(' ')).toContain('pump: toleratesMinutes is left out')
  })
})

describe('what is refused', () => {
  const faults = (...loads: object[]): string[] => faultsOf(() => houseOf(...loads))

  it('a kind that is none, with those that are spelt alike', () => {
    const need = 'a kind of the table of typical loads'
    expect(faults({ name: 'it', like: 'ketle' })).toEqual([
      `loads[1].like: ${need} (did you mean kettle? load --kinds lists them)`,
    ])
    expect(faults({ name: 'it', like: 'deep freezer' })).toEqual([
      `loads[1].like: ${need} (did you mean freezer? load --kinds lists them)`,
    ])
    expect(faults({ name: 'it', like: 7 })).toEqual([
      `loads[1].like: ${need} (load --kinds lists them)`,
    ])
  })

  it('a load without tier and without kind', () => {
    expect(faults({ name: 'it', w: 10 })).toEqual([
      'loads[1].tier: one of critical, comfort, gridOnly (or a kind given in like)',
    ])
  })
})
