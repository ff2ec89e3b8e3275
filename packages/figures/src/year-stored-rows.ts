// A year of stored energy as rows of a table.

import { monthName, type Prepared } from '@tideover/core'
import { extremes } from './decimate.js'
import { type StoredMinutes, storedDays, storedMonths } from './year-stored-days.js'
import { clockAt, withoutPower } from './year-stored-traces.js'

/**
 * A row a month: the least and the greatest, when they are, the mean, and the hours without power
 * where states are known. Null where nothing of the month is known. [kWh], [h]
 */
export function yearStoredRows(
  stored: StoredMinutes,
  { calendar }: Pick<Prepared, 'calendar'>,
): Record<string, string | number | null>[] {
  const off = withoutPower(stored)
  return storedMonths(storedDays(stored, calendar)).map((days) => {
    const [from, to] = [days[0]!.from, days.at(-1)!.to]
    const [least, greatest] = extremes(stored.storedKwh, from, to)
    const kwh = (row: number | undefined): number | null =>
      row === undefined ? null : hundredths(stored.storedKwh[row]!)
    const when = (row: number | undefined): string | null =>
      row === undefined ? null : clockAt(stored, row, calendar)
    const without = off.reduce(
      (sum, [a, b]) => sum + Math.max(0, Math.min(b, to) - Math.max(a, from)),
      0,
    )
    return {
      month: monthName(days[0]!.month),
      'least [kWh]': kwh(least),
      'least at': when(least),
      'mean [kWh]': meanOf(stored.storedKwh, from, to),
      'greatest [kWh]': kwh(greatest),
      'greatest at': when(greatest),
      ...(stored.states === undefined ? {} : { 'no power [h]': hundredths(without / 60) }),
    }
  })
}

/** Of the minutes that are known; null where none is. */
function meanOf(column: ArrayLike<number>, from: number, to: number): number | null {
  let [sum, known] = [0, 0]
  for (let i = from; i < to; i++) {
    if (Number.isNaN(column[i]!)) continue
    sum += column[i]!
    known++
  }
  return known === 0 ? null : hundredths(sum / known)
}

function hundredths(value: number): number {
  return Math.round(100 * value) / 100
}
