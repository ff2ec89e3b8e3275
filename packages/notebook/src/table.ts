// Rows as a table in the output of a cell.

import { display } from 'tslab'
import { escapeHtml } from './html.js'

const DEFAULTS = { digits: 2, mostRows: 60 }

const NUMBER = ' style="text-align:right"'
/** Names and times of rows stay in one line. */
const FIRST = ' style="white-space:nowrap"'

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
  return [
    '<table>',
    caption === undefined ? '' : `<caption>${escapeHtml(caption)}</caption>`,
    `<thead><tr>${columns.map((name, column) => headHtml(name, rows, column)).join('')}</tr></thead>`,
    `<tbody>${shown.map((row) => rowHtml(row, digits)).join('')}</tbody>`,
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

/** Above numbers it stands where they do. */
function headHtml(name: string, rows: readonly (readonly unknown[])[], column: number): string {
  const isNumber = rows.some((row) => typeof row[column] === 'number')
  return `<th scope="col"${isNumber ? NUMBER : ''}>${escapeHtml(name)}</th>`
}

function rowHtml(row: readonly unknown[], digits: number): string {
  const cells = row.map((value, column) => {
    const isName = column === 0 && row.length > 1
    const style = typeof value === 'number' ? NUMBER : isName ? FIRST : ''
    return `<td${style}>${escapeHtml(cellText(value, digits))}</td>`
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
