// The door: a plain value becomes a checked House or every fault is told at once.

import { z } from 'zod'
import { crossFaults } from './cross-faults.js'
import type { House, LoadInput, Tier, WakesOn } from './house.js'
import { InputError } from './problem.js'
import { problemsOf, valueAt } from './problems-of.js'
import { houseRules } from './rules.js'
import { takenFrom, withTypicalLoads } from './typical-loads.js'

/**
 * A house as somebody writes it, for an editor to help with. Any field may be missing here; those
 * that may not are what `checkHouse` asks for.
 */
export type HouseInput = Written<House>

type Written<T> = T extends readonly (infer Item)[]
  ? readonly Written<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]?: Written<T[Key]> }
    : T

/**
 * Checks a plain value (parsed from YAML or JSON, or typed by hand), fills loads that name their
 * kind from the table of typical loads, and fills the defaults.
 *
 * @param asked  anything; a `HouseInput` where an editor is to help
 * @returns      A House that the minute loop may trust
 * @throws       InputError with every fault: unknown fields, wrong types, values out of range,
 *               fields that contradict each other
 */
export function checkHouse(asked: unknown): House {
  const plain = withTypicalLoads(asked)
  const result = houseRules.safeParse(plain)
  const problems = result.success ? [] : problemsOf(result.error, plain, 'the house file')
  problems.push(...crossFaults(plain, new Set(problems.map((p) => p.where))))
  if (problems.length > 0 || !result.success) throw new InputError(problems)
  const { $schema: _, ...house } = result.data
  return {
    ...house,
    arrays: house.arrays.map((array) => ({ ...array, inverter: inverterOf(array, house.arrays) })),
    heatingMonths:
      house.heatingMonths ??
      (house.site.latitudeDeg >= 0 ? [10, 11, 12, 1, 2, 3, 4] : [4, 5, 6, 7, 8, 9, 10]),
    inverter: { ...house.inverter, wakesOn: house.inverter.wakesOn ?? waysToWake(house) },
    loads: house.loads.map((load, i) => completed(load, valueAt(asked, ['loads', i]))),
    stack: { ...house.stack, modulesMax: house.stack.modulesMax ?? house.stack.modules },
  }
}

type Load = z.infer<typeof houseRules>['loads'][number]

/** With what it took from the table; one that follows the air is as large as the top of its curve. */
function completed(load: Load, asked: unknown): LoadInput {
  const taken = takenFrom(asked as Record<string, unknown>)
  // A load without a tier was refused.
  const whole = { ...load, tier: load.tier as Tier, w: load.w ?? topOf(load.byAir) }
  return load.like === undefined ? whole : { ...whole, taken }
}

function topOf(byAir: readonly (readonly [number, number])[] | undefined): number | undefined {
  return byAir === undefined ? undefined : Math.max(...byAir.map(([, w]) => w))
}

type Arrays = z.infer<typeof houseRules>['arrays']

/** Its own, or that of the array it shares one with. */
function inverterOf(array: Arrays[number], arrays: Arrays): Arrays[number]['inverter'] {
  if (array.onInverterOf === undefined) return array.inverter
  return arrays.find(({ name }) => name === array.onInverterOf)?.inverter
}

/** Where the file names no way: whatever of sun and generator the house has. */
function waysToWake(house: z.infer<typeof houseRules>): WakesOn[] {
  const hasDc = house.arrays.some((array) => inverterOf(array, house.arrays) === undefined)
  return [
    ...(hasDc ? (['sun'] as const) : []),
    ...(house.generator === undefined ? [] : (['generator'] as const)),
  ]
}

/** The JSON Schema (draft 2020-12) of a house file, for editors. */
export function houseJsonSchema(): Record<string, unknown> {
  return z.toJSONSchema(houseRules, { io: 'input', unrepresentable: 'any' })
}
