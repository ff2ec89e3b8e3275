// Green Button XML to a meter record.
//
// Where the meter also counts what goes back to the grid, in a channel of its own or as the
// difference, both are handed on: import alone is not what the house uses.

import type { MeterRecord } from '@tideover/core'
import type { Faults } from '../faults.js'
import { layOut, linesOfSlots } from '../time/regular.js'
import { count } from '../time/say.js'
import type { WallZone } from '../time/zone.js'
import { finishMeter } from './finish-meter.js'
import { type Channel, type Reading, readFeed } from './green-button-feed.js'
import { withExport } from './net-meter.js'

const ENERGY_WH = 72
const POWER_W = 38
const FORWARD = 1
const NET = 4
const REVERSE = 19
const FLOWS: Readonly<Record<number, string>> = {
  [NET]: 'taken from the grid less given to it',
  [REVERSE]: 'given to the grid',
}
const KNOWN_FLOWS = new Set([FORWARD, NET, REVERSE])
const REGISTERS = new Set([1, 2, 3, 9])
/** Quality codes that are worth telling. */
const QUALITY: Readonly<Record<number, string>> = {
  7: 'edited by hand',
  8: 'estimated',
  9: 'estimated',
  10: 'questionable',
  12: 'projected',
}

/**
 * Reads Green Button XML.
 *
 * @throws InputError; see `meterFromText`
 */
export function meterFromGreenButton(
  text: string,
  name: string,
  zone: WallZone,
  faults: Faults,
): MeterRecord {
  const { channels, localOffsetMinutes } = readFeed(text, faults)
  const { taken, given } = channelsOfHouse(channels, faults)
  const record = {
    ...recordOf(taken, name, zone, faults),
    ...(localOffsetMinutes !== undefined && { localOffsetMinutes }),
  }
  if (given === null) return record
  const back = recordOf(given, name, zone, faults)
  if (back.stepMinutes !== record.stepMinutes) {
    const need = `what is given in intervals of ${record.stepMinutes} min, as what is taken`
    faults.refuse(given.type.line, need, `${back.stepMinutes} min`)
  }
  return withExport(record, back, '')
}

function recordOf(channel: Channel, name: string, zone: WallZone, faults: Faults): MeterRecord {
  const { type } = channel
  const readings = channel.readings.filter((reading) => isSound(reading, faults))
  faults.throwIfAny()
  const stepMinutes = stepOf(readings, faults)
  const factor = 10 ** type.power
  const isEnergy = type.unit === ENERGY_WH
  const isRegister = isEnergy && REGISTERS.has(type.accumulation)
  const starts = Float64Array.from(readings, (reading) => reading.start * 1000)
  const lines = Int32Array.from(readings, (reading) => reading.line)
  const axis = layOut(starts, stepMinutes, lines, faults)
  const last = readings.reduce((n, reading, i) => {
    return Math.max(n, (axis.slot[i] ?? 0) + reading.seconds / 60 / stepMinutes)
  }, axis.n)
  const values = new Float64Array(last).fill(Number.NaN)
  let repeated = 0
  readings.forEach((reading, i) => {
    const parts = reading.seconds / 60 / stepMinutes
    const each = (reading.value * factor) / (isEnergy && !isRegister ? parts : 1)
    for (let k = 0; k < parts; k++) {
      const slot = (axis.slot[i] ?? 0) + k
      if (Number.isNaN(values[slot]!)) values[slot] = each
      else repeated++
    }
  })
  const lineOfSlot = new Int32Array(last)
  lineOfSlot.set(linesOfSlots(axis, lines))
  const unit = isEnergy ? ('wh' as const) : ('w' as const)
  const notes = [
    `Green Button, ${isEnergy ? 'energy' : 'power'} ${FLOWS[type.flow] ?? 'taken from the grid'}, stamps in UTC.`,
  ]
  if (repeated > 0) notes.push(`${count(repeated, 'repeated interval')}: the first kept.`)
  notes.push(...qualityNotes(readings))
  return finishMeter(
    {
      name,
      zone,
      startMs: axis.startMs,
      stepMinutes,
      values,
      lineOfSlot,
      unit,
      header: 'value',
      register: isRegister,
      marksEnd: false,
      signed: type.flow === NET,
      notes,
    },
    faults,
  )
}

/** The one channel of what is taken, and the one of what is given where anything is. */
function channelsOfHouse(
  channels: readonly Channel[],
  faults: Faults,
): { taken: Channel; given: Channel | null } {
  const electric = channels.filter(({ type }) => type.unit === ENERGY_WH || type.unit === POWER_W)
  if (electric.length === 0) {
    const units = channels.map(({ type }) => type.unit)
    const got = units.length === 0 ? 'no intervals' : `unit codes ${[...new Set(units)].join(', ')}`
    faults.refuse(null, 'a file with electricity intervals in Wh (72) or W (38)', got)
  }
  const back = electric.filter(({ type, readings }) => {
    return type.flow === REVERSE && readings.some((reading) => reading.value !== 0)
  })
  const forward = electric.filter(({ type }) => type.flow !== REVERSE)
  const odd = forward.find(({ type }) => !KNOWN_FLOWS.has(type.flow) && !Number.isNaN(type.flow))
  if (odd !== undefined) {
    const need = 'flow direction 1 (taken from the grid), 19 (given to it) or 4 (the difference)'
    faults.refuse(odd.type.line, need, String(odd.type.flow))
  }
  return {
    taken: onlyOne(forward, faults),
    given: back.length === 0 ? null : onlyOne(back, faults),
  }
}

/** Of energy and power of one meter the energy; refused where there are several meters. */
function onlyOne(channels: readonly Channel[], faults: Faults): Channel {
  const energy = channels.filter(({ type }) => type.unit === ENERGY_WH)
  const found = energy.length > 0 ? energy : channels
  const only = found[0]
  if (found.length === 1 && only !== undefined) return only
  const got = `${count(found.length, 'channel')}`
  return faults.refuse(found[1]?.type.line ?? null, 'a file with one meter of one house', got)
}

function isSound(reading: Reading, faults: Faults): boolean {
  if (Number.isNaN(reading.start))
    faults.add(reading.line, 'a reading with its start [s]', 'nothing')
  else if (!(reading.seconds > 0)) {
    faults.add(reading.line, 'a reading with its duration > 0 [s]', String(reading.seconds))
  } else return true
  return false
}

/** The shortest duration, of which all others must be multiples. [min] */
function stepOf(readings: readonly Reading[], faults: Faults): number {
  let least = Number.POSITIVE_INFINITY
  for (const { seconds } of readings) least = Math.min(least, seconds)
  const step = least / 60
  const first = readings[0]?.line ?? null
  if (!Number.isInteger(step) || 60 % step !== 0) {
    const got = readings.length === 0 ? 'no intervals' : `${least} s`
    faults.refuse(first, 'intervals of 60 to 3600 s that divide the hour', got)
  }
  for (const reading of readings) {
    if (reading.seconds % least === 0 && reading.seconds <= 86_400) continue
    faults.add(reading.line, `a duration that is a multiple of ${least} s`, `${reading.seconds} s`)
  }
  faults.throwIfAny()
  return step
}

function qualityNotes(readings: readonly Reading[]): string[] {
  const counts = new Map<string, number>()
  for (const { quality } of readings) {
    const word = QUALITY[quality]
    if (word !== undefined) counts.set(word, (counts.get(word) ?? 0) + 1)
  }
  return [...counts].map(([word, n]) => `${count(n, 'reading')} marked as ${word}.`)
}
