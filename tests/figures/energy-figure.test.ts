import { fileURLToPath } from 'node:url'
import { energyLedger, prepare, traceCut } from '@tideover/core'
import { energyFigure, energyRows, type NamedLedger, type Trace } from '@tideover/figures'
import { loadHouse } from '@tideover/files'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

/** Of ours: 2 + 5 + 1 = 3 + 2.5 + 1.4 + 0.1 + 1 kWh. */
const BY_HAND: NamedLedger = {
  name: 'by hand',
  energy: {
    startKwh: 2,
    solarKwh: 5,
    generatorKwh: 1,
    criticalKwh: 3,
    comfortKwh: 2.5,
    standingKwh: 1.4,
    conversionKwh: 0.1,
    leftKwh: 1,
  },
}

/** Thirds of a kilowatt-hour: each is rounded, their sum has to be the sum all the same. */
const THIRDS: NamedLedger = {
  name: 'thirds',
  energy: {
    startKwh: 1 / 3,
    solarKwh: 1 / 3,
    generatorKwh: 1 / 3,
    criticalKwh: 1 / 6,
    comfortKwh: 1 / 6,
    standingKwh: 1 / 6,
    conversionKwh: 1 / 6,
    leftKwh: 1 / 3,
  },
}

type Bars = Trace & { x: number[]; base: number[]; y: number[]; text: string[] }

const CAME = ['at the start', 'sun', 'generator']
const barsOf = (cuts: NamedLedger[]) => energyFigure(cuts).data as Bars[]

describe('where the energy of a cut went', () => {
  it('sets each part on the end of the one before, both bars as long as all there was', () => {
    const bars = barsOf([BY_HAND])
    const [came, went] = [bars.slice(0, 3), bars.slice(3)]
    expect(came.map(({ name }) => name)).toEqual(CAME)
    expect(came.map(({ base, x }) => [base[0], x[0]])).toEqual([
      [0, 2],
      [2, 5],
      [7, 1],
    ])
    expect(went.map(({ base, x }) => [base[0], x[0]])).toEqual([
      [0, 3],
      [3, 2.5],
      [5.5, 1.4],
      [6.9, 0.1],
      [7, 1],
    ])
  })

  it('writes name and value where they fit on a phone, the value alone, or nothing', () => {
    // 318 px for 8 kWh: 2.5 kWh are 99 px, too few for 18 letters of some 6 px; 0.1 are 4 px.
    const text = Object.fromEntries(barsOf([BY_HAND]).map((one) => [one.name, one.text[0]]))
    expect(text).toMatchObject({
      sun: 'sun 5.0',
      'while it lasts': '2.5',
      'lost in the inverter': '',
    })
  })

  it('has an axis in kWh that ends with the most that any cut had', () => {
    const { xaxis } = energyFigure([THIRDS, BY_HAND]).layout as unknown as {
      xaxis: { title: { text: string }; range: number[] }
    }
    expect(xaxis.title.text).toBe('energy [kWh]')
    expect(xaxis.range).toEqual([0, 8])
  })
})

describe('its table', () => {
  const sums = (cut: NamedLedger) => {
    const rows = energyRows([cut])
    const value = (row: Record<string, string | number>) => row[`${cut.name} [kWh]`] as number
    const side = (word: string) => rows.filter(({ what }) => String(what).startsWith(`${word}: `))
    const total = (word: string) => value(rows.find(({ what }) => what === `${word} in all`)!)
    return (['came', 'went'] as const).map((word) => ({
      parts: Math.round(100 * side(word).reduce((sum, row) => sum + value(row), 0)) / 100,
      total: total(word),
    }))
  }

  it('closes: what came is what went, each the sum of the rows above it', () => {
    expect(sums(BY_HAND)).toEqual([
      { parts: 8, total: 8 },
      { parts: 8, total: 8 },
    ])
    // 3 * 0.33 would be 0.99.
    expect(sums(THIRDS)).toEqual([
      { parts: 1, total: 1 },
      { parts: 1, total: 1 },
    ])
  })

  it('closes whatever the energies, with no part off by a hundredth or more', () => {
    const kwh = fc.double({ min: 0, max: 500, noNaN: true })
    fc.assert(
      fc.property(fc.tuple(kwh, kwh, kwh, kwh), fc.tuple(kwh, kwh), ([a, b, c, d], [p, q]) => {
        const all = a + b + c + d
        const energy = {
          criticalKwh: a,
          comfortKwh: b,
          standingKwh: c,
          conversionKwh: 0,
          leftKwh: d,
          startKwh: (all * p) / (p + q + 1),
          solarKwh: (all * q) / (p + q + 1),
          generatorKwh: all / (p + q + 1),
        }
        const [came, went] = sums({ name: 'any', energy })
        expect(came!.parts).toBeCloseTo(came!.total, 9)
        expect(went!.parts).toBeCloseTo(went!.total, 9)
        expect(Math.abs(came!.total - went!.total)).toBeLessThan(0.0100001)
        const left = energyRows([{ name: 'any', energy }]).at(-2)!
        expect(left.what).toBe('went: left in the battery')
        expect(Math.abs((left['any [kWh]'] as number) - d)).toBeLessThan(0.0100001)
      }),
    )
  })

  it('is that of a traced cut, whose ledger closes', () => {
    const CROFT = fileURLToPath(new URL('../../data-samples/croft.yaml', import.meta.url))
    const { house, files } = loadHouse(CROFT)
    const prepared = prepare(house, files)
    const startMs = Date.parse('2025-01-07T19:30Z')
    const story = traceCut(prepared, { startMs, hours: 24 })
    const cut = { name: 'croft', energy: energyLedger(story, story.cutMinutes) }
    const [came, went] = sums(cut)
    expect(came!.total).toBe(went!.total)
    const sum = (column: Float64Array) => column.reduce((kwh, kw) => kwh + kw / 60, 0)
    const row = energyRows([cut]).find(({ what }) => what === 'went: must stay on')
    expect(
      Math.abs((row!['croft [kWh]'] as number) - sum(story.trace.servedCriticalKw)),
    ).toBeLessThan(0.01)
  })
})
