// Every start of a month against cuts traced one by one: the same minute, the same load.

import {
  isEvening,
  longestTolerance,
  MINUTE_MS,
  type MonthRides,
  type Prepared,
  prepare,
  rideLoads,
  rideOfTrace,
  type SkyKind,
  type StartsQuestion,
  startRows,
  startsFrom,
  startsOfMonth,
  traceCut,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { describe, expect, it } from 'vitest'

const SAMPLES = new URL('../../../data-samples/', import.meta.url).pathname

function sample(name: string): Prepared {
  const { house, files } = loadHouse(`${SAMPLES}${name}.yaml`)
  return prepare(house, files)
}

/** The year a start of these rides lives. */
function yearAt({ batches }: MonthRides, minute: number): number {
  return batches.find(({ from, rides }) => minute < from + rides.minutes.length)!.year
}

describe.each([
  // Each in its darkest month; the bungalow lasts, so it is asked for days with one module.
  { name: 'croft', month: 1, asked: { hours: 24 }, skies: ['dull', 'none', 'typical', 'clear'] },
  { name: 'surgery', month: 7, asked: { hours: 24 }, skies: ['dull', 'none', 'typical', 'clear'] },
  {
    ...{ name: 'bungalow', month: 1, asked: { hours: 24, modules: 1, generator: false } },
    skies: ['dull', 'none', 'typical', 'clear', 'file'],
  },
] as const)('rows of the $name', ({ name, month, asked, skies }) => {
  const prepared = sample(name)
  const loads = rideLoads(prepared.demand)
  const tolerance = longestTolerance(loads)

  it.each([...skies])('are those of cuts traced one by one, under the sky %s', (sky: SkyKind) => {
    const numbered = sky === 'typical' ? { syntheticYear: 3 } : {}
    const question: StartsQuestion = { ...asked, sky, years: 5, ...numbered }
    const rides = startsOfMonth(prepared, question, month)
    const rows = [...startRows(prepared, rides)]
    expect(rows).toHaveLength(31 * 1440)
    // Seven starts a prime number of minutes apart: all hours of the day, the month's end too.
    for (let s = 11; s < rows.length; s += 7321) {
      const row = rows[s]!
      const minute = rides.batches[0]!.from + s
      const story = traceCut(prepared, {
        ...question,
        startMs: prepared.calendar.startMs + minute * MINUTE_MS,
        hours: (rides.horizon + tolerance + 1) / 60,
        syntheticYear: yearAt(rides, minute),
      })
      const traced = rideOfTrace(story)
      const ends = traced !== null && traced.minutes < rides.horizon
      expect(row, row.startUtc).toEqual({
        startUtc: new Date(prepared.calendar.startMs + minute * MINUTE_MS)
          .toISOString()
          .replace(':00.000Z', 'Z'),
        rideMinutes: ends ? traced.minutes : rides.horizon,
        beyond: ends ? 0 : 1,
        endedBy: ends ? story.courses[traced.endedBy]!.name : '',
      })
      // By the columns a person sees: served to the end of the ride, and a loss after it.
      if (!ends) continue
      const { servedCriticalKw: served, demandCriticalKw: wanted } = story.trace
      expect(traced.lostAt).toBeGreaterThanOrEqual(traced.minutes)
      for (let i = traced.minutes; i <= traced.lostAt; i++) expect(served[i]).toBe(0)
      if (traced.minutes > 0) {
        const before = traced.minutes - 1
        expect(served[before] === 0 && wanted[before]! > 0).toBe(false)
      }
    }
  })

  it('without a year dull lives, in a trace of the same cut, the year of its row', () => {
    const rides = startsOfMonth(prepared, asked, month)
    for (const s of [0, 719, 720, 30000]) {
      const minute = rides.batches[0]!.from + s
      const startMs = prepared.calendar.startMs + minute * MINUTE_MS
      const { syntheticYear } = traceCut(prepared, { ...asked, startMs })
      expect(syntheticYear).toBe(yearAt(rides, minute))
    }
  })
})

describe('the sum of the rows', () => {
  const prepared = sample('surgery')
  const question = { hours: 24 }
  const rides = startsOfMonth(prepared, question, 8)
  const answer = startsFrom(prepared, question, [rides], 8)
  const rows = [...startRows(prepared, rides)]

  it('counts what the rows count', () => {
    expect(answer.figures.starts).toBe(rows.length)
    expect(answer.beyond).toBe(rows.filter(({ beyond }) => beyond === 1).length)
    for (const { name, starts } of answer.endedBy) {
      expect(starts, name).toBe(rows.filter(({ endedBy }) => endedBy === name).length)
    }
    const lasting = rows.filter(({ rideMinutes }) => rideMinutes >= 24 * 60)
    expect(answer.figures.shareByPattern.any).toBe(lasting.length / rows.length)
    const { from } = rides.batches[0]!
    const evening = rows.filter((_, s) => isEvening(prepared.calendar, from + s))
    expect(answer.figures.shareByPattern.evening).toBe(
      evening.filter(({ rideMinutes }) => rideMinutes >= 24 * 60).length / evening.length,
    )
  })

  it('names the year that each span of starts lives, without a gap', () => {
    const { lived } = answer
    expect(lived[0]!.from).toBe(rows[0]!.startUtc)
    for (const [i, { to }] of lived.entries()) {
      if (i + 1 < lived.length) expect(lived[i + 1]!.from).toBe(to)
    }
    expect(Date.parse(lived.at(-1)!.to) - Date.parse(rows.at(-1)!.startUtc)).toBe(MINUTE_MS)
  })

  it('tells no worst of one numbered year, and the spell where days choose theirs', () => {
    expect(answer.spell).toEqual({ winters: 10, days: 1 })
    expect(answer.figures.worstHours).toBe(
      Math.min(...rows.map(({ rideMinutes }) => rideMinutes)) / 60,
    )
    for (const sky of ['typical', 'dull', 'none'] as const) {
      const one = { hours: 24, sky, syntheticYear: 2 }
      const { spell, figures } = startsFrom(prepared, one, [startsOfMonth(prepared, one, 8)], 8)
      expect([spell, figures.worstHours, figures.worstStart]).toEqual([null, null, null])
      expect([figures.shareLow, figures.winters]).toEqual([null, undefined])
    }
  })

  it('refuses a year that the sky does not have', () => {
    const far = { hours: 24, sky: 'clear', syntheticYear: 1 } as const
    expect(() => startsOfMonth(prepared, far, 1)).toThrow(
      'synthetic-year must be a whole number 0..0, got 1',
    )
  })
})
