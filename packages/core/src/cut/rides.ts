// From down spells to rides: what a load makes of its gaps, folded over the spells of a cut.

import type { Consequence } from '../consequence/consequence.js'
import { consequenceOf } from '../consequence/of-load.js'
import type { Demand } from '../load/demand.js'
import { runsOnReturn } from '../load/load-column.js'
import { oncePer } from '../units/once.js'
import { NO_SPELL, type Spells } from './spells.js'

/** A critical load as a ride sees it. */
export interface RideLoad {
  readonly name: string
  readonly consequence: Consequence
  /** Minutes from each minute of the year to the next in which it wants power; NEVER where none. [n] */
  readonly wantedIn: Int32Array
  /**
   * Running count of minutes in which it wants power: a load by the clock is relieved only by what
   * it gets. Null for one that runs on return, with a cycle or in events, which is relieved by the
   * time with supply. [n + 1]
   */
  readonly wantedUpTo: Int32Array | null
}

const NEVER = 0x3fffffff

/** Critical loads in the order of the house file. */
export const rideLoads: (demand: Demand) => readonly RideLoad[] = oncePer(({ critical }) => {
  // Many loads are wanted at the same times.
  const one = oneOfEach<Int32Array>()
  return critical.map(({ load, kw }) => {
    const wantedIn = one(minutesUntilWanted(kw))
    return {
      name: load.name,
      consequence: consequenceOf(load),
      wantedIn,
      wantedUpTo: runsOnReturn(load) ? null : wantedUpTo(wantedIn),
    }
  })
})

/** The longest gap that does no harm to a load long supplied; Infinity for any. [min] */
export function toleranceOf({ consequence }: Pick<RideLoad, 'consequence'>): number {
  return consequence.lostIn(consequence.rest)
}

/** Over the turn of the year it is the same year again. */
function minutesUntilWanted(kw: Float64Array): Int32Array {
  const n = kw.length
  const out = new Int32Array(n)
  let until = NEVER
  for (let i = 2 * n - 1; i >= 0; i--) {
    until = kw[i % n]! > 0 ? 0 : Math.min(NEVER, until + 1)
    if (i < n && until > 0) out[i] = until
  }
  return out
}

/** The first of the columns equal to the one it is given, so that one is kept of each. */
function oneOfEach<Column extends Int32Array | Uint16Array>(): (column: Column) => Column {
  const known: Column[] = []
  return (column) => {
    const same = known.find((other) => isSame(column, other))
    if (same !== undefined) return same
    known.push(column)
    return column
  }
}

function isSame(a: Int32Array | Uint16Array, b: Int32Array | Uint16Array): boolean {
  if (a.length !== b.length) return false
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false
  return true
}

/** The longest tolerance of those that have an end, for which a gap open at the horizon is followed. */
export function longestTolerance(loads: readonly Pick<RideLoad, 'consequence'>[]): number {
  return Math.max(0, ...loads.map(toleranceOf).filter(Number.isFinite))
}

/** Minutes up to a horizon; in the smallest room that holds them, for there are many. */
export type MinuteColumn = Uint16Array | Int32Array

export interface Rides {
  /** Minutes from each start to the end of its ride; the horizon where it lasts longer. */
  readonly minutes: MinuteColumn
  /** 1 where the ride outlasts the horizon. */
  readonly beyond: Uint8Array
  /** Index of the load whose tolerance ran out first, -1 where beyond. */
  readonly endedBy: Int8Array | Int16Array
  /**
   * The same minutes as if each load alone were critical; equal columns are one and the same, here
   * and below. [load][starts]
   */
  readonly byLoad: readonly MinuteColumn[]
  /** Minutes from each start to the minute in which each load is lost; the horizon where later. */
  readonly lostAfter: readonly MinuteColumn[]
}

/**
 * Rides of all starts.
 *
 * A ride ends at the first minute of the down spell in which a load is lost. A gap begins with the
 * first minute of the spell in which the load wants power (what is kept warms or cools from the
 * first minute on) and ends with the spell. Gaps add up; between them a load is relieved by the
 * minutes in which it wants power and has it.
 *
 * @param offset   axis minute of start 0
 * @param horizon  minutes; spells and gaps that begin later do not count
 */
export function ridesOf(
  spells: Spells,
  loads: readonly RideLoad[],
  offset: number,
  horizon: number,
): Rides {
  const count = spells.first.length
  const minutes = minuteColumn(count, horizon)
  const beyond = new Uint8Array(count).fill(1)
  const endedBy = new (loads.length > MOST_IN_BYTE ? Int16Array : Int8Array)(count).fill(-1)
  const byLoad = loads.map(() => minuteColumn(count, horizon))
  const lostAfter = loads.map(() => minuteColumn(count, horizon))
  for (let s = 0; s < count; s++) {
    let soonest = Number.POSITIVE_INFINITY
    for (let which = 0; which < loads.length; which++) {
      const end = firstLoss(spells, s, loads[which]!, offset, horizon)
      if (end === null) continue
      byLoad[which]![s] = end.spellFrom - s
      lostAfter[which]![s] = Math.min(horizon, end.at - s)
      if (!(end.at < soonest)) continue
      soonest = end.at
      minutes[s] = end.spellFrom - s
      beyond[s] = 0
      endedBy[s] = which
    }
  }
  const one = oneOfEach<MinuteColumn>()
  return {
    minutes: one(minutes),
    beyond,
    endedBy,
    byLoad: byLoad.map(one),
    lostAfter: lostAfter.map(one),
  }
}

