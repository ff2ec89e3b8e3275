// Stamps of a meter file to UTC.

import type { Table } from '../csv/table.js'
import type { Faults } from '../faults.js'
import { moment, offsetText } from '../time/say.js'
import type { Stamps, TimeColumns } from '../time/time-columns.js'
import { WallClock, type WallZone } from '../time/zone.js'

/** Moments of the rows, and how they were read. */
export interface Moments {
  /** UTC [ms], NaN where the stamp could not be read. [rows] */
  readonly ms: Float64Array
  readonly notes: readonly string[]
}

/** The rows turned round where they run from the newest to the oldest. */
export function oldestFirst(table: Table, stamps: Stamps): { table: Table; stamps: Stamps } {
  const { wallMs, offsetMinutes } = stamps
  let up = 0
  let down = 0
  for (let i = 1; i < wallMs.length; i++) {
    if (wallMs[i]! > wallMs[i - 1]!) up++
    else if (wallMs[i]! < wallMs[i - 1]!) down++
  }
  if (down <= up) return { table, stamps }
  return {
    table: { ...table, rows: table.rows.toReversed(), lines: table.lines.toReversed() },
    stamps: { wallMs: wallMs.toReversed(), offsetMinutes: offsetMinutes.toReversed() },
  }
}

/**
 * Moments of the stamps: by their own offset, or by the wall clock of the zone. In the hour
 * that autumn repeats, rows are taken in the order of the file.
 *
 * Stamps in the hour that spring leaves out are dropped and counted.
 *
 * @throws InputError where only some stamps have an offset
 */
export function toUtc(
  stamps: Stamps,
  table: Table,
  times: TimeColumns,
  zone: WallZone,
  faults: Faults,
): Moments {
  const { wallMs, offsetMinutes } = stamps
  const offsets = new Set<number>()
  let bare = -1
  for (let i = 0; i < wallMs.length; i++) {
    if (Number.isNaN(wallMs[i]!)) continue
    if (Number.isNaN(offsetMinutes[i]!)) bare = bare < 0 ? i : bare
    else offsets.add(offsetMinutes[i]!)
  }
  if (offsets.size === 0) return byWallClock(wallMs, table, times, zone)
  if (bare >= 0) {
    const need = 'a stamp with an offset from UTC, as the other rows have'
    faults.refuse(table.lines[bare] ?? null, need, table.rows[bare]?.[times.date] ?? 'nothing')
  }
  const ms = wallMs.map((wall, i) => wall - offsetMinutes[i]! * 60_000)
  const named = [...offsets].sort((a, b) => a - b).map(offsetText)
  return { ms, notes: [`Stamps name their offset: ${named.join(', ')}.`] }
}

function byWallClock(
  wallMs: Float64Array,
  table: Table,
  times: TimeColumns,
  zone: WallZone,
): Moments {
  const clock = new WallClock(zone)
  const ms = new Float64Array(wallMs.length).fill(Number.NaN)
  const taken = new Set<number>()
  let last = Number.NEGATIVE_INFINITY
  let repeated = 0
  let skipped = 0
  let firstSkipped = ''
  for (let i = 0; i < wallMs.length; i++) {
    if (Number.isNaN(wallMs[i]!)) continue
    const { first, second } = clock.read(wallMs[i]!, times.marksEnd)
    if (Number.isNaN(first)) {
      if (skipped === 0) firstSkipped = `line ${table.lines[i] ?? 0}, ${moment(wallMs[i]!)}`
      skipped++
      continue
    }
    let at = first
    if (!Number.isNaN(second)) {
      at = first > last ? first : second > last ? second : taken.has(first) ? second : first
      taken.add(at)
      if (at === second) repeated++
    }
    ms[i] = at
    last = at
  }
  const notes = [`Stamps read as wall clock of ${zone.name}.`]
  if (skipped > 0) {
    notes.push(
      `${skipped} stamps lie in the hour that spring leaves out (${firstSkipped}): left out. ` +
        'A meter that keeps winter time all year is an hour off in summer.',
    )
  }
  if (repeated > 0) notes.push(`The hour that autumn repeats is there twice, taken in order.`)
  return { ms, notes }
}
