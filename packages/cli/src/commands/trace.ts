import { type CutStory, isoUtc, type Prepared, traceCut, usedDefaults } from '@tideover/core'
import { rowsOf } from '@tideover/files'
import { openHouse } from '../open-house.js'
import { OptionReader, scenarioOf, type Words } from '../options.js'
import { say, sayJson, writeCsv } from '../output.js'
import { traceText, traceTotals } from '../text/trace-text.js'

/** `trace`: one cut, minute by minute. */
export function trace(path: string | undefined, words: Words): void {
  const reader = new OptionReader(words)
  const year = reader.whole('synthetic-year', 0, 199)
  const startFails = reader.share('start-fails')
  const question = {
    ...scenarioOf(reader),
    hours: reader.hours(),
    after: reader.number('after', 'a number 0..720 [h]', (v) => v >= 0 && v <= 720) ?? 0,
    sky: reader.sky(),
    years: reader.whole('years', 1, 200) ?? 30,
    ...(year === undefined ? {} : { syntheticYear: year }),
    ...(startFails === undefined ? {} : { startFails }),
  }
  const startWord = reader.moment('start', 'utc')
  reader.done()
  const { prepared, plain } = openHouse(path)
  const zoned = new OptionReader(words)
  const startMs = Number.isNaN(startWord)
    ? startWord
    : zoned.moment('start', prepared.calendar.zone)
  const further = zoned.intervals('also', prepared.calendar.zone)
  zoned.done()
  const story = traceCut(prepared, { ...question, startMs, further })
  if (typeof words.csv === 'string') writeTrace(words.csv, prepared, story)
  if (words.json === true) sayJson(traceJson(prepared, story, plain))
  else if (words.csv !== '-') say(traceText(prepared, story))
}

const HEADER = [
  'time_utc',
  'demand_critical_kw',
  'demand_comfort_kw',
  'served_critical_kw',
  'served_comfort_kw',
  'solar_available_kw',
  'solar_used_kw',
  'generator_kw',
  'charge_kw',
  'discharge_kw',
  'battery_kw',
  'grid_kw',
  'loss_kw',
  'start_stored_kwh',
  'stored_kwh',
  'fuel_l',
  'state',
] as const

function writeTrace(path: string, prepared: Prepared, { trace: t, courses }: CutStory): void {
  const kept = courses.filter(({ shown }) => shown !== null)
  const times = Array.from({ length: t.n }, (_, i) => isoUtc(prepared.calendar, t.from + i))
  const columns = [
    times,
    t.demandCriticalKw,
    t.demandComfortKw,
    t.servedCriticalKw,
    t.servedComfortKw,
    t.solarAvailableKw,
    t.solarUsedKw,
    t.generatorKw,
    t.chargeKw,
    t.dischargeKw,
    t.batteryKw,
    t.gridKw,
    t.lossKw,
    t.startStoredKwh,
    t.storedKwh,
    t.fuelL,
    t.states,
    ...kept.map(({ shown }) => shown!.values),
  ]
  const names = kept.map(({ name, shown }) => `${name}.${shown!.column}`)
  writeCsv(path, [...HEADER, ...names], rowsOf(columns))
}

function traceJson(prepared: Prepared, story: CutStory, plain: unknown): unknown {
  return {
    house: prepared.house.house,
    start: isoUtc(prepared.calendar, story.trace.from),
    hours: story.trace.n / 60,
    sky: story.sky,
    syntheticYear: story.syntheticYear,
    capacityKwh: story.capacityKwh,
    cuts: story.cuts.map(([from, to]) => ({
      start: isoUtc(prepared.calendar, story.trace.from + from),
      hours: (to - from) / 60,
    })),
    totals: traceTotals(story, prepared.house),
    defaults: usedDefaults(plain),
    warnings: prepared.notes,
    loads: story.courses.map(({ name, toleratesMinutes, basis, lostAt, shown }) => ({
      name,
      toleratesMinutes: Number.isFinite(toleratesMinutes) ? toleratesMinutes : null,
      toleranceBasis: basis,
      lostAt: lostAt === null ? null : isoUtc(prepared.calendar, story.trace.from + lostAt),
      unit: shown?.unit ?? null,
      limit: shown?.limit ?? null,
      most: shown === null ? null : shown.values.reduce((a, b) => Math.max(a, b)),
      least: shown === null ? null : shown.values.reduce((a, b) => Math.min(a, b)),
    })),
    events: story.events.map((event) => ({
      time: isoUtc(prepared.calendar, story.trace.from + event.minute),
      local: event.local,
      id: event.id,
      text: event.text,
    })),
  }
}
