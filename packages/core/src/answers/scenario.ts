// What is asked of a house beside the house itself: stack, health, start charge, sky, chance.

import { type Plant, plantOf } from '../equipment/plant.js'
import type { House } from '../house/house.js'
import { InputError } from '../house/problem.js'
import { type Rules, rulesOf } from '../island/rules.js'
import type { Prepared } from '../series/prepare.js'
import { onGrid } from '../units/energy-grid.js'

/** Charge at the start of a cut: what ordinary days may not touch, full, or a share of capacity. */
export type StartSoc = 'reserve' | 'full' | number

/** Points of usable capacity by which a charge reading may flatter; common practice, 3-10. */
export const READING_ERROR = 0.05

export interface Scenario {
  /** Modules fitted; the house's when left out. */
  readonly modules?: number
  /** Share of nameplate capacity that age has left; the house's when left out. */
  readonly health?: number
  /** Default `reserve`. */
  readonly startSoc?: StartSoc
  /** False leaves the house's generator out; default true. */
  readonly generator?: boolean
  /** Share of the generator's starts that fail, 0..1; the house's when left out. */
  readonly startFails?: number
}

export interface Equipped {
  /** The house as asked for: without its generator where that is left out. */
  readonly house: House
  readonly plant: Plant
  readonly rules: Rules
  /** At the start of every cut, on the energy grid. [kWh] */
  readonly startKwh: number
  readonly modules: number
  readonly health: number
  readonly startSoc: { readonly kind: 'reserve' | 'full' | 'share'; readonly value: number }
}

/**
 * The stack, settings and start charge of a scenario.
 *
 * A start at the reserve is what the display shows; a twentieth of usable capacity is taken off
 * for its error. A stated share, and a full stack, are taken as true.
 *
 * @throws  InputError where the base does not allow so many modules, a share is out of range, or
 *          starts are to fail of a generator that is not there
 */
export function equip(prepared: Prepared, scenario: Scenario): Equipped {
  const { demand } = prepared
  const house = houseOf(prepared.house, scenario)
  const modules = checkedModules(house, scenario.modules ?? house.stack.modules)
  const health = scenario.health ?? house.stack.health
  if (!(health > 0 && health <= 1)) {
    throw new InputError('health', 'a number > 0 and <= 1 [share of 1]', health)
  }
  const plant = plantOf(house, modules, health)
  const startSoc = startOf(house, scenario.startSoc ?? 'reserve')
  const share =
    startSoc.kind === 'reserve' ? Math.max(0, startSoc.value - READING_ERROR) : startSoc.value
  return {
    house,
    plant,
    rules: rulesOf(house, plant, demand.comfortKw.length),
    startKwh: onGrid(share * plant.usableKwh),
    modules,
    health,
    startSoc,
  }
}

/** The same equipment with a generator of which so many starts fail. @param startFails  0..1 */
export function withStartFails(equipped: Equipped, startFails: number): Equipped {
  const house = houseOf(equipped.house, { startFails })
  const { plant, rules } = equipped
  return { ...equipped, house, rules: rulesOf(house, plant, rules.lastLevel) }
}

/** That a start of the generator fails; null where nothing is left to chance. */
export function chanceOf({ house }: Equipped): number | null {
  const chance = house.generator?.startFailsShare ?? 0
  return chance > 0 && chance < 1 ? chance : null
}

function houseOf(house: House, { generator, startFails }: Scenario): House {
  if (generator === false) return { ...house, generator: undefined }
  if (startFails === undefined) return house
  if (house.generator === undefined) {
    throw new InputError('start-fails', 'left out: the house has no generator', startFails)
  }
  if (!(startFails >= 0 && startFails <= 1)) {
    throw new InputError('start-fails', 'a number 0..1 [share of 1]', startFails)
  }
  return { ...house, generator: { ...house.generator, startFailsShare: startFails } }
}

function checkedModules(house: House, modules: number): number {
  const most = house.stack.modulesMax
  if (!(Number.isInteger(modules) && modules >= 1 && modules <= most)) {
    throw new InputError('modules', `a whole number 1..${most}, what the base allows`, modules)
  }
  return modules
}

function startOf(house: House, start: StartSoc): Equipped['startSoc'] {
  if (start === 'reserve') return { kind: 'reserve', value: house.stack.reserve }
  if (start === 'full') return { kind: 'full', value: 1 }
  if (!(start >= 0 && start <= 1)) {
    throw new InputError('start-soc', 'reserve, full or a number 0..1 [share of 1]', start)
  }
  return { kind: 'share', value: start }
}
