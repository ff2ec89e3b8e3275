// A question at fault is asked back and never answered: without a length every cut would be lasted.

import {
  checkHouse,
  doubtsAnswer,
  generatorPlan,
  monthCurve,
  nowAnswer,
  prepare,
  rideAnswer,
  stacksAnswer,
  startsOfMonth,
  switchOffAnswer,
  traceCut,
  yearMonth,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { faultsOf, plainHouse } from '../plain-house.js'

const prepared = prepare(checkHouse(plainHouse({})))
const START = Date.UTC(2025, 0, 14, 18)

/** Each answer with a question of no type, as a script in plain JavaScript asks it. */
const ASKED: Record<string, (question: never) => unknown> = {
  rideAnswer: (question) => rideAnswer(prepared, question),
  stacksAnswer: (question) => stacksAnswer(prepared, {}, question),
  doubtsAnswer: (question) => doubtsAnswer(prepared, question),
  switchOffAnswer: (question) => switchOffAnswer(prepared, question),
  startsOfMonth: (question) => startsOfMonth(prepared, question, 1),
  yearMonth: (question) => yearMonth(prepared, question, 1),
  monthCurve: (question) => monthCurve(prepared, question, 'dull', [1]),
}

const HOURS = 'a number > 0 and <= 8760 [h]'

describe('a question', () => {
  it.each(Object.entries(ASKED))('%s without a length is asked back', (_, ask) => {
    expect(faultsOf(() => ask({ month: 1 } as never))).toEqual([`hours: ${HOURS}`])
    expect(faultsOf(() => ask({ month: 1, hours: -24 } as never))).toEqual([`hours: ${HOURS}`])
  })

  it('of one cut needs its start, of what to do now its charge, of fuel its days', () => {
    const bare = {} as never
    expect(faultsOf(() => traceCut(prepared, bare))).toEqual([
      `hours: ${HOURS}`,
      'startMs: a number [ms UTC]',
    ])
    expect(faultsOf(() => nowAnswer(prepared, bare))).toEqual([
      'atMs: a number [ms UTC]',
      'soc: a number 0..1 [share of 1]',
    ])
    expect(faultsOf(() => generatorPlan(prepared, bare))).toEqual([
      'days: a number > 0 and <= 365 [days]',
    ])
    expect(faultsOf(() => startsOfMonth(prepared, { hours: 24 }, 13))).toEqual([
      'month: a whole number 1..12',
    ])
  })

  it('hears of all its faults at once, with what was meant', () => {
    const wrong = {
      ...{ month: '1', hours: 24, share: 90, sky: 'dul', startSoc: 80, winters: 0.5 },
      ...{ modulse: 4, years: Number.NaN },
    }
    const faults = faultsOf(() => rideAnswer(prepared, wrong as never))
    expect(faults.sort()).toEqual([
      'modulse: a known field (did you mean modules? known: month, hours, years, startFails, months, ' +
        'days, share, sky, winters, seed, modules, health, startSoc, generator, apartDays, ' +
        'syntheticYear, startMs, atMs, further, after, soc, quiet, chances, setKw)',
      'month: a whole number 1..12; without quotation marks: 1',
      'share: a number 0..1 [share of 1]; 90 % is written 0.9',
      'sky: one of clear, typical, dull, none, file; did you mean dull?',
      'startSoc: reserve, full or a number 0..1 [share of 1]; 80 % is written 0.8',
      'winters: a whole number >= 2 [winters]',
      'years: a whole number >= 1 [years]',
    ])
  })

  it('may leave out what has a default, and give it as undefined', () => {
    const question = { startMs: START, hours: 1, sky: undefined, modules: undefined }
    expect(traceCut(prepared, question as never).cutMinutes).toBe(60)
  })
})
