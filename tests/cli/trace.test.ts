// `trace`, `series` and `schema`: columns, the energy law row by row, days of a clock change.

import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { Body, Equator, Horizon, Observer } from 'astronomy-engine'
import { describe, expect, it } from 'vitest'
import { columnsOf, folder, SAMPLES, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)

const FRIDGE_HOUSE = SMALL_HOUSE.replace(
  '{ name: pump, tier: critical, w: 390 }',
  '{ name: fridge, tier: critical, w: 90, cycle: { onMinutes: 15, offMinutes: 30 }, holdOver: { hours: 4 } }',
)

const TRACE_HEADER =
  'time_utc,demand_critical_kw,demand_comfort_kw,served_critical_kw,served_comfort_kw,' +
  'solar_available_kw,solar_used_kw,generator_kw,charge_kw,discharge_kw,battery_kw,grid_kw,' +
  'loss_kw,start_stored_kwh,stored_kwh,fuel_l,state'

describe.concurrent('what the gaps of a cut do', () => {
  it('a fridge in a dark 20-hour cut is lost four hours after the last minute with power', async () => {
    const house = files.write('fridge.yaml', FRIDGE_HOUSE)
    const words = ['trace', house, '--start', '2025-01-14T16:00Z', '--hours', '20']
    const { out } = await tideover(...words, '--json')
    const { events, loads } = JSON.parse(out)
    const dark = events.find(({ text }: { text: string }) => text.includes('Everything is off'))
    const [fridge] = loads
    expect(Date.parse(fridge.lostAt) - Date.parse(dark.time)).toBe(4 * 3600e3)
    // Newton: 20 - 15 (12 / 15)^(t / 4 h) at the end of the cut.
    const hours = (Date.UTC(2025, 0, 15, 12) - Date.parse(dark.time)) / 3600e3
    expect(fridge.most).toBeCloseTo(20 - 15 * (12 / 15) ** (hours / 4), 9)
    const text = (await tideover(...words)).out
    expect(text).toContain('fridge is lost: past 8 °C.')
    expect(text).toContain(`above 8 °C for ${(hours - 4).toFixed(1)} h`)
  })
})

describe.concurrent('trace --csv', () => {
  it.each([
    ['croft', '2025-01-14T07:00Z'],
    ['surgery', '2025-07-10T00:00Z'],
  ])(
    'has the columns of the contract, and each row of the %s keeps the energy law',
    async (name, start) => {
      const house = `${SAMPLES}${name}.yaml`
      const { status, out, err } = await tideover(
        ...['trace', house, '--start', start, '--hours', '48', '--csv', '-'],
      )
      expect([status, err]).toEqual([0, ''])
      const { header, rows } = columnsOf(out)
      // What a load keeps is shown behind the columns of the contract.
      const kept = { croft: 'insulin fridge', surgery: 'vaccine fridge' }[name]
      expect(header.join(',')).toBe(`${TRACE_HEADER},${kept}.temperature_c`)
      expect(rows).toHaveLength(48 * 60)
      const at = (row: string[], column: string): number => Number(row[header.indexOf(column)])
      let worst = 0
      let before = at(rows[0]!, 'start_stored_kwh')
      for (const [i, row] of rows.entries()) {
        const law =
          (at(row, 'solar_used_kw') +
            at(row, 'generator_kw') +
            at(row, 'grid_kw') -
            at(row, 'served_critical_kw') -
            at(row, 'served_comfort_kw') -
            at(row, 'loss_kw')) /
            60 -
          (at(row, 'stored_kwh') - at(row, 'start_stored_kwh'))
        worst = Math.max(worst, Math.abs(law))
        expect(at(row, 'start_stored_kwh')).toBe(before)
        before = at(row, 'stored_kwh')
        expect(Date.parse(row[0]!)).toBe(Date.parse(start) + i * 60_000)
      }
      expect(worst).toBeLessThanOrEqual(1e-9)
    },
  )

  it('writes a file, and then tells the story on standard output', async () => {
    const csv = `${files.path}/out.csv`
    const { out } = await tideover(
      ...['trace', small, '--start', '2025-01-14T18:00Z', '--hours', '1', '--csv', csv],
    )
    expect(out).toContain('The grid is gone.')
    let lines = 0
    for await (const _ of createInterface(createReadStream(csv))) lines++
    expect(lines).toBe(61)
  })
})

