import { type Trace, type WorstDrawn, worstFigure, worstRows } from '@tideover/figures'
import { describe, expect, it } from 'vitest'

type Start = NonNullable<WorstDrawn['worst']>[number]

/** A start of ours that lasts so many minutes, with what was tried on it. */
const startOf = (rideMinutes: number, tried: Start['tried'], more: Partial<Start> = {}): Start => ({
  start: '2025-01-07T19:18Z',
  local: 'Tue 7 Jan 19:18',
  month: 1,
  syntheticYear: 3,
  rideMinutes,
  tooMuch: [],
  endedBy: 'boiler pump',
  lostAt: '2025-01-08T00:00Z',
  energy: {
    startKwh: 2,
    solarKwh: 0,
    generatorKwh: 0,
    criticalKwh: 1,
    comfortKwh: 0,
    standingKwh: 0.5,
    conversionKwh: 0.1,
    leftKwh: 0.4,
  },
  weather: { days: 1, brightness: 0.72, airC: -2.8, monthAirC: 4.4, windMs: null },
  tried,
  cure: tried.find(({ lasts }) => lasts)?.id ?? null,
  ...more,
})

const CURED = startOf(264, [
  { id: 'comfort off', words: 'the comfort loads off', rideMinutes: 264, lasts: false },
  { id: 'full', words: 'the battery full', rideMinutes: 2880, lasts: true },
])
const BETTER = startOf(1200, [
  { id: 'module', words: 'one more module', rideMinutes: 1260, lasts: false },
])
const HOPELESS = startOf(300, [
  { id: 'array', words: 'twice the array', rideMinutes: 300, lasts: false },
])

const ANSWER: WorstDrawn = {
  house: 'Croft',
  cutHours: 24,
  apartDays: 14,
  sky: 'dull',
  spell: { winters: 10, days: 1 },
  startSoc: { kind: 'share', value: 0.5 },
  health: 0.8,
  worst: [CURED, HOPELESS, BETTER],
}

type Bars = Trace & { x: number[] }
type Words = { text: string; font: { color: string }; x: number }
const plain = (text: string) => text.replaceAll(/<br>/g, ' | ').replaceAll(/<[^>]*>/g, '')
const words = (answer = ANSWER) => worstFigure(answer).layout.annotations as Words[]

describe('the worst starts of a year', () => {
  it('draws how long each lasts over what one change would make of it, none past the cut', () => {
    const [changed, lasts] = worstFigure(ANSWER).data as Bars[]
    expect(lasts!.x).toEqual([4.4, 5, 20])
    expect(changed!.x).toEqual([24, 0, 21])
  })

  it('says start, length, loss and weather beside each', () => {
    expect(plain(words()[0]!.text)).toBe(
      'Tue 7 Jan 19:18: 4 h 24 min, boiler pump lost | light 0.7 of usual, air −3\u00a0°C (usual 4)',
    )
  })

  it('says nothing of light under a sky without any', () => {
    const text = plain(words({ ...ANSWER, sky: 'none' })[0]!.text)
    expect(text).toContain('| air −3')
    expect(text).not.toContain('light')
  })

  it('says what cures it, what is best where nothing does, and where nothing helps', () => {
    const said = words().filter((_, i) => i % 2 === 1)
    expect(said.map(({ text }) => text)).toEqual([
      'lasts with the battery full',
      'nothing tried gives more',
      '21 h with one more module',
    ])
    // Into the dark bar, in white, where the light one is too narrow.
    expect(said.map(({ font }) => font.color)).toEqual(['#1d2733', '#1d2733', '#ffffff'])
  })

  it('has hours on its axis', () => {
    const { xaxis } = worstFigure(ANSWER).layout as unknown as {
      xaxis: { title: { text: string }; range: number[] }
    }
    expect(xaxis.title.text).toBe('time since the power cut began [h]')
    expect(xaxis.range).toEqual([0, 24])
  })

  it('shortens a long name, which its rows have whole', () => {
    const endedBy = 'heat pump of the old dairy behind the house'
    const long = { ...ANSWER, worst: [{ ...CURED, endedBy }] }
    expect(plain(words(long)[0]!.text)).toContain('heat pump of the old da… lost')
    expect(worstRows(long)[0]).toMatchObject({ 'lost first': endedBy })
  })

  it('says why where there is none to show', () => {
    expect(plain(words({ ...ANSWER, worst: [] })[0]!.text)).toBe(
      'From no minute of the year it lasts less than 24 h.',
    )
    expect(words({ ...ANSWER, worst: null })[0]!.text).toContain('No worst start is named')
  })

  it('has its numbers as rows, with all that was tried', () => {
    expect(worstRows(ANSWER)[0]).toEqual({
      start: 'Tue 7 Jan 19:18',
      'synthetic year': 3,
      lasts: '4 h 24 min',
      'lost first': 'boiler pump',
      'light [of the mean day of the month]': 0.72,
      'air [°C]': -2.8,
      'air of the month [°C]': 4.4,
      'wind [m/s]': null,
      'the comfort loads off': '4 h 24 min',
      'the battery full': 'lasts 24 h',
    })
  })
})
