// Meter readings in a table of text: which columns, which moments, which values.

import { type MeterRecord, printable } from '@tideover/core'
import { cellNumber, isMissing } from '../csv/number.js'
import { parseTable, type Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { checkedStep, layOut, linesOfSlots } from '../time/regular.js'
import { count } from '../time/say.js'
import { findTimeColumns, hasDate, readStamps, type TimeColumns } from '../time/time-columns.js'
import type { WallZone } from '../time/zone.js'
import { finishMeter } from './finish-meter.js'
import { loadColumn, namesGrid, namesImport, namesUse } from './load-column.js'
import type { MeterOptions } from './meter-options.js'
import { oldestFirst, toUtc } from './moments.js'
import { exportColumn, withExport } from './net-meter.js'

/**
 * Reads meter readings from separated text.
 *
 * @param text    The file
 * @param options  What the caller knows better than the file
 * @throws        InputError; see `meterFromText`
 */
export function meterFromCsv(
  text: string,
  name: string,
  zone: WallZone,
  { column, output = false }: MeterOptions,
  faults: Faults,
): MeterRecord {
  const found = parseTable(text, faults, isHeader)
  if (found === null) {
    return faults.refuse(1, 'a header row above rows with a date and time', firstLine(text))
  }
  refuseWide(found, faults)
  const times = findTimeColumns(found)
  if (times === null) {
    return faults.refuse(found.headerLine, 'a column with date and time', found.header.join(', '))
  }
  const load = loadColumn(found, column, faults, output)
  const { table, stamps } = oldestFirst(found, readStamps(found, times, faults))
  // A column that is asked for may be one appliance: what the house gives is then not its own.
  const mayGive = !output && (column === undefined || namesGrid(load.header))
  const given = mayGive ? exportColumn(table, load, faults) : null
  const columns = [load, ...(given === null ? [] : [given])]
  const read = columns.map(({ at }) => readValues(table, at, faults))
  const utc = toUtc(stamps, table, times, zone, faults)
  faults.throwIfAny()
  const stepMinutes = checkedStep(utc.ms, table.lines[0] ?? 1, faults)
  if (times.marksEnd) for (let i = 0; i < utc.ms.length; i++) utc.ms[i]! -= stepMinutes * 60_000
  const axis = layOut(utc.ms, stepMinutes, table.lines, faults)
  const beside = [...timeNotes(times, axis.offGridSeconds), ...utc.notes]
  if (table.after > 0) beside.push(`${count(table.after, 'line')} after the data left out.`)
  const [record, exported] = columns.map(({ note, unit, header }, i) => {
    const placed = place(read[i]!, axis, table, faults)
    return finishMeter(
      {
        ...{ name, zone, unit, header, stepMinutes },
        startMs: axis.startMs,
        values: placed.values,
        lineOfSlot: linesOfSlots(axis, table.lines),
        register: null,
        marksEnd: times.marksEnd,
        isOutput: output,
        signed: given === null && !output && !namesUse(header),
        notes: [note, ...beside, ...placed.notes],
      },
      faults,
    )
  })
  if (exported !== undefined) return withExport(record!, exported, load.header)
  return mayGive && namesImport(load.header) ? { ...record!, countsImport: true } : record!
}

/** A header is a row without a date above a row with one. */
function isHeader(row: readonly string[], next: readonly string[]): boolean {
  return row.length >= 2 && !hasDate(row) && hasDate(next)
}

/** Clock times as headers: a day a row, and the unit nowhere. */
function refuseWide(table: Table, faults: Faults): void {
  const clocks = table.header.filter((header) => /^\D{0,6}\d{1,2}[:.]\d\d(\D.*)?$/.test(header))
  if (clocks.length < 24) return
  const need = 'a file with one reading a row: a column with date and time, one with kw or kwh'
  faults.refuse(table.headerLine, need, `a day a row, ${clocks.length} clock times as headers`)
}

function firstLine(text: string): string {
  return printable(text.trimStart().split(/\r?\n/, 1)[0] ?? '')
}

function readValues(table: Table, at: number, faults: Faults): Float64Array {
  const values = new Float64Array(table.rows.length).fill(Number.NaN)
  for (let i = 0; i < values.length; i++) {
    const cell = table.rows[i]?.[at] ?? ''
    if (isMissing(cell)) continue
    values[i] = cellNumber(cell, table.decimalComma)
    if (Number.isNaN(values[i]!)) {
      const need = `a number in ${JSON.stringify(table.header[at] ?? '')}, or nothing`
      faults.add(table.lines[i] ?? 0, need, printable(cell))
    }
  }
  return values
}

function place(
  rowValues: Float64Array,
  axis: ReturnType<typeof layOut>,
  table: Table,
  faults: Faults,
): { values: Float64Array; notes: string[] } {
  const values = new Float64Array(axis.n).fill(Number.NaN)
  let same = 0
  let differing = 0
  let line = 0
  for (let i = 0; i < rowValues.length; i++) {
    const slot = axis.slot[i]!
    const value = rowValues[i]!
    if (Number.isNaN(values[slot]!)) values[slot] = value
    else if (values[slot] === value) same++
    else if (!Number.isNaN(value)) {
      differing++
      if (line === 0) line = table.lines[i] ?? 0
    }
  }
  if (differing > Math.max(5, 0.01 * rowValues.length)) {
    const need = 'a file with one reading for each interval (does it hold two meters?)'
    faults.refuse(line, need, `${count(differing, 'second reading')} that differ`)
  }
  const notes: string[] = []
  if (same > 0) notes.push(`${count(same, 'repeated row')} left out.`)
  if (differing > 0) {
    notes.push(
      `${count(differing, 'interval')} with a second, different reading: the first kept ` +
        `(first at line ${line}).`,
    )
  }
  return { values, notes }
}

function timeNotes(times: TimeColumns, offGridSeconds: number): string[] {
  const notes = [`A stamp marks the ${times.marksEnd ? 'end' : 'start'} of its interval.`]
  if (offGridSeconds >= 1) {
    const far = Math.round(offGridSeconds)
    notes.push(`Stamps lie up to ${far} s off the step; each is put on the nearest.`)
  }
  return notes
}
