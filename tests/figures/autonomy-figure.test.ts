import { type AutonomyCurve, autonomyCurve, hoursTo } from '@tideover/core'
import {
  autonomyFigure,
  autonomyGridFigure,
  autonomyRows,
  type NamedCurve,
  type Trace,
} from '@tideover/figures'
import { describe, expect, it } from 'vitest'
import { contrast } from './colours.js'

/** A curve of rides given in hours, followed for 48 h; those that last longer are cut there. */
function curveOf(rideHours: readonly number[], last = 48): AutonomyCurve {
  const horizon = 48 * 60
  const minutes = Int32Array.from(rideHours, (h) => Math.min(horizon, h * 60))
  const beyond = Uint8Array.from(rideHours, (h) => (h * 60 >= horizon ? 1 : 0))
  return autonomyCurve([{ minutes, beyond }], hoursTo(last), horizon)
}

// Of 1000 starts 999, and of three starts two, last a day: shares that must not be rounded up.
const CURVES: NamedCurve[] = [
  { name: 'dull sky', curve: curveOf([10, 24, 30]) },
  { name: 'typical skies', curve: curveOf(Array.from({ length: 1000 }, (_, i) => (i ? 40 : 5))) },
]

interface Drawn extends Trace {
  x: ArrayLike<number>
  y: ArrayLike<number>
}
interface Words {
  text: string
  x: number
  y: number
}

describe('the figure of autonomy curves', () => {
  const { data, layout } = autonomyFigure(CURVES, { title: 'Croft', atHours: 24 })
  const [dull] = data as Drawn[]
  const words = layout.annotations as Words[]

  it('has the share of cuts against the hours since the cut began, with their units', () => {
    const { xaxis, yaxis } = layout as { xaxis: { title: Words }; yaxis: { title: Words } }
    expect(xaxis.title.text).toBe('time since the power cut began [h]')
    expect(yaxis.title.text).toBe('still on [% of cuts]')
    const at = (h: number) => dull!.y[Array.from(dull!.x).indexOf(h)]
    expect([at(0), at(10), at(10.25), at(24), at(24.25), at(30.25)]).toEqual([
      100, 100, 66.67, 66.67, 33.33, 0,
    ])
  })

  it('never shows more between two hours than at the later one', () => {
    for (const one of data) expect(one.line).toMatchObject({ shape: 'vh' })
  })

  it('writes the shares at the length of cut asked about, rounded down', () => {
    const box = words.find(({ text }) => text.startsWith('cuts of 24 h'))
    const rows = box?.text.split('<br>').map((row) => row.replaceAll(/<[^>]*>/g, ''))
    expect(rows).toEqual(['cuts of 24 h', 'it lasts:', '66 % dull sky', '99 % typical skies'])
  })

  it('writes none where no length is asked about', () => {
    const plain = autonomyFigure(CURVES).layout.annotations as Words[]
    expect(plain.map(({ text }) => text)).toEqual(['<b>dull sky</b>', '<b>typical skies</b>'])
  })

  it('has its names beside their lines and inside the axes, instead of a legend', () => {
    expect(layout.showlegend).toBe(false)
    for (const { x, y } of words) {
      expect(x).toBeGreaterThanOrEqual(0)
      expect(x).toBeLessThan(48)
      expect(y).toBeGreaterThan(0)
      expect(y).toBeLessThanOrEqual(103)
    }
    // The middle of a label, its letters some 7 px wide in a plot of a phone, 318 by 270 px.
    const nearest = ({ text, x, y }: Words) => {
      const letters = text.replaceAll(/<[^>]*>/g, '').length
      const [middleX, middleY] = [(x * 318) / 48 + 3.5 * letters, (y * 270) / 103 - 8]
      const gaps = (data as Drawn[]).map((one) =>
        Math.min(
          ...Array.from(one.x, (h, i) =>
            Math.hypot((h * 318) / 48 - middleX, (one.y[i]! * 270) / 103 - middleY),
          ),
        ),
      )
      return (data as Drawn[])[gaps.indexOf(Math.min(...gaps))]!.name
    }
    for (const label of words.filter(({ text }) => text.startsWith('<b>'))) {
      expect(`<b>${nearest(label)}</b>`).toBe(label.text)
    }
  })

  it('keeps the shares off the curves where the plot has room for them', () => {
    // Curves that fall at 4, 12 and 20 of 36 h leave the right of the plot free.
    const steep = [4, 12, 20].map((h) => ({ name: `${h} modules`, curve: curveOf([h, h + 1], 36) }))
    const figure = autonomyFigure(steep, { atHours: 18, inOrder: true })
    const key = (figure.layout.annotations as Words[]).find(({ text }) =>
      text.includes('it lasts:'),
    )!
    // Rows of 12 px letters, 1.35 apart, in 270 px of 103 %.
    const lowest = key.y - (5 * 12 * 1.35 * 103) / 270
    for (const { x, y } of figure.data as Drawn[]) {
      const beside = Array.from(y).filter(
        (_, i) => x[i]! >= key.x && x[i]! <= key.x + (14 * 6 * 36) / 318,
      )
      expect(beside.length).toBeGreaterThan(0)
      expect(beside.filter((share) => share <= key.y && share >= lowest)).toEqual([])
    }
  })

  it('leaves a gap where the share is not known', () => {
    const open = { name: 'long', curve: curveOf([10, 60], 60) }
    const [long] = autonomyFigure([open], { atHours: 60 }).data as Drawn[]
    expect(long!.y[4 * 48]).toBe(50)
    expect(long!.y[4 * 48 + 1]).toBeNaN()
  })
})

