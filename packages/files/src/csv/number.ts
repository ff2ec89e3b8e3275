// One cell to one number.

const MISSING = new Set([
  '',
  '?',
  'na',
  'n/a',
  'nan',
  'null',
  'none',
  'unavailable',
  'unknown',
  '-',
  '--',
  '#n/a',
])

/** Whether a cell says "no reading" (empty, `?`, `NA` …). */
export function isMissing(cell: string): boolean {
  return MISSING.has(cell.trim().toLowerCase())
}

/** A plain decimal number, with its sign and exponent where it has them. */
const POINT = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i
const COMMA = /^[+-]?(\d+,?\d*|,\d+)(e[+-]?\d+)?$/i

/**
 * Number in a cell, or NaN where it holds none. Thousands marks are no number: whether `1,234`
 * is a thousand or one and a bit can't be told.
 *
 * @param decimalComma  True where the file separates by something other than a comma
 */
export function cellNumber(cell: string, decimalComma: boolean): number {
  const text = cell.trim()
  if (POINT.test(text)) return Number(text)
  if (decimalComma && COMMA.test(text)) return Number(text.replace(',', '.'))
  return Number.NaN
}
