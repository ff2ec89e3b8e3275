// Columns that the clock and the grid make: when somebody is there, when an empty island tries
// again, when a grid that is back is taken.

import { clockMinute, DAY_MINUTES, inSpan } from '../axis/calendar.js'
import { NEVER } from './columns.js'
import { type ColumnParts, stretchesOf } from './parts.js'

/**
 * Minutes in which the gateway has the grid: one that comes back is waited out, and one that goes
 * again meanwhile begins its wait anew. A grid there in the first minute has been there long.
 */
export function gridTaken(gridUp: Uint8Array, reconnectSeconds: number): Uint8Array {
  const wait = Math.ceil(reconnectSeconds / 60)
  let there = wait
  const taken = new Uint8Array(gridUp.length)
  for (let i = 0; i < gridUp.length; i++) {
    const up = gridUp[i] === 1
    if (up && there >= wait) taken[i] = 1
    there = up ? there + 1 : 0
  }
  return taken
}

/** 1 in the spans of the wall clock in which an empty island tries again. */
export function attemptColumn({ house, calendar, window }: ColumnParts): Uint8Array {
  const times = house.inverter.retryAt.map((span) =>
    span.split('-').map((part) => clockMinute(part.trim()) ?? 0),
  )
  const isTime = dayOfFlags((wall) => times.some(([from, to]) => inSpan(wall, from ?? 0, to ?? 0)))
  const out = new Uint8Array(window.n)
  for (const { here, ofYear } of stretchesOf(window, calendar.n)) {
    const [column, walls] = [here(out), ofYear(calendar.wallMinute)]
    for (let i = 0; i < column.length; i++) column[i] = isTime[walls[i]!]!
  }
  return out
}

/** 1 in the minutes of the wall clock at which something is so. [1440] */
function dayOfFlags(isSo: (wall: number) => boolean): Uint8Array {
  return Uint8Array.from({ length: DAY_MINUTES }, (_, wall) => (isSo(wall) ? 1 : 0))
}

/** When somebody called in a minute has done it: within their hours, so many minutes later. */
export function personColumn({ room, house, calendar, window }: ColumnParts): Int32Array {
  const { person } = house
  if (person === undefined) return room.ints(window.n).fill(NEVER)
  const { n, wallMinute } = calendar
  const isThere = hoursOf(person)
  const takes = Math.ceil(person.minutes)
  const out = room.ints(window.n)
  // Somebody called after hours begins when the hours do; two days past the window are looked at.
  const last = window.n + 2 * DAY_MINUTES - 1
  let begins: number = NEVER
  let at = (last + window.from) % n
  for (let i = last; i >= 0; i--) {
    if (isThere[wallMinute[at]!] === 1) begins = i
    if (i < window.n) out[i] = begins === NEVER ? NEVER : begins + takes
    at = at === 0 ? n - 1 : at - 1
  }
  return out
}

/**
 * When somebody called to an empty island forms it: once they are there, in their hours, in a
 * minute in which the AC-coupled sun gives more than the island draws on its own; and whether such
 * sun is still to come on the same day.
 *
 * @param personAt  when they are there. [n]
 * @param sunny     increment of an island formed without loads, all its solar in. [n]
 */
export function wakeColumns(
  { house, calendar, window }: ColumnParts,
  personAt: Int32Array,
  sunny: Float64Array,
): { wakeAt: Int32Array; sunLater: Uint8Array } {
  const { n, wallMinute, dayOf } = calendar
  const isThere = hoursOf(house.person as NonNullable<typeof house.person>)
  const next = new Int32Array(window.n)
  const sunLater = new Uint8Array(window.n)
  let soonest: number = NEVER
  let sunnyDay = -1
  let at = (window.n - 1 + window.from) % n
  for (let i = window.n - 1; i >= 0; i--) {
    const day = dayOf[at]!
    if (sunny[i]! > 0) {
      sunnyDay = day
      if (isThere[wallMinute[at]!] === 1) soonest = i
    }
    sunLater[i] = sunnyDay === day ? 1 : 0
    next[i] = soonest
    at = at === 0 ? n - 1 : at - 1
  }
  return {
    wakeAt: personAt.map((there) => (there < window.n ? next[there]! : NEVER)),
    sunLater,
  }
}

/** 1 in the minutes of the wall clock at which somebody is there. [1440] */
function hoursOf(person: { readonly from: string; readonly to: string }): Uint8Array {
  const from = clockMinute(person.from) ?? 0
  const to = clockMinute(person.to) ?? DAY_MINUTES
  return dayOfFlags((wall) => inSpan(wall, from, to))
}
