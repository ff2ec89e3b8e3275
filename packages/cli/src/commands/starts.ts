import {
  equip,
  InputError,
  type MonthRides,
  monthName,
  type Prepared,
  type StartsQuestion,
  startRows,
  startsFrom,
  startsOfMonth,
} from '@tideover/core'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { progressLine, say, sayJson, writeCsv } from '../output.js'
import { startsText } from '../text/starts-text.js'
import { repeated } from './repeated.js'

const HEADER = ['start_utc', 'ride_minutes', 'beyond', 'ended_by']
const ALL_MONTHS = Array.from({ length: 12 }, (_, i) => i + 1)

/** `starts`: the ride of every start. */
export function starts(path: string | undefined, words: Words): void {
  const { question, month } = asked(words)
  const { prepared, plain } = openHouse(path)
  if (question.sky === 'file' && prepared.record === null) {
    throw new InputError('--sky', 'one of dull, none, typical, clear: no sky.file is named', 'file')
  }
  // What is wrong with the question is told before any file is written.
  equip(prepared, question)
  const run = (sky: StartsQuestion): Iterable<MonthRides> => ridden(prepared, sky, month)
  const csv = typeof words.csv === 'string' ? words.csv : null
  const rides: MonthRides[] = []
  const kept = keeping(run(question), rides)
  if (csv === null) for (const _ of kept);
  else writeCsv(csv, HEADER, cells(prepared, kept))
  if (csv === '-') return
  const answer = startsFrom(prepared, question, rides, month, plain)
  // A clear sky is never shown alone.
  const dullToo: StartsQuestion = { ...question, sky: 'dull' }
  const dull =
    question.sky === 'clear' ? startsFrom(prepared, dullToo, [...run(dullToo)], month, plain) : null
  if (words.json === true) sayJson({ ...answer, dull: dull?.figures ?? null })
  else say(startsText(answer, { csv, dull, csvCommand: csvCommand(path, words) }))
}

function asked(words: Words): { question: StartsQuestion; month: number | null } {
  const reader = new OptionReader(words)
  const syntheticYear = reader.whole('synthetic-year', 0, 199)
  const question = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 30,
    ...(syntheticYear === undefined ? {} : { syntheticYear }),
  }
  const month = reader.month() ?? null
  if (words.csv === '-' && words.json === true) {
    reader.fault('csv', 'a file beside --json, which has standard output for itself', '-')
  }
  reader.done()
  return { question, month }
}

/** Month by month, so that a year holds no more weather than a month does. */
function* ridden(
  prepared: Prepared,
  question: StartsQuestion,
  month: number | null,
): Generator<MonthRides> {
  const show = progressLine()
  for (const one of month === null ? ALL_MONTHS : [month]) {
    show(monthName(one))
    yield startsOfMonth(prepared, question, one)
  }
  show('')
}

function* keeping(months: Iterable<MonthRides>, into: MonthRides[]): Generator<MonthRides> {
  for (const month of months) {
    into.push(month)
    yield month
  }
}

function* cells(
  prepared: Prepared,
  months: Iterable<MonthRides>,
): Generator<readonly (string | number)[]> {
  for (const month of months) {
    for (const { startUtc, rideMinutes, beyond, endedBy } of startRows(prepared, month)) {
      yield [startUtc, rideMinutes, beyond, endedBy]
    }
  }
}

function csvCommand(path: string | undefined, words: Words): string {
  const { month, hours, syntheticYear } = words
  const own = [
    ...(month === undefined ? [] : [`--month ${month}`]),
    ...(hours === '24' ? [] : [`--hours ${hours}`]),
    ...(syntheticYear === undefined ? [] : [`--synthetic-year ${syntheticYear}`]),
  ]
  return [repeated('starts', path, words), ...own, '--csv starts.csv'].join(' ')
}
