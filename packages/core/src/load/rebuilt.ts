// The load of a house whose meter counts at the grid, rebuilt where the solar output was logged.
//
//     load = taken from the grid - given to it + AC output of the arrays
//
// interval by interval, on the longest step of the records; an interval without one of them stays
// without a load. Whoever reads it must know that no battery stood behind the meter.

import { MINUTE_MS } from '../axis/calendar.js'
import type { ArrayInput, House, LoadInput } from '../house/house.js'
import { InputError } from '../house/problem.js'
import { type MeterRecord, recordKey } from './meter-record.js'

/** Below zero by no more than this, two clocks or a rounding register are to blame. [kW] */
const SMALL_KW = 0.1
/** The same as a share of the largest output; the more counts. */
const SMALL_SHARE = 0.05
/** Of the intervals with output so many may come out below zero. */
const MOST_BELOW = 0.05
// All three are common practice, no source.

/** Arrays that gave power behind the meter while it was read: all but those named as newer. */
export function stoodThen(load: LoadInput, house: House): ArrayInput[] {
  return house.arrays.filter(({ name }) => !(load.beforeArrays ?? []).includes(name))
}

/**
 * The record as it is, or, for a net meter, the load rebuilt from it.
 *
 * @param outputs  logs of AC output, by file name
 * @param notes    receives what was done
 * @throws         InputError where an array of that time has no log, where the logs do not cover
 *                 the record, or where the load comes out below zero often or by much
 */
export function rebuiltLoad(
  load: LoadInput,
  house: House,
  meter: MeterRecord,
  outputs: ReadonlyMap<string, MeterRecord>,
  notes: string[],
): MeterRecord {
  const { exportKw } = meter
  if (exportKw === undefined) return meter
  const arrays = stoodThen(load, house).filter(({ inverter }) => inverter !== undefined)
  const given = { ...meter, kw: exportKw }
  const logs = logsOf(load, arrays, given, outputs)
  const parts = sumUp(meter, given, logs)
  refuseBelowZero(meter.name, parts)
  notes.push(...rebuiltNotes(load.name, arrays, parts))
  notes.push(...newerNotes(load, house))
  return { ...meter, ...parts.axis, kw: parts.kw, exportKw: undefined }
}

/** The log of each array; refused with what would help where one has none. */
function logsOf(
  load: LoadInput,
  arrays: readonly ArrayInput[],
  given: MeterRecord,
  outputs: ReadonlyMap<string, MeterRecord>,
): MeterRecord[] {
  const got = `a net meter: ${kwhOf(given.kw, given.stepMinutes).toFixed(0)} kWh given to the grid`
  const where = given.name
  const reading = 'a reading of what the house used (its import alone is not that)'
  if (arrays.length === 0) {
    const why =
      (load.beforeArrays ?? []).length > 0
        ? `loads ${load.name}.beforeArrays says its arrays are newer, yet power was given`
        : 'no AC-coupled array in the house file could have given it'
    throw new InputError([{ where, need: `${reading}: ${why}`, got }])
  }
  const bare = arrays.filter(({ file }) => file === undefined).map(({ name }) => name)
  if (bare.length > 0) {
    const need =
      `${reading}, or stand beside a log of the AC output of ${bare.join(' and ')} over the same ` +
      `time (arrays[].file): the load is then rebuilt`
    throw new InputError([{ where, need, got }])
  }
  return arrays.map((array) => {
    const log = outputs.get(recordKey(array))
    if (log === undefined) {
      throw new InputError(`array ${array.name}`, `given with its log ${array.file}`, undefined)
    }
    return log
  })
}

/** What passed in the intervals that all records cover. */
interface Parts {
  readonly axis: Pick<MeterRecord, 'startMs' | 'stepMinutes'>
  /** [n], [kW], NaN where a record is silent */
  readonly kw: Float64Array
  /** Means over the same intervals. [n], [kW] */
  readonly solarKw: Float64Array
  readonly takenKwh: number
  readonly givenKwh: number
  readonly solarKwh: number
  readonly rebuilt: number
}

function sumUp(meter: MeterRecord, given: MeterRecord, logs: readonly MeterRecord[]): Parts {
  const longest = [meter, ...logs].reduce((a, b) => (b.stepMinutes > a.stepMinutes ? b : a))
  const { stepMinutes } = longest
  const stepMs = stepMinutes * MINUTE_MS
  const startMs = longest.startMs + Math.ceil((meter.startMs - longest.startMs) / stepMs) * stepMs
  const endMs = meter.startMs + meter.kw.length * meter.stepMinutes * MINUTE_MS
  const n = Math.max(0, Math.floor((endMs - startMs) / stepMs))
  const kw = new Float64Array(n)
  const solarKw = new Float64Array(n)
  let [taken, gave, solar, rebuilt] = [0, 0, 0, 0]
  for (let i = 0; i < n; i++) {
    const from = startMs + i * stepMs
    const [a, b] = [meanOver(meter, from, stepMinutes), meanOver(given, from, stepMinutes)]
    solarKw[i] = logs.reduce((sum, log) => sum + meanOver(log, from, stepMinutes), 0)
    kw[i] = a - b + solarKw[i]!
    if (Number.isNaN(kw[i]!)) continue
    rebuilt++
    taken += a
    gave += b
    solar += solarKw[i]!
  }
  const hours = stepMinutes / 60
  return {
    axis: { startMs, stepMinutes },
    kw,
    solarKw,
    takenKwh: taken * hours,
    givenKwh: gave * hours,
    solarKwh: solar * hours,
    rebuilt,
  }
}

