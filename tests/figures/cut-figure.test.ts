import { fileURLToPath } from 'node:url'
import { type CutQuestion, prepare, traceCut } from '@tideover/core'
import { cutFigure, cutRows, figureJson, type Trace } from '@tideover/figures'
import { loadHouse } from '@tideover/files'
import { Body, Observer, SearchRiseSet } from 'astronomy-engine'
import { DateTime } from 'luxon'
import { describe, expect, it } from 'vitest'

const CROFT = fileURLToPath(new URL('../../data-samples/croft.yaml', import.meta.url))
const { house, files } = loadHouse(CROFT)
const prepared = prepare(house, files)
const ZONE = 'Europe/London'

const storyOf = (iso: string, hours: number, more: Partial<CutQuestion> = {}) =>
  traceCut(prepared, { startMs: Date.parse(iso), hours, ...more })

// A winter night in which the battery gives out before somebody can start the generator.
const STORY = storyOf('2025-01-07T19:30Z', 24)
const FIGURE = cutFigure(STORY, prepared)
const { trace } = STORY

interface Drawn extends Trace {
  x: number[]
  y: number[]
}
type Words = { text: string; x: number; xref: string }

const traces = (figure = FIGURE) => figure.data as Drawn[]
const onAxis = (axis: string, figure = FIGURE) =>
  traces(figure).filter((one) => one.yaxis === axis && one.stackgroup !== undefined)
const named = (name: string, figure = FIGURE) => {
  const found = traces(figure).find((one) => one.name === name)
  if (found === undefined) throw new Error(`no ${name} in ${traces(figure).map((one) => one.name)}`)
  return found
}
const annotations = (figure = FIGURE) => figure.layout.annotations as Words[]
const wordsOf = (figure = FIGURE) => annotations(figure).map(({ text }) => text)

