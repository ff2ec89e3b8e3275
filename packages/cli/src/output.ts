// Where answers go: standard output or a file; warnings and progress to standard error.

import { closeSync, openSync, writeSync } from 'node:fs'
import { InputError } from '@tideover/core'
import { type Cell, csvChunks } from '@tideover/files'

export function say(text: string): void {
  process.stdout.write(`${text}\n`)
}

export function sayJson(value: unknown): void {
  say(JSON.stringify(value, null, 2))
}

/**
 * Writes rows as CSV to a file, or to standard output for `-`.
 *
 * @throws InputError where the file cannot be written
 */
export function writeCsv(
  path: string,
  header: readonly string[],
  rows: Iterable<readonly Cell[]>,
): void {
  const file = path === '-' ? 1 : openForWriting(path)
  for (const chunk of csvChunks(header, rows)) writeWhole(file, chunk)
  if (path !== '-') closeSync(file)
}

/** A pipe may take only part of a piece at a time. */
function writeWhole(file: number, text: string): void {
  const bytes = Buffer.from(text)
  let at = 0
  while (at < bytes.length) {
    try {
      at += writeSync(file, bytes, at)
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error
    }
  }
}

function openForWriting(path: string): number {
  try {
    return openSync(path, 'w')
  } catch (error) {
    const reason = (error as NodeJS.ErrnoException).code ?? String(error)
    throw new InputError('--csv', 'a file that can be written, or -', `${path} (${reason})`)
  }
}

/** Progress on one line of standard error, for people only. */
export function progressLine(): (text: string) => void {
  if (!process.stderr.isTTY) return () => {}
  return (text) => process.stderr.write(`\r\x1b[K${text}`)
}

/** The same by the count of parts that are done; `end` clears it. */
export function partsLine(): { told: () => void; end: () => void } {
  const show = progressLine()
  let parts = 0
  return { told: () => show(`${++parts} parts done`), end: () => show('') }
}
