// Faults of a survey line that only two of its fields show.

import { clockMinute } from '../axis/calendar.js'

type Plain = Record<string, unknown>
type Add = (where: string, need: string, value: unknown) => void

/** Ways of running that exclude each other, each with the fields that it does without. */
const WAYS = {
  cycle: ['events', 'charging', 'byAir'],
  events: ['charging', 'byAir', 'at'],
  charging: ['byAir'],
  byAir: ['w'],
} as const

/** Fields of a survey line that a meter file or a profile does without. */
export const SURVEY_ONLY = [
  ...['w', 'cycle', 'events', 'charging', 'byAir', 'at', 'days', 'months', 'pieces'],
] as const

/** @param at  path of the load, `loads[2]` */
export function surveyFaults(load: Plain, at: string, add: Add): void {
  for (const [way, without] of Object.entries(WAYS)) {
    if (load[way] === undefined) continue
    for (const field of without) {
      if (load[field] === undefined) continue
      const need =
        field === 'at'
          ? 'left out beside events, whose hours are events.at'
          : `left out beside ${way}`
      add(`${at}.${field}`, need, load[field])
    }
  }
  checkEvents(asGroup(load.events), at, add)
  checkCharging(load, at, add)
  const warmth = numbers(load.byAir, 0)
  if (!warmth.every((c, i) => i === 0 || c > warmth[i - 1]!))
    add(`${at}.byAir`, 'pairs rising in air temperature [°C]', load.byAir)
  if (load.byAir !== undefined && !numbers(load.byAir, 1).some((w) => w !== 0)) {
    add(`${at}.byAir`, 'pairs with some power above 0 [W]', load.byAir)
  }
  const { room, insideC } = asGroup(load.cycle)
  if (room !== undefined && insideC === undefined) {
    add(`${at}.cycle.insideC`, 'given beside room [°C]', undefined)
  }
}

function checkEvents({ perDay, minutes, at: spans }: Plain, at: string, add: Add): void {
  if (typeof perDay !== 'number' || typeof minutes !== 'number') return
  const open = openMinutes(spans)
  const most = Math.ceil(open / minutes)
  if (Number.isNaN(open) || Math.ceil(perDay) <= most) return
  add(`${at}.events.perDay`, `at most ${most}, as many as begin in ${open} min`, perDay)
}

function checkCharging(load: Plain, at: string, add: Add): void {
  if (load.charging === undefined) return
  const { kwhPerDay } = asGroup(load.charging)
  const spans = Array.isArray(load.at) ? load.at : []
  if (spans.length !== 1) {
    add(`${at}.at`, 'one span in which it charges, such as ["00:30-05:30"]', load.at)
    return
  }
  if (typeof load.w !== 'number' || typeof kwhPerDay !== 'number') return
  const gives = (load.w * openMinutes(spans)) / 60000
  if (!(kwhPerDay > gives + 1e-9)) return
  const need = `at most ${Number(gives.toFixed(1))}, what ${load.w} W give in ${spans[0]} [kWh]`
  add(`${at}.charging.kwhPerDay`, need, kwhPerDay)
}

/** Minutes of the day within spans; NaN where one is none. */
function openMinutes(spans: unknown): number {
  if (!Array.isArray(spans)) return 1440
  const open = new Set<number>()
  for (const span of spans) {
    const [from, to] = String(span)
      .split('-')
      .map((part) => clockMinute(part.trim()) ?? Number.NaN)
    if (!(from !== undefined && to !== undefined && from >= 0 && to >= 0)) return Number.NaN
    const length = to >= from ? to - from : to + 1440 - from
    for (let i = 0; i < length; i++) open.add((from + i) % 1440)
  }
  return open.size
}

/** One of the two of each pair. */
function numbers(pairs: unknown, which: 0 | 1): number[] {
  const list = Array.isArray(pairs) ? pairs : []
  return list.filter((pair) => Array.isArray(pair)).map((pair) => pair[which])
}

function asGroup(value: unknown): Plain {
  return typeof value === 'object' && value !== null ? (value as Plain) : {}
}
