import { calendarOf, type StateName } from '@tideover/core'
import { type StoredMinutes, type Trace, yearStoredFigure, yearStoredRows } from '@tideover/figures'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

// 2024 is a leap year: 366 * 1440 = 527 040 minutes.
const calendar = calendarOf(2024, 'Europe/London')
const MINUTES = 527_040
const at = (iso: string) => Math.round((Date.parse(iso) - calendar.startMs) / 60_000)

/** Half full all year but for one minute in March, one in July, and a night without power. */
const LEAST = at('2024-03-05T04:10Z')
const MOST = at('2024-07-20T13:33Z')
const NIGHT = [at('2024-11-03T22:00Z'), at('2024-11-04T06:30Z')] as const
const YEAR: StoredMinutes = (() => {
  const storedKwh = new Float64Array(MINUTES).fill(5)
  storedKwh[LEAST] = 0.7
  storedKwh[MOST] = 9.9
  const states = new Array<StateName>(MINUTES).fill('island')
  states.fill('off, empty', ...NIGHT)
  return { from: 0, storedKwh, states }
})()

interface Drawn extends Trace {
  x: number[]
  y: number[]
  text: string[]
}
const FIGURE = yearStoredFigure(
  YEAR,
  { calendar },
  {
    capacityKwh: 10,
    levels: [{ words: 'reserve', kwh: 4 }],
    marks: [
      { minute: 200_000, words: 'a planned cut' },
      { minute: 77_777, words: 'the storm' },
    ],
  },
)
const named = (name: string, figure = FIGURE) => {
  const found = (figure.data as Drawn[]).find((one) => one.name === name)
  if (found === undefined) throw new Error(`no ${name}`)
  return found
}
const annotations = FIGURE.layout.annotations as { text: string; x: number; y: number }[]

describe('a year of stored energy', () => {
  it('has the least and the greatest of every local day, also of those of 23 and 25 hours', () => {
    const [least, greatest] = [named('least of the day'), named('greatest of the day')]
    expect([least.x.length, greatest.x.length]).toEqual([366, 366])
    expect(least.x.filter((x, i) => i > 0 && x <= least.x[i - 1]!)).toEqual([])
  })

  it('draws its least and its greatest at their own minutes, and says when they are', () => {
    const [least, greatest] = [named('least of the day'), named('greatest of the day')]
    // A value holds at the end of its minute: 04:11 and, in summer time, 14:34.
    const of = ({ x, y, text }: Drawn, kwh: number) => {
      const i = y.indexOf(kwh)
      return [Math.round(x[i]! * 1440), text[i]]
    }
    expect(of(least, 0.7)).toEqual([LEAST + 1, 'Tue 5 Mar 04:11'])
    expect(of(greatest, 9.9)).toEqual([MOST + 1, 'Sat 20 Jul 14:34'])
    expect(annotations[0]!.text.split('<br>').slice(1, 3)).toEqual([
      '▲ least 0.7, Tue 5 Mar 04:11',
      '▼ greatest 9.9, Sat 20 Jul 14:34',
    ])
  })

  it('draws a small part of half a million minutes', () => {
    const points = (FIGURE.data as Drawn[]).reduce((sum, { x }) => sum + x.length, 0)
    expect(points).toBeLessThan(MINUTES / 250)
  })

  it('draws each minute that matters, with its words over it', () => {
    expect(named('the storm').x).toEqual([77_778 / 1440])
    expect(named('a planned cut').y).toEqual([5])
    expect(annotations.map(({ text }) => text)).toEqual(
      expect.arrayContaining(['the storm', 'a planned cut', 'reserve 4.0']),
    )
  })

  it('shows when there was no power, and for how long in all', () => {
    expect(annotations[0]!.text).toContain('no power once, 9 h in all')
    const { x } = named('no power')
    expect(x.length).toBeGreaterThan(0)
    for (const day of x) {
      expect(day * 1440).toBeGreaterThanOrEqual(NIGHT[0])
      expect(day * 1440).toBeLessThan(NIGHT[1])
    }
  })

  it('has its unit, its clock and its months', () => {
    const { xaxis } = FIGURE.layout as unknown as {
      xaxis: { title: { text: string }; ticktext: string[]; tickvals: number[] }
    }
    expect(annotations[0]!.text).toContain('[kWh]')
    expect(xaxis.title.text).toBe('local time (Europe/London)')
    expect(xaxis.ticktext).toHaveLength(12)
    expect([xaxis.ticktext[1], xaxis.tickvals[1]]).toEqual(['Feb', 31 + 29 / 2])
  })

  it('has no power cut to tell where states are not known', () => {
    const { from, storedKwh } = YEAR
    const figure = yearStoredFigure({ from, storedKwh }, { calendar }, { capacityKwh: 10 })
    expect(figure.data.map(({ name }) => name)).not.toContain('no power')
  })
})

