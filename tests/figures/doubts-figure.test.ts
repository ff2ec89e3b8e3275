import { type DoubtsDrawn, doubtsFigure, doubtsRows, type Trace } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

type Figures = DoubtsDrawn['promised']
type Doubt = DoubtsDrawn['doubts'][number]

const figuresOf = (share: number | null, medianHours: number): Figures => ({
  share,
  hardest: 'any',
  medianHours,
  p05Hours: 5.9,
  horizonHours: 48,
})

/** Of ours; swings are most less least, the promise's 0.46 and 23.6 h among them. */
const AGE: Doubt = {
  id: 'age',
  name: 'battery age',
  range: 'new, to year 15',
  basis: 'by hand',
  ends: [
    { at: 'aged to 70 %', figures: figuresOf(0.29, 20.8) },
    { at: 'new', figures: figuresOf(0.5, 48) },
  ],
  swingShare: 0.21,
  swingHours: 27.2,
}
const NOBODY: Doubt = {
  id: 'nobody-home',
  name: 'somebody at home',
  range: 'nobody for the whole cut',
  basis: 'by hand',
  ends: [{ at: 'nobody', figures: figuresOf(0, 5.7) }],
  swingShare: 0.46,
  swingHours: 17.9,
}

const ANSWER: DoubtsDrawn = {
  house: 'Croft',
  month: 1,
  cutHours: 24,
  promise: 'dull',
  winters: 10,
  startSoc: { kind: 'reserve', value: 0.4 },
  health: 0.8,
  promised: figuresOf(0.4602, 23.6),
  doubts: [NOBODY, AGE],
  expiry: { share: 0.4, metNow: true, lostInYear: 13 } as DoubtsDrawn['expiry'],
}

type Bars = Trace & { base: number[]; x: number[]; y: number[]; text: string[] }
type Words = { text: string; x: number; y: number }
const plain = ({ text }: Words) => text.replaceAll('<br>', ' | ').replaceAll(/<[^>]*>/g, '')

describe('how far doubts swing an answer', () => {
  const figure = doubtsFigure(ANSWER)
  const [worse, better, ends] = figure.data as [Bars, Bars, Bars]
  const words = figure.layout.annotations as Words[]

  it('draws worse up to what is promised and better from there', () => {
    const spans = ({ base, x }: Bars) =>
      base.map((from, i) => [from, from + x[i]!].map((each) => Number(each.toFixed(6))))
    expect(spans(worse)).toEqual([
      [0, 46.02],
      [29, 46.02],
    ])
    expect(spans(better)).toEqual([
      [46.02, 46.02],
      [46.02, 50],
    ])
  })

  it('marks each end and says it beside the name of the doubt', () => {
    expect(ends.x).toEqual([0, 29, 50])
    expect(words.map(plain)).toEqual([
      'somebody at home: nobody 0\u00a0%',
      'battery age: aged to 70 % 29\u00a0%, new 50\u00a0%',
      '┃ promised: 46 %',
    ])
  })

  it('has a line for what is promised through every bar', () => {
    const lines = figure.layout.shapes as { x0: number; y0: number; y1: number }[]
    expect(lines.map(({ x0 }) => x0)).toEqual([46.02, 46.02])
    for (const [i, { y0, y1 }] of lines.entries()) {
      expect(y0).toBeLessThan(worse.y[i]!)
      expect(y1).toBeGreaterThan(worse.y[i]!)
    }
  })

  it('keeps the words of a row clear of its bar and of the next', () => {
    for (const [i, y] of worse.y.entries()) {
      const lines = words[i]!.text.split('<br>').length
      // 11.5 px letters take some 15 px a line; a bar is 14 px high.
      expect(words[i]!.y + 15 * lines).toBeLessThanOrEqual(y - 7)
      if (i > 0) expect(words[i]!.y).toBeGreaterThan(worse.y[i - 1]! + 7)
    }
  })

  it('breaks a long list of ends between two of them', () => {
    const many = { ...AGE, ends: [...AGE.ends, ...AGE.ends, ...AGE.ends] }
    const { annotations } = doubtsFigure({ ...ANSWER, doubts: [many] }).layout
    const lines = plain((annotations as Words[])[0]!).split(' | ')
    expect(lines.length).toBeGreaterThan(1)
    for (const line of lines) {
      expect(line.length).toBeLessThanOrEqual(56)
      expect(line).toMatch(/%,?$/)
    }
  })

  it('has shares or hours on its axis, what moves them most first', () => {
    const axis = (of: typeof figure) =>
      of.layout.xaxis as { title: { text: string }; range: number[] }
    expect(axis(figure).title.text).toBe('cuts of 24 h that last [%]')
    expect(axis(figure).range).toEqual([0, 100])
    const hours = doubtsFigure(ANSWER, { by: 'hours' })
    expect(axis(hours).title.text).toBe('lasts in the middle case [h]')
    expect(plain((hours.layout.annotations as Words[])[0]!)).toBe(
      'battery age: aged to 70 % 20\u00a0h, new >48\u00a0h',
    )
  })

  it('takes hours where no share is known or none moves', () => {
    const axis = (answer: DoubtsDrawn) =>
      (doubtsFigure(answer).layout.xaxis as { title: { text: string } }).title.text
    expect(axis({ ...ANSWER, promised: figuresOf(null, 23.6) })).toContain('[h]')
    expect(axis({ ...ANSWER, doubts: [{ ...NOBODY, swingShare: 0 }] })).toContain('[h]')
  })

  it('says under what it is promised, and when age alone ends it', () => {
    const { subtitle } = figure.layout.title as unknown as { subtitle: { text: string } }
    const said = subtitle.text.replaceAll('<br>', ' ')
    expect(said).toContain('Promised: dull sky (a day as dark as 1 January in 10 brings)')
    expect(said).toContain('With age alone 40 in 100 are no longer met in year 13.')
  })

  it('has its numbers as rows: the promise, then each end', () => {
    const rows = doubtsRows(ANSWER)
    expect(rows.map(({ doubt, at }) => [doubt, at])).toEqual([
      ['as promised', ''],
      ['somebody at home', 'nobody'],
      ['battery age', 'aged to 70 %'],
      ['battery age', 'new'],
    ])
    expect(rows.at(-1)).toMatchObject({
      'lasts 24 h [%]': 50,
      'middle [h]': '>48',
      '1 in 20 [h]': '5',
      basis: 'by hand',
    })
  })
})
