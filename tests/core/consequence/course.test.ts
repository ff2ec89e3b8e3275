// A traced cut and a ride tell the same loss; both as a fold written minute by minute.

import {
  type Course,
  coldStore,
  courseOf,
  firstLoss,
  plainGap,
  type RideLoad,
  type Rules,
  Spells,
  type Trace,
} from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

const UP = 0
const DARK = 2
const rules = { lastLevel: 1 } as Rules

/** `#` is down, `.` up. */
function courseIn(down: string, load: RideLoad): Course {
  const levels = Uint8Array.from(down, (letter) => (letter === '#' ? DARK : UP))
  return courseOf({ from: 0, n: down.length, levels } as Trace, load, rules)
}

function spellsIn(down: string): Spells {
  const spells = new Spells(1, down.length)
  let last = -1
  for (const match of down.matchAll(/#+/g)) {
    const spell = spells.open(match.index)
    if (last < 0) spells.first[0] = spell
    else spells.link(last, spell)
    if (match.index + match[0].length < down.length) {
      spells.close(spell, match.index + match[0].length)
    }
    last = spell
  }
  return spells
}

const fridge: RideLoad = {
  name: 'fridge',
  consequence: coldStore({ hours: 0.5, keeps: 'food' }, 1 / 3),
  wantedIn: new Int32Array(1),
  wantedUpTo: null,
}
const pump: RideLoad = { ...fridge, name: 'pump', consequence: plainGap(6) }

const runs = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 45 })), {
    minLength: 1,
    maxLength: 8,
  })
  .map((pairs) => pairs.map(([up, down]) => '.'.repeat(up) + '#'.repeat(down)).join(''))

describe('a course', () => {
  it('is that of a minute-by-minute fold, and loses the fridge in the same minute', () => {
    // 5 to 8 °C in half an hour in 20 °C: tau = 30 / ln(15 / 12) min; running it nears -25 °C.
    const tau = 30 / Math.log(15 / 12)
    const share = Math.exp(-1 / tau)
    let losses = 0
    fc.assert(
      fc.property(runs, (down) => {
        const { shown, lostAt } = courseIn(down, fridge)
        let celsius = 5
        let first: number | null = null
        for (let i = 0; i < down.length; i++) {
          const end = down[i] === '#' ? 20 : -25
          celsius = Math.max(5, end + (celsius - end) * share)
          if (down[i] === '#' && first === null && celsius > 8 + 1e-9) first = i
          expect(shown!.values[i]).toBeCloseTo(celsius, 9)
        }
        expect(lostAt).toBe(first)
        if (first !== null) losses++
      }),
      { seed: 2, numRuns: 200 },
    )
    expect(losses).toBeGreaterThan(40)
  })

  it.each([fridge, pump])('loses the $name in the minute in which a ride does', (load) => {
    fc.assert(
      fc.property(runs, (down) => {
        const loss = firstLoss(spellsIn(down), 0, load, 0, down.length)
        const within = loss !== null && loss.at < down.length ? loss.at : null
        expect(courseIn(down, load).lostAt).toBe(within)
      }),
      { seed: 3, numRuns: 200 },
    )
  })

  it('has nothing to show for a plain gap', () => {
    const course = courseIn('..#######...', pump)
    expect([course.shown, course.lostAt]).toEqual([null, 8])
  })
})