const MOST_IN_BYTE = 0x7f
const MOST_SHORT = 0xffff

/** Filled with the most that it may hold. */
export function minuteColumn(count: number, most: number): MinuteColumn {
  const column = most > MOST_SHORT ? new Int32Array(count) : new Uint16Array(count)
  return column.fill(most)
}

/**
 * Where one load is first lost, or null within the horizon.
 *
 * @param start  index of the start; spells count minutes from start 0
 */
export function firstLoss(
  spells: Spells,
  start: number,
  load: RideLoad,
  offset: number,
  horizon: number,
): { at: number; spellFrom: number } | null {
  const { consequence } = load
  let state = consequence.rest
  let upFrom = start
  for (let spell = spells.first[start]!; spell !== NO_SPELL; spell = spells.next(spell)) {
    const from = spells.from(spell)
    if (from >= start + horizon) return null
    const to = spells.to(spell) < 0 ? Number.POSITIVE_INFINITY : spells.to(spell)
    state = consequence.afterSupply(state, relief(load, upFrom + offset, from + offset))
    const gapFrom = from + gapIn(load, from + offset)
    if (gapFrom < to) {
      if (gapFrom >= start + horizon) return null
      const at = gapFrom + consequence.lostIn(state)
      if (at < to) return { at, spellFrom: from }
      state = consequence.afterGap(state, to - gapFrom)
    }
    upFrom = to
  }
  return null
}

/** Minutes from the begin of a spell, on the axis, to the begin of the load's gap. */
export function gapIn({ consequence, wantedIn }: RideLoad, from: number): number {
  return consequence.beginsAtOnce ? 0 : wantedIn[from % wantedIn.length]!
}

/** Minutes of [from, to) that relieve a load, on the axis. */
export function relief({ wantedUpTo }: RideLoad, from: number, to: number): number {
  if (wantedUpTo === null) return to - from
  return countUpTo(wantedUpTo, to) - countUpTo(wantedUpTo, from)
}

/** A running count read beyond the end of the year, where it begins anew. */
function countUpTo(running: Int32Array, minute: number): number {
  const n = running.length - 1
  return Math.floor(minute / n) * running[n]! + running[minute % n]!
}

/**
 * Minutes in [0, within) after a start in which some critical load wanted power and got none.
 *
 * @param wantedSum  running count of minutes in which any critical load wants power. [n + 1]
 */
export function minutesWithout(
  spells: Spells,
  start: number,
  within: number,
  wantedSum: Int32Array,
  offset: number,
): number {
  const upTo = (minute: number): number => countUpTo(wantedSum, minute + offset)
  let sum = 0
  for (let spell = spells.first[start]!; spell !== NO_SPELL; spell = spells.next(spell)) {
    const from = spells.from(spell)
    if (from >= start + within) break
    const to = spells.to(spell) < 0 ? start + within : Math.min(spells.to(spell), start + within)
    sum += upTo(to) - upTo(from)
  }
  return sum
}

/**
 * For a spell that begins in each minute of a window, the minutes off in one go after which every
 * load is lost that can be lost within the horizon: its tolerance, from the minute on in which it
 * wants power. One that wants none for longer than the horizon is not lost by such a spell; in one
 * that began before and goes on, its gap may run already. [minutes]
 *
 * @param offset   axis minute of the window's first
 * @param minutes  of the window
 */
export function lostAfter(
  loads: readonly RideLoad[],
  horizon: number,
  offset: number,
  minutes: number,
): Int32Array {
  const out = new Int32Array(minutes)
  for (const load of loads) {
    const tolerance = toleranceOf(load)
    for (let i = 0; i < minutes; i++) {
      const until = gapIn(load, offset + i)
      const gapFrom = until < horizon ? until : 0
      out[i] = Math.max(out[i]!, Math.min(NEVER, gapFrom + tolerance + 1))
    }
  }
  return out
}

/** The same until some load is lost: a ride has ended. [minutes] */
export function endedAfter(
  loads: readonly RideLoad[],
  offset: number,
  minutes: number,
): Int32Array {
  const out = new Int32Array(minutes).fill(NEVER)
  for (const load of loads) {
    const tolerance = toleranceOf(load)
    for (let i = 0; i < minutes; i++) {
      out[i] = Math.min(out[i]!, gapIn(load, offset + i) + tolerance + 1)
    }
  }
  return out
}

/** Running count of minutes in which a load wants power. [n + 1] */
const wantedUpTo = oncePer((wantedIn: Int32Array) => runningCount([wantedIn]))

/** Running count of minutes in which any critical load wants power. [n + 1] */
export const wantedSum: (loads: readonly Pick<RideLoad, 'wantedIn'>[]) => Int32Array = oncePer(
  (loads) => {
    const all = loads.map(({ wantedIn }) => wantedIn)
    // One that is always wanted says it for all.
    const always = all.find((wantedIn) => wantedIn.every((minutes) => minutes === 0))
    return always === undefined ? runningCount(all) : wantedUpTo(always)
  },
)

function runningCount(all: readonly Int32Array[]): Int32Array {
  const n = all[0]?.length ?? 0
  const out = new Int32Array(n + 1)
  for (let i = 0; i < n; i++) {
    out[i + 1] = out[i]! + (all.some((wantedIn) => wantedIn[i] === 0) ? 1 : 0)
  }
  return out
}
