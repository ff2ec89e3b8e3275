// Loads that the battery inverter does not carry even with nothing else on.

import { mostKva } from '../island/overload-columns.js'
import { islandLoads } from '../load/island-loads.js'
import type { Prepared } from '../series/prepare.js'
import type { Equipped } from './scenario.js'

export interface AloneTooMuch {
  readonly name: string
  /** At its most in the year. [kVA] */
  readonly runningKva: number
  /** With its start. [kVA] */
  readonly startingKva: number
}

/** Judged as the island is, minute by minute; the hardest first. */
export function aloneTooMuch(prepared: Prepared, { plant }: Equipped): AloneTooMuch[] {
  return islandLoads(prepared)
    .flatMap(({ name, kw, powerFactor, startKva }) => {
      const running = kw.map((value) => value / powerFactor)
      const runningKva = running.reduce((most, kva) => Math.max(most, kva), 0)
      const startingKva = runningKva + (startKva ?? 0)
      const isOut = running.some((kva, at) => kva > mostKva(plant, running, at))
      return isOut || startingKva > plant.startingKva ? [{ name, runningKva, startingKva }] : []
    })
    .sort((a, b) => b.startingKva - a.startingKva)
}