describe('the figure of a cut', () => {
  it('says which house, which cut, which sky and how full the battery was', () => {
    const { text, subtitle } = FIGURE.layout.title as { text: string; subtitle: Words }
    expect(text.replaceAll('\u00a0', ' ')).toBe('Skerry Croft: cut of 24 h from Tue 7 Jan 19:30')
    const conditions = subtitle.text.replaceAll('<br>', ' ')
    expect(conditions).toContain('dull sky (a day as dark as 1 January in 10 brings)')
    expect(conditions).toContain('battery 6.9 kWh, 35 % full at the start')
  })

  it('has a unit for each of its axes', () => {
    const { xaxis } = FIGURE.layout as { xaxis: { title: Words } }
    expect(xaxis.title.text).toBe('local time (Europe/London)')
    const headings = wordsOf().filter((text) => text.startsWith('<b>') && text.includes('['))
    expect(headings.map((text) => text.split(/<br>|,/)[0])).toEqual([
      '<b>Stored energy</b> [kWh]',
      '<b>Where power comes from</b> [kW]',
      '<b>Where it goes</b> [kW]',
      '<b>insulin fridge</b> [°C]',
      '<b>fuel',
    ])
  })

  it('begins and ends with what is stored then', () => {
    const { x, y } = named('stored energy')
    expect([x[0], x.at(-1)]).toEqual([0, 24])
    expect(y[0]).toBeCloseTo(trace.startStoredKwh[0]!, 3)
    expect(y.at(-1)).toBeCloseTo(trace.storedKwh.at(-1)!, 3)
  })

  it('draws as much power going as coming, in every minute that it draws', () => {
    const [sources, uses] = [onAxis('y2'), onAxis('y3')]
    expect(sources.map(({ name }) => name)).toEqual(['sun', 'generator', 'battery'])
    expect(uses.map(({ name }) => name)).toEqual([
      'must stay on',
      'while it lasts',
      'into battery',
      'losses',
    ])
    const sum = (areas: Drawn[], row: number) => areas.reduce((kw, { y }) => kw + y[row]!, 0)
    for (const row of named('sun').x.keys()) {
      // Seven columns, each rounded to a watt.
      expect(Math.abs(sum(sources, row) - sum(uses, row))).toBeLessThan(0.0035)
    }
  })

  it('loses no energy by leaving out minutes that are like the one before', () => {
    const { x, y } = named('must stay on')
    expect(x.length).toBeLessThan(trace.n / 2)
    const drawnKwh = y.slice(0, -1).reduce((kwh, kw, i) => kwh + kw * (x[i + 1]! - x[i]!), 0)
    const kwh = trace.servedCriticalKw.reduce((sum, kw) => sum + kw / 60, 0)
    expect(drawnKwh).toBeCloseTo(kwh, 2)
  })

  it('shows the states one after the other, from the start to the end', () => {
    const strip = traces()[0] as Drawn & { base: number[]; text: string[] }
    const ends = strip.base.map((from, i) => from + strip.x[i]!)
    expect(strip.base[0]).toBe(0)
    expect(ends.at(-1)).toBeCloseTo(24, 9)
    for (const [i, from] of strip.base.slice(1).entries()) expect(ends[i]).toBeCloseTo(from, 9)
    expect(strip.text).toEqual(['must stay<br>on only', 'OFF', 'generator', 'all on'])
  })

  it('marks the minute in which everything goes off first', () => {
    const minute = trace.states.findIndex((state) => state.startsWith('off'))
    const clock = DateTime.fromISO('2025-01-07T19:30Z', { zone: ZONE }).plus({ minutes: minute })
    const note = annotations().find(({ text }) => text.startsWith('<b>off '))
    expect(note?.text).toContain(`off ${clock.toFormat('HH:mm')}`)
    expect(note?.text).toContain(`after ${Math.floor(minute / 60)} h ${minute % 60} min`)
    expect(note?.x).toBeCloseTo(minute / 60, 9)
    const lines = (FIGURE.layout.shapes as { type: string; yref: string; x0: number }[]).filter(
      ({ type, yref }) => type === 'line' && ['y domain', 'y2 domain', 'y3 domain'].includes(yref),
    )
    expect(lines.map(({ x0 }) => x0)).toEqual([minute, minute, minute].map((m) => m / 60))
  })

  it('shows the fuel go while the generator runs, and for how long it did', () => {
    const { generatorKw, fuelL } = trace
    const { y } = named('fuel, tank and cans, left')
    // Tank of 12 l and cans of 20 l; the croft's set takes 0.6 to 1.5 l an hour.
    expect(y[0]).toBeCloseTo(32, 1)
    const ran = generatorKw.reduce((minutes, kw) => minutes + (kw > 0 ? 1 : 0), 0)
    expect(y[0]! - y.at(-1)!).toBeGreaterThan((0.6 * ran) / 60 - 0.05)
    expect(y[0]! - y.at(-1)!).toBeLessThan((1.5 * ran) / 60)
    const burnt = Math.ceil(10 * (32 - fuelL.at(-1)!)) / 10
    expect(wordsOf().find((text) => text.startsWith('<b>fuel'))).toBe(
      `<b>fuel, tank and cans</b> [l], ran ${Math.floor(ran / 60)} h ${ran % 60} min, took ` +
        `${burnt.toFixed(1)}\u00a0l`,
    )
  })

  it('hatches what must stay on and goes without', () => {
    const { x, y } = named('no power for what must stay on')
    const off = traces()[0] as Drawn & { base: number[]; text: string[] }
    const which = off.text.indexOf('OFF')
    const [from, to] = [off.base[which]!, off.base[which]! + off.x[which]!]
    for (const [row, hour] of x.entries()) {
      if (row === x.length - 1) continue
      const inside = hour >= from - 1e-9 && hour < to - 1e-9
      expect(y[row]! > 0, `at ${hour} h`).toBe(inside)
    }
  })

  it('says what the limits mean, and that the cold lifts the lowest', () => {
    const warm = 10
    const coldest = Math.max(...STORY.compiled.columns.coldFloor)
    const cold = Math.round(warm + (100 * coldest) / STORY.capacityKwh)
    expect(wordsOf()).toContain('full: 6.9 kWh')
    expect(wordsOf()).toContain('below 40 %: must stay on only')
    expect(wordsOf()).toContain(`below ${cold} % (10 % when warm): off`)
  })

  it('stays quiet about what did not happen', () => {
    const noon = cutFigure(storyOf('2025-06-10T11:00Z', 2, { startSoc: 0.6 }), prepared)
    expect(wordsOf(noon).filter((text) => text.includes('off ') && text.includes('after'))).toEqual(
      [],
    )
    expect(onAxis('y2', noon).map(({ name }) => name)).not.toContain('generator')
    expect(traces(noon).map(({ name }) => name)).not.toContain('no power for what must stay on')
  })

  it('can stand inside a page', () => {
    expect(JSON.parse(figureJson(FIGURE)).data).toHaveLength(FIGURE.data.length)
  })
})

