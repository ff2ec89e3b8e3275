// Rows as a table in the output of a cell.

import { display } from 'tslab'
import { escapeHtml } from './html.js'

const DEFAULTS = { digits: 2, mostRows: 60 }

const NUMBER = ' style="text-align:right"'
/** Names and times of rows stay in one line. */
const FIRST = ' style="text-align:left;white-space:nowrap"'
/** JupyterLab would have it on the right. */
const TEXT = ' style="text-align:left"'
/** What is longer may break. [characters] */
const LONGEST_NAME = 36

/** A danfo.js data frame, or anything with its columns and rows. */
export interface FrameLike {
  readonly columns: readonly string[]
  readonly values: readonly unknown[]
}

export type Row = Readonly<Record<string, unknown>>

export interface TableOptions {
  readonly caption?: string
  /** Most digits behind the point. Default 2 */
  readonly digits?: number
  /** Rows beyond are counted, not shown. Default 60 */
  readonly mostRows?: number
}

/** Shows rows, or a data frame, as a table. */
export function table(data: readonly Row[] | FrameLike, options: TableOptions = {}): void {
  display.html(tableHtml(data, options))
}

export function tableHtml(data: readonly Row[] | FrameLike, options: TableOptions = {}): string {
  const { caption, digits, mostRows } = { ...DEFAULTS, ...options }
  const { columns, rows } = laidOut(data)
  const shown = rows.slice(0, mostRows)
  const more = rows.length - shown.length
  const ofNumbers = columns.map((_, c) => rows.some((row) => typeof row[c] === 'number'))
  const heads = columns.map(
    (name, c) => `<th scope="col"${ofNumbers[c] ? NUMBER : TEXT}>${escapeHtml(name)}</th>`,
  )
  return [
    '<table>',
    caption === undefined ? '' : `<caption>${escapeHtml(caption)}</caption>`,
    `<thead><tr>${heads.join('')}</tr></thead>`,
    `<tbody>${shown.map((row) => rowHtml(row, ofNumbers, digits)).join('')}</tbody>`,
    '</table>',
    more > 0 ? `<p>… and ${more} more rows</p>` : '',
  ].join('')
}

function laidOut(data: readonly Row[] | FrameLike): { columns: string[]; rows: unknown[][] } {
  if ('columns' in data) {
    const rows = data.values.map((row) => (Array.isArray(row) ? row : [row]))
    return { columns: [...data.columns], rows }
  }
  const columns = [...new Set(data.flatMap((row) => Object.keys(row)))]
  return { columns, rows: data.map((row) => columns.map((name) => row[name])) }
}

function rowHtml(row: readonly unknown[], ofNumbers: readonly boolean[], digits: number): string {
  const cells = row.map((value, column) => {
    const text = cellText(value, digits)
    const isName = column === 0 && row.length > 1 && text.length <= LONGEST_NAME
    const style = ofNumbers[column] ? NUMBER : isName ? FIRST : TEXT
    return `<td${style}>${escapeHtml(text)}</td>`
  })
  return `<tr>${cells.join('')}</tr>`
}

function cellText(value: unknown, digits: number): string {
  if (value === null || value === undefined || Number.isNaN(value)) return '–'
  if (typeof value === 'number') return String(Number(value.toFixed(digits)))
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (value instanceof Date) return value.toISOString()
  if (Array.isArray(value)) return value.map((one) => cellText(one, digits)).join(', ')
  return String(value)
}
