// What might cure a bad start: a short fixed list, the smallest step first.

import { checkHouse } from '../../house/check-house.js'
import type { GeneratorInput, House } from '../../house/house.js'
import { InputError } from '../../house/problem.js'
import { type HouseFiles, type Prepared, prepare } from '../../series/prepare.js'
import { MORE_FUEL_L } from '../altered.js'
import type { Scenario } from '../scenario.js'

/** A house as it was read, with the records it names: what a changed house is made of. */
export interface HouseSource {
  readonly plain: unknown
  readonly files?: HouseFiles
}

/** A step, made ready to be tried. */
export interface Step {
  readonly id: StepId
  /** `the battery full at the start` */
  readonly words: string
  readonly prepared: Prepared
  readonly scenario: Scenario
}

export const STEP_IDS = [
  'comfort off',
  'full',
  'full, comfort off',
  'person at any hour',
  'fuel',
  'module',
  'array',
  'start by itself',
  'generator',
] as const
export type StepId = (typeof STEP_IDS)[number]

type Plain = Record<string, unknown>

/**
 * The steps that this house can take, one after the other, so that one changed house is held at a
 * time. A house whose file the change does not fit is passed over.
 */
export function* stepsFor(
  prepared: Prepared,
  scenario: Scenario,
  source: HouseSource,
): Generator<Step> {
  const { house } = prepared
  const makers: Readonly<Record<StepId, () => Omit<Step, 'id'> | null>> = {
    'comfort off': () => {
      if (!house.loads.some(({ tier }) => tier === 'comfort')) return null
      return changed('the comfort loads off from the start', { loads: comfortOff(house, source) })
    },
    full: () => {
      if (scenario.startSoc === 'full' || scenario.startSoc === 1) return null
      return asked('the battery full at the start', { startSoc: 'full' })
    },
    'full, comfort off': () => {
      const [off, full] = [makers['comfort off'](), makers.full()]
      if (off === null || full === null) return null
      return {
        ...off,
        words: 'the battery full and the comfort loads off',
        scenario: full.scenario,
      }
    },
    'person at any hour': () => {
      if (house.generator?.start !== 'by hand' || house.person === undefined) return null
      const person = { ...house.person, from: '00:00', to: '24:00' }
      return changed('somebody to tend the generator at any hour', { person })
    },
    fuel: () => (house.generator === undefined ? null : moreFuel(house.generator)),
    module: () => {
      const modules = (scenario.modules ?? house.stack.modules) + 1
      if (modules > house.stack.modulesMax) return null
      return asked('one more module', { modules })
    },
    array: () => {
      if (house.arrays.length === 0) return null
      return changed('twice the array', twice(source))
    },
    'start by itself': () => {
      if (house.generator?.start !== 'by hand') return null
      return changed('a generator that starts by itself', {
        generator: { ...generatorOf(source), start: 'automatic' },
      })
    },
    generator: () => {
      if (house.generator !== undefined) return null
      const { set, words } = smallSet(prepared)
      return changed(words, { generator: set, person: house.person ?? {} })
    },
  }
  function moreFuel({ tankL, cansL }: GeneratorInput): Omit<Step, 'id'> | null {
    // What nobody pours would stand in cans unused.
    return house.person === undefined
      ? changed(`a tank of ${tankL + MORE_FUEL_L} l`, {
          generator: { ...generatorOf(source), tankL: tankL + MORE_FUEL_L },
        })
      : changed(`${MORE_FUEL_L} l more fuel in cans`, {
          generator: { ...generatorOf(source), cansL: cansL + MORE_FUEL_L },
        })
  }
  function asked(words: string, change: Scenario): Omit<Step, 'id'> {
    return { words, prepared, scenario: { ...scenario, ...change } }
  }
  function changed(words: string, change: Plain): Omit<Step, 'id'> | null {
    const house = checked({ ...(source.plain as Plain), ...change })
    return house && { words, prepared: prepare(house, source.files), scenario }
  }
  for (const id of STEP_IDS) {
    const step = makers[id]()
    if (step !== null) yield { id, ...step }
  }
}

/** As the file has it: what it leaves out stays left out. */
function generatorOf(source: HouseSource): Plain {
  return ((source.plain as Plain).generator ?? {}) as Plain
}

function checked(plain: Plain): House | null {
  try {
    return checkHouse(plain)
  } catch (error) {
    if (error instanceof InputError) return null
    throw error
  }
}

function listOf(source: HouseSource, key: 'loads' | 'arrays'): Plain[] {
  return ((source.plain as Plain)[key] ?? []) as Plain[]
}

/** A load may have its tier from the table of typical loads: the checked house knows. */
function comfortOff({ loads }: House, source: HouseSource): Plain[] {
  return listOf(source, 'loads').map((load, i) =>
    loads[i]!.tier === 'comfort' ? { ...load, tier: 'gridOnly' } : load,
  )
}

/**
 * Every array once more, with an inverter or tracker of its own; a logged one gives its log twice.
 * No meter file has seen the new ones.
 */
function twice(source: HouseSource): Plain {
  const arrays = listOf(source, 'arrays')
  const again = (name: unknown): string => `${String(name)}, again`
  const second = arrays.map((array) => ({
    ...array,
    name: again(array.name),
    ...(array.onInverterOf === undefined ? {} : { onInverterOf: again(array.onInverterOf) }),
  }))
  const names = second.map(({ name }) => name)
  const loads = listOf(source, 'loads').map((load) =>
    load.file === undefined
      ? load
      : { ...load, beforeArrays: [...((load.beforeArrays ?? []) as string[]), ...names] },
  )
  return { arrays: [...arrays, ...second], loads }
}

/** Litres an hour of a small petrol set over its rating; common practice, no source. */
const LITRES_PER_KW = { none: 0.2, half: 0.32, full: 0.5 }
const SMALLEST_KW = 2
const TANK_L = 12
const CANS_L = 20

/** The smallest set of whole kilowatts, started by hand, that carries the critical loads. */
function smallSet({ demand }: Prepared): { set: Plain; words: string } {
  const most = (column: Float64Array): number => column.reduce((a, b) => Math.max(a, b), 0)
  const loadKw = most(demand.criticalKw)
  const startKva = most((demand.together?.formingKva ?? demand.formingKva).at(-1)!)
  // A set gives 1.5 x its rating for the second of a start where nothing else is stated.
  const ratedKw = Math.max(SMALLEST_KW, Math.ceil(loadKw / 0.8), Math.ceil(startKva / 1.5))
  const litresPerHour = Object.fromEntries(
    Object.entries(LITRES_PER_KW).map(([at, litres]) => [at, litres * ratedKw]),
  )
  return {
    set: { ratedKw, tankL: TANK_L, cansL: CANS_L, litresPerHour, start: 'by hand' },
    words: `a generator of ${ratedKw} kW started by hand, with ${TANK_L + CANS_L} l of fuel`,
  }
}
