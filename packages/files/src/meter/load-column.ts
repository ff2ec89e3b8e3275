// Which column of a meter file is the load, and in which unit.

import { cellNumber } from '../csv/number.js'
import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'

/** Mean power of an interval, energy of an interval. */
export type LoadUnit = 'kw' | 'w' | 'kwh' | 'wh'

/** The column to read. */
export interface LoadColumn {
  readonly at: number
  readonly header: string
  readonly unit: LoadUnit
  /** How the unit is known, one sentence. */
  readonly note: string
}

/** What is measured beside the load of a house. */
const BESIDE =
  /react|apparent|kva|var(?![a-z])|volt|current(?!.*(power|consum|load|use))|ampere|amps|intensity|freq|hz|cost|price|tariff|(?<![a-z])rate|temp|cos|factor|sub.?meter|£|€|\$/i
/** What passes the meter either way. */
const NET = /(?<![a-z])net(?![a-z])|grid|import/i
/** Energy that leaves the house. */
const EXPORT = /export|feed.?in|return|to.?grid|injec|einspeis|surplus/i
/** Energy that leaves the house or comes from its own roof or battery. */
const OWN =
  /export|feed.?in|return|to.?grid|injec|einspeis|surplus|solar|(?<![a-z])pv|generat|product|yield|batter|charge/i
const WHOLE = /total|global|whole|main|house|consum|load|demand|usage/i
const LOAD_NAME = /power|load|demand|consum|usage|energy|import|reading|value|total|meter/i

/**
 * Chooses the load column by its header.
 *
 * @param wanted  Name of the column where the caller says it, else undefined
 * @param output  Whether what an array gives is sought, not what a house takes
 * @throws        InputError where none fits, several do, or the unit can't be told
 */
export function loadColumn(
  table: Table,
  wanted: string | undefined,
  faults: Faults,
  output = false,
): LoadColumn {
  const at = wanted === undefined ? theLoad(table, faults, output) : named(table, wanted, faults)
  const header = table.header[at] ?? ''
  const unit = unitIn(header)
  const what = output ? 'the output' : namesGrid(header) ? 'what passes the meter' : 'the load'
  if (unit !== null)
    return { at, header, unit, note: `Column ${JSON.stringify(header)} is ${what}.` }
  return withoutUnit(table, at, header, faults)
}

/** How each unit is written by itself, behind a word in small letters, or within one. */
const WRITTEN: readonly (readonly [LoadUnit, RegExp])[] = [
  ['kwh', /k\s?wh/gi],
  ['kw', /(?<![A-Za-z])[kK][wW](?![A-Za-z])|kW(?![a-z])|(?<=[a-z])K[wW](?![a-z])/g],
  ['wh', /(?<![A-Za-z])[wW][hH](?![A-Za-z])|(?<=[a-z]{2})Wh(?![a-z])/g],
  ['w', /(?<![A-Za-z])[wW](?![A-Za-z])|(?<=[a-z]{2})W(?![A-Za-z])/g],
]

/** Unit that a header names, or null: `usageKwh`, `Load [W]`, `KWH/hh`, `Watt hours`. */
export function unitIn(header: string): LoadUnit | null {
  let rest = header
    .replaceAll(/kilo\s?watts?/gi, 'kW')
    .replaceAll(/watts?/gi, 'W')
    .replaceAll(/W[\s-]?hours?/gi, 'Wh')
  if (/w\W*_?m\W?[2²]/i.test(rest)) return null
  const found: LoadUnit[] = []
  for (const [unit, pattern] of WRITTEN) {
    const without = rest.replaceAll(pattern, ' ')
    if (without !== rest) found.push(unit)
    rest = without
  }
  return found.length === 1 ? (found[0] ?? null) : null
}

/** Whether a header names energy that leaves the house. */
export function namesExport(header: string): boolean {
  return !BESIDE.test(header) && EXPORT.test(header)
}

/** Whether a header names what passes the meter of the house. */
export function namesGrid(header: string): boolean {
  return NET.test(header)
}

/** Whether a header names what is taken from the grid. */
export function namesImport(header: string): boolean {
  return /import|from.?grid|bezug|delivered/i.test(header)
}

/** Whether a header names the house's own use rather than what it takes from the grid. */
export function namesUse(header: string): boolean {
  return /consum|load|house|demand|usage/i.test(header) && !namesGrid(header)
}

