// So many a day at likely hours: a kettle, a cooker, a sump pump.
//
// The number of a day is what the running sum of the mean adds in whole ones, so the fraction is
// carried over and the number of any span of running days differs from its mean by less than one.
// It begins at a chance of each piece; what a day has no room for (an hour that spring leaves out,
// the last evening) is owed to the next. Counts are therefore more even than a person's: days with
// many more than the mean do not come. Within the day the starts are drawn evenly over the minutes
// in which one may begin, so that no two of a piece overlap; each runs its whole length, past the
// end of the hours and over midnight if it must, but never past the end of the year.

import { luck } from '../units/luck.js'
import { hoursOpen, type SurveyYear } from './day-filter.js'
import { nameHash } from './name-hash.js'

const EVENTS_STREAM = 13
/** More draws than a day can hold events. */
const DRAWS_A_DAY = 512

interface Piece {
  readonly name: string
  readonly events: {
    readonly perDay: number
    readonly minutes: number
    readonly at?: string[] | undefined
  }
  readonly piece: number
}

/**
 * First minutes of the events of one piece over the year.
 *
 * @param on  1 for each day on which it runs. [days]
 * @returns   rising, each at least the length after the one before
 */
export function eventStarts(
  { name, events, piece }: Piece,
  on: Uint8Array,
  { house, calendar }: Pick<SurveyYear, 'house' | 'calendar'>,
): number[] {
  const { perDay, minutes } = events
  const stream = EVENTS_STREAM + nameHash(name, piece)
  const open = hoursOpen(events.at)
  const starts: number[] = []
  let due = luck(house.seed, stream, 0)
  let free = 0
  for (const [d, day] of calendar.days.entries()) {
    if (on[d] === 0) continue
    due += perDay
    const allowed: number[] = []
    for (let i = Math.max(day.start, free); i < day.end && i + minutes <= calendar.n; i++) {
      if (open[calendar.wallMinute[i]!] === 1) allowed.push(i)
    }
    const count = Math.min(Math.floor(due), Math.ceil(allowed.length / minutes))
    due -= count
    const draw = (k: number): number => luck(house.seed, stream, d * DRAWS_A_DAY + k + 1)
    for (const i of drawn(allowed, count, minutes, draw)) starts.push(i)
    free = (starts.at(-1) ?? -minutes) + minutes
  }
  return starts
}

/**
 * `count` of the allowed minutes, at least `apart` from each other: so much is set aside between
 * them, the rest drawn evenly and put in order.
 */
function drawn(
  allowed: readonly number[],
  count: number,
  apart: number,
  draw: (k: number) => number,
): number[] {
  const room = allowed.length - (count - 1) * apart
  const places = Array.from({ length: count }, (_, k) => Math.floor(draw(k) * room))
  return places.sort((a, b) => a - b).map((place, k) => allowed[place + k * apart]!)
}
