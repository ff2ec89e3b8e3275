import { type StacksDrawn, stacksFigure, stacksRows, type Trace } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

type Row = StacksDrawn['stacks'][number]

/** Three stacks; the figures are ours. The third outlasts what was followed in the middle case. */
const rowOf = (modules: number, hours: [number | null, number, number], share: number): Row => ({
  modules,
  usableKwh: modules * 3.44,
  price: modules * 1370,
  worstHours: hours[0],
  p05Hours: hours[1],
  medianHours: hours[2],
  share,
  hardest: 'any',
  changeoverLostShare: 0,
  addedHours: modules === 1 ? null : 14.38,
  addedWorstHours: null,
  pricePerAddedHour: modules === 1 ? null : 95.3,
  met: share >= 0.9,
})

const ANSWER: StacksDrawn = {
  house: 'Croft',
  month: 1,
  cutHours: 24,
  horizonHours: 72,
  sky: 'dull',
  spell: { winters: 10, days: 1 },
  startSoc: { kind: 'full', value: 1 },
  health: 1,
  shareTarget: 0.9,
  smallest: 3,
  stepsFrom: 2,
  limits: {
    stopsAt: null,
    binding: [
      { limit: 'inverter', share: 1 },
      { limit: 'charge', share: 1 },
    ],
    said: [],
  },
  stacks: [
    rowOf(1, [2.4, 2.6, 9.2], 0.19),
    rowOf(2, [20.5, 23, 40], 0.29),
    rowOf(3, [30, 50, 72], 0.999),
  ],
}

interface Bars extends Trace {
  x: number[]
  y: number[]
  text: string[]
}
type Words = { text: string; x: number; y: number; yref: string }
const wordsOf = (answer: StacksDrawn) => stacksFigure(answer).layout.annotations as Words[]

describe('stacks side by side', () => {
  const figure = stacksFigure(ANSWER)
  const bars = figure.data as Bars[]

  it('stacks the hours so that each case ends where it is', () => {
    const hours = bars.filter(({ yaxis }) => yaxis === 'y')
    expect(hours.map(({ name }) => name)).toEqual(['at worst', '1 in 20', 'middle case'])
    for (const [i, { worstHours, p05Hours, medianHours }] of ANSWER.stacks.entries()) {
      const ends = hours.map((_, c) => hours.slice(0, c + 1).reduce((sum, { y }) => sum + y[i]!, 0))
      expect(ends[0]).toBeCloseTo(worstHours!, 9)
      expect(ends[1]).toBeCloseTo(p05Hours, 9)
      expect(ends[2]).toBeCloseTo(medianHours, 9)
    }
  })

  it('writes hours rounded down, and as more where starts were followed no further', () => {
    const at = (modules: number) =>
      wordsOf(ANSWER).flatMap(({ text, x, yref }) => (yref === 'y' && x === modules ? text : []))
    expect(at(1).at(-1)).toBe('9')
    expect(at(2)).toEqual(['20', '40'])
    expect(at(3)).toEqual(['30', '50', '>72'])
  })

  it('keeps its numbers clear of the line of the cut', () => {
    // A panel of 170 px for 1.2 times 72 h; a number is some 14 px high.
    const pxAnHour = 170 / (1.2 * 72)
    for (const { text, yref, y } of wordsOf(ANSWER)) {
      if (yref !== 'y' || !/^\d+$/.test(text)) continue
      const isOver = Math.abs((y - 24) * pxAnHour) >= 7 || y >= 24
      expect(isOver, `${text} at ${y} h`).toBe(true)
    }
  })

  it('writes shares, rounded down, and prices over their columns', () => {
    expect(bars.find(({ yaxis }) => yaxis === 'y2')?.text).toEqual(['19', '29', '99'])
    expect(bars.find(({ yaxis }) => yaxis === 'y3')?.text).toEqual(['1,370', '2,740', '4,110'])
  })

  it('says which stack is there and which is enough, and what no module mends', () => {
    const { xaxis, title } = figure.layout as unknown as {
      xaxis: { ticktext: string[]; title: { text: string } }
      title: { subtitle: { text: string } }
    }
    expect(xaxis.ticktext).toEqual(['1', '2<br><b>now</b>', '3<br><b>enough</b>'])
    expect(xaxis.title.text).toBe('modules')
    const said = title.subtitle.text.replaceAll('<br>', ' ')
    expect(said).toContain('started full, battery new.')
    expect(said).toContain('With 3, it is the inverter rating and the charge limit that ends cuts.')
  })

  it('has a unit for each panel and the share asked for as a line', () => {
    const units = wordsOf(ANSWER).flatMap(({ text }) => /\[.*\]/.exec(text)?.[0] ?? [])
    expect(units).toEqual(['[h]', '[% of cuts]', '[money of the house file]'])
    const lines = figure.layout.shapes as { yref: string; y0: number }[]
    expect(new Set(lines.map(({ yref, y0 }) => `${yref} ${y0}`))).toEqual(
      new Set(['y 24', 'y2 90']),
    )
  })

  it('leaves out a price that is not given and a worst that may not be told', () => {
    const stacks = ANSWER.stacks.map((row) => ({ ...row, price: null, worstHours: null }))
    const bare: StacksDrawn = { ...ANSWER, stacks, shareTarget: null }
    const { data, layout } = stacksFigure(bare)
    expect(data.map(({ name }) => name)).toEqual(['1 in 20', 'middle case', 'lasts to the end [%]'])
    expect(layout.yaxis3).toBeUndefined()
    expect(wordsOf(bare).some(({ text }) => text.includes('asked for'))).toBe(false)
  })

  it('has its numbers as rows', () => {
    expect(stacksRows(ANSWER)[1]).toEqual({
      modules: 2,
      'usable [kWh]': 6.88,
      'at worst [h]': '20',
      '1 in 20 [h]': '23',
      'middle [h]': '40',
      'lasts 24 h [%]': 29,
      'adds in the middle [h]': 14.4,
      price: 2740,
      'price of an added hour': 95,
      'meets what is asked': 'no',
    })
    expect(stacksRows(ANSWER)[2]).toMatchObject({ 'middle [h]': '>72', 'lasts 24 h [%]': 99 })
  })
})
