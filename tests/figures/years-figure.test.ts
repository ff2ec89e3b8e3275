import { fileURLToPath } from 'node:url'
import { monthYields, newScratch, prepare, typicalOf, windowOf } from '@tideover/core'
import { type Trace, yearsFigure, yearsRows } from '@tideover/figures'
import { loadHouse } from '@tideover/files'
import { describe, expect, it } from 'vitest'

const CROFT = fileURLToPath(new URL('../../data-samples/croft.yaml', import.meta.url))
const { house, files } = loadHouse(CROFT)
const prepared = prepare(house, files)
const months = monthYields(prepared, { month: 1, years: 30 })

describe('thirty Januaries', () => {
  it('are those of the sky: one of them added up minute by minute', () => {
    const { acKw } = windowOf(
      prepared,
      typicalOf(prepared, house.seed, 30),
      newScratch(prepared),
      4,
      0,
      31 * 1440,
    )
    const kwh = acKw[0]!.reduce((sum, kw) => sum + kw / 60, 0)
    expect(months[4]!.meanKwh).toBeCloseTo(kwh / 31, 9)
    const { darkestFrom, darkestKwh } = months[4]!
    const dark = acKw[0]!.subarray((darkestFrom - 1) * 1440, (darkestFrom + 2) * 1440)
    expect(darkestKwh).toBeCloseTo(dark.reduce((sum, kw) => sum + kw / 60, 0) / 3, 9)
  })

  it('differ: bad Januaries exist', () => {
    const means = months.map(({ meanKwh }) => meanKwh).sort((a, b) => a - b)
    expect(means[0]! / means[29]!).toBeLessThan(0.85)
    for (const { meanKwh, darkestKwh } of months) expect(darkestKwh).toBeLessThan(meanKwh)
  })
})

describe('their figure', () => {
  const figure = yearsFigure(months, { title: 'Thirty Januaries', days: 3, needKwh: 3 })
  const [bars, marks] = figure.data as (Trace & { y: number[] })[]

  it('has a bar a year from the dullest to the brightest, and its darkest days on it', () => {
    expect(bars!.y).toHaveLength(30)
    expect(bars!.y).toEqual([...bars!.y].sort((a, b) => a - b))
    for (const [i, kwh] of marks!.y.entries()) expect(kwh).toBeLessThan(bars!.y[i]!)
  })

  it('says units, what is what without a legend, and what is needed', () => {
    const { yaxis, annotations, title } = figure.layout as unknown as {
      yaxis: { title: { text: string } }
      annotations: { text: string }[]
      title: { subtitle: { text: string } }
    }
    expect(yaxis.title.text).toBe('solar [kWh a day]')
    expect(title.subtitle.text.replaceAll('<br>', ' ')).toBe(
      'Bars: mean of the month; dark lines: mean of its darkest 3 days in a row.',
    )
    expect(annotations.map(({ text }) => text)).toEqual(['needed: 3.0 kWh a day'])
  })

  it('has its numbers as rows', () => {
    const rows = yearsRows(months)
    expect(rows.map((row) => row['mean [kWh a day]'])).toEqual(bars!.y)
    expect(Object.keys(rows[0]!)).toEqual([
      'year',
      'mean [kWh a day]',
      'darkest days [kWh a day]',
      'from day of the month',
    ])
  })
})
