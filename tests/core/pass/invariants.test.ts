// What a pass rests on, held to in every minute of every crowd: a crowd moved as a whole has lived
// what each of its entries would have lived alone, by the rule book itself.

import {
  type Calm,
  type Columns,
  type Crowd,
  GRID_KWH,
  kindCode,
  nextCode,
  onGrid,
  pass,
  type Rules,
  restTimers,
  type State,
  step,
  type Watch,
} from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { randomIsland } from './random-island.js'

const STARTS = 1440
const HORIZON = 2 * 1440

const isOnGrid = (kwh: number): boolean => Number.isInteger(kwh / GRID_KWH)

/** Faults of one entry of a crowd about to move; none where it may move with the others. */
function faultsOf(
  crowd: Crowd,
  cohort: number,
  calm: Calm,
  i: number,
  { columns, rules }: { columns: Columns; rules: Rules },
): string[] {
  const faults: string[] = []
  const { cohorts } = crowd
  const [stored, fuelL] = [crowd.storedOf(cohort), crowd.fuelOf(cohort)]
  if (!isOnGrid(stored) || !isOnGrid(cohorts.base[cohort]!))
    faults.push(`${stored} kWh is off the grid`)
  if (!(calm.above < stored && stored < calm.below)) faults.push(`${stored} kWh lies outside`)
  if (cohorts.crowd[cohort] !== crowd.number) faults.push('belongs to another crowd')
  const own = crowd.stateOf(cohort)
  const alone: State = { ...own }
  const wasDown = alone.level > rules.lastLevel
  step(alone, i, columns, rules)
  if (alone.stored !== stored + calm.delta) {
    faults.push(`moves by ${alone.stored - stored} kWh alone, by ${calm.delta} with the crowd`)
  }
  if (alone.fuelL !== fuelL - calm.litres) {
    faults.push(`burns ${fuelL - alone.fuelL} l alone, ${calm.litres} with the crowd`)
  }
  if (alone.level > rules.lastLevel !== wasDown) faults.push('goes down or comes back alone')
  const waits = { ...crowd.waits }
  const ends = i >= crowd.changesAt || calm.trips !== 0
  const next = ends ? nextCode(crowd.kind, waits, i, calm.trips, rules) : crowd.kind.code
  for (const state of [own, alone]) restTimers(state, i, rules)
  const code = kindCode(alone, rules)
  // A charge edge reached from below is another band, which the crowd finds out a minute later.
  if (code !== next) faults.push(`is of kind ${code} alone, ${next} with the crowd`)
  const { generatorFrom, personAt, togetherUntil, offFrom, retryAt, retries, wakeAt } = own
  const timers = { generatorFrom, personAt, togetherUntil, offFrom, retryAt, retries, wakeAt }
  for (const [name, at] of Object.entries(timers)) {
    const lived = alone[name as keyof State]
    if (lived !== at) faults.push(`${name} is ${lived} alone, ${at} with the crowd`)
  }
  return faults
}

describe('a crowd that moves as a whole', () => {
  it.each(Array.from({ length: 16 }, (_, k) => 40 + k))(
    'is in every minute what each of its entries would be alone: island %i',
    (number) => {
      const island = randomIsland(number, STARTS + HORIZON)
      const { columns, rules } = island.compiled
      const faults: string[] = []
      let moved = 0
      const watch: Watch = {
        moves(crowd, calm, i) {
          const entries = crowd.entries()
          if (entries.length !== crowd.count) faults.push(`minute ${i}: lost an entry`)
          // The ends of a crowd are where a threshold may have been missed.
          for (const cohort of new Set([...entries.slice(0, 2), ...entries.slice(-2)])) {
            moved++
            for (const fault of faultsOf(crowd, cohort, calm, i, island.compiled)) {
              faults.push(`minute ${i}, ${JSON.stringify(crowd.kind)}: ${fault}`)
            }
          }
        },
      }
      const stored = onGrid(island.startShare * rules.capacityKwh)
      pass(columns, rules, STARTS, stored, HORIZON, undefined, watch)
      expect(faults.slice(0, 3), island.about).toEqual([])
      expect(moved).toBeGreaterThan(1000)
    },
  )
})
