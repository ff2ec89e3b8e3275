// The load behind a net meter: import - export + solar output, by hand.

import { checkHouse, type Demand, demandOf, type MeterRecord } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const START = Date.UTC(2025, 0, 1)
const DAYS = 28

const array = (name: string, more: object = {}): object => ({
  ...{ name, peakKw: 4, tiltDeg: 30, azimuthDeg: 180 },
  ...{ file: `${name}.csv`, inverter: { ratedKw: 4 } },
  ...more,
})

const hours = (kw: (hour: number, day: number) => number, days = DAYS): Float64Array =>
  Float64Array.from({ length: days * 24 }, (_, i) => kw(i % 24, Math.floor(i / 24)))

function record(kw: Float64Array, more: Partial<MeterRecord> = {}): MeterRecord {
  return { name: 'm.csv', startMs: START, stepMinutes: 60, kw, notes: [], ...more }
}

/** Steady 0.5 kW of load; 2 kW from the roof at 10 to 14 h. */
const solarKw = hours((h) => (h >= 10 && h < 14 ? 2 : 0))
const net = record(
  hours((h) => (h >= 10 && h < 14 ? 0 : 0.5)),
  { exportKw: hours((h) => (h >= 10 && h < 14 ? 1.5 : 0)) },
)

function lived(
  meter: MeterRecord,
  logs: Record<string, MeterRecord>,
  { arrays = [array('roof')], load = {} }: { arrays?: object[]; load?: object } = {},
): Demand {
  const loads = [{ name: 'whole', tier: 'critical', file: 'm.csv', ...load }]
  const house = checkHouse(plainHouse({ arrays, loads }))
  return demandOf(house, UTC_2025, {
    meters: new Map([['m.csv', meter]]),
    outputs: new Map(Object.entries(logs)),
  })
}

const refused = (...given: Parameters<typeof lived>): string => refusal(() => lived(...given))

describe('import less export plus output', () => {
  it('is the load: 0.5 kW in every minute', () => {
    const { criticalKw, notes } = lived(net, { 'roof.csv': record(solarKw) })
    expect(new Set(criticalKw)).toEqual(new Set([0.5]))
    // 20 h x 0.5 kW, 4 h x 1.5 kW and 4 h x 2 kW of 28 days: 280 - 168 + 224 = 336.
    expect(notes[0]).toContain(
      'rebuilt in 672 intervals of 60 min: 280.0 kWh taken from the grid - 168.0 given to it + ' +
        '224.0 from roof = 336.0 kWh',
    )
  })

  it('adds up several arrays, and leaves out one that came later', () => {
    const half = record(solarKw.map((kw) => kw / 2))
    const arrays = [array('east'), array('west'), array('new', { file: undefined })]
    const load = { beforeArrays: ['new'] }
    const d = lived(net, { 'east.csv': half, 'west.csv': half }, { arrays, load })
    expect(new Set(d.criticalKw)).toEqual(new Set([0.5]))
  })

  it('takes means of a log on shorter steps, and goes by the longer step', () => {
    const quarters = new Float64Array(DAYS * 96)
    // 3, 3, 1 and 1 kW of the quarters: 2 kW of the hour.
    for (let i = 0; i < quarters.length; i++) {
      quarters[i] = solarKw[Math.floor(i / 4)]! * (i % 4 < 2 ? 1.5 : 0.5)
    }
    const finer = lived(net, { 'roof.csv': record(quarters, { stepMinutes: 15 }) })
    expect(new Set(finer.criticalKw)).toEqual(new Set([0.5]))
    const each = (kw: Float64Array): Float64Array =>
      Float64Array.from({ length: DAYS * 96 }, (_, i) => kw[Math.floor(i / 4)]!)
    const meter = { ...net, stepMinutes: 15, kw: each(net.kw), exportKw: each(net.exportKw!) }
    const coarser = lived(meter, { 'roof.csv': record(solarKw) })
    expect(coarser.notes[0]).toContain('intervals of 60 min')
    expect(new Set(coarser.criticalKw)).toEqual(new Set([0.5]))
  })

  it('leaves out days without a log, and says how much', () => {
    const week = record(solarKw.subarray(0, 7 * 24))
    const d = lived(net, { 'roof.csv': week })
    expect(d.grounds[0]!.days).toBe(7)
    expect(d.notes.join('\n')).toContain('504 intervals have no solar log and are left out')
  })

  it('clips and counts what a rounding register leaves slightly below zero', () => {
    const solar = solarKw.slice()
    solar[10] = 1.45
    const d = lived(net, { 'roof.csv': record(solar) })
    expect(d.criticalKw[10 * 60]).toBe(0)
    expect(d.notes).toContainEqual(
      'whole: 1 rebuilt intervals came out slightly below zero and are taken as 0 (0.05 kWh).',
    )
  })
})

describe('is refused', () => {
  const roof = { 'roof.csv': record(solarKw) }

  it('where an array has no log: the message names it', () => {
    const arrays = [array('roof'), array('barn', { file: undefined })]
    expect(refused(net, roof, { arrays })).toContain('a log of the AC output of barn over the same')
  })

  it('where no array could have given anything', () => {
    expect(refused(net, {}, { arrays: [] })).toContain('no AC-coupled array in the house file')
    const load = { beforeArrays: ['roof'] }
    expect(refused(net, roof, { load })).toContain('beforeArrays says its arrays are newer')
  })

  it('where the clock of the log is hours off', () => {
    const late = record(solarKw, { startMs: START + 3 * 3_600_000 })
    expect(refused(net, { 'roof.csv': late })).toMatch(
      /a load >= 0 once rebuilt \(are the clocks.* got 84 of 669 intervals below zero, the least -1\.50 kW at 2025-01-01T10:00Z/,
    )
  })

  it('where small shortfalls are many', () => {
    const short = record(solarKw.map((kw) => kw * 0.72))
    expect(refused(net, { 'roof.csv': short })).toContain('112 of 672 intervals below zero')
  })

  it('where log and meter are of different years', () => {
    const other = record(solarKw, { startMs: Date.UTC(2023, 0, 1) })
    expect(refused(net, { 'roof.csv': other })).toContain('got no interval that both cover')
  })
})

describe('beforeArrays', () => {
  const load = { name: 'whole', tier: 'critical', beforeArrays: ['roof'] }
  const check = (given: object, arrays = [array('roof')]): string =>
    refusal(() => checkHouse(plainHouse({ arrays, loads: [given] })))

  it('stands beside a meter file and names arrays', () => {
    expect(check({ ...load, w: 5 })).toContain(
      'loads[0].beforeArrays must be left out where no meter file is named',
    )
    expect(check({ ...load, file: 'm.csv', beforeArrays: ['rof'] })).toContain(
      'loads[0].beforeArrays[0] must be the name of an array, got "rof"',
    )
  })
})
