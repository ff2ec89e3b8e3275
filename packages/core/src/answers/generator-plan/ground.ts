// A house with a set made ready for the question of its fuel.

import type { RideLoad } from '../../cut/rides.js'
import type { House } from '../../house/house.js'
import type { Prepared } from '../../series/prepare.js'
import type { SkyKind } from '../../sky/sky.js'
import { type MonthSky, monthSky } from '../month-sky.js'
import type { Equipped } from '../scenario.js'
import type { PlanQuestion } from './plan-question.js'

/** Years of the typical sky where none are asked for. */
export const PLAN_YEARS = 5

/** A cut at every full hour of the clock on the wall stands for the hour. [min] */
export const SAMPLE_MINUTES = 60

export interface PlanGround {
  readonly prepared: Prepared
  readonly question: PlanQuestion
  readonly hours: number
  readonly cutMinutes: number
  readonly loads: readonly RideLoad[]
  /** With the fuel it has, and with as much as it can burn. */
  readonly asStands: Equipped
  readonly enough: Equipped
  readonly promise: SkyKind
  readonly years: number
  readonly winters: number
  readonly seed: number
}

/**
 * As much fuel as the set can burn in the cut: in cans, poured by whoever is there, or, where
 * nobody is named, in a tank that never runs dry.
 */
export function withFuel(house: House, hours: number): House {
  const { generator, person } = house
  if (generator === undefined) return house
  const mostL = Math.ceil(generator.litresPerHour.full * hours) + 1
  const more = person === undefined ? { tankL: mostL, cansL: 0 } : { cansL: mostL }
  return { ...house, generator: { ...generator, ...more } }
}

/** Whether a sky knows a worst: not one year alone, nor one whose unusual months were removed. */
export function hasWorst({ sky }: MonthSky): boolean {
  return sky.hasExtremes && !(sky.kind === 'typical' && sky.years < 2)
}

export function planSky(ground: PlanGround, month: number, kind: SkyKind): MonthSky {
  const { prepared, hours, years, winters, seed } = ground
  return monthSky(prepared, { kind, month, cutHours: hours, years, winters, seed })
}
