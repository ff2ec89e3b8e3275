// A meter at the grid of a house with solar: read as two columns, and the house rebuilt from it.
//
// Truth: G. Hebrail and A. Berard, Individual Household Electric Power Consumption, UCI Machine
// Learning Repository, data set 235, CC BY 4.0: the load of a house without solar. An array of our
// own is put beside it, so that what the meter would have shown is known by hand.

import { readFileSync } from 'node:fs'
import { calendarOf, checkHouse, demandOf, type MeterRecord } from '@tideover/core'
import { meterFromText } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../core/plain-house.js'
import { refusal } from './problems.js'

const read = (text: string, output = false) => meterFromText(text, 'm.csv', 'UTC', { output })

const HALF_HOURS = ['2024-06-01 12:00', '2024-06-01 12:30', '2024-06-01 13:00']
const table = (header: string, rows: string[]): string =>
  `time,${header}\n${rows.map((row, i) => `${HALF_HOURS[i]},${row}`).join('\n')}\n`

describe('what is given to the grid', () => {
  it('in a column of its own stands beside what is taken', () => {
    const record = read(table('import_kwh,export_kwh', ['0.2,0', '0,0.3', '0.1,0.1']))
    expect([...record.kw]).toEqual([0.4, 0, 0.2])
    expect([...record.exportKw!]).toEqual([0, 0.6, 0.2])
    // 0.3 and 0.1 kWh.
    expect(record.notes.join('\n')).toContain('0.4 kWh given to the grid')
  })

  it('may have a unit of its own, or none and then that of the other', () => {
    const watts = read(table('grid import kW,feed-in W', ['0.2,0', '0,300', '0.1,0']))
    expect([...watts.exportKw!]).toEqual([0, 0.3, 0])
    const bare = read(table('import_kwh,returned', ['0.2,0', '0,0.3', '0.1,0']))
    expect([...bare.exportKw!]).toEqual([0, 0.6, 0])
  })

  it('may be a register, as what is taken', () => {
    const text = table('import_total_kwh_register,export_total_kwh_register', [
      '5000.5,900',
      '5000.75,900',
      '5000.75,901.5',
    ])
    const record = read(text)
    expect([...record.kw]).toEqual([0.5, 0])
    expect([...record.exportKw!]).toEqual([0, 3])
  })

  it('is what lies below zero in a signed column', () => {
    const record = read(table('net_kw', ['0.5', '-1.5', '0']))
    expect([...record.kw]).toEqual([0.5, 0, 0])
    expect([...record.exportKw!]).toEqual([0, 1.5, 0])
    expect(record.notes).toContain('Below zero is taken for power given to the grid.')
  })

  it('is nothing where its column holds zeros only', () => {
    const record = read(table('import_kwh,export_kwh', ['0.2,0', '0.1,0', '0.1,0']))
    expect(record.exportKw).toBeUndefined()
  })

  it('beside a column of consumption: the load where it goes on, the import where it is nothing', () => {
    const goesOn = read(table('consumption_kwh,export_kwh', ['0.2,0', '0.1,0.3', '0.1,0.2']))
    expect(goesOn.exportKw).toBeUndefined()
    expect(goesOn.notes.join('\n')).toContain('goes on while power is given')
    const stops = read(table('consumption_kwh,export_kwh', ['0.2,0', '0,0.3', '0,0.2']))
    expect([...stops.exportKw!]).toEqual([0, 0.6, 0.4])
  })

  it('is asked for where two columns could be it', () => {
    const text = table('import_kwh,export_a_kwh,export_b_kwh', ['0.2,1,1', '0,1,1', '0,1,1'])
    expect(refusal(() => read(text))).toContain('got export_a_kwh, export_b_kwh')
  })

  it('has nothing to do with the log of an array, which may stand in the same file', () => {
    const text = table('import_kwh,export_kwh,solar_kwh', ['0.2,0,0.1', '0,0.3,0.5', '0,0.2,0.4'])
    const log = read(text, true)
    expect([...log.kw]).toEqual([0.2, 1, 0.8])
    expect(log.exportKw).toBeUndefined()
    expect(read(table('generated_kwh,temp', ['1,0', '2,0', '3,0']), true).kw[1]).toBe(4)
  })
})

