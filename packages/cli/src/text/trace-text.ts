// A cut as a log: the event list and where the energy went.

import {
  type CutStory,
  type House,
  isoUtc,
  localTime,
  type Prepared,
  READING_ERROR,
  SOLAR_EVENTS,
  skyWords,
} from '@tideover/core'
import { keptLines } from './kept-text.js'
import { bullets } from './lines.js'
import { wrap } from './wrap.js'

export interface TraceTotals {
  readonly servedCriticalKwh: number
  readonly servedComfortKwh: number
  readonly solarAvailableKwh: number
  readonly solarUsedKwh: number
  readonly generatorKwh: number
  readonly gridKwh: number
  /** How often solar tripped, and the sun that was not used: while out, and throttled. */
  readonly solarTrips: number
  readonly solarUnusedKwh: number
  readonly solarOutKwh: number
  readonly solarThrottledKwh: number
  /** Minutes in which the generator ran, and those below its least share. */
  readonly generatorMinutes: number
  readonly generatorLowMinutes: number
  readonly lossKwh: number
  readonly storedChangeKwh: number
  /** Hours in which a wanted critical load was not served. */
  readonly hoursWithout: number
}

export function traceTotals({ trace: t, compiled }: CutStory, house: House): TraceTotals {
  const kwh = (column: Float64Array): number => column.reduce((sum, kw) => sum + kw / 60, 0)
  const leastKw = (house.generator?.leastShare ?? 0) * (house.generator?.ratedKw ?? 0)
  const unused = kwh(t.solarAvailableKw) - kwh(t.solarUsedKw)
  const count = { without: 0, trips: 0, runs: 0, low: 0, outKwh: 0 }
  for (let i = 0; i < t.n; i++) {
    if (t.demandCriticalKw[i]! > 0 && t.servedCriticalKw[i]! === 0) count.without++
    for (const { trips } of SOLAR_EVENTS) if ((t.events[i]! & trips) !== 0) count.trips++
    if (t.states[i] === 'island, generator') {
      count.runs++
      if (t.generatorKw[i]! < leastKw) count.low++
    }
    for (const [g, kw] of compiled.window.acKw.entries()) {
      if ((t.solarIn[i]! & (1 << g)) === 0) count.outKwh += kw[i]! / 60
    }
  }
  return {
    servedCriticalKwh: kwh(t.servedCriticalKw),
    servedComfortKwh: kwh(t.servedComfortKw),
    solarAvailableKwh: kwh(t.solarAvailableKw),
    solarUsedKwh: kwh(t.solarUsedKw),
    generatorKwh: kwh(t.generatorKw),
    gridKwh: kwh(t.gridKw),
    solarTrips: count.trips,
    solarUnusedKwh: unused,
    solarOutKwh: count.outKwh,
    solarThrottledKwh: Math.max(0, unused - count.outKwh),
    generatorMinutes: count.runs,
    generatorLowMinutes: count.low,
    lossKwh: kwh(t.lossKw),
    storedChangeKwh: t.storedKwh[t.n - 1]! - t.startStoredKwh[0]!,
    hoursWithout: count.without / 60,
  }
}

export function traceText(prepared: Prepared, story: CutStory): string {
  const { trace: t } = story
  const { calendar, house } = prepared
  const totals = traceTotals(story, house)
  return [
    wrap(
      `${house.house}, ${cutsText(prepared, story)}, ${skyText(prepared, story)}. ` +
        startText(story),
    ),
    '',
    ...story.events.map(({ local, text }) => hanging(local, text)),
    hanging(
      localTime(calendar, t.from + t.n),
      `End of what was looked at. Charge ${Math.round((100 * t.storedKwh[t.n - 1]!) / story.capacityKwh)} %.`,
    ),
    '',
    ...sums(totals, house),
    ...keptLines(story, calendar),
    ...assumed(prepared),
  ].join('\n')
}

