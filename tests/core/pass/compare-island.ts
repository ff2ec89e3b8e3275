// The pass against walking every start: all starts, whole lists of down spells, to the minute; and
// the state in which each start ends.
//
// The walk is the plain reading of the rule book, one start at a time; it is the truth here. It
// shares what later starts have found from the same state in the same minute, so some starts are
// stepped besides with nothing shared at all; where hours are given to it, all of them.

import { isHopeless, onGrid, pass, walkStarts } from '@tideover/core'
import { compareEnds, isSame, spellsOf, stepped } from './compare-starts.js'
import { randomIsland } from './random-island.js'

/** Starts of which one is stepped to the very end with nothing shared. */
const STEPPED_OF = 97

export interface Comparison {
  readonly about: string
  readonly starts: number
  /** Down spells that the pass found. */
  readonly spells: number
  /** Starts stepped to the very end with nothing shared, and ends compared. */
  readonly stepped: number
  readonly ends: number
  /** One sentence each; none where pass, walk and step agree. */
  readonly differences: readonly string[]
}

/**
 * @param number     of the random island; starts and horizon in minutes
 * @param walkedFor  how far all starts are walked; those stepped alone go to the horizon. [min]
 * @param alone      'all': every start is stepped alone besides, until it is dark for good
 */
export function compareIsland(
  number: number,
  starts: number,
  horizon: number,
  walkedFor = horizon,
  alone: 'some' | 'all' = 'some',
): Comparison {
  const island = randomIsland(number, starts + horizon)
  const { columns, rules } = island.compiled
  const startKwh = onGrid(island.startShare * rules.capacityKwh)
  const carried = pass(columns, rules, starts, startKwh, horizon)
  const walked = walkStarts(columns, rules, starts, startKwh, walkedFor)
  const differences: string[] = []
  const differ = (start: number, what: string, a: string, b: string): void => {
    if (a !== b) differences.push(`start ${start}, ${what}: ${a} in the pass, not ${b}`)
  }
  for (let start = 0; start < starts; start++) {
    const own = (until: number): string => spellsOf(carried, start, until).join()
    if (!isSame(carried, walked, start, walkedFor)) {
      differ(start, 'walked', own(walkedFor), spellsOf(walked, start, walkedFor).join())
    }
    const toTheEnd = start % STEPPED_OF === 0
    if (!toTheEnd && alone === 'some') continue
    const isOver = toTheEnd ? undefined : isHopeless
    const lived = stepped(island.compiled, startKwh, start, horizon, isOver)
    differ(start, 'stepped', own(horizon), lived.join())
  }
  return {
    about: island.about,
    starts,
    spells: carried.length,
    stepped: Math.ceil(starts / STEPPED_OF),
    ends: compareEnds(island.compiled, startKwh, Math.min(starts, horizon), STEPPED_OF, differ),
    differences,
  }
}
