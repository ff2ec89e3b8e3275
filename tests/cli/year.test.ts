// `year`: the keys scripts rely on, the figures of ride, and a trace that shows a worst start again.

import { beforeAll, describe, expect, it } from 'vitest'
import { columnsOf, type Ended, folder, SMALL_HOUSE, tideover } from './command.js'

const house = folder().write('small.yaml', SMALL_HOUSE)
let ended: Ended
// biome-ignore lint/suspicious/noExplicitAny: what a script sees
let answer: any

beforeAll(async () => {
  ended = await tideover('year', house, '--hours', '4', '--apart', '30', '--json')
  answer = JSON.parse(ended.out)
}, 60_000)

describe('year --json', () => {
  it('is one object, with twelve months of 24 hours', () => {
    expect([ended.status, ended.err]).toEqual([0, ''])
    expect(answer.months.map(({ month }: { month: number }) => month)).toEqual([
      ...[1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    ])
    for (const { byHour, byThreeHours, figures } of answer.months) {
      expect([byHour.length, byThreeHours.length]).toEqual([24, 8])
      const starts = byHour.map((cell: { starts: number }) => cell.starts)
      expect(starts.reduce((a: number, b: number) => a + b)).toBe(figures.starts)
      const worst = byHour.map((cell: { worstHours: number }) => cell.worstHours)
      expect(Math.min(...worst)).toBe(figures.worstHours)
    }
    expect(answer).toMatchObject({ sky: 'dull', spell: { winters: 10, days: 1 }, years: null })
  })

  it('has the figures of ride', async () => {
    const words = ['--month', '2', '--hours', '4', '--years', '1', '--json']
    const { withoutSunHours: _, ...dull } = JSON.parse(
      (await tideover('ride', house, ...words)).out,
    ).skies.dull
    expect(answer.months[1].figures).toEqual(dull)
  }, 60_000)

  it('names the month of the least share', () => {
    const shares = answer.months.map(({ figures }: { figures: { share: number } }) => figures.share)
    expect(shares[answer.hardestMonth - 1]).toBe(Math.min(...shares))
  })

  it('has worst starts apart, the shortest first, each with its story', () => {
    const minutes = answer.worst.map(({ rideMinutes }: { rideMinutes: number }) => rideMinutes)
    expect(minutes).toHaveLength(5)
    expect(minutes).toEqual([...minutes].sort((a: number, b: number) => a - b))
    const times = answer.worst.map(({ start }: { start: string }) => Date.parse(start))
    for (const [i, a] of times.entries()) {
      for (const b of times.slice(0, i)) expect(Math.abs(a - b)).toBeGreaterThan(29 * 86_400_000)
    }
    for (const { energy: e, weather, endedBy } of answer.worst) {
      const out = e.criticalKwh + e.comfortKwh + e.standingKwh + e.conversionKwh + e.leftKwh
      expect(Math.abs(e.startKwh + e.solarKwh + e.generatorKwh - out)).toBeLessThan(1e-6)
      expect(endedBy).toBe('pump')
      expect(weather.brightness).toBeGreaterThan(0)
    }
  })

  it('a trace lives a worst start again', async () => {
    const [{ start, syntheticYear, rideMinutes }] = answer.worst
    const { out } = await tideover(
      ...['trace', house, '--start', start, '--synthetic-year', String(syntheticYear)],
      ...['--hours', '4', '--csv', '-'],
    )
    const { header, rows } = columnsOf(out)
    const served = header.indexOf('served_critical_kw')
    expect(rows.findIndex((row) => row[served] === '0')).toBe(rideMinutes)
  }, 60_000)
})

describe('year as text', () => {
  it('names the hardest month, the return period, and shows how to see a worst start', async () => {
    const { out } = await tideover('year', house, '--hours', '4')
    expect(out).toContain('the hardest month is')
    expect(out.replace(/\s+/g, ' ')).toContain('as dark for the season as 1 year in 10 brings')
    expect(out).toMatch(/trace \S+small\.yaml --start \S+Z --hours 4 --synthetic-year \d+/)
    expect(out).toContain('Caution:')
  }, 60_000)

  it('refuses a clear year, and tells every fault at once', async () => {
    const { status, err } = await tideover('year', house, '--sky', 'clear', '--apart', '0')
    expect(status).toBe(2)
    expect(err.trimEnd().split('\n')).toEqual([
      '--sky must be one of dull, none, typical, file, got "clear"',
      '--apart must be a whole number 1..180, got "0"',
    ])
  })
})
