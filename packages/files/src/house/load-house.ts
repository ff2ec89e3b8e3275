// A house file with the records it names, checked and ready to be prepared.

import { dirname, resolve } from 'node:path'
import {
  checkHouse,
  type House,
  type HouseFiles,
  InputError,
  type MeterRecord,
  type Problem,
  type RecordChoice,
  recordKey,
  type WeatherRecord,
} from '@tideover/core'
import { readMeter } from '../meter/read-meter.js'
import { readWeather } from '../weather/read-weather.js'
import { readHouseFile } from './read-house-file.js'

export interface LoadedHouse {
  readonly house: House
  readonly files: HouseFiles
  /** The house as written, before defaults. */
  readonly plain: unknown
  /** What the readers understood, one sentence each. */
  readonly notes: readonly string[]
}

/**
 * Reads, checks and completes a house.
 *
 * @param path  of the house file; the records it names are looked for beside it
 * @throws      InputError with every fault of the house file, or every fault of its records
 */
export function loadHouse(path: string): LoadedHouse {
  const { plain, lineOf } = readHouseFile(path)
  const house = checkWithLines(plain, path, lineOf)
  const folder = dirname(path)
  const problems: Problem[] = []
  const meters = new Map<string, MeterRecord>()
  const weather = new Map<string, WeatherRecord>()
  const attempt = (read: () => void, whose = ''): void => {
    try {
      read()
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      problems.push(...error.problems.map((each) => ({ ...each, where: `${each.where}${whose}` })))
    }
  }
  const read = (
    of: RecordChoice & { readonly name: string },
    into: Map<string, MeterRecord>,
    output: boolean,
  ): void => {
    const { file, column, zone = house.site.timezone } = of
    if (file === undefined || into.has(recordKey(of))) return
    const options = { output, ...(column !== undefined && { column }) }
    attempt(
      () => into.set(recordKey(of), readMeter(resolve(folder, file), zone, options)),
      ` (file of ${of.name})`,
    )
  }
  for (const load of house.loads) read(load, meters, false)
  const outputs = new Map<string, MeterRecord>()
  for (const array of house.arrays) read(array, outputs, true)
  const sky = house.sky.file
  if (sky !== undefined) attempt(() => weather.set(sky, readWeather(resolve(folder, sky))))
  if (problems.length > 0) throw new InputError(problems)
  const records = [...meters.values(), ...outputs.values(), ...weather.values()]
  const notes = records.flatMap(({ notes }) => notes)
  return { house, files: { meters, outputs, weather }, plain, notes }
}

function checkWithLines(plain: unknown, path: string, lineOf: (path: string) => number): House {
  try {
    return checkHouse(plain)
  } catch (error) {
    if (!(error instanceof InputError)) throw error
    throw new InputError(
      error.problems.map((problem) => ({
        ...problem,
        where: `${problem.where} (${path}:${lineOf(problem.where)})`,
      })),
    )
  }
}
