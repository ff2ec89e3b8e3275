// Where the power of a cut comes from and where it goes, as columns that add up.
//
//     sun + generator + grid + battery out = must stay on + while it lasts + battery in + losses
//
// The battery is taken at its terminals, so the losses of its inverter are among the losses.

import type { Trace as CutTrace } from '@tideover/core'
import { AREAS } from './style.js'

export interface PowerArea {
  readonly words: string
  readonly color: string
  readonly hatch: '' | '/' | '.'
  /** Averages over each minute. [n], [kW], >= 0 */
  readonly kw: Float64Array
}

export interface CutPowers {
  /** Of which there was any, lowest in the stack first. */
  readonly sources: readonly PowerArea[]
  readonly uses: readonly PowerArea[]
  /** What must stay on, wanted power and got none; null where nothing went without. [n], [kW] */
  readonly missing: Float64Array | null
  /** What the arrays could have given; null where nearly all of it was used. [n], [kW] */
  readonly shone: Float64Array | null
  /** The most that any minute has of any of these. [kW], > 0 */
  readonly mostKw: number
}

/** Unused sun is worth a line from this share of the sun, and of all power that came in. */
const WORTH_A_LINE = 0.05
/** Less than half a watt is not there. [kW] */
const LEAST_KW = 0.0005

export function cutPowers(t: CutTrace): CutPowers {
  const sources = inUse([
    { words: 'sun', color: AREAS.sun, hatch: '', kw: t.solarUsedKw },
    { words: 'grid', color: AREAS.grid, hatch: '', kw: positive(t.gridKw) },
    { words: 'generator', color: AREAS.generator, hatch: '/', kw: t.generatorKw },
    { words: 'battery', color: AREAS.battery, hatch: '', kw: positive(t.batteryKw) },
  ])
  const uses = inUse([
    { words: 'must stay on', color: AREAS.critical, hatch: '', kw: t.servedCriticalKw },
    { words: 'while it lasts', color: AREAS.comfort, hatch: '', kw: t.servedComfortKw },
    { words: 'into battery', color: AREAS.intoBattery, hatch: '.', kw: positive(t.batteryKw, -1) },
    { words: 'losses', color: AREAS.losses, hatch: '', kw: t.lossKw },
    { words: 'to grid', color: AREAS.grid, hatch: '', kw: positive(t.gridKw, -1) },
  ])
  const missing = t.demandCriticalKw.map((kw, i) => Math.max(0, kw - t.servedCriticalKw[i]!))
  const [had, allKw] = [
    sum(t.solarAvailableKw),
    sources.reduce((total, { kw }) => total + sum(kw), 0),
  ]
  const unused = had - sum(t.solarUsedKw)
  const shone = unused > WORTH_A_LINE * Math.max(had, allKw) ? t.solarAvailableKw : null
  const alone = [missing, shone ?? missing].map((kw) => [{ kw }])
  return {
    sources,
    uses,
    missing: missing.some((kw) => kw > LEAST_KW) ? missing : null,
    shone,
    mostKw: mostOf([sources, uses, ...alone], t.n),
  }
}

function inUse(areas: readonly PowerArea[]): PowerArea[] {
  return areas.filter(({ kw }) => kw.some((value) => value > LEAST_KW))
}

function positive(column: Float64Array, sign: 1 | -1 = 1): Float64Array {
  return column.map((value) => Math.max(0, sign * value))
}

function sum(column: Float64Array): number {
  return column.reduce((total, value) => total + value, 0)
}

/** The greatest sum of any group in any minute; never 0, so that an axis has a length. [kW] */
function mostOf(groups: readonly (readonly { kw: Float64Array }[])[], n: number): number {
  let most = 0.1
  for (const group of groups) {
    for (let i = 0; i < n; i++) {
      const total = group.reduce((sumKw, { kw }) => sumKw + kw[i]!, 0)
      if (total > most) most = total
    }
  }
  return most
}
