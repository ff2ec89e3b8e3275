// What each load's absence adds, alone and in the best order.
//
// What adds most goes first, then what adds most given that, until nothing adds more: first among
// the loads that may go, then, with those off, among the loads that must stay on. The ride with a
// load and without it is that of the same other loads, so that one that must stay on does not seem
// to add hours merely because nobody waits for its loss.

import type { Spells } from '../../cut/spells.js'
import { demandFrom, type LoadColumns } from '../../load/demand.js'
import type { Equipped } from '../scenario.js'
import { hoursOfRides, type MonthStarts, type RideHours, spellsWith } from './month-starts.js'

/** What switching one load off does, given some that are off already. */
export interface Switched {
  readonly name: string
  readonly adds: RideHours
  /** How long the others then last. */
  readonly lasts: RideHours
}

export interface SwitchOrder {
  /** Each load off alone, in the order of the file; `null` where it is all that must stay on. */
  readonly alone: ReadonlyMap<string, Switched | null>
  /** Those that may go, then those that must stay on, each the best given all before. */
  readonly order: readonly Switched[]
}

/** With the spells it was read from, for what goes off next. */
interface Tried extends Switched {
  readonly spells: readonly Spells[]
}

interface Bench {
  readonly starts: MonthStarts
  readonly equipped: Equipped
  readonly columns: LoadColumns
  readonly told: () => void
}

/**
 * @param columns  of every load of the house
 * @param base     spells with every load on
 * @param told     after each set of loads that was tried
 */
export function switchOrder(bench: Bench, base: readonly Spells[]): SwitchOrder {
  const { loads } = bench.starts.prepared.house
  const names = (tier: string): string[] =>
    loads.filter((load) => load.tier === tier).map(({ name }) => name)
  const alone = new Map<string, Tried | null>()
  for (const name of [...names('critical'), ...names('comfort')]) {
    alone.set(name, switched(bench, base, [], name))
  }
  const mayGo = bestOrder(bench, base, alone, [], names('comfort'))
  const off = mayGo.map(({ name }) => name)
  const spells = mayGo.at(-1)?.spells ?? base
  return { alone, order: [...mayGo, ...bestOrder(bench, spells, alone, off, names('critical'))] }
}

/**
 * @param spells  with the loads in `before` off
 * @param alone   what each load does where nothing else is off
 */
function bestOrder(
  bench: Bench,
  spells: readonly Spells[],
  alone: ReadonlyMap<string, Tried | null>,
  before: readonly string[],
  names: readonly string[],
): Tried[] {
  const order: Tried[] = []
  let rest = [...names]
  let off = [...before]
  while (rest.length > 0) {
    const now = order.at(-1)?.spells ?? spells
    const tried = rest.map((name) =>
      off.length === 0 ? (alone.get(name) ?? null) : switched(bench, now, off, name),
    )
    const best = tried.filter((each) => each !== null).sort(byMost)[0]
    if (best === undefined || !(mostOf(best) > 0)) break
    order.push(best)
    off = [...off, best.name]
    rest = rest.filter((name) => name !== best.name)
  }
  return order
}

/** The middle case decides, then the 1 in 20, then the worst. */
function byMost(a: Switched, b: Switched): number {
  return (
    b.adds.medianHours - a.adds.medianHours ||
    b.adds.p05Hours - a.adds.p05Hours ||
    (b.adds.worstHours ?? 0) - (a.adds.worstHours ?? 0)
  )
}

/** The first of its figures that is not 0: above 0 it adds. */
function mostOf({ adds }: Switched): number {
  return adds.medianHours || adds.p05Hours || adds.worstHours || 0
}

/** @param spells  with the loads in `off` switched off */
function switched(
  bench: Bench,
  spells: readonly Spells[],
  off: readonly string[],
  name: string,
): Tried | null {
  const { starts } = bench
  const all = [...off, name]
  const others = starts.loads.filter((load) => !all.includes(load.name))
  if (others.length === 0) return null
  const before = hoursOfRides(starts, spells, others)
  const after = spellsOff(bench, all)
  const lasts = hoursOfRides(starts, after, others)
  return { name, adds: difference(lasts, before), lasts, spells: after }
}

function spellsOff({ starts, equipped, columns, told }: Bench, off: readonly string[]): Spells[] {
  const { house, calendar, demand } = starts.prepared
  const { airC } = demand
  const spells = spellsWith(
    starts,
    equipped,
    demandFrom(columns, { house, calendar, airC }, new Set(off)),
  )
  told()
  return spells
}

function difference(a: RideHours, b: RideHours): RideHours {
  return {
    medianHours: a.medianHours - b.medianHours,
    p05Hours: a.p05Hours - b.p05Hours,
    worstHours: a.worstHours === null ? null : a.worstHours - (b.worstHours ?? 0),
  }
}
