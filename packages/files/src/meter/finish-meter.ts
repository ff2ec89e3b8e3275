// From values on an axis to a meter record: gaps, registers, units, what can't be a house's load.

import type { MeterRecord } from '@tideover/core'
import type { Faults } from '../faults.js'
import { type Bridged, bridgeGaps, findGaps, type Gap, gapLength, lineOfGap } from '../time/gaps.js'
import { count, duration, moment } from '../time/say.js'
import type { WallZone } from '../time/zone.js'
import type { LoadUnit } from './load-column.js'
import { givenNotes, splitNet } from './net-meter.js'
import { betweenReadings, firstFall, isRegister, namesRegister } from './register.js'

/** Longest gap that a straight line may bridge. [min] */
const BRIDGED_MINUTES = 120
/** Share of a record that may lie in longer gaps. */
const MOST_MISSING = 0.5
const DAY_MS = 86_400_000
/** Longest night an inverter sleeps through, and what it gives at most before and after, of its peak;
 * common practice, no source. [min] */
const NIGHT_MINUTES = 1200
const DUSK_SHARE = 0.1
/** No house's connection carries more. [kW] */
const IMPOSSIBLE_KW = 100

/** A column on its axis, not yet looked through. */
export interface RawMeter {
  readonly name: string
  /** Zone in which the notes tell the time. */
  readonly zone: WallZone
  /** UTC [ms] of the first interval. */
  readonly startMs: number
  readonly stepMinutes: number
  /** In `unit`, NaN where missing; changed in place. [n] */
  readonly values: Float64Array
  /** Line of each interval, 0 where the file has none. [n] */
  readonly lineOfSlot: Int32Array
  readonly unit: LoadUnit
  /** Header of the column. */
  readonly header: string
  /** True: a register for sure; false: never; null: by its looks. */
  readonly register: boolean | null
  /** True where the stamps mark ends of intervals; `startMs` is already the start. */
  readonly marksEnd: boolean
  /** True for the log of an array, silent at night. */
  readonly isOutput?: boolean
  /** True where a value below zero is given to the grid; else it is refused. */
  readonly signed?: boolean
  readonly notes: readonly string[]
}

/**
 * Finishes a meter record.
 *
 * @throws InputError for a record that is mostly gaps, negative load, a falling register and more than 100 kW
 */
export function finishMeter(raw: RawMeter, faults: Faults): MeterRecord {
  const trimmed = withoutEmptyEnds(raw, faults)
  const { stepMinutes, lineOfSlot } = trimmed
  const { filled, long } = bridge(trimmed, faults)
  const counted = countsUp(trimmed, faults)
  const values = counted ? betweenReadings(trimmed.values) : trimmed.values
  // A reading is of its moment, so the first interval of a register begins at the first stamp.
  const later = counted && raw.marksEnd ? stepMinutes * 60_000 : 0
  const startMs = trimmed.startMs + later
  const perKw = factorToKw(raw.unit, stepMinutes)
  const kw = values.map((value) => value * perKw)
  const notes = [...trimmed.notes]
  if (counted) notes.push('The readings only ever rise: a register, neighbours subtracted.')
  notes.push(...filledNotes(filled, kw, stepMinutes))
  if (raw.isOutput !== true) notes.push(...gapNotes(long, trimmed))
  const nights = raw.isOutput === true ? sleep(kw, startMs, raw) : 0
  if (nights > 0) notes.push(`${count(nights, 'night')} without a reading, the inverter asleep: 0.`)
  const smallKw = checkSize(kw, lineOfSlot, faults)
  const what = (of: Float64Array): string[] => describe(of, startMs, stepMinutes, raw.zone)
  const record = { name: raw.name, startMs, stepMinutes }
  if (raw.signed === true && kw.some((value) => value < -smallKw)) {
    const { taken, given } = splitNet(kw)
    notes.push(
      'Below zero is taken for power given to the grid.',
      ...givenNotes(given, stepMinutes),
    )
    return { ...record, kw: taken, exportKw: given, notes: [...what(taken), ...notes] }
  }
  const clipped = clip(kw, smallKw, lineOfSlot, faults)
  if (clipped > 0) notes.push(`${count(clipped, 'slightly negative reading')} taken as 0.`)
  return { ...record, kw, notes: [...what(kw), ...notes] }
}

