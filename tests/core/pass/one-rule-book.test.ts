// There is one rule book: a rule changed in it changes walk, trace and pass alike.
//
// The rule that is changed here: an island that comes back finds its solar inverter waiting for
// twenty minutes more.

import { afterEach, describe, expect, it, vi } from 'vitest'

const changed = vi.hoisted(() => ({ rule: false }))

vi.mock('../../../packages/core/src/island/step.js', async (original) => {
  const { step } = await original<typeof import('../../../packages/core/src/island/step.js')>()
  const { Event } = await import('../../../packages/core/src/island/state.js')
  const changedStep: typeof step = (state, i, columns, rules) => {
    step(state, i, columns, rules)
    if (changed.rule && (state.events & Event.loadsBack) !== 0)
      state.solarUntil = Math.max(i, state.solarUntil) + 20
  }
  return { step: changedStep }
})

const { checkHouse, newState, onGrid, pass, traceSpan, walkStarts } = await import('@tideover/core')
const { islandOf, plainHouse, solar } = await import('../plain-house.js')

const STARTS = 1440
const HORIZON = 3 * 1440

/** Holds when empty, with sun enough to come back each noon. */
const island = islandOf({
  house: checkHouse(
    plainHouse({
      arrays: [solar('throttles', 60)],
      inverter: { ratedKva: 5, idleW: 50, roundTrip: 1, whenEmpty: 'holds' },
      stack: {
        module: { usableKwh: 3, chargeKw: 2, dischargeKw: 5 },
        modules: 1,
        health: 1,
        electronicsW: 10,
        selfDischargePerMonth: 0,
      },
    }),
  ),
  minutes: STARTS + HORIZON,
  critical: 0.4,
  ac: (i) => (i % 1440 >= 600 && i % 1440 < 840 ? 1.1 : 0),
})

const startKwh = onGrid(0.6 * island.rules.capacityKwh)

type Of = (start: number) => number[]

/** Turns between on and off of one start, as each of the three tells them. */
function tellers(): Record<'walk' | 'pass' | 'trace', Of> {
  const { columns, rules } = island
  const spellsOf = (spells: ReturnType<typeof pass>): Of => {
    return (start) => {
      const turns: number[] = []
      for (let s = spells.first[start]!; s >= 0; s = spells.next(s)) {
        turns.push(spells.from(s), spells.to(s))
      }
      return turns.filter((turn) => turn >= 0 && turn < start + HORIZON)
    }
  }
  return {
    walk: spellsOf(walkStarts(columns, rules, STARTS, startKwh, HORIZON)),
    pass: spellsOf(pass(columns, rules, STARTS, startKwh, HORIZON)),
    trace: (start) => {
      const state = newState(rules, startKwh)
      const levels = [...traceSpan(island, state, start, start + HORIZON).levels]
      return levels.flatMap((level, i) => {
        const [down, was] = [level > rules.lastLevel, (levels[i - 1] ?? 0) > rules.lastLevel]
        return down === was ? [] : [start + i]
      })
    },
  }
}

afterEach(() => {
  changed.rule = false
})

describe('a rule changed in the rule book', () => {
  it('shows in walk, trace and pass alike', () => {
    const before = tellers()
    changed.rule = true
    const after = tellers()
    const moved: number[] = []
    for (let start = 0; start < STARTS; start += 7) {
      const turns = after.walk(start)
      expect(after.pass(start), `start ${start}`).toEqual(turns)
      if (turns.join() !== before.walk(start).join()) moved.push(start)
      expect(before.pass(start), `start ${start}`).toEqual(before.walk(start))
    }
    expect(moved.length).toBeGreaterThan(30)
    for (const start of moved.slice(0, 3)) {
      expect(after.trace(start), `start ${start}`).toEqual(after.walk(start))
    }
  })
})
