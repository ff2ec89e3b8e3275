// `load`: the table that is checked with the customer, against sums by hand.

import { describe, expect, it } from 'vitest'
import { folder, SAMPLES, SMALL_HOUSE, tideover } from './command.js'

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

describe('load of a house surveyed from the table of typical loads', async () => {
  const file = folder().write(
    'typical.yaml',
    `${SMALL_HOUSE}  - { name: fridge, like: fridge, w: 80 }
  - { name: kettle, like: kettle }
  - { name: shower, like: electric shower }
  - { name: car, like: car charger, charging: { kwhPerDay: 10 } }
`,
  )
  const { out } = await tideover('load', file)
  const line = (name: string): string[] =>
    out
      .split('\n')
      .find((each) => each.trim().startsWith(name))!
      .trim()
      .split(/\s+/)

  it('marks what the house does not state', () => {
    // 12 of 48 minutes; 80 W at 0.7, six times: 0.69 kVA.
    expect(line('fridge')).toEqual([
      ...['fridge*', '80', '6.0*', '0.48', '0.48', '0.08', '0.69*', 'L1', '4', 'h*'],
    ])
    // 6 of 3 minutes a day, 3 kW: 0.9 kWh.
    expect(line('kettle').slice(0, 4)).toEqual(['kettle*', '3000*', '0.3*', '0.90'])
    expect(out).toContain('* typical of its kind, not of this house')
  })

  it('says what was taken off the island, and counts the stated energy of the car', () => {
    expect(out.replaceAll(/\s+/g, ' ')).toContain(
      '- shower, car: taken off the island, as is usual',
    )
    expect(line('car').slice(3, 5)).toEqual(['10.00', '10.00'])
  })

  it('check, ride and trace take it too, and say so', async () => {
    for (const words of [['check'], ['ride', '--years', '1', '--hours', '2']]) {
      const answer = await tideover(words[0]!, file, ...words.slice(1), '--json')
      expect(answer.status).toBe(0)
      expect(JSON.parse(answer.out).warnings.join(' ')).toContain(
        'shower, car: taken off the island',
      )
    }
    const cut = ['trace', file, '--start', '2025-01-14T18:00', '--hours', '1']
    const [text, json] = await Promise.all([tideover(...cut), tideover(...cut, '--json')])
    expect(text.out).toContain('- shower, car: taken off the island')
    expect(JSON.parse(json.out).warnings.join(' ')).toContain('shower, car: taken off the island')
  })
})

describe('load --kinds', () => {
  it('prints every kind with its source, as text and as JSON', async () => {
    const [text, json] = await Promise.all([
      tideover('load', '--kinds'),
      tideover('load', '--kinds', '--json'),
    ])
    const { kinds } = JSON.parse(json.out) as { kinds: Row[] }
    expect(kinds.length).toBeGreaterThanOrEqual(35)
    for (const { kind, source } of kinds) {
      expect(text.out).toContain(`\n${String(kind)} `)
      expect(text.out.replaceAll(/\s+/g, ' ')).toContain(String(source))
    }
    expect([text.err, json.err]).toEqual(['', ''])
  })
})
