// `starts`: the columns that scripts rely on, one row a minute, and a trace of the same ride.

import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { describe, expect, it } from 'vitest'
import { columnsOf, folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const house = files.write('small.yaml', SMALL_HOUSE)
const HEADER = ['start_utc', 'ride_minutes', 'beyond', 'ended_by']

describe('starts --csv', () => {
  it('has the columns of the contract and a row for each minute of a month with a clock change', async () => {
    const { status, out, err } = await tideover(
      ...['starts', house, '--month', '3', '--sky', 'none', '--csv', '-'],
    )
    expect([status, err]).toEqual([0, ''])
    const { header, rows } = columnsOf(out)
    expect(header).toEqual(HEADER)
    // March of Europe/London is an hour short, and ends in summer time.
    expect(rows).toHaveLength(31 * 1440 - 60)
    expect([rows[0]![0], rows.at(-1)![0]]).toEqual(['2025-03-01T00:00Z', '2025-03-31T22:59Z'])
    // By hand 165.3 minutes without sun, at 15 °C: see the small house.
    for (const row of rows) expect(row.slice(1)).toEqual(['166', '0', 'pump'])
  })

  it('says with 1 that a ride outlasts the horizon, and how far it was followed', async () => {
    const full = ['--start-soc', 'full', '--health', '1', '--modules', '3']
    const { out } = await tideover(
      ...['starts', house, '--month', '6', '--hours', '30', '--sky', 'clear', ...full],
      ...['--csv', '-'],
    )
    const beyond = columnsOf(out).rows.filter((row) => row[2] === '1')
    expect(beyond.length).toBeGreaterThan(0)
    // One day past the end of a cut of 30 h.
    for (const row of beyond) expect([row[1], row[3]]).toEqual([String(54 * 60), ''])
  })

  it('has a row for each minute of the year', async () => {
    const csv = `${files.path}/year.csv`
    const { status, out } = await tideover('starts', house, '--csv', csv)
    expect(status).toBe(0)
    expect(out).toContain(csv)
    let lines = 0
    let last = ''
    for await (const line of createInterface(createReadStream(csv))) {
      lines++
      last = line
    }
    expect(lines).toBe(1 + 525600)
    expect(last.split(',')[0]).toBe('2025-12-31T23:59Z')
  }, 60_000)

  it('is reproduced by a trace of the same year', async () => {
    const words = ['--sky', 'typical', '--synthetic-year', '4', '--years', '6']
    const { out } = await tideover('starts', house, '--month', '4', ...words, '--csv', '-')
    const [start, minutes] = columnsOf(out).rows[12345]!
    const hours = String(Math.ceil(Number(minutes) / 60) + 1)
    const traced = await tideover(
      ...['trace', house, '--start', start!, '--hours', hours, ...words, '--csv', '-'],
    )
    const { header, rows: cut } = columnsOf(traced.out)
    const served = header.indexOf('served_critical_kw')
    expect(cut.findIndex((row) => row[served] === '0')).toBe(Number(minutes))
  }, 60_000)
})

describe('starts in sum', () => {
  it('has the figures of ride, and what ended the rides', async () => {
    const words = ['--month', '2', '--hours', '3', '--json']
    const [one, other] = await Promise.all([
      tideover('starts', house, ...words),
      tideover('ride', house, '--years', '1', ...words),
    ])
    const answer = JSON.parse(one.out)
    const { withoutSunHours: _, ...dull } = JSON.parse(other.out).skies.dull
    expect(answer.figures).toEqual(dull)
    expect(answer.endedBy).toEqual([{ name: 'pump', starts: 28 * 1440 - answer.beyond }])
    expect(answer).toMatchObject({ month: 2, cutHours: 3, horizonHours: 48, sky: 'dull' })
  })

  it('never tells a clear sky alone, nor first', async () => {
    const { out } = await tideover('starts', house, '--month', '2', '--sky', 'clear')
    expect(out.indexOf('under a dull sky')).toBeGreaterThan(0)
    expect(out.indexOf('under a clear sky')).toBeGreaterThan(out.indexOf('under a dull sky'))
    expect(out).toContain('no promise')
    expect(out).toContain('--sky clear --month 2 --csv starts.csv')
  })

  it('tells every fault at once', async () => {
    const { status, out, err } = await tideover(
      ...['starts', house, '--month', '0', '--synthetic-year', 'x', '--csv', '-', '--json'],
    )
    expect([status, out]).toEqual([2, ''])
    expect(err.trimEnd().split('\n')).toEqual([
      '--synthetic-year must be a whole number 0..199, got "x"',
      '--month must be a whole number 1..12, got "0"',
      '--csv must be a file beside --json, which has standard output for itself, got "-"',
    ])
  })
})
