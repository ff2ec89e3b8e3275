// Rides, gaps and tolerances against a fold written minute by minute, and by hand.

import {
  type Demand,
  endedAfter,
  lostAfter,
  minutesWithout,
  NO_SPELL,
  type RideLoad,
  rideLoads,
  ridesOf,
  Spells,
  wantedSum,
} from '@tideover/core'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'

/** Down minutes as text: `#` is down, `.` up. Each start of the first `starts` sees the same. */
function spellsOf(down: string, starts: number, openAtEnd = false): Spells {
  const spells = new Spells(starts, down.length)
  const found = [...down.matchAll(/#+/g)].map((match) => {
    const spell = spells.open(match.index)
    const to = match.index + match[0].length
    if (!(openAtEnd && to === down.length)) spells.close(spell, to)
    return { spell, from: match.index, to }
  })
  for (const [i, { spell }] of found.entries()) spells.link(spell, found[i + 1]?.spell ?? NO_SPELL)
  for (let start = 0; start < starts; start++) {
    const at = found.findIndex(({ to }) => to > start)
    if (at < 0) continue
    const { spell, from } = found[at]!
    if (from >= start) spells.first[start] = spell
    else {
      // This start begins inside the spell.
      const own = spells.open(start)
      if (spells.to(spell) >= 0) spells.close(own, spells.to(spell))
      spells.link(own, spells.next(spell))
      spells.first[start] = own
    }
  }
  return spells
}

type Given = readonly [tolerates: number, wants: string, cycles?: boolean]

/** Loads that want power where the text shows `w`; the text is their whole year. */
function loadsOf(...given: readonly Given[]): readonly RideLoad[] {
  const cycle = { onMinutes: 1, offMinutes: 1 }
  const critical = given.map(([toleratesMinutes, wants, cycles], i) => ({
    load: { name: `load ${i}`, toleratesMinutes, ...(cycles ? { cycle } : {}) },
    kw: Float64Array.from(wants, (letter) => (letter === 'w' ? 1 : 0)),
  }))
  return rideLoads({ critical } as unknown as Demand)
}

const always = 'w'

describe('how long a spell goes on until loads are lost, by hand', () => {
  // One bears 2 minutes whenever it is; the other bears 5 and wants power in minute 1 of 20 alone.
  const loads = loadsOf([2, always.repeat(20)], [5, `.w${'.'.repeat(18)}`])

  it('all of them: also where a gap may run already whose load is not wanted again', () => {
    expect([...lostAfter(loads, 8, 0, 3)]).toEqual([1 + 5 + 1, 5 + 1, 5 + 1])
  })

  it('the first of them', () => {
    expect([...endedAfter(loads, 0, 3)]).toEqual([2 + 1, 2 + 1, 2 + 1])
  })
})

