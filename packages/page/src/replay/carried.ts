// What a page carries so that a cut can be simulated again in it, and how it is packed.
//
// The checked house, the records it names, and which synthetic year each start lives: to choose
// that ranks 200 winters. All else is worked out anew by the same core.

import type { House, HouseFiles, MeterRecord } from '@tideover/core'

/** Skies a person may choose; a clear one stands behind the fold. */
export const PLAYED_SKIES = ['dull', 'typical', 'none'] as const
export type PlayedSky = (typeof PLAYED_SKIES)[number]

/** The scenario that the page answers. */
export interface Asked {
  /** 1..12 */
  readonly month: number
  /** [h] */
  readonly hours: number
  readonly winters: number
  readonly seed: number
  readonly modules: number
  readonly health: number
  readonly startSoc: 'reserve' | 'full' | number
}

export interface Carried {
  readonly house: House
  readonly asked: Asked
  /** Lengths of cut that may be chosen. [h] */
  readonly lengths: readonly number[]
  /** By sky, by days of the cut: the year to live for each day whose noon a start meets first. */
  readonly years: Readonly<Record<PlayedSky, Readonly<Record<string, readonly number[]>>>>
  readonly meters: readonly (readonly [string, PackedRecord])[]
  readonly outputs: readonly (readonly [string, PackedRecord])[]
}

/** A record as JSON: a gap is null. */
export interface PackedRecord {
  readonly startMs: number
  readonly stepMinutes: number
  readonly kw: readonly (number | null)[]
  readonly exportKw?: readonly (number | null)[]
}

/** Deflated and written as base64, for measured minutes are many. */
export interface Packed {
  readonly deflated: string
}

export function packedRecord({ startMs, stepMinutes, kw, exportKw }: MeterRecord): PackedRecord {
  return {
    startMs,
    stepMinutes,
    kw: packedColumn(kw),
    ...(exportKw === undefined ? {} : { exportKw: packedColumn(exportKw) }),
  }
}

function packedColumn(column: Float64Array): (number | null)[] {
  return Array.from(column, (value) => (Number.isNaN(value) ? null : value))
}

/** The records of a page, as `prepare` takes them. */
export function filesOf({ meters, outputs }: Carried): HouseFiles {
  const unpacked = (list: Carried['meters']): Map<string, MeterRecord> =>
    new Map(list.map(([name, record]) => [name, unpackedRecord(name, record)]))
  return { meters: unpacked(meters), outputs: unpacked(outputs) }
}

function unpackedRecord(name: string, record: PackedRecord): MeterRecord {
  const column = (values: PackedRecord['kw']): Float64Array =>
    Float64Array.from(values, (value) => value ?? Number.NaN)
  return {
    name,
    startMs: record.startMs,
    stepMinutes: record.stepMinutes,
    kw: column(record.kw),
    exportKw: record.exportKw === undefined ? undefined : column(record.exportKw),
    notes: [],
  }
}
