import { type FuelDrawn, fuelFigure, fuelRows, type Trace } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

type Month = FuelDrawn['months'][number]
type Spread = Month['figures']['litres']

const spread = (mean: number, oneIn20: number, worst: number | null): Spread => ({
  mean,
  oneIn20,
  worst,
})
const monthOf = (month: number, litres: Spread, runHours: Spread): Month => ({
  month,
  figures: {
    starts: 744,
    litres,
    runHours,
    setStarts: spread(3.97, 5, 5),
    pours: spread(0.76, 2, 3),
  },
})

/** Two months of ours. */
const ANSWER = {
  house: 'Croft',
  days: 3,
  winters: 10,
  promise: 'dull',
  startSoc: { kind: 'reserve', value: 0.4 },
  health: 0.8,
  supposed: false,
  set: { ratedKw: 3, tankL: 12, cansL: 20 },
  rule: { petrolL: 30, plasticCanL: 10, metalCanL: 20, basis: '' },
  closer: { month: 1, dryShare: 0.034 },
  months: [
    monthOf(1, spread(15.17, 26.87, 42.01), spread(18.3, 37.9, 64.5)),
    monthOf(6, spread(0.68, 2.84, 5), spread(0.7, 2.9, 5.9)),
  ],
} as unknown as FuelDrawn

type Bars = Trace & { x: number[]; y: number[]; yaxis: string; text: string[] }
type Words = { text: string; x: number; y: number; yref: string }

describe('fuel and generator hours', () => {
  const figure = fuelFigure(ANSWER)
  const bars = figure.data as Bars[]
  const words = figure.layout.annotations as Words[]

  it('stacks mean, 19 in 20 and worst so that each ends where it is', () => {
    const ends = (yaxis: string, month: number) => {
      let at = 0
      return bars
        .filter((one) => one.yaxis === yaxis)
        .map(({ y }) => {
          at += y[month]!
          return Number(at.toFixed(6))
        })
    }
    expect(ends('y', 0)).toEqual([15.17, 26.87, 42.01])
    expect(ends('y2', 1)).toEqual([0.7, 2.9, 5.9])
  })

  it('rounds litres up: a litre short is a litre short', () => {
    const on = (x: number) =>
      words.flatMap((one) => (one.yref === 'y' && one.x === x ? one.text : []))
    expect(on(1)).toEqual(['27', '43'])
    expect(on(2)).toEqual(['5'])
    expect(bars[1]!.text[0]).toBe('January, 19 in 20 take no more: 27 l')
  })

  it('has units, and lines for what is at home and what may be', () => {
    const headings = words.flatMap(({ text }) => (text.startsWith('<b>') ? [text] : []))
    const plain = headings.map((text) => text.replaceAll(/<(?!br)[^>]*>/g, ''))
    expect(plain).toEqual([
      'Fuel taken [l]<br>■ mean  ■ 19 in 20 take no more  ■ worst<br>' +
        '┅ tank and cans, 32  ┉ petrol at home, at most 30',
      'Generator runs [h]',
    ])
    const lines = figure.layout.shapes as { y0: number; line: { dash?: string } }[]
    expect(lines.filter(({ line }) => line.dash !== undefined).map(({ y0 }) => y0)).toEqual([
      32, 30,
    ])
  })

  it('says how it was counted, and that what is at home runs dry', () => {
    const { subtitle } = figure.layout.title as unknown as { subtitle: { text: string } }
    const said = subtitle.text.replaceAll('<br>', ' ').replaceAll('\u00a0', ' ')
    expect(said).toContain('dull sky (3 days as dark for the season as 1 year in 10 brings)')
    // 3.4 % of cuts, rounded up.
    expect(said).toContain('In January tank and cans run dry in 4 % of cuts.')
  })

  it('draws no store of a set that is only supposed, and no worst that may not be told', () => {
    const months = ANSWER.months.map(({ month, figures: f }) => {
      const bare = ({ mean, oneIn20 }: Spread) => spread(mean, oneIn20, null)
      return monthOf(month, bare(f.litres), bare(f.runHours))
    })
    const { data, layout } = fuelFigure({ ...ANSWER, supposed: true, rule: null, months })
    expect(layout.shapes).toEqual([])
    expect(data.map(({ name }) => name)).toEqual([
      'mean',
      '19 in 20 take no more',
      'mean',
      '19 in 20 take no more',
    ])
  })

  it('has its numbers as rows, tenths rounded up', () => {
    expect(fuelRows(ANSWER)[0]).toEqual({
      month: 'January',
      'fuel, mean [l]': 15.2,
      'fuel, 19 in 20 take no more [l]': 26.9,
      'fuel, worst [l]': 42.1,
      'running, mean [h]': 18.3,
      'running, 19 in 20 take no more [h]': 37.9,
      'running, worst [h]': 64.5,
      'starts, mean': 4,
      'starts, 19 in 20 take no more': 5,
      'starts, worst': 5,
      'cans poured, mean': 0.8,
      'cans poured, 19 in 20 take no more': 2,
      'cans poured, worst': 3,
    })
  })
})
