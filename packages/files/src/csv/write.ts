// Rows of numbers to comma-separated text.
//
// Numbers carry at most 15 significant digits in their shortest form, so that the same figure
// is the same text everywhere; what is missing is an empty cell.

/** What a cell may hold; NaN and null are written as nothing. */
export type Cell = number | string | boolean | null

/** A column is anything with a length and cells by number. */
export type CellColumn = ArrayLike<Cell>

/**
 * The whole text, header included, every line ended by a line feed.
 *
 * @param header  Names of the columns
 * @param rows    Cells of each row, as many as the header has names
 * @throws        RangeError where a row has another width or holds an infinite number
 *
 * @example
 * csvText(['t', 'kw'], [['08:00', 0.1 + 0.2], ['08:01', NaN]]) // => 't,kw\n08:00,0.3\n08:01,\n'
 */
export function csvText(header: readonly string[], rows: Iterable<readonly Cell[]>): string {
  let text = ''
  for (const chunk of csvChunks(header, rows)) text += chunk
  return text
}

/**
 * The same text piece by piece, for a stream: a year of minutes is never held whole.
 *
 * @param rowsPerChunk  Rows in one piece. >= 1
 */
export function* csvChunks(
  header: readonly string[],
  rows: Iterable<readonly Cell[]>,
  rowsPerChunk = 2000,
): Generator<string> {
  let chunk = `${header.map(quoted).join(',')}\n`
  let held = 0
  let rowNumber = 0
  for (const row of rows) {
    if (row.length !== header.length) {
      throw new RangeError(`row ${rowNumber} must have ${header.length} cells, got ${row.length}`)
    }
    let line = cellText(row[0] ?? null)
    for (let i = 1; i < row.length; i++) line += `,${cellText(row[i] ?? null)}`
    chunk += `${line}\n`
    rowNumber++
    if (++held === rowsPerChunk) {
      yield chunk
      chunk = ''
      held = 0
    }
  }
  if (chunk !== '') yield chunk
}

/**
 * Rows of columns that share one axis.
 *
 * @throws RangeError where the lengths differ
 */
export function* rowsOf(columns: readonly CellColumn[]): Generator<Cell[]> {
  const n = columns[0]?.length ?? 0
  for (const column of columns) {
    if (column.length !== n) {
      throw new RangeError(`columns must have one length, got ${n} and ${column.length}`)
    }
  }
  for (let i = 0; i < n; i++) yield columns.map((column) => column[i] ?? null)
}

/**
 * A number with at most 15 significant digits, as short as it goes: 0.30000000000000004 is `0.3`.
 * NaN is empty.
 *
 * @throws RangeError for an infinite number
 */
export function numberText(value: number): string {
  if (Number.isNaN(value)) return ''
  if (!Number.isFinite(value)) throw new RangeError(`a cell must be finite or NaN, got ${value}`)
  const text = String(value)
  // Up to 15 digits, with or without a point, are within the limit whatever they are.
  const isShort = text.length <= (text.includes('.') ? 16 : 15) && !text.includes('-')
  return isShort ? text : String(Number(value.toPrecision(15)))
}

function cellText(cell: Cell): string {
  if (cell === null) return ''
  return typeof cell === 'number' ? numberText(cell) : quoted(String(cell))
}

function quoted(text: string): string {
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}