/** Mean of a record over a span. [kW], NaN where it is not known in all of it. */
function meanOver(
  { kw, startMs, stepMinutes }: MeterRecord,
  from: number,
  minutes: number,
): number {
  let at = (from - startMs) / MINUTE_MS
  const end = at + minutes
  if (stepMinutes === minutes && at % stepMinutes === 0) return kw[at / stepMinutes] ?? Number.NaN
  let sum = 0
  while (at < end) {
    const index = Math.floor(at / stepMinutes)
    const next = Math.min(end, (index + 1) * stepMinutes)
    sum += (kw[index] ?? Number.NaN) * (next - at)
    at = next
  }
  return sum / minutes
}

/** Clips what is slightly below zero; many or much of it is another fault. */
function refuseBelowZero(name: string, { kw, solarKw, axis, rebuilt }: Parts): void {
  if (rebuilt === 0) {
    const need = 'read over the same time as the log of the solar output'
    throw new InputError([{ where: name, need, got: 'no interval that both cover' }])
  }
  let most = 0
  for (const value of solarKw) if (value > most) most = value
  const small = Math.max(SMALL_KW, SMALL_SHARE * most)
  const bright = solarKw.filter((value) => value > small).length
  let below = 0
  let worst = 0
  for (const [i, value] of kw.entries()) {
    if (value < -1e-9) below++
    if (value < kw[worst]! || Number.isNaN(kw[worst]!)) worst = i
  }
  if (kw[worst]! >= -small && below <= Math.max(2, MOST_BELOW * bright)) return
  const when = new Date(axis.startMs + worst * axis.stepMinutes * MINUTE_MS).toISOString()
  const need =
    'a load >= 0 once rebuilt (are the clocks of meter and log the same, is every array of that ' +
    'time logged, is export below zero in a signed column, did a battery run?)'
  const got =
    `${below} of ${rebuilt} intervals below zero, the least ${kw[worst]!.toFixed(2)} kW ` +
    `at ${when.slice(0, 16)}Z`
  throw new InputError([{ where: name, need, got }])
}

/** An array behind a tracker comes with the stack, so it is not asked about. */
function newerNotes(load: LoadInput, house: House): string[] {
  const names = stoodThen(load, house)
    .filter(({ inverter }) => inverter === undefined)
    .map(({ name }) => name)
  if (names.length === 0) return []
  return [`${load.name}: ${names.join(' and ')}, DC-coupled, counts as newer than the meter file.`]
}

function rebuiltNotes(name: string, arrays: readonly ArrayInput[], parts: Parts): string[] {
  const { kw, axis, takenKwh, givenKwh, solarKwh, rebuilt } = parts
  let clipped = 0
  let clippedKwh = 0
  for (let i = 0; i < kw.length; i++) {
    if (!(kw[i]! < 0)) continue
    if (kw[i]! < -1e-9) clipped++
    clippedKwh -= (kw[i]! * axis.stepMinutes) / 60
    kw[i] = 0
  }
  const sum = takenKwh - givenKwh + solarKwh
  const notes = [
    `${name}: a net meter; its load is rebuilt in ${rebuilt} intervals of ${axis.stepMinutes} min: ` +
      `${takenKwh.toFixed(1)} kWh taken from the grid - ${givenKwh.toFixed(1)} given to it + ` +
      `${solarKwh.toFixed(1)} from ${arrays.map((array) => array.name).join(' and ')} = ` +
      `${sum.toFixed(1)} kWh. Only right where no battery ran behind the meter.`,
  ]
  if (clipped > 0) {
    notes.push(
      `${name}: ${clipped} rebuilt intervals came out slightly below zero and are taken as 0 ` +
        `(${clippedKwh.toFixed(2)} kWh).`,
    )
  }
  if (rebuilt < kw.length) {
    notes.push(
      `${name}: ${kw.length - rebuilt} intervals have no solar log and are left out, with their days.`,
    )
  }
  return notes
}

function kwhOf(kw: Float64Array, stepMinutes: number): number {
  return kw.reduce((sum, value) => sum + (value > 0 ? (value * stepMinutes) / 60 : 0), 0)
}
