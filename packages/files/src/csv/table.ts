// Separated text to rows of cells, with the line each row came from.
//
// Lines above the header (titles, `# key: value`) and short lines after the data (totals,
// explanations) are kept apart, because files of meters and stations carry both.

import Papa from 'papaparse'
import type { Faults } from '../faults.js'

/** Rows of one file below its header. */
export interface Table {
  readonly header: readonly string[]
  /** Line of the header, from 1. */
  readonly headerLine: number
  /** Rows with at least one filled cell. [n] */
  readonly rows: readonly (readonly string[])[]
  /** Line of each row, from 1. [n] */
  readonly lines: Int32Array
  /** Rows above the header. */
  readonly above: readonly (readonly string[])[]
  /** Whether `0,5` is a half: so where the separator is no comma. */
  readonly decimalComma: boolean
  /** Short lines after the data that were left out. */
  readonly after: number
}

/** How far down a header is looked for. */
const HEADER_WITHIN = 60

/**
 * Parses separated text (comma, semicolon or tab; quotes allowed).
 *
 * @param isHeader  Tells the header from a title, given a row and the filled row after it
 * @returns         The table, or null where no row is a header
 * @throws          InputError where a quote is left open
 */
export function parseTable(
  text: string,
  faults: Faults,
  isHeader: (row: readonly string[], next: readonly string[]) => boolean,
): Table | null {
  const { all, delimiter } = parseRows(text, faults)
  const filled: number[] = []
  for (let i = 0; i < all.length; i++) if (isFilled(all[i] ?? [])) filled.push(i)
  const at = filled
    .slice(0, HEADER_WITHIN)
    .findIndex((row, k) => isHeader(all[row] ?? [], all[filled[k + 1] ?? -1] ?? []))
  if (at < 0) return null
  const headerRow = filled[at] ?? 0
  const header = (all[headerRow] ?? []).map((cell) => cell.trim())
  const data = filled.slice(at + 1)
  const before = data.length
  while (data.length > 0 && isShort(all[data.at(-1) ?? 0] ?? [], header.length)) data.pop()
  return {
    header,
    headerLine: headerRow + 1,
    rows: data.map((row) => all[row] ?? []),
    lines: Int32Array.from(data, (row) => row + 1),
    above: filled.slice(0, at).map((row) => all[row] ?? []),
    decimalComma: delimiter !== ',',
    after: before - data.length,
  }
}

function parseRows(text: string, faults: Faults): { all: string[][]; delimiter: string } {
  const delimiter = separatorOf(text)
  const parsed = Papa.parse<string[]>(text, { delimiter })
  const open = parsed.errors.find((error) => error.type === 'Quotes')
  if (open !== undefined) {
    faults.refuse((open.row ?? 0) + 1, 'a row whose quotes are closed', 'an open quote')
  }
  return { all: parsed.data, delimiter }
}

/** A semicolon or tab on nearly every line is the separator; commas may then be decimals. */
function separatorOf(text: string): string {
  const lines = text.slice(0, 20_000).split(/\r?\n/).slice(0, 100)
  const data = lines.filter((line) => line.trim() !== '' && !line.startsWith('#'))
  for (const mark of [';', '\t']) {
    const having = data.filter((line) => line.includes(mark)).length
    if (having > 0.7 * data.length) return mark
  }
  return ','
}

function isFilled(row: readonly string[]): boolean {
  return row.some((cell) => cell.trim() !== '')
}

function isShort(row: readonly string[], width: number): boolean {
  const filled = row.filter((cell) => cell.trim() !== '').length
  return filled < Math.max(2, width / 2) && row.length < width
}
