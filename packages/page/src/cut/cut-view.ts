// One traced cut as a person sees it: how long it lasts, what gives out, what happened when.

import { type CutStory, localTime, type Prepared, type StateName } from '@tideover/core'
import type { SeenEvent } from '../words/events.js'

/** What the house looked like for a while. */
export type Mood = 'all' | 'part' | 'must' | 'generator' | 'off'

export interface Span<T> {
  /** Minutes of the cut, [from, to). */
  readonly from: number
  readonly to: number
  readonly what: T
}

export interface LoadView {
  readonly name: string
  /** Minute in which it is lost; null where it is not. */
  readonly lostAt: number | null
  readonly lostLocal: string | null
}

export interface CutView {
  readonly minutes: number
  readonly from: string
  /** Minutes until the spell in which something that must stay on is lost; null where nothing is. */
  readonly lasts: number | null
  /** What is lost first. */
  readonly first: LoadView | null
  /** Minutes without power for what must stay on. */
  readonly without: number
  readonly loads: readonly LoadView[]
  /** Charge at the start of each minute and at the end of the last, 0..1. [minutes + 1] */
  readonly charge: Float64Array
  readonly moods: readonly Span<Mood>[]
  readonly nights: readonly Span<'night'>[]
  readonly events: readonly SeenEvent[]
  /** Clock on the wall at each full hour: minute of the cut and `18:00`. */
  readonly clock: readonly { readonly minute: number; readonly text: string }[]
  /** `Tue 14 Jan 18:00` at a minute of the cut. */
  readonly localAt: (minute: number) => string
}

const MOODS: Readonly<Record<StateName, Mood>> = {
  grid: 'all',
  island: 'all',
  'island, comfort in part': 'part',
  'island, critical only': 'must',
  'island, generator': 'generator',
  'loads off, holding': 'off',
  'off, empty': 'off',
  'off, overload': 'off',
}

/** A limit so far above the one of a warm battery was raised by the cold. */
const COLD_POINTS = 0.015

export function cutView(prepared: Prepared, story: CutStory): CutView {
  const { trace, courses, capacityKwh } = story
  const { calendar, sun } = prepared
  const n = trace.n
  const localAt = (minute: number): string => localTime(calendar, trace.from + minute)
  const loads = courses.map(({ name, lostAt }) => ({
    name,
    lostAt,
    lostLocal: lostAt === null ? null : localAt(lostAt),
  }))
  const lost = loads.filter(({ lostAt }) => lostAt !== null)
  const first = lost.reduce<LoadView | null>(
    (soonest, load) => (soonest === null || load.lostAt! < soonest.lostAt! ? load : soonest),
    null,
  )
  const moods = spans(n, (i) => MOODS[trace.states[i] as StateName])
  const isDown = (i: number): boolean => MOODS[trace.states[i] as StateName] === 'off'
  const charge = new Float64Array(n + 1)
  for (let i = 0; i < n; i++) charge[i] = trace.startStoredKwh[i]! / capacityKwh
  charge[n] = trace.storedKwh[n - 1]! / capacityKwh
  const dark = (i: number): boolean => !(sun.sun.altitudeDeg[(trace.from + i) % calendar.n]! > 0)
  return {
    minutes: n,
    from: localAt(0),
    lasts: first === null ? null : spellOf(first.lostAt!, isDown),
    first,
    without: moods.reduce((sum, { from, to, what }) => sum + (what === 'off' ? to - from : 0), 0),
    loads,
    charge,
    moods,
    nights: spans(n, (i) => (dark(i) ? 'night' : null)),
    events: story.events.map(({ minute, local, id, names = [], tendedAt }) => ({
      ...{ minute, local, id, names },
      charge: charge[minute]!,
      isCold: charge[minute]! > prepared.house.inverter.loadsOffAt + COLD_POINTS,
      fuelL: trace.fuelL[Math.min(minute, n - 1)]!,
      tendedAt: typeof tendedAt === 'number' ? localAt(tendedAt) : tendedAt,
      lost: id === 'load-lost' ? courses.find(({ name }) => name === names[0]) : undefined,
    })),
    clock: clockOf(prepared, trace.from, n),
    localAt,
  }
}

/** First minute of the time off in which something is lost. */
function spellOf(lostAt: number, isDown: (i: number) => boolean): number {
  let from = lostAt
  while (from > 0 && isDown(from - 1)) from--
  return from
}

/** Runs of equal values, those of null left out. */
function spans<T>(n: number, what: (i: number) => T | null): Span<T>[] {
  const found: Span<T>[] = []
  for (let from = 0; from < n; ) {
    const value = what(from)
    let to = from + 1
    while (to < n && what(to) === value) to++
    if (value !== null) found.push({ from, to, what: value })
    from = to
  }
  return found
}

function clockOf({ calendar }: Prepared, from: number, n: number): CutView['clock'] {
  const marks: { minute: number; text: string }[] = []
  for (let i = 0; i <= n; i++) {
    const wall = calendar.wallMinute[(from + i) % calendar.n]!
    if (wall % 60 === 0) marks.push({ minute: i, text: `${String(wall / 60).padStart(2, '0')}:00` })
  }
  return marks
}