function named(table: Table, wanted: string, faults: Faults): number {
  const at = table.header.indexOf(wanted)
  if (at >= 0) return at
  return faults.refuse(
    table.headerLine,
    `a header with the column ${JSON.stringify(wanted)}`,
    listed(table.header),
  )
}

function theLoad(table: Table, faults: Faults, output: boolean): number {
  const fits = (test: (header: string) => boolean): number[] =>
    table.header.flatMap((header, at) => (!BESIDE.test(header) && test(header) ? [at] : []))
  const isOwn = (header: string): boolean => OWN.test(header) !== output
  const hasUnit = (header: string): boolean => unitIn(header) !== null
  const tries = [
    // What an array gives goes before what the house passes on of it.
    fits((header) => hasUnit(header) && !isOwn(header) && !(output && EXPORT.test(header))),
    fits((header) => hasUnit(header) && !isOwn(header)),
    fits((header) => LOAD_NAME.test(header) && !isOwn(header) && isNumeric(table, header)),
    fits((header) => hasUnit(header)),
    fits((header) => LOAD_NAME.test(header) && isNumeric(table, header)),
  ]
  const found = tries.find((columns) => columns.length > 0) ?? []
  const whole = found.filter((at) => WHOLE.test(table.header[at] ?? ''))
  const only = found.length === 1 ? found[0] : whole.length === 1 ? whole[0] : undefined
  if (only !== undefined) return only
  if (found.length === 0) {
    const need =
      'a header with a load column and its unit (kw, w, kwh or wh an interval; write it behind the ' +
      'name of the column)'
    return faults.refuse(table.headerLine, need, listed(table.header))
  }
  const need = 'a file with one load column, or the column named in the house file (column)'
  return faults.refuse(table.headerLine, need, listed(found.map((at) => table.header[at] ?? '')))
}

function isNumeric(table: Table, header: string): boolean {
  const at = table.header.indexOf(header)
  return table.rows.slice(0, 200).some((row) => {
    return !Number.isNaN(cellNumber(row[at] ?? '', table.decimalComma))
  })
}

/** A unit in a column of its own, or a size that only one unit can have; else it is asked for. */
function withoutUnit(table: Table, at: number, header: string, faults: Faults): LoadColumn {
  const beside = table.header.findIndex((name) => /^units?$/i.test(name))
  if (beside >= 0) {
    const written = new Set(table.rows.map((row) => (row[beside] ?? '').trim()))
    const unit = written.size === 1 ? unitIn([...written][0] ?? '') : null
    if (unit !== null) {
      return {
        at,
        header,
        unit,
        note: `Column ${JSON.stringify(header)} is the load, unit as written.`,
      }
    }
  }
  const bySize = /power/i.test(header) ? unitBySize(table, at) : null
  if (bySize === null) {
    const need = `a header with the unit of ${JSON.stringify(header)} (kw, w, kwh or wh an interval)`
    return faults.refuse(table.headerLine, need, listed(table.header))
  }
  const { unit, peak } = bySize
  const note =
    `Column ${JSON.stringify(header)} names no unit; its peak of ${peak} and its decimals ` +
    `can only be ${unit === 'kw' ? 'kW' : 'W'}.`
  return { at, header, unit, note }
}

/** Power of a house: 0.5 to 30 with thousandths is kW, 300 and more is W; between is doubtful. */
function unitBySize(table: Table, at: number): { unit: LoadUnit; peak: number } | null {
  let peak = 0
  let fine = 0
  let n = 0
  for (const row of table.rows) {
    const value = cellNumber(row[at] ?? '', table.decimalComma)
    if (Number.isNaN(value)) continue
    n++
    if (value > peak) peak = value
    if (Math.abs(value * 10 - Math.round(value * 10)) > 1e-6) fine++
  }
  if (peak >= 300 && peak <= 100_000) return { unit: 'w', peak }
  return peak >= 0.5 && peak <= 30 && fine > n / 2 ? { unit: 'kw', peak } : null
}

/** Headers as a message lists them. */
export function listed(headers: readonly string[]): string {
  const shown = headers.slice(0, 12).map((header) => (header === '' ? '(unnamed)' : header))
  return `${shown.join(', ')}${headers.length > 12 ? ', …' : ''}`
}
