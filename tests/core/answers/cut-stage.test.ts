// Cuts traced one after another on one stage are the cuts that `traceCut` traces alone.

import { createHash } from 'node:crypto'
import {
  calendarOf,
  cutStage,
  type Demand,
  DULL_YEARS,
  demandFrom,
  demandOf,
  dullYears,
  dullYearsOf,
  type LoadInput,
  loadColumns,
  prepare,
  type SkyKind,
  traceCut,
  traceOn,
  typicalOf,
} from '@tideover/core'
import { loadHouse } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { SAMPLES } from '../../cli/command.js'

const { house, files } = loadHouse(`${SAMPLES}croft.yaml`)
const prepared = prepare(house, files)

/** Every column of a demand, one after the other. */
function bytesOf({ criticalKw, comfortKw, gridOnlyKw, together, ...rest }: Demand): string[] {
  return [
    ...[criticalKw, ...comfortKw, gridOnlyKw, ...rest.peakKva, ...rest.runningKva],
    ...[...rest.formingKva, together!.criticalKw, ...together!.comfortKw, ...together!.formingKva],
  ].map((column) => createHash('sha256').update(column).digest('hex'))
}

describe('a stage', () => {
  const stage = cutStage(prepared)
  it.each<[SkyKind, string]>([
    ['dull', '2025-01-14T18:00Z'],
    ['clear', '2025-06-02T03:10Z'],
    ['dull', '2025-12-31T20:00Z'],
    ['typical', '2025-01-14T18:00Z'],
    ['none', '2025-02-28T12:00Z'],
    ['dull', '2025-01-14T18:00Z'],
  ])('traces a cut under the sky %s from %s as if it were the first', (sky, start) => {
    const question = { sky, startMs: Date.parse(start), hours: 30 }
    const alone = traceCut(prepared, question)
    const story = traceOn(stage, question)
    expect(story.trace).toEqual(alone.trace)
    expect(story.events).toEqual(alone.events)
    expect(story.syntheticYear).toBe(alone.syntheticYear)
  })

  it('traces the same cut where the year that a dull sky chooses is named', () => {
    const question = { startMs: Date.parse('2025-01-20T09:00Z'), hours: 24 }
    const chosen = traceCut(prepared, question)
    const named = traceOn(stage, { ...question, syntheticYear: chosen.syntheticYear })
    expect(named.trace).toEqual(chosen.trace)
  })
})

it('demand from known columns is that of a house whose loads stand on those tiers', () => {
  const calendar = calendarOf(house.year, house.site.timezone)
  const columns = loadColumns(house, calendar, files)
  const off = (load: LoadInput): LoadInput =>
    load.name === 'router' || load.name === 'freezer' ? { ...load, tier: 'gridOnly' } : load
  const switched = { ...house, loads: house.loads.map(off) }
  const [known, anew] = [
    demandFrom(columns, { house: switched, calendar, airC: null }),
    demandOf(switched, calendar, files),
  ]
  expect(known.comfortNames).toEqual(anew.comfortNames)
  expect(known.critical.map(({ load }) => load.name)).toEqual(
    anew.critical.map(({ load }) => load.name),
  )
  expect(bytesOf(known)).toEqual(bytesOf(anew))
})

it('years for cuts of several lengths are those for each length alone', () => {
  const typical = typicalOf(prepared, 1, DULL_YEARS)
  const [one, three] = dullYearsOf(prepared, typical, [360, 366], [1, 3], 10)
  expect(one).toEqual(dullYears(prepared, typical, [360, 366], 1, 10))
  expect(three).toEqual(dullYears(prepared, typical, [360, 366], 3, 10))
})
