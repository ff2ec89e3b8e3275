// A path to text; the only place of the readers that touches the disk.

import { readFileSync } from 'node:fs'
import { InputError } from '@tideover/core'
import { decodeText } from './decode.js'

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'no such file',
  EISDIR: 'a directory',
  EACCES: 'a file that may not be read',
  EPERM: 'a file that may not be read',
  ENOTDIR: 'a path through something that is no directory',
}

/**
 * Reads a text file whole.
 *
 * @throws InputError where it is missing, a directory, unreadable or no text
 */
export function readText(path: string): string {
  return decodeText(readBytes(path), path)
}

function readBytes(path: string): Uint8Array {
  try {
    return readFileSync(path)
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code ?? ''
    const got = REASONS[code] ?? `an error (${code || String(error)})`
    throw new InputError([{ where: path, need: 'a file that can be read', got }])
  }
}
