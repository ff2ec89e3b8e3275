// Lists, tables and numbers as text.

import { wrap } from './wrap.js'

/** One text a bullet. */
export function bullets(texts: readonly string[]): string[] {
  return texts.flatMap((text) =>
    wrap(text, 76)
      .split('\n')
      .map((line, i) => (i === 0 ? `- ${line}` : `  ${line}`)),
  )
}

/** Columns side by side, the first to the left, the others to the right. */
export function table(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, c) => Math.max(...rows.map((row) => row[c]?.length ?? 0)))
  return rows.map((row) =>
    row
      .map((cell, c) => (c === 0 ? cell.padEnd(widths[c] ?? 0) : cell.padStart(widths[c] ?? 0)))
      .join('  ')
      .trimEnd(),
  )
}

/** How long a load may be off; null for ever. */
export function toleranceText(minutes: number | null): string {
  if (minutes === null) return 'no limit'
  if (minutes === 0) return 'never'
  return minutes < 120 ? `${round(minutes)} min` : `${round(minutes / 60)} h`
}

/** `24`, `1.5` */
export function round(hours: number): string {
  return Number.isInteger(hours) ? String(hours) : hours.toFixed(1)
}

/** `58 in 100 such cuts`; only a figure that is whole says all. */
export function sharePart(share: number): string {
  if (share === 0) return 'none of such cuts'
  if (share === 1) return 'every such cut'
  const hundred = Math.floor(share * 100)
  return hundred === 0 ? 'fewer than 1 in 100 such cuts' : `${hundred} in 100 such cuts`
}