describe('the log of an array', () => {
  // Hours from 6 to 18 h of three days; the second day is cut off at noon.
  const rows = (cut: boolean): string[] =>
    [1, 2, 3].flatMap((day) =>
      Array.from({ length: 13 }, (_, i) => i + 6)
        .filter((hour) => !(cut && day === 2 && hour > 12))
        .map((hour) => `2024-06-0${day} ${hour}:00,${hour === 6 || hour === 18 ? 0 : 2}`),
    )
  const log = (cut: boolean): MeterRecord => read(['time,ac_kw', ...rows(cut)].join('\n'), true)

  it('of an inverter that sleeps at night holds nothing there, and says so', () => {
    const { kw, notes } = log(false)
    // From 6 h on the first day: 11 hours of 2 kW, then 13 of nothing.
    expect([...kw.subarray(0, 25)]).toEqual([0, ...new Array(11).fill(2), ...new Array(13).fill(0)])
    expect(notes).toContain('2 nights without a reading, the inverter asleep: 0.')
  })

  it('that stops in full sun keeps its gap', () => {
    const { kw, notes } = log(true)
    expect(kw.subarray(31, 48).every((value) => Number.isNaN(value))).toBe(true)
    expect(notes).toContain('1 night without a reading, the inverter asleep: 0.')
  })
})

/** Quarter hours of the real house in 2008. [kW] */
function household(): number[] {
  const url = new URL('../../data-samples/household-2008-15min.csv', import.meta.url)
  const rows = readFileSync(url, 'utf8').trim().split('\n').slice(1)
  return rows.map((row) => Number(row.split(',')[1]))
}

/** Half a wave from 6 to 18 h, as high as day and quarter say. [kW] */
function output(i: number): number {
  const hour = (i % 96) / 4
  const high = [3.5, 2, 0.6][Math.floor(i / 96) % 3]!
  return Math.max(0, high * Math.sin((Math.PI * (hour - 6)) / 12))
}

const YEAR = calendarOf(2008, 'UTC')
const stamp = (i: number): string =>
  new Date(YEAR.startMs + i * 900_000).toISOString().slice(0, 16).replace('T', ' ')

describe('the real house with an array beside it', () => {
  const load = household()
  const file = [
    'time,import_kw,export_kw,solar_kw',
    ...load.map((kw, i) => {
      const net = kw - output(i)
      return `${stamp(i)},${Math.max(0, net)},${Math.max(0, -net)},${output(i)}`
    }),
  ].join('\n')
  const arrays = [
    {
      name: 'roof',
      peakKw: 4,
      tiltDeg: 30,
      azimuthDeg: 180,
      file: 'solar',
      inverter: { ratedKw: 4 },
    },
  ]
  const lived = (arrayList: object[], meter: MeterRecord, log?: MeterRecord) => {
    const loads = [{ name: 'whole', tier: 'critical', file: 'm.csv' }]
    const house = checkHouse(plainHouse({ year: 2008, arrays: arrayList, loads }))
    const outputs = new Map(log === undefined ? [] : [['solar', log] as const])
    return demandOf(house, YEAR, { meters: new Map([['m.csv', meter]]), outputs })
  }

  it('is rebuilt to what it is, in every quarter hour', () => {
    const meter = read(file)
    expect(meter.exportKw).toHaveLength(load.length)
    const rebuilt = lived(arrays, meter, read(file, true))
    const record = { name: 'm.csv', startMs: YEAR.startMs, stepMinutes: 15, notes: [] }
    const itself = lived([], { ...record, kw: Float64Array.from(load) })
    const [is, was] = [rebuilt, itself].map(({ criticalKw }) => criticalKw) as [
      Float64Array,
      Float64Array,
    ]
    let apart = 0
    for (let i = 0; i < YEAR.n; i += 15) {
      let sum = 0
      for (let m = i; m < i + 15; m++) sum += is[m]! - was[m]!
      apart = Math.max(apart, Math.abs(sum / 15))
    }
    // A step of the series grid: a sum of three decimals may round the other way.
    expect(apart).toBeLessThanOrEqual(1 / 1048576)
    const kwh = load.reduce((sum, kw) => sum + kw / 4, 0).toFixed(1)
    expect(rebuilt.notes[0]).toContain('rebuilt in 35136 intervals of 15 min')
    expect(rebuilt.notes[0]).toContain(`from roof = ${kwh} kWh`)
  })

  it('without a log of the array is refused, and told what would help', () => {
    const { file: _, ...bare } = arrays[0]!
    const refused = refusal(() => lived([bare], read(file)))
    expect(refused).toMatch(/^m\.csv must be a reading of what the house used/)
    expect(refused).toContain('a log of the AC output of roof over the same time (arrays[].file)')
    expect(refused).toMatch(/got a net meter: \d+ kWh given to the grid$/)
  })
})