/** Whether the values are readings of a register; refused where such a register falls. */
function countsUp(raw: RawMeter, faults: Faults): boolean {
  const { values, unit, header, register, lineOfSlot } = raw
  if (register === false || unit === 'kw' || unit === 'w') return false
  const perKwh = unit === 'kwh' ? 1 : 0.001
  const inKwh = values.map((value) => value * perKwh)
  if (register === null && isRegister(inKwh, header, raw.stepMinutes)) return true
  const fall = register === true || namesRegister(header) ? firstFall(values) : -1
  if (fall >= 0) {
    const need = 'a register that never falls (cut the file where the meter was changed)'
    faults.refuse(lineOfSlot[fall] || null, need, String(values[fall]))
  }
  return register === true
}

function factorToKw(unit: LoadUnit, stepMinutes: number): number {
  const thousandth = unit === 'w' || unit === 'wh' ? 0.001 : 1
  return unit === 'kwh' || unit === 'wh' ? (thousandth * 60) / stepMinutes : thousandth
}

function withoutEmptyEnds(raw: RawMeter, faults: Faults): RawMeter {
  const { values } = raw
  let from = 0
  let to = values.length
  while (from < to && Number.isNaN(values[from]!)) from++
  while (to > from && Number.isNaN(values[to - 1]!)) to--
  if (to === from) faults.refuse(null, 'a file with at least one reading', 'none')
  const left = values.length - (to - from)
  const note = `${count(left, 'interval')} without a reading left off at the ends.`
  return {
    ...raw,
    startMs: raw.startMs + from * raw.stepMinutes * 60_000,
    values: values.subarray(from, to),
    lineOfSlot: raw.lineOfSlot.subarray(from, to),
    notes: left > 0 ? [...raw.notes, note] : raw.notes,
  }
}

/** Fills short gaps and leaves long ones; refuses a record that is mostly gaps. */
function bridge(raw: RawMeter, faults: Faults): Bridged {
  const { values, stepMinutes, startMs, lineOfSlot } = raw
  const bridged = bridgeGaps(values, Math.floor(BRIDGED_MINUTES / stepMinutes))
  const { long } = bridged
  if (raw.isOutput !== true && gapLength(long) > MOST_MISSING * values.length) {
    for (const gap of long) {
      const from = local(startMs + gap.from * stepMinutes * 60_000, raw.zone)
      const need = 'a record that is not mostly gaps over 2 h (is a stretch of it missing?)'
      const got = `${duration((gap.to - gap.from) * stepMinutes)} without a reading from ${from}`
      faults.add(lineOfGap(gap, lineOfSlot), need, got)
    }
    faults.throwIfAny()
  }
  return bridged
}

/** Long gaps of a load: what is missing, and where the longest begins. */
function gapNotes(long: readonly Gap[], { startMs, stepMinutes, zone }: RawMeter): string[] {
  if (long.length === 0) return []
  const length = ({ from, to }: Gap): number => to - from
  const longest = long.reduce((a, b) => (length(b) > length(a) ? b : a))
  const from = local(startMs + longest.from * stepMinutes * 60_000, zone)
  return [
    `${count(long.length, 'gap')} over 2 h, ${duration(gapLength(long) * stepMinutes)} in all, the ` +
      `longest ${duration(length(longest) * stepMinutes)} from ${from}: the days they lie in are ` +
      'left out, and their neighbours stand in.',
  ]
}

