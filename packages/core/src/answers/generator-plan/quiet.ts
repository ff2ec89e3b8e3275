// Hours in which the set should not be heard.

import { type Calendar, clockMinute, inSpan } from '../../axis/calendar.js'
import type { House, Person } from '../../house/house.js'
import type { MonthWalk } from './month-walks.js'

/** A span of the wall clock, `from` may be later than `to`. */
export interface QuietHours {
  readonly from: string
  readonly to: string
}

/** Minutes of a walk's running that fall into quiet hours. */
export function quietMinutes(calendar: Calendar, walk: MonthWalk, quiet: QuietHours): number {
  const isQuiet = quietAt(quiet)
  return walk.ranIn.filter((i) => {
    return isQuiet(calendar.wallMinute[(i + walk.windowFrom) % calendar.n]!)
  }).length
}

/**
 * The house with no start of the set in quiet hours, by the rule for somebody who is there at some
 * hours: a set by hand has its person outside the quiet hours only; one that starts by itself is
 * let start by a clock, as by somebody who takes no time. A run that has begun goes on. Null where
 * two spans would be left, which no rule knows.
 */
export function heldBack(house: House, quiet: QuietHours): House | null {
  const { generator, person } = house
  if (generator === undefined) return null
  if (generator.start === 'automatic') {
    const clock: Person = { minutes: 0, from: quiet.to, to: quiet.from }
    return { ...house, generator: { ...generator, start: 'by hand' }, person: clock }
  }
  if (person === undefined) return house
  const isQuiet = quietAt(quiet)
  const isThere = spanAt(person)
  const free = (minute: number): boolean => isThere(minute % DAY) && !isQuiet(minute % DAY)
  const begins = DAY_LIST.filter((m) => free(m) && !free(m + DAY - 1))
  if (begins.length > 1) return null
  if (begins.length === 0) {
    return DAY_LIST.some(free) ? house : { ...house, person: undefined }
  }
  const from = begins[0]!
  const to = DAY_LIST.find((m) => !free(from + m))!
  return { ...house, person: { ...person, from: clock(from), to: clock((from + to) % DAY) } }
}

const DAY = 1440
const DAY_LIST = Array.from({ length: DAY }, (_, m) => m)

function quietAt(quiet: QuietHours): (minute: number) => boolean {
  return spanAt(quiet)
}

function spanAt({ from, to }: QuietHours): (minute: number) => boolean {
  const [a, b] = [clockMinute(from) ?? 0, clockMinute(to) ?? DAY]
  return (minute) => inSpan(minute, a, b)
}

function clock(minute: number): string {
  const two = (value: number): string => String(value).padStart(2, '0')
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`
}