describe('its sun', () => {
  // Truth: astronomy-engine. Its rise is the upper limb's; ours is the middle of the disc, which
  // is a quarter of a degree behind: some minutes at 58 degrees north in January.
  it('shades the night from sunset to sunrise', () => {
    const { latitudeDeg, longitudeDeg, elevationM } = house.site
    const observer = new Observer(latitudeDeg, longitudeDeg, elevationM)
    const start = new Date('2025-01-07T19:30Z')
    const hourOf = (direction: 1 | -1) => {
      const time = SearchRiseSet(Body.Sun, observer, direction, start, 2)
      return (time!.date.getTime() - start.getTime()) / 3_600_000
    }
    const shaded = (
      FIGURE.layout.shapes as { type: string; yref: string; x0: number; x1: number }[]
    )
      .filter(({ type, yref }) => type === 'rect' && yref === 'y domain')
      .map(({ x0, x1 }) => [x0, x1])
    expect(shaded).toHaveLength(2)
    expect(shaded[0]![0]).toBe(0)
    expect(Math.abs(shaded[0]![1]! - hourOf(1))).toBeLessThan(0.1)
    expect(Math.abs(shaded[1]![0]! - hourOf(-1))).toBeLessThan(0.1)
    expect(shaded[1]![1]).toBeCloseTo(24, 9)
  })

  it('is drawn as a line of its own where much of it is not taken', () => {
    // Held out while the battery is nearly full: a bright forenoon from a full start.
    const full = storyOf('2025-06-10T08:00Z', 6, { sky: 'clear', startSoc: 'full' })
    const { y } = named('sun to be had', cutFigure(full, prepared))
    expect(Math.max(...y.filter((kw) => !Number.isNaN(kw)))).toBeCloseTo(
      Math.max(...full.trace.solarAvailableKw),
      3,
    )
    expect(traces().map(({ name }) => name)).not.toContain('sun to be had')
  })
})

describe('its time axis', () => {
  const ticks = (iso: string, hours: number) => {
    const { xaxis } = cutFigure(storyOf(iso, hours, { sky: 'none' }), prepared).layout as {
      xaxis: { tickvals: number[]; ticktext: string[] }
    }
    return Object.fromEntries(xaxis.ticktext.map((text, i) => [text, xaxis.tickvals[i]]))
  }

  it('has the hours of the clock on the wall and the date at midnight', () => {
    expect(ticks('2025-01-07T19:30Z', 24)).toEqual({
      '00:00<br>Wed 8 Jan': 4.5,
      '06:00': 10.5,
      '12:00': 16.5,
      '18:00': 22.5,
    })
  })

  it('loses an hour of the night of 30 March 2025', () => {
    // 18:00 GMT; clocks go from 01:00 to 02:00, so 06:00 is eleven hours on.
    expect(ticks('2025-03-29T18:00Z', 20)).toEqual({
      '18:00<br>Sat 29 Mar': 0,
      '00:00<br>Sun 30 Mar': 6,
      '06:00': 11,
      '12:00': 17,
    })
  })

  it('has an hour more in the night of 26 October 2025', () => {
    // 18:00 BST; clocks go from 02:00 to 01:00, so 06:00 is thirteen hours on.
    expect(ticks('2025-10-25T17:00Z', 20)).toEqual({
      '18:00<br>Sat 25 Oct': 0,
      '00:00<br>Sun 26 Oct': 6,
      '06:00': 13,
      '12:00': 19,
    })
  })

  it('has days where the cut is long', () => {
    expect(ticks('2025-01-07T19:30Z', 72)).toEqual({
      'Wed<br>8 Jan': 4.5,
      'Thu<br>9 Jan': 28.5,
      'Fri<br>10 Jan': 52.5,
    })
  })
})

