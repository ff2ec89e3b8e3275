// `load`: the table that is checked with the customer, against sums by hand.

import { describe, expect, it } from 'vitest'
import { SAMPLES, tideover } from './command.js'

interface Row {
  name: string
  [key: string]: unknown
}

describe('load of the croft', async () => {
  const { status, out } = await tideover('load', `${SAMPLES}croft.yaml`, '--json')
  const answer = JSON.parse(out)
  const row = (name: string): Row => answer.loads.find((each: Row) => each.name === name)

  it('is one JSON object, loads by tier in the order of the file', () => {
    expect(status).toBe(0)
    expect(Object.keys(answer)).toEqual([
      'house',
      'loads',
      'sums',
      'read',
      'slips',
      'warnings',
      'cautions',
    ])
    expect(answer.loads.map(({ name }: Row) => name)).toEqual([
      ...['boiler pump', 'boiler electronics', 'insulin fridge', 'router'],
      ...['kitchen lights', 'television', 'freezer', 'kettle', 'electric shower'],
    ])
  })

  it('tells hours and energy: 40 W for 2 and 7 hours are 0.36 kWh', () => {
    expect(row('kitchen lights').hoursADay).toBeCloseTo(9, 9)
    expect(row('kitchen lights').januaryKwhADay).toBeCloseTo(0.36, 4)
    // Steady, and only while it heats: 60 W for 24 hours, in July none.
    expect(row('boiler pump').januaryKwhADay).toBeCloseTo(1.44, 4)
    expect(row('boiler pump').julyKwhADay).toBe(0)
    // 90 W for 14 of 45 minutes.
    expect(row('insulin fridge').januaryKwhADay).toBeCloseTo((0.09 * 24 * 14) / 45, 2)
  })

  it('tells starts: 60 W at 0.8, four times, are 0.3 kVA', () => {
    expect(row('boiler pump').startKva).toBeCloseTo(0.3, 9)
    expect(row('kettle').startKva).toBeCloseTo(2.4 / 0.9, 9)
  })

  it('tells what may be off for how long, of critical loads only', () => {
    expect(row('boiler pump').toleratesMinutes).toBe(3)
    expect(row('kettle').toleratesMinutes).toBeNull()
  })

  it('sums up by tier', () => {
    const critical = 1.44 + 0.035 * 24 + (0.09 * 24 * 14) / 45 + 0.012 * 24
    expect(answer.sums.critical.januaryKwhADay).toBeCloseTo(critical, 2)
    expect(answer.sums.gridOnly.januaryKwhADay).toBeCloseTo(8.5 / 6, 3)
  })
})

describe('load of the bungalow', () => {
  it('counts what a meter contains once, and says so', async () => {
    const { out, err } = await tideover('load', `${SAMPLES}bungalow.yaml`)
    expect(err).toBe('')
    expect(out).toContain('MUST STAY ON')
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      'rest of the house holds oxygen concentrator, well pump, refrigerator, router: taken out of ' +
        'it, counted once.',
    )
    expect(out).toMatch(/rest of the house\s+meter\s+\d/)
  })
})
