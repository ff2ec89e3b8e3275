// Loads that the battery inverter does not carry even with nothing else on.

import { mostKva } from '../island/overload-columns.js'
import { islandLoads } from '../load/island-loads.js'
import type { Prepared } from '../series/prepare.js'
import type { Equipped } from './scenario.js'

export interface AloneTooMuch {
  readonly name: string
  /** Whether it must stay on. */
  readonly critical: boolean
  /** At its most in the year. [kVA] */
  readonly runningKva: number
  /** With its start. [kVA] */
  readonly startingKva: number
}

/**
 * Judged as the island is, minute by minute; the hardest first. What is metered together is no single
 * load.
 */
export function aloneTooMuch(prepared: Prepared, { plant }: Equipped): AloneTooMuch[] {
  return islandLoads(prepared)
    .flatMap(({ name, critical, kw, powerFactor, startKva }) => {
      if (startKva === null) return []
      const running = kw.map((value) => value / powerFactor)
      const runningKva = running.reduce((most, kva) => Math.max(most, kva), 0)
      const startingKva = runningKva + startKva
      const isOut = running.some((kva, at) => kva > mostKva(plant, running, at))
      const isTooMuch = isOut || startingKva > plant.startingKva
      return isTooMuch ? [{ name, critical, runningKva, startingKva }] : []
    })
    .sort((a, b) => b.startingKva - a.startingKva)
}
