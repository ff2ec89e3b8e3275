// A house file made ready to be asked.

import { existsSync } from 'node:fs'
import { InputError, type Prepared, prepare, type SkyKind } from '@tideover/core'
import { type LoadedHouse, loadHouse } from '@tideover/files'
import { DEFAULT_HOUSE } from './default-house.js'

export interface OpenHouse extends LoadedHouse {
  readonly prepared: Prepared
}

/**
 * @param shared  whether threads are to share it
 * @throws        InputError with every fault of the house and its records
 */
export function openHouse(path: string | undefined, shared = false): OpenHouse {
  if (path !== undefined && !path.includes('.') && !existsSync(path)) {
    const need = 'a house file that can be read, or a command (tideover --help lists them)'
    throw new InputError([{ where: path, need, got: 'no such file and no such command' }])
  }
  if (path === undefined)
    process.stderr.write(`No house file is named: this is ${DEFAULT_HOUSE.name}.\n`)
  const loaded = loadHouse(path ?? DEFAULT_HOUSE.path())
  return { ...loaded, prepared: prepare(loaded.house, loaded.files, { shared }) }
}

/** @throws InputError where the sky of a record is asked for and none is named */
export function checkSky({ record }: Prepared, sky: SkyKind): void {
  if (sky !== 'file' || record !== null) return
  throw new InputError('--sky', 'one of dull, none, typical, clear: no sky.file is named', 'file')
}