describe('a ride by hand', () => {
  const ride = (down: string, tolerates: number, wants = always, horizon = down.length) => {
    const rides = ridesOf(spellsOf(down, 1), loadsOf([tolerates, wants]), 0, horizon)
    return rides.beyond[0] === 1 ? 'beyond' : rides.minutes[0]
  }

  it('ends with the first minute of the spell in which the tolerance runs out', () => {
    expect(ride('.....####..', 0)).toBe(5)
    expect(ride('.....####..', 3)).toBe(5)
    expect(ride('.....####..', 4)).toBe('beyond')
    expect(ride('####.......', 3)).toBe(0)
  })

  it('gaps add up: with a tolerance of 3 the third pair of minutes is one too many', () => {
    expect(ride('.##.##.##..', 2)).toBe(4)
    // Used 2, less 1, plus 2 = 3, less 1, plus 2 = 4.
    expect(ride('.##.##.##..', 3)).toBe(7)
    expect(ride('.##.##.##..', 4)).toBe('beyond')
  })

  it('minutes with supply refill the tolerance, never above it', () => {
    expect(ride('.##..##..##', 2)).toBe('beyond')
    expect(ride('..........###', 2)).toBe(10)
    expect(ride('.##...........###', 3)).toBe('beyond')
  })

  it('a gap begins with the first minute in which the load wants power', () => {
    //          0123456789012
    const down = '..######.....'
    expect(ride(down, 2, 'wwwww.wwwwwww')).toBe(2)
    // Wanted from minute 6 on: the gap is minutes 6 and 7.
    expect(ride(down, 2, '......wwwwwww')).toBe('beyond')
    expect(ride(down, 1, '......wwwwwww')).toBe(2)
    expect(ride(down, 0, '........wwwww')).toBe('beyond')
  })

  it('once begun a gap runs on while the load does not want power, until it is served again', () => {
    expect(ride('..######.....', 3, '..w..........')).toBe(2)
    expect(ride('..######.....', 6, '..w..........')).toBe('beyond')
  })

  it('a load that never wants power ends no ride', () => {
    expect(ride('############', 0, '............')).toBe('beyond')
  })

  it('a spell that begins at the horizon does not count, one just before does', () => {
    expect(ride('.....#####', 2, always, 5)).toBe('beyond')
    expect(ride('....######', 2, always, 5)).toBe(4)
  })

  it('a gap that begins at the horizon does not count: a boiler is not lost in June', () => {
    const dark = spellsOf('..########', 1, true)
    expect(ridesOf(dark, loadsOf([0, '......w...']), 0, 6).beyond[0]).toBe(1)
    expect(ridesOf(dark, loadsOf([0, '.....w....']), 0, 6).minutes[0]).toBe(2)
  })

  it('a spell still open at the end of what was followed counts as going on', () => {
    const rides = ridesOf(spellsOf('......##', 1, true), loadsOf([60, always]), 0, 8)
    expect([rides.minutes[0], rides.beyond[0], rides.endedBy[0]]).toEqual([6, 0, 0])
  })

  it('the year repeats: at its end the wish of its first minute comes next', () => {
    const loads = loadsOf([1, 'w.........'])
    // Start 0 stands at minute 8 of the year; its spell is minutes 9, 0, 1, 2.
    expect(ridesOf(spellsOf('.####...', 1), loads, 8, 8).minutes[0]).toBe(1)
    expect(ridesOf(spellsOf('.##.....', 1), loads, 8, 8).beyond[0]).toBe(1)
  })
})

describe('several loads', () => {
  it('the load whose tolerance runs out first ends the ride; of equals the first of the file', () => {
    const spells = spellsOf('..##########', 1)
    expect(ridesOf(spells, loadsOf([5, always], [2, always]), 0, 12).endedBy[0]).toBe(1)
    expect(ridesOf(spells, loadsOf([2, always], [2, always]), 0, 12).endedBy[0]).toBe(0)
    const rides = ridesOf(spells, loadsOf([50, always], [60, always]), 0, 12)
    expect([rides.endedBy[0], rides.minutes[0], rides.beyond[0]]).toEqual([-1, 12, 1])
  })

  it('a load by the clock is relieved only by minutes in which it wants power and has it', () => {
    // Wanted in one minute of four, and never served: 1, 2, 3 minutes missed.
    const byClock = ridesOf(spellsOf('#...#...#...', 1), loadsOf([2, 'w...']), 0, 12)
    expect(byClock.minutes[0]).toBe(8)
    // With a cycle it runs on return, and three minutes with supply relieve it.
    const cycling = loadsOf([2, 'w...', true])
    expect(ridesOf(spellsOf('#...#...#...', 1), cycling, 0, 12).beyond[0]).toBe(1)
  })

  it('each load has its own ride beside', () => {
    const spells = spellsOf('..##....######....', 1)
    const rides = ridesOf(spells, loadsOf([4, always], [0, always]), 0, 18)
    expect(rides.minutes[0]).toBe(2)
    expect([...rides.byLoad.map((minutes) => minutes[0])]).toEqual([8, 2])
    // Four minutes with supply make good the two before; of the second gap it bears four.
    expect([...rides.lostAfter.map((minutes) => minutes[0])]).toEqual([12, 2])
  })
})

