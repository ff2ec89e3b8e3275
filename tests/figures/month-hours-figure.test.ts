import type { HourCell } from '@tideover/core'
import {
  figureJson,
  type MonthHoursAnswer,
  monthHoursCells,
  monthHoursFigure,
  monthHoursRows,
  PARTS,
  type Trace,
} from '@tideover/figures'
import { describe, expect, it } from 'vitest'

/** A month of which cuts last from 6 to 21 h, and of the others so many. */
function monthOf(month: number, others: number): MonthHoursAnswer['months'][number] {
  const cells = (width: number): HourCell[] =>
    Array.from({ length: 24 / width }, (_, i) => {
      const isDay = i * width >= 6 && i * width < 21
      return {
        hours: [i * width, (i + 1) * width],
        starts: 60 * width,
        share: isDay ? 1 : others,
        shareByPattern: { any: isDay ? 1 : others, windy: null },
        worstHours: null,
        p05Hours: isDay ? 48 : 11.9,
        medianHours: isDay ? 48 : 24,
      }
    })
  const figures = { share: others, worstHours: null, p05Hours: 11.9, medianHours: 30.5 }
  return {
    month,
    figures: figures as MonthHoursAnswer['months'][number]['figures'],
    byHour: cells(1),
    byThreeHours: cells(3),
  }
}

const ANSWER = {
  house: 'Croft',
  site: { latitudeDeg: 58, longitudeDeg: -6, elevationM: 0, timezone: 'Europe/London' },
  cutHours: 24,
  horizonHours: 48,
  sky: 'dull',
  spell: { winters: 10, days: 1 },
  startSoc: { kind: 'reserve', value: 0.4 },
  health: 0.8,
  // 0.29 * 100 is 28.999… in doubles; 0.999 is not all.
  months: [monthOf(1, 0.29), monthOf(2, 0.999), monthOf(3, Number.NaN)],
} as unknown as MonthHoursAnswer

interface Cells extends Trace {
  x: number[]
  z: (number | null)[][]
  text: string[][]
}
interface Marks extends Trace {
  x: number[]
  y: number[]
  text: string[]
}

describe('month by hour of the day', () => {
  const figure = monthHoursFigure(ANSWER)
  const [grid, whole, texts] = figure.data as [Cells, Cells, Marks, Marks]

  it('writes the share of each cell into its middle, rounded down', () => {
    const at = (month: number, hour: number) =>
      texts.text[texts.x.findIndex((x, i) => texts.y[i] === month && Math.abs(x - hour) < 0.01)]
    expect([at(1, 1.5), at(1, 7.5), at(1, 22.5)]).toEqual(['29', '100', '29'])
    expect([at(2, 1.5), at(3, 1.5)]).toEqual(['99', '–'])
  })

  it('shades in steps of a quarter, and only what lasts all of it as all', () => {
    expect(grid.z.map((row) => row[0])).toEqual([1, 3, null])
    expect(grid.z[0]![2]).toBe(PARTS.length - 1)
    expect(whole.z.map(([step]) => step)).toEqual([1, 3, null])
  })

  it('has the hours of the clock across, from midnight, and says whose clock', () => {
    expect(grid.x).toEqual([0, 3, 6, 9, 12, 15, 18, 21, 24])
    const { xaxis } = figure.layout as unknown as { xaxis: { title: { text: string } } }
    expect(xaxis.title.text).toBe('clock at the start (Europe/London) [h]')
    expect(grid.text[0]![2]).toBe('January, starts 6 to 9 h: 100 % of cuts')
    expect(whole.text[0]![0]).toBe(
      'January, the hardest of all, evening and windy starts: 29 % of cuts',
    )
  })

  it('names what it shows, its unit and where each shade begins', () => {
    const [{ text }] = figure.layout.annotations as [{ text: string }]
    const plain = text.replaceAll(/<span[^>]*>|<\/span>|<\/?b>/g, '')
    expect(plain).toBe('Lasts to the end [% of cuts]<br>■ from 0  ■ 25  ■ 50  ■ 75  □ 100')
    const { text: title, subtitle } = figure.layout.title as {
      text: string
      subtitle: { text: string }
    }
    expect(title).toBe('Croft, a cut of 24 h: which cuts last')
    expect(subtitle.text.replaceAll('<br>', ' ')).toBe(
      'dull sky (a day as dark for the season as 1 year in 10 brings); started at the reserve of ' +
        '40\u00a0% less 5 points, battery aged to 80\u00a0%. Last column: all, evening or windy ' +
        'starts, whichever is least.',
    )
  })

  it('tells hours by the length of the cut, those followed no further as more', () => {
    const [january] = monthHoursCells(ANSWER, { of: 'p05Hours', spanHours: 1 })
    // 11.9 of 24 h is under a half: the second step; 48 h is all that was followed.
    expect(january!.cells[0]).toMatchObject({ hours: [0, 1], value: 11, text: '11', step: 1 })
    expect(january!.cells[6]).toMatchObject({ value: 48, text: '48+', step: PARTS.length - 1 })
    expect(january!.whole).toMatchObject({ hours: null, value: 11 })
    expect(monthHoursCells(ANSWER, { of: 'worstHours' })[0]!.cells[0]).toMatchObject({
      value: null,
      text: '–',
    })
  })

  it('writes nothing into cells of an hour: they are too narrow on a phone', () => {
    const [, , hourly] = monthHoursFigure(ANSWER, { spanHours: 1 }).data as Marks[]
    expect(hourly!.text).toEqual([])
  })

  it('has its numbers as rows, a month each', () => {
    const [january] = monthHoursRows(ANSWER)
    expect(january).toEqual({
      month: 'January',
      '0 to 3 h [%]': 29,
      '3 to 6 h [%]': 29,
      '6 to 9 h [%]': 100,
      '9 to 12 h [%]': 100,
      '12 to 15 h [%]': 100,
      '15 to 18 h [%]': 100,
      '18 to 21 h [%]': 100,
      '21 to 24 h [%]': 29,
      'month [%]': 29,
    })
  })

  it('has hours followed no further marked in its rows', () => {
    const [january] = monthHoursRows(ANSWER, { of: 'p05Hours' })
    expect(january).toMatchObject({ '3 to 6 h [h]': 11, '6 to 9 h [h]': '48+', 'month [h]': 11 })
  })

  it('can stand inside a page', () => {
    expect(JSON.parse(figureJson(figure)).data[0].z[2][0]).toBeNull()
  })
})