describe.concurrent('a cut across a clock change', () => {
  const lamp = SMALL_HOUSE.replace(
    'w: 390 }',
    'w: 390 }\n  - { name: lamp, tier: comfort, w: 100, at: ["06:00-07:00"] }',
  )
  const house = files.write('lamp.yaml', lamp)

  it.each([
    // The lamp burns at 06:00 by the clock: 05:00 UTC once summer time has begun, 06:00 once it ended.
    ['2025-03-29T20:00', '2025-03-29T20:00Z', '2025-03-30T05:00Z'],
    ['2025-10-25T20:00', '2025-10-25T19:00Z', '2025-10-26T06:00Z'],
  ])('%s by the clock on the wall', async (start, first, lit) => {
    const { status, out } = await tideover(
      ...['trace', house, '--start', start, '--hours', '12', '--csv', '-'],
    )
    expect(status).toBe(0)
    const { header, rows } = columnsOf(out)
    const lampKw = header.indexOf('demand_comfort_kw')
    expect(rows).toHaveLength(720)
    expect(rows[0]![0]).toBe(first)
    expect(rows.find((row) => Number(row[lampKw]) > 0)![0]).toBe(lit)
    expect(rows.filter((row) => Number(row[lampKw]) > 0)).toHaveLength(60)
  })

  it('an hour that comes twice begins with its first; an offset says which', async () => {
    const starts = ['2025-10-26T01:30', '2025-10-26T01:30+01:00', '2025-10-26T01:30+00:00']
    const found = await Promise.all(
      starts.map((start) => tideover('trace', small, '--start', start, '--hours', '1', '--json')),
    )
    expect(found.map(({ out }) => JSON.parse(out).start)).toEqual([
      '2025-10-26T00:30Z',
      '2025-10-26T00:30Z',
      '2025-10-26T01:30Z',
    ])
  })
})

describe.concurrent('series --csv', () => {
  it('has the columns of the contract, the sun of mid-minute and a day of 23 hours', async () => {
    const { status, out } = await tideover(
      ...['series', small, '--from', '2025-03-30', '--to', '2025-03-30', '--csv', '-'],
    )
    expect(status).toBe(0)
    const { header, rows } = columnsOf(out)
    expect(header.join(',')).toBe(
      'time_utc,sun_altitude_deg,sun_azimuth_deg,ghi_w_m2,dni_w_m2,dhi_w_m2,air_c,wind_m_s,' +
        'roof.poa_w_m2,roof.cell_c,roof.dc_kw,roof.ac_kw,critical_kw,comfort_kw,peak_kva',
    )
    expect(rows).toHaveLength(1380)
    // Truth: an ephemeris of its own, astronomy-engine, with refraction.
    const observer = new Observer(58.2, -6.4, 25)
    for (const i of [600, 720, 900]) {
      const moment = new Date(Date.parse(rows[i]![0]!) + 30_000)
      const { ra, dec } = Equator(Body.Sun, moment, observer, true, true)
      const { altitude, azimuth } = Horizon(moment, observer, ra, dec, 'normal')
      expect(Math.abs(Number(rows[i]![1]) - altitude)).toBeLessThan(0.02)
      expect(Math.abs(Number(rows[i]![2]) - azimuth)).toBeLessThan(0.02)
    }
    expect(Number(rows[0]![header.indexOf('peak_kva')])).toBeCloseTo(0.39 / 0.9, 5)
  })

  it('leaves empty what does not apply: AC power of a DC-coupled array', async () => {
    const { out } = await tideover(
      ...[
        'series',
        `${SAMPLES}surgery.yaml`,
        '--from',
        '2025-01-10',
        '--to',
        '2025-01-10',
        '--csv',
        '-',
      ],
    )
    const { header, rows } = columnsOf(out)
    const ac = header.indexOf('north roof.ac_kw')
    expect(rows.every((row) => row[ac] === '')).toBe(true)
    expect(rows.some((row) => Number(row[header.indexOf('north roof.dc_kw')]) > 1)).toBe(true)
  })

  it('feeds the trace: what shone on the array is what the trace had at hand', async () => {
    const [series, trace] = await Promise.all([
      tideover(
        ...['series', small, '--from', '2025-06-10', '--to', '2025-06-10'],
        ...['--sky', 'typical', '--synthetic-year', '4', '--csv', '-'],
      ),
      tideover(
        ...['trace', small, '--start', '2025-06-10T00:00', '--hours', '24'],
        ...['--sky', 'typical', '--synthetic-year', '4', '--csv', '-'],
      ),
    ])
    const [a, b] = [columnsOf(series.out), columnsOf(trace.out)]
    const [ac, at] = [a.header.indexOf('roof.ac_kw'), b.header.indexOf('solar_available_kw')]
    expect(b.rows.map((row) => row[at])).toEqual(a.rows.map((row) => row[ac]))
  })
})

describe('schema', () => {
  it('is the JSON Schema of a house file', async () => {
    const { status, out } = await tideover('schema')
    expect(status).toBe(0)
    const schema = JSON.parse(out)
    expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema')
    expect(schema.required).toEqual(expect.arrayContaining(['house', 'site', 'stack', 'loads']))
  })
})