describe('a long cut drawn with few rows', () => {
  const long = storyOf('2025-01-07T19:30Z', 20 * 24, { sky: 'typical', syntheticYear: 0 })
  const figure = cutFigure(long, prepared, { mostRows: 300 })
  const { n } = long.trace

  it('draws a small part of them', () => {
    expect(named('losses', figure).x.length).toBeLessThan(n / 15)
  })

  it('keeps the least and the greatest of every column', () => {
    const columns = {
      'must stay on': long.trace.servedCriticalKw,
      'while it lasts': long.trace.servedComfortKw,
      losses: long.trace.lossKw,
      generator: long.trace.generatorKw,
      sun: long.trace.solarUsedKw,
      battery: long.trace.batteryKw.map((kw) => Math.max(0, kw)),
      'into battery': long.trace.batteryKw.map((kw) => Math.max(0, -kw)),
      'stored energy': long.trace.startStoredKwh,
    }
    for (const [name, column] of Object.entries(columns)) {
      const { y } = named(name, figure)
      expect(Math.min(...y), `least ${name}`).toBeCloseTo(Math.min(...column), 3)
      expect(Math.max(...y), `greatest ${name}`).toBeCloseTo(Math.max(...column), 3)
    }
  })

  it('keeps every minute in which the state changes', () => {
    const drawn = new Set(named('losses', figure).x.map((hour) => Math.round(hour * 60)))
    const changes = long.trace.states.flatMap((state, i) =>
      i > 0 && state !== long.trace.states[i - 1] ? [i] : [],
    )
    expect(changes.length).toBeGreaterThan(10)
    expect(changes.filter((minute) => !drawn.has(minute))).toEqual([])
  })

  it('leaves a spike as narrow as it is', () => {
    const { x, y } = named('while it lasts', figure)
    const highest = y.indexOf(Math.max(...y))
    const kettleMinutes = Math.round((x[highest + 1]! - x[highest]!) * 60)
    expect(kettleMinutes).toBe(1)
  })
})

describe('a cut of a hundred days', () => {
  const story = storyOf('2025-01-07T19:30Z', 100 * 24, { sky: 'typical', syntheticYear: 0 })
  const figure = cutFigure(story, prepared)

  it('draws no line of more points than can be seen, its limits neither', () => {
    // 2400 hours of a limit that the cold lifts; a wide page has some 900 columns of pixels.
    for (const { name, x, line } of traces(figure)) {
      if (line !== undefined) expect(x.length, name).toBeLessThan(2.1 * 900 + 500)
    }
    const cold = traces(figure).find(({ hoverinfo, x }) => hoverinfo === 'skip' && x.length > 100)
    const { rules, columns } = story.compiled
    const floor = rules.loadsOffKwh + columns.coldFloor.reduce((a, b) => Math.max(a, b))
    expect(Math.max(...cold!.y)).toBeCloseTo(floor, 1)
  })

  it('has its numbers in one row where that is asked for', () => {
    const [row, ...more] = cutRows(story, prepared, { hoursARow: 2400 })
    expect(more).toEqual([])
    const { values } = story.courses.find(({ name }) => name === 'insulin fridge')!.shown!
    const most = values.reduce((a, b) => Math.max(a, b))
    expect(row!['insulin fridge at most [°C]']).toBeCloseTo(most, 1)
  })

  it('shades no nights, which would be a pixel or two, and does not say so', () => {
    const shapes = figure.layout.shapes as { type: string }[]
    expect(shapes.some(({ type }) => type === 'rect')).toBe(false)
    const { subtitle } = figure.layout.title as unknown as { subtitle: Words }
    expect(subtitle.text).not.toContain('Shaded')
  })
})

describe('the numbers of a cut', () => {
  const rows = cutRows(STORY, prepared)
  const total = (name: string) => rows.reduce((sum, row) => sum + (row[name] as number), 0)
  const kwh = (column: Float64Array) => column.reduce((sum, kw) => sum + kw / 60, 0)

  it('are a row an hour for a day, with local times', () => {
    expect(rows).toHaveLength(24)
    expect(rows[0]).toMatchObject({ from: 'Tue 7 Jan 19:30', state: 'must stay on only' })
    expect(rows[4]).toMatchObject({ state: 'must stay on only, then OFF' })
  })

  it('add up to the energies of the trace', () => {
    // 24 rows rounded to 0.01 kWh.
    const off = (name: string, column: Float64Array) => Math.abs(total(name) - kwh(column))
    expect(off('must stay on [kWh]', trace.servedCriticalKw)).toBeLessThan(0.12)
    expect(off('generator [kWh]', trace.generatorKw)).toBeLessThan(0.12)
    expect(off('losses [kWh]', trace.lossKw)).toBeLessThan(0.12)
    expect(rows.at(-1)?.['stored at the end [kWh]']).toBeCloseTo(trace.storedKwh.at(-1)!, 2)
  })

  it('count the minutes without power', () => {
    const without = trace.states.filter((state) => state.startsWith('off')).length
    expect(total('off [min]')).toBe(without)
  })

  it('are summed up over longer stretches where asked', () => {
    expect(cutRows(STORY, prepared, { hoursARow: 6 })).toHaveLength(4)
    expect(cutRows(STORY, prepared, { hoursARow: 24 })[0]?.['must stay on [kWh]']).toBeCloseTo(
      kwh(trace.servedCriticalKw),
      2,
    )
  })
})
