// What the papers are made from: answers of core, nothing worked out twice.

import {
  type CheckAnswer,
  checkAnswer,
  type Equipped,
  equip,
  type HouseFiles,
  type IslandTest,
  islandTest,
  type LoadTable,
  loadTable,
  type MonthRow,
  type Prepared,
  type RideAnswer,
} from '@tideover/core'
import { type Region, regionOf } from '../words/region.js'
import type { SheetFrame } from './html.js'

/** Words that differ by country; figures never do. */
export type PaperWords = Pick<Region, 'aCut' | 'board' | 'operator' | 'electrode' | 'bond' | 'dial'>

export interface PapersInput {
  readonly prepared: Prepared
  /** The house as read from its file; without it the settings cannot be told from defaults. */
  readonly plain?: unknown
  /** Under the promise. */
  readonly ride: RideAnswer
  /** All months under the same sky; empty where they were not asked for. */
  readonly months: readonly MonthRow[]
  readonly check: CheckAnswer
  readonly loads: LoadTable
  readonly test: IslandTest
  /** Words of the region; those of the site's where left out. */
  readonly words?: Partial<PaperWords>
}

export interface PapersOptions {
  /** Records that the house names. */
  readonly files?: HouseFiles
  readonly plain?: unknown
  readonly months?: readonly MonthRow[]
  readonly words?: Partial<PaperWords>
}

/**
 * The answers that stand beside a ride, for the same stack.
 *
 * @throws  InputError where a record is missing from `files`
 */
export function papersInput(
  prepared: Prepared,
  ride: RideAnswer,
  { files = {}, plain, months = [], words = {} }: PapersOptions = {},
): PapersInput {
  const scenario = { modules: ride.modules, health: ride.health }
  return {
    prepared,
    plain,
    ride,
    months,
    check: checkAnswer(prepared, scenario),
    loads: loadTable(prepared, files),
    test: islandTest(prepared, ride.month, scenario),
    words,
  }
}

export function wordsOf({ prepared, words = {} }: PapersInput): PaperWords {
  return { ...regionOf(prepared.house.site.timezone), ...words }
}

/** The stack and settings that the ride was asked for. */
export function equippedOf({ prepared, ride }: PapersInput): Equipped {
  return equip(prepared, { modules: ride.modules, health: ride.health })
}

/** Title line of a sheet. */
export function frameOf(
  { prepared, ride }: PapersInput,
  number: number,
  title: string,
  by: string,
): SheetFrame {
  const { house, invented = false } = prepared.house
  // The most general caution stands last, and belongs to every sheet.
  return { number, title, house, invented, by, foot: ride.cautions.at(-1)! }
}