/** Solar inverters sleep at night and log nothing: 0 between readings of little. Returns how many. */
function sleep(kw: Float64Array, startMs: number, { stepMinutes, zone }: RawMeter): number {
  let peak = 0
  for (const value of kw) if (value > peak) peak = value
  const clockDay = (at: number): number => {
    const ms = startMs + at * stepMinutes * 60_000
    return Math.floor((ms + zone.offset(ms) * 60_000) / DAY_MS)
  }
  const nights = findGaps(kw).filter(({ from, to }) => {
    const isDark = [kw[from - 1], kw[to]].every((value) => value! <= DUSK_SHARE * peak)
    const isNight = clockDay(from - 1) !== clockDay(to)
    return isDark && isNight && (to - from) * stepMinutes <= NIGHT_MINUTES
  })
  for (const { from, to } of nights) kw.fill(0, from, to)
  return nights.length
}

function filledNotes(filled: readonly Gap[], kw: Float64Array, stepMinutes: number): string[] {
  if (filled.length === 0) return []
  let sum = 0
  let longest = 0
  for (const { from, to } of filled) {
    for (let i = from; i < to; i++) sum += kw[i] ?? 0
    longest = Math.max(longest, (to - from) * stepMinutes)
  }
  const all = duration(gapLength(filled) * stepMinutes)
  const tail = filled.length > 1 ? `, the longest ${duration(longest)}` : ''
  const kwh = ((sum * stepMinutes) / 60).toFixed(2)
  return [`${count(filled.length, 'gap')} filled by a straight line: ${all}${tail}, ${kwh} kWh.`]
}

/** Refuses what no house has. Returns what is small beside the rest. [kW] */
function checkSize(kw: Float64Array, lineOfSlot: Int32Array, faults: Faults): number {
  let peak = 0
  let peakAt = 0
  for (let i = 0; i < kw.length; i++) {
    if (!(Math.abs(kw[i]!) > peak)) continue
    peak = Math.abs(kw[i]!)
    peakAt = i
  }
  if (peak > IMPOSSIBLE_KW) {
    const need = 'a load of one house, at most 100 kW (is the unit in the header right?)'
    faults.refuse(lineOfSlot[peakAt] || null, need, `${Number(kw[peakAt]!.toPrecision(4))} kW`)
  }
  return Math.max(0.02, 0.005 * peak)
}

/** Clips what is slightly below zero, refuses the rest. Returns how many were clipped. */
function clip(kw: Float64Array, small: number, lineOfSlot: Int32Array, faults: Faults): number {
  let clipped = 0
  for (let i = 0; i < kw.length; i++) {
    if (!(kw[i]! < 0)) continue
    if (kw[i]! < -small) {
      const need =
        'a load >= 0 (below zero is solar export: the load of the house is not in this column)'
      faults.add(lineOfSlot[i] || null, need, `${Number(kw[i]!.toPrecision(4))} kW`)
    }
    kw[i] = 0
    clipped++
  }
  faults.throwIfAny()
  return clipped
}

function describe(
  kw: Float64Array,
  startMs: number,
  stepMinutes: number,
  zone: WallZone,
): string[] {
  let sum = 0
  let peak = 0
  let known = 0
  for (const value of kw) {
    if (Number.isNaN(value)) continue
    known++
    sum += value
    if (value > peak) peak = value
  }
  const from = local(startMs, zone)
  const to = local(startMs + kw.length * stepMinutes * 60_000, zone)
  const total = (sum * stepMinutes) / 60
  return [
    `${from} to ${to} ${zone.name}: ${count(kw.length, 'interval')} of ${stepMinutes} min.`,
    `${total.toFixed(1)} kWh in all, mean ${(sum / known).toFixed(3)} kW, peak ${peak.toFixed(3)} kW.`,
  ]
}

function local(ms: number, zone: WallZone): string {
  return moment(ms + zone.offset(ms) * 60_000)
}
