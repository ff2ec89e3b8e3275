// A meter at the grid of a house with solar: what is taken and what is given are two columns.

import type { MeterRecord } from '@tideover/core'
import { cellNumber } from '../csv/number.js'
import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { type LoadColumn, listed, namesExport, namesUse, unitIn } from './load-column.js'

/** Below this nothing is taken, above it something is given. [kW] */
const NOTHING_KW = 0.02
/** A share of the giving intervals without any use that only a meter at the grid shows. */
const TELLING_SHARE = 0.2

const NET_NOTE =
  'Taken from the grid and given to it: a net meter, which does not see what the house used of ' +
  'its own solar.'

/** A signed column in two: what is taken, and what is given. [n], [kW], both >= 0 */
export function splitNet(net: Float64Array): { taken: Float64Array; given: Float64Array } {
  return {
    taken: net.map((value) => Math.max(0, value)),
    given: net.map((value) => Math.max(0, -value)),
  }
}

/**
 * The column of what goes to the grid, or null.
 *
 * @throws InputError where several could be it
 */
export function exportColumn(table: Table, load: LoadColumn, faults: Faults): LoadColumn | null {
  const named = table.header.flatMap((header, at) =>
    at !== load.at && namesExport(header) && isPositive(table, at) ? [at] : [],
  )
  const withUnit = named.filter((at) => unitIn(table.header[at] ?? '') !== null)
  const found = withUnit.length > 0 ? withUnit : named
  const at = found[0]
  if (at === undefined) return null
  if (found.length > 1) {
    const need = 'a file with one column of what is given to the grid'
    faults.refuse(table.headerLine, need, listed(found.map((each) => table.header[each] ?? '')))
  }
  const header = table.header[at] ?? ''
  const note = `Column ${JSON.stringify(header)} is what is given to the grid.`
  return { at, header, unit: unitIn(header) ?? load.unit, note }
}

function isPositive(table: Table, at: number): boolean {
  return table.rows.some((cells) => cellNumber(cells[at] ?? '', table.decimalComma) > 0)
}

/**
 * A record with what went to the grid beside it; as it is where nothing did, or where its column is
 * the use of the house and not what it took.
 *
 * A column named consumption is either. The use of a house goes on while it gives; what a meter at
 * the grid counts as taken is then often nothing.
 *
 * @param header  of the column of `taken`
 */
export function withExport(taken: MeterRecord, given: MeterRecord, header: string): MeterRecord {
  const shift = Math.round((taken.startMs - given.startMs) / (taken.stepMinutes * 60_000))
  const exportKw = taken.kw.map((_, i) => given.kw[i + shift] ?? Number.NaN)
  let giving = 0
  let without = 0
  exportKw.forEach((kw, i) => {
    if (!(kw > NOTHING_KW)) return
    giving++
    if (taken.kw[i]! < NOTHING_KW) without++
  })
  if (giving === 0) return taken
  if (namesUse(header) && without < TELLING_SHARE * giving) {
    const note = `${JSON.stringify(header)} goes on while power is given: the use of the house.`
    return { ...taken, notes: [...taken.notes, note] }
  }
  return { ...taken, exportKw, notes: [...taken.notes, ...givenNotes(exportKw, taken.stepMinutes)] }
}

/** What is said of a net meter. */
export function givenNotes(exportKw: Float64Array, stepMinutes: number): string[] {
  let kwh = 0
  for (const kw of exportKw) if (kw > 0) kwh += (kw * stepMinutes) / 60
  return [NET_NOTE, `${kwh.toFixed(1)} kWh given to the grid; the kWh above are those taken.`]
}
