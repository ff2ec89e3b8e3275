import { checkHouse, prepare, traceCut } from '@tideover/core'
import { cutFigure, cutRows, type Trace } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

// A house of ours without sun or comfort: an empty battery an hour or so into the cut.
const HOUSE = {
  house: 'Shed',
  year: 2025,
  site: { latitudeDeg: 58, longitudeDeg: -6, elevationM: 0, timezone: 'UTC', gridCode: 'G99' },
  sky: {
    linkeTurbidity: Array(12).fill(3),
    clearness: Array(12).fill(0.4),
    airC: Array(12).fill(10),
  },
  arrays: [],
  inverter: { ratedKva: 3, idleW: 50, whenEmpty: 'collapses' },
  stack: { module: { usableKwh: 1, chargeKw: 1, dischargeKw: 1 }, modules: 1, modulesMax: 1 },
  loads: [
    { name: 'fridge', tier: 'critical', w: 200, holdOver: { hours: 4, keeps: 'food' } },
    { name: 'stove', tier: 'critical', w: 50, overheats: { waterL: 200, heatKw: 10 } },
    { name: 'sump', tier: 'critical', w: 100, buffer: { litres: 60, litresPerMinute: 0.5 } },
    { name: 'lamp', tier: 'critical', w: 10, toleratesMinutes: 0 },
  ],
}
const prepared = prepare(checkHouse(HOUSE), {})
const storyOf = (hours: number) =>
  traceCut(prepared, {
    startMs: Date.parse('2025-01-07T12:00Z'),
    hours,
    sky: 'none',
    startSoc: 'full',
  })
const STORY = storyOf(12)
const FIGURE = cutFigure(STORY, prepared)

interface Drawn extends Trace {
  x: number[]
  y: number[]
}
type Words = { text: string; yref: string; x: number; xanchor: string }

const curve = (name: string) => {
  const found = (FIGURE.data as Drawn[]).find((one) => one.name === name)
  if (found === undefined) throw new Error(`no ${name}`)
  return found
}
const at = ({ x, y }: Drawn, hour: number) => {
  const after = x.findIndex((each) => each >= hour)
  const [a, b] = [after - 1, after]
  return y[a]! + ((y[b]! - y[a]!) * (hour - x[a]!)) / (x[b]! - x[a]!)
}
const offMinute = STORY.trace.states.findIndex((state) => state.startsWith('off'))
const words = FIGURE.layout.annotations as Words[]

describe('what the gaps of a cut do', () => {
  it('has a panel for each load that keeps something, with its unit', () => {
    const headings = words.map(({ text }) => text.replace(/,.*/, ''))
    for (const heading of ['<b>fridge</b> [°C]', '<b>stove</b> [°C]', '<b>sump</b> [l]']) {
      expect(headings).toContain(heading)
    }
    expect(headings.some((text) => text.includes('lamp'))).toBe(false)
  })

  it('shows a fridge warm from 5 to 8 °C in the four hours of its hold-over', () => {
    // Newton's law: T = 20 - 15 exp(-t / tau), tau = 4 h / ln(15 / 12), so 8 °C at 4 h.
    const fridge = curve('fridge, temperature')
    expect(at(fridge, offMinute / 60 + 4)).toBeCloseTo(8, 1)
    expect(at(fridge, offMinute / 60)).toBeCloseTo(5, 1)
  })

  it('shows a stove rise by its fire: 200 l, 10 kW', () => {
    // 10 kW / (200 l * 4.186 kJ/(l K)) = 0.7167 K a minute; 70 to 95 °C takes 34.9 minutes.
    expect(at(curve('stove, temperature'), (offMinute + 20) / 60)).toBeCloseTo(84.3, 0)
    const lost = words.find(({ text }) => text.startsWith('<b>stove'))?.text
    expect(lost).toContain('<b>lost Tue 7 Jan')
    const note = words.filter(({ text }) => text.startsWith('lost above'))
    expect(note.map(({ text }) => text)).toEqual(['lost above 8 °C', 'lost above 95 °C'])
  })

  it('shows a sump fill at half a litre a minute: 60 l in two hours', () => {
    const sump = curve('sump, water left')
    expect(at(sump, (offMinute + 60) / 60)).toBeCloseTo(30, 0)
    expect(at(sump, (offMinute + 125) / 60)).toBe(0)
  })

  it('draws the minute of each loss and the one before', () => {
    for (const { name, shown, lostAt } of STORY.courses) {
      if (shown === null) continue
      const minutes = curve(`${name}, ${shown.word}`).x.map((hour) => Math.round(60 * hour) - 1)
      expect(minutes).toEqual(expect.arrayContaining([lostAt! - 1, lostAt!]))
    }
  })

  it('says what the limit means where the curve is on the other side of it', () => {
    const note = (text: string) =>
      words.find((one) => one.text === text) as Words & { yanchor: string }
    // The stove is past its limit nearly all the time: below the line, over what it was before.
    expect(note('lost above 95 °C')).toMatchObject({ yanchor: 'top', xanchor: 'center' })
    const past = STORY.courses[1]!.shown!.values.findIndex((c) => c > 95) / STORY.trace.n
    expect(note('lost above 95 °C').x).toBeGreaterThan(past)
    expect(note('nothing left').yanchor).toBe('bottom')
  })

  it('puts the clock below the lowest panel', () => {
    const { xaxis } = FIGURE.layout as unknown as { xaxis: { anchor: string } }
    expect(xaxis.anchor).toBe('y7')
    const domains = ['yaxis3', 'yaxis5', 'yaxis6', 'yaxis7'].map(
      (axis) => (FIGURE.layout[axis] as { domain: number[] }).domain,
    )
    for (const [i, [low]] of domains.slice(0, -1).entries()) {
      expect(low).toBeGreaterThan(domains[i + 1]![1]!)
    }
    expect(domains.at(-1)![0]).toBeCloseTo(0, 9)
  })

  it('stays away while nothing has moved', () => {
    const quiet = cutFigure(storyOf(0.5), prepared)
    expect(quiet.layout.yaxis5).toBeUndefined()
    expect((quiet.layout as unknown as { xaxis: { anchor: string } }).xaxis.anchor).toBe('y3')
  })

  it('has the worst of each stretch in its rows', () => {
    const rows = cutRows(STORY, prepared)
    expect(rows[0]).toMatchObject({ 'fridge at most [°C]': 5, 'sump left at least [l]': 60 })
    expect(rows.at(-1)).toMatchObject({ 'stove at most [°C]': 110, 'sump left at least [l]': 0 })
  })
})
