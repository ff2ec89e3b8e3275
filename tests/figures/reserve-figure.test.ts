import { type MonthReserve, reserveFigure, reserveRows, type Trace } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

// 0.29 * 100 is 28.999… and 0.55 * 100 is 55.000…1 in doubles; neither may cost a per cent.
const MONTHS: MonthReserve[] = [
  { month: 12, reserve: 0.551, share: 0.899 },
  { month: 1, reserve: 0.55, share: 0.29 },
  { month: 2, reserve: null, share: null },
]

type Bars = Trace & { y: number[]; text: string[] }

describe('reserve by month', () => {
  const figure = reserveFigure(MONTHS, { now: 0.4, target: 0.9 })
  const [reserve, share] = figure.data as [Bars, Bars]

  it('rounds what is held back up and what lasts down', () => {
    expect(reserve.text).toEqual(['56', '55', '–'])
    expect(share.text).toEqual(['89', '29', '–'])
    expect(reserve.y).toEqual([56, 55, 0])
  })

  it('keeps the order of the months, and has units and levels', () => {
    const { xaxis, annotations, shapes } = figure.layout as unknown as {
      xaxis: { ticktext: string[]; title: { text: string } }
      annotations: { text: string }[]
      shapes: { yref: string; y0: number }[]
    }
    expect(xaxis.ticktext).toEqual(['Dec', 'Jan', 'Feb'])
    expect(xaxis.title.text).toBe('month')
    expect(
      annotations.slice(0, 2).map(({ text }) => text.replaceAll(/<(?!br)[^>]*>/g, '')),
    ).toEqual([
      'Held back [% of charge]<br>┅ now: 40',
      'Cuts that last with it [%]<br>┅ asked for: 90',
    ])
    expect(new Set(shapes.map(({ yref, y0 }) => `${yref} ${y0}`))).toEqual(
      new Set(['y 40', 'y2 90']),
    )
  })

  it('writes its numbers clear of the levels', () => {
    const near = reserveFigure([{ month: 1, reserve: 0.38, share: 0.87 }], {
      now: 0.4,
      target: 0.9,
    })
    const numbers = (near.layout.annotations as { text: string; y: number }[]).slice(2)
    // 0 to 120 % in 150 px: 2 % are 2.5 px, and a number is 14 px high; so it goes on the line.
    expect(numbers.map(({ text }) => text)).toEqual(['38', '87'])
    expect(numbers[0]!.y).toBeGreaterThan(40)
    expect(numbers[1]!.y).toBeGreaterThan(90)
  })

  it('has its numbers as rows', () => {
    expect(reserveRows(MONTHS)).toEqual([
      { month: 'December', 'held back [% of charge]': 56, 'cuts that last [%]': 89 },
      { month: 'January', 'held back [% of charge]': 55, 'cuts that last [%]': 29 },
      { month: 'February', 'held back [% of charge]': null, 'cuts that last [%]': null },
    ])
  })
})