/** What the rule says, told minute by minute. */
function slowRide(
  down: string,
  start: number,
  horizon: number,
  tolerates: number,
  wants: string,
  cycles: boolean,
): number {
  let used = 0
  let inGap = false
  let spellFrom = start
  for (let i = start; i < down.length; i++) {
    if (down[i] === '.') {
      // By the clock a load is relieved by what it gets, with a cycle by the time with supply.
      if (cycles || wants[i % wants.length] === 'w') used = Math.max(0, used - 1)
      inGap = false
      continue
    }
    if (i === start || down[i - 1] === '.') spellFrom = i
    if (spellFrom >= start + horizon) return horizon
    if (!inGap && wants[i % wants.length] === 'w') {
      if (i >= start + horizon) return horizon
      inGap = true
    }
    if (!inGap) continue
    if (used >= tolerates) return spellFrom - start
    used++
  }
  return horizon
}

describe('random spells', () => {
  const pattern = fc
    .array(fc.tuple(fc.integer({ min: 1, max: 9 }), fc.integer({ min: 1, max: 7 })), {
      minLength: 1,
      maxLength: 12,
    })
    .map((runs) => runs.map(([up, down]) => '.'.repeat(up) + '#'.repeat(down)).join(''))
  const wants = fc.string({ unit: fc.constantFrom('w', '.'), minLength: 1, maxLength: 40 })

  it('ride as the rule says, start by start', () => {
    let rides = 0
    fc.assert(
      fc.property(
        pattern,
        wants,
        fc.integer({ min: 0, max: 12 }),
        fc.integer({ min: 1, max: 60 }),
        fc.boolean(),
        (runs, wish, tolerates, horizon, cycles) => {
          // Up at the end, so that nothing beyond the pattern matters.
          const down = `${runs}.`
          const fast = ridesOf(
            spellsOf(down, down.length),
            loadsOf([tolerates, wish, cycles]),
            0,
            horizon,
          ).minutes
          for (let start = 0; start < down.length; start++) {
            expect(fast[start]).toBe(slowRide(down, start, horizon, tolerates, wish, cycles))
            rides++
          }
        },
      ),
      { seed: 3, numRuns: 300 },
    )
    expect(rides).toBeGreaterThan(5000)
  })

  it('minutes without are counted as the rule says: wanted by any load, not served', () => {
    fc.assert(
      fc.property(pattern, wants, wants, fc.nat(20), fc.integer({ min: 1, max: 60 }), (...all) => {
        const [runs, first, second, offset, within] = all
        const down = `${runs}.`
        const n = first.length * second.length
        const wish = (text: string): string => text.repeat(n / text.length)
        const sum = wantedSum(loadsOf([0, wish(first)], [0, wish(second)]))
        const spells = spellsOf(down, down.length)
        for (let start = 0; start < down.length; start++) {
          let slow = 0
          for (let i = start; i < Math.min(down.length, start + within); i++) {
            const at = i + offset
            const wanted = first[at % first.length] === 'w' || second[at % second.length] === 'w'
            if (down[i] === '#' && wanted) slow++
          }
          expect(minutesWithout(spells, start, within, sum, offset)).toBe(slow)
        }
      }),
      { seed: 4, numRuns: 200 },
    )
  })

  it('a longer tolerance never shortens a ride', () => {
    fc.assert(
      fc.property(pattern, wants, fc.integer({ min: 0, max: 12 }), (down, wish, tolerates) => {
        const spells = spellsOf(down, down.length)
        const short = ridesOf(spells, loadsOf([tolerates, wish]), 0, 200).minutes
        const long = ridesOf(spells, loadsOf([tolerates + 1, wish]), 0, 200).minutes
        expect(short.every((minutes, s) => minutes <= long[s]!)).toBe(true)
      }),
      { seed: 5, numRuns: 200 },
    )
  })
})