describe('any column of stored energy', () => {
  /** Thousandths, as they are drawn; NaN is a gap. */
  const kwh = fc.oneof(
    { weight: 30, arbitrary: fc.integer({ min: 0, max: 20_000 }).map((value) => value / 1000) },
    { weight: 1, arbitrary: fc.constant(Number.NaN) },
  )
  const columns = fc
    .record({
      values: fc.array(kwh, { minLength: 1, maxLength: 60 }),
      // Each value is held for so long, so that days and gaps are met.
      held: fc.integer({ min: 1, max: 200 }),
      from: fc.integer({ min: 0, max: MINUTES - 1 }),
      share: fc.double({ min: 0, max: 0.999, noNaN: true }),
    })
    .map(({ values, held, from, share }) => {
      const storedKwh = values.flatMap((value) => new Array<number>(held).fill(value))
      return { from, storedKwh, matters: Math.floor(share * storedKwh.length) }
    })

  it('never loses its least, its greatest, or a minute that matters', () => {
    fc.assert(
      fc.property(columns, ({ from, storedKwh, matters }) => {
        const marks = [{ minute: matters, words: 'it' }]
        const options = { capacityKwh: 20, marks }
        const figure = yearStoredFigure({ from, storedKwh }, { calendar }, options)
        const known = storedKwh.filter((value) => !Number.isNaN(value))
        const drawn = [named('least of the day', figure), named('greatest of the day', figure)]
        const seen = drawn.flatMap(({ y }) => y.filter((value) => !Number.isNaN(value)))
        expect(Math.min(...seen)).toBe(Math.min(...known))
        expect(Math.max(...seen)).toBe(Math.max(...known))
        const it = named('it', figure)
        expect([it.x, it.y]).toEqual([[(matters + 1) / 1440], [storedKwh[matters]]])
      }),
    )
  })
})

describe('its table', () => {
  const rows = yearStoredRows(YEAR, { calendar })

  it('has a row a month with its extremes, when they are, and the hours without power', () => {
    expect(rows).toHaveLength(12)
    // March has 743 hours here: 5 kWh but for one minute at 0.7.
    expect(rows[2]).toEqual({
      month: 'March',
      'least [kWh]': 0.7,
      'least at': 'Tue 5 Mar 04:11',
      'mean [kWh]': 5,
      'greatest [kWh]': 5,
      'greatest at': 'Fri 1 Mar 00:01',
      'no power [h]': 0,
    })
    expect(rows[10]).toMatchObject({ month: 'November', 'no power [h]': 8.5 })
  })

  it('has nothing to say of a month of which nothing is known', () => {
    const storedKwh = new Float64Array(40 * 1440).fill(5)
    storedKwh.fill(Number.NaN, 0, 31 * 1440)
    const [january, february] = yearStoredRows({ from: 0, storedKwh }, { calendar })
    expect(january).toMatchObject({ month: 'January', 'least [kWh]': null, 'mean [kWh]': null })
    expect(february).toMatchObject({ 'least [kWh]': 5, 'mean [kWh]': 5 })
  })
})