describe('curves of stacks, step by step', () => {
  const stacks = [1, 2, 3, 4, 5, 6].map((modules) => ({
    name: `${modules} modules`,
    curve: curveOf([4 * modules, 7 * modules]),
  }))
  const { data, layout } = autonomyFigure(stacks, { inOrder: true })
  const looks = data.map(({ line }) => line as { color: string; dash: string })

  it('go from dark to light, and no neighbours have the same strokes', () => {
    for (const [i, { color, dash }] of looks.slice(1).entries()) {
      expect(contrast(color, '#ffffff')).toBeLessThanOrEqual(contrast(looks[i]!.color, '#ffffff'))
      expect(dash).not.toBe(looks[i]!.dash)
    }
  })

  it('have names in their colours that can be read on white', () => {
    // WCAG 2.1: 3 to 1 for graphical objects and for bold letters of 14 pt or more; ours are
    // bold and smaller, so somewhat more.
    for (const { color } of looks) expect(contrast(color, '#ffffff')).toBeGreaterThan(3.5)
    const words = layout.annotations as { text: string; font: { color: string } }[]
    expect(words.map(({ text }) => text)).toEqual(stacks.map(({ name }) => `<b>${name}</b>`))
    expect(words.map(({ font }) => font.color)).toEqual(looks.map(({ color }) => color))
  })
})

describe('a dozen curves, one a row', () => {
  const figure = autonomyGridFigure(
    [...CURVES, { name: 'a name too long for a phone', curve: CURVES[0]!.curve }],
    {
      hours: [6, 24, 36, 7.1],
    },
  )
  const [grid, texts] = figure.data as (Trace & { text: string[]; z: number[][] })[]
  const { yaxis, xaxis } = figure.layout as unknown as {
    yaxis: { ticktext: string[] }
    xaxis: { ticktext: string[]; title: Words }
  }

  it('has the share of each length of cut in its cell, rounded down', () => {
    // Of 1000 starts one lasts 5 h: 999 last 6, which is not all.
    expect(texts!.text.slice(0, 6)).toEqual(['100', '66', '0', '99', '99', '99'])
    expect((grid!.text as unknown as string[][])[0]![1]).toBe('dull sky, after 24 h: 66 %')
  })

  it('shades by quarters, and only what all cuts last as all', () => {
    expect(grid!.z).toEqual([
      [4, 2, 0],
      [3, 3, 3],
      [4, 2, 0],
    ])
  })

  it('leaves out hours that no curve tells, and shortens long names', () => {
    expect(xaxis.ticktext).toEqual(['6', '24', '36'])
    expect(xaxis.title.text).toBe('time since the power cut began [h]')
    expect(yaxis.ticktext).toEqual(['dull sky', 'typical skies', 'a name too long …'])
  })
})

describe('the numbers of autonomy curves', () => {
  it('are a row a length of cut, rounded down', () => {
    expect(autonomyRows(CURVES, [6, 24, 36])).toEqual([
      { 'after [h]': 6, 'dull sky [%]': 100, 'typical skies [%]': 99 },
      { 'after [h]': 24, 'dull sky [%]': 66, 'typical skies [%]': 99 },
      { 'after [h]': 36, 'dull sky [%]': 0, 'typical skies [%]': 99 },
    ])
  })

  it('are missing where the share is not known, and leave out hours that are not told', () => {
    const open = [{ name: 'long', curve: curveOf([10, 60], 60) }]
    expect(autonomyRows(open, [48, 60, 72])).toEqual([
      { 'after [h]': 48, 'long [%]': 50 },
      { 'after [h]': 60, 'long [%]': null },
    ])
  })

  it('stay whole where a share is a rounded fraction', () => {
    // 0.29 * 100 is 28.999… in doubles.
    const curve = curveOf(Array.from({ length: 100 }, (_, i) => (i < 29 ? 20 : 1)))
    expect(autonomyRows([{ name: 'a', curve }], [12])).toEqual([{ 'after [h]': 12, 'a [%]': 29 }])
  })
})