/** What the loads rest on, and, where an array was logged, what stands on its log. */
function assumed({ arrays, notes, demand }: Prepared): string[] {
  const isLogged = arrays.some(({ log }) => log !== null)
  const said = isLogged ? notes : demand.notes
  return said.length > 0 ? ['', 'Assumed:', ...bullets(said)] : []
}

function cutsText({ calendar }: Prepared, { trace: t, cuts }: CutStory): string {
  const [first, ...others] = cuts.map(
    ([begins, ends]) => `${length(ends - begins)} from ${localTime(calendar, t.from + begins)}`,
  )
  const and = others.length === 0 ? '' : `, and again ${others.join(', ')}`
  return `cut of ${first} (${isoUtc(calendar, t.from)})${and}`
}

/** The spell of `dull` and `none` is that of the cut's length: another length meets other days. */
function skyText(
  { calendar }: Prepared,
  { sky, spell, syntheticYear, trace: t }: CutStory,
): string {
  const month = calendar.days[calendar.dayOf[t.from]!]!.month
  const words = `${skyWords(sky, spell, month)}, year ${syntheticYear}`
  return spell === null ? words : `${words} (a cut of other length meets other days)`
}

function length(minutes: number): string {
  if (minutes < 60) return `${minutes} min`
  return `${(minutes / 60).toFixed(minutes % 60 === 0 ? 0 : 1)} h`
}

function startText({ startSoc: { kind, value } }: CutStory): string {
  const share = `${Math.round(100 * value)} %`
  if (kind === 'full') return 'Started full.'
  if (kind === 'share') return `Started at ${share}.`
  const points = Math.round(100 * READING_ERROR)
  return `Started at its reserve of ${share}, less ${points} points for the error of the reading.`
}

/** A line of the log, the next ones below its text. */
function hanging(local: string, text: string): string {
  const indent = ' '.repeat(local.length + 2)
  return `${local}  ${wrap(text, 98 - indent.length).replaceAll('\n', `\n${indent}`)}`
}

function sums(totals: TraceTotals, house: House): string[] {
  const kwh = (value: number): string => `${value.toFixed(2)} kWh`
  const lost = [
    totals.solarOutKwh >= 0.005 ? `${kwh(totals.solarOutKwh)} while a solar inverter was out` : '',
    totals.solarThrottledKwh >= 0.005 ? `${kwh(totals.solarThrottledKwh)} throttled away` : '',
  ].filter((part) => part !== '')
  const lines = [
    `Served: critical ${kwh(totals.servedCriticalKwh)}, comfort ${kwh(totals.servedComfortKwh)}. ` +
      `Critical loads without power: ${length(Math.round(60 * totals.hoursWithout))}.`,
    `Sun: ${kwh(totals.solarUsedKwh)} used of ${kwh(totals.solarAvailableKwh)} that shone on the ` +
      `arrays${lost.length === 0 ? '' : `; lost: ${lost.join(', ')}`}.` +
      (totals.solarTrips > 0 ? ` Trips: ${totals.solarTrips}.` : ''),
  ]
  if (totals.generatorMinutes > 0) {
    const least = Math.round(100 * (house.generator?.leastShare ?? 0))
    lines.push(
      `Generator: ${kwh(totals.generatorKwh)} in ${(totals.generatorMinutes / 60).toFixed(1)} h` +
        (totals.generatorLowMinutes === 0
          ? '.'
          : `, ${(totals.generatorLowMinutes / 60).toFixed(1)} h of them below ${least} % of its rating.`),
    )
  }
  lines.push(
    (totals.gridKwh === 0 ? '' : `Grid: ${kwh(totals.gridKwh)}. `) +
      `Losses: ${kwh(totals.lossKwh)}. Battery: ${totals.storedChangeKwh > 0 ? '+' : ''}${kwh(totals.storedChangeKwh)}.`,
  )
  return lines.map((line) => wrap(line))
}
