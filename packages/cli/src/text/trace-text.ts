// A cut as a log: the event list and where the energy went.

import { type CutStory, Event, isoUtc, localTime, type Prepared } from '@tideover/core'

export interface TraceTotals {
  readonly servedCriticalKwh: number
  readonly servedComfortKwh: number
  readonly solarAvailableKwh: number
  readonly solarUsedKwh: number
  readonly generatorKwh: number
  readonly gridKwh: number
  /** How often solar tripped, and the sun that was not used. */
  readonly solarTrips: number
  readonly solarUnusedKwh: number
  readonly lossKwh: number
  readonly storedChangeKwh: number
  /** Hours in which a wanted critical load was not served. */
  readonly hoursWithout: number
}

export function traceTotals({ trace: t }: CutStory): TraceTotals {
  const kwh = (column: Float64Array): number => column.reduce((sum, kw) => sum + kw / 60, 0)
  let without = 0
  for (let i = 0; i < t.n; i++) {
    if (t.demandCriticalKw[i]! > 0 && t.servedCriticalKw[i]! === 0) without++
  }
  return {
    servedCriticalKwh: kwh(t.servedCriticalKw),
    servedComfortKwh: kwh(t.servedComfortKw),
    solarAvailableKwh: kwh(t.solarAvailableKw),
    solarUsedKwh: kwh(t.solarUsedKw),
    generatorKwh: kwh(t.generatorKw),
    gridKwh: kwh(t.gridKw),
    solarTrips: t.events.reduce((sum, bits) => sum + ((bits & Event.solarTrips) === 0 ? 0 : 1), 0),
    solarUnusedKwh: kwh(t.solarAvailableKw) - kwh(t.solarUsedKw),
    lossKwh: kwh(t.lossKw),
    storedChangeKwh: t.storedKwh[t.n - 1]! - t.startStoredKwh[0]!,
    hoursWithout: without / 60,
  }
}

export function traceText(prepared: Prepared, story: CutStory): string {
  const { trace: t } = story
  const { calendar, house } = prepared
  const totals = traceTotals(story)
  const kwh = (value: number): string => `${value.toFixed(2)} kWh`
  return [
    `${house.house}, cut of ${(story.cutMinutes / 60).toFixed(story.cutMinutes % 60 === 0 ? 0 : 1)} h from ` +
      `${localTime(calendar, t.from)} (${isoUtc(calendar, t.from)}), ${story.sky} sky, year ${story.syntheticYear}.`,
    '',
    ...story.events.map(({ local, text }) => `${local}  ${text}`),
    `${localTime(calendar, t.from + t.n)}  End of what was looked at. Charge ` +
      `${Math.round((100 * t.storedKwh[t.n - 1]!) / story.capacityKwh)} %.`,
    '',
    `Served: critical ${kwh(totals.servedCriticalKwh)}, comfort ${kwh(totals.servedComfortKwh)}. ` +
      `Without power: ${totals.hoursWithout.toFixed(1)} h.`,
    `Sun: ${kwh(totals.solarUsedKwh)} used of ${kwh(totals.solarAvailableKwh)} that shone on the arrays.` +
      (totals.solarTrips > 0 ? ` It tripped ${totals.solarTrips} times.` : '') +
      (totals.generatorKwh > 0 ? ` Generator: ${kwh(totals.generatorKwh)}.` : '') +
      (totals.gridKwh === 0 ? '' : ` Grid: ${kwh(totals.gridKwh)}.`),
    `Losses: ${kwh(totals.lossKwh)}. Battery: ${totals.storedChangeKwh > 0 ? '+' : ''}${kwh(totals.storedChangeKwh)}.`,
  ].join('\n')
}
