// The numbers of the figure of a cut as rows of a table.

import { type CutStory, localTime, type Prepared } from '@tideover/core'
import { extremes } from './decimate.js'
import { offSpans, stateSpans } from './state-strip.js'

export interface CutRowsOptions {
  /** Length of time that a row sums up. [h], default 1; 3 beyond a day, 24 beyond three */
  readonly hoursARow?: number
}

/**
 * A row for each stretch of the cut: its states in order, energies of the stretch, what is stored
 * at its end, and the worst of what loads keep cold, hot or dry.
 */
export function cutRows(
  story: CutStory,
  { calendar }: Pick<Prepared, 'calendar'>,
  options: CutRowsOptions = {},
): Record<string, string | number>[] {
  const { trace: t, capacityKwh } = story
  const step = Math.round(60 * (options.hoursARow ?? usualHours(t.n / 60)))
  const [states, off] = [stateSpans(t), offSpans(t)]
  const rows: Record<string, string | number>[] = []
  for (let from = 0; from < t.n; from += step) {
    const to = Math.min(t.n, from + step)
    const kwh = (column: Float64Array): number => {
      let sum = 0
      for (let i = from; i < to; i++) sum += column[i]! / 60
      return rounded(sum)
    }
    const within = states.filter((span) => span.from < to && span.to > from)
    rows.push({
      from: localTime(calendar, t.from + from),
      state: [...new Set(within.map(({ words }) => words))].join(', then '),
      'must stay on [kWh]': kwh(t.servedCriticalKw),
      'while it lasts [kWh]': kwh(t.servedComfortKw),
      'losses [kWh]': kwh(t.lossKw),
      'sun used [kWh]': kwh(t.solarUsedKw),
      'sun to be had [kWh]': kwh(t.solarAvailableKw),
      'generator [kWh]': kwh(t.generatorKw),
      'off [min]': off.reduce(
        (sum, [a, b]) => sum + Math.max(0, Math.min(b, to) - Math.max(a, from)),
        0,
      ),
      'stored at the end [kWh]': rounded(t.storedKwh[to - 1]!),
      'charge at the end [%]': Math.round((100 * t.storedKwh[to - 1]!) / capacityKwh),
      ...keptColumns(story, from, to),
    })
  }
  return rows
}

/** Of each load that keeps something the worst of the stretch: the warmest, the least left. */
function keptColumns({ courses }: CutStory, from: number, to: number): Record<string, number> {
  return Object.fromEntries(
    courses.flatMap(({ name, shown }) => {
      if (shown === null) return []
      const [least, greatest] = extremes(shown.values, from, to).map((row) => shown.values[row]!)
      if (shown.unit === 'l') return [[`${name} left at least [l]`, Math.round(least!)]]
      return [[`${name} at most [°C]`, Math.round(10 * greatest!) / 10]]
    }),
  )
}

/** To hundredths; what is as good as nothing has no sign. */
function rounded(kwh: number): number {
  return Math.round(100 * kwh) / 100 + 0
}

function usualHours(hours: number): number {
  if (hours <= 24) return 1
  return hours <= 72 ? 3 : 24
}
