// Faults of what a load makes of a gap that only two fields together show.

import { CONSEQUENCES } from './house.js'
import { BOILER, COLD, HOT_WATER, MEDICINE_LEAST_C, ROOM_C } from './kept.js'

type Plain = Readonly<Record<string, unknown>>
type Add = (where: string, need: string, value: unknown) => void

/** @param at  path of the load: `loads[2]` */
export function checkKept(load: Plain, at: string, add: Add): void {
  const given = ['toleratesMinutes', ...CONSEQUENCES].filter((key) => load[key] !== undefined)
  for (const key of given.slice(1)) {
    add(`${at}.${key}`, `left out beside ${given[0]}: one of them tells the gap`, load[key])
  }
  checkCold(load.holdOver, `${at}.holdOver`, add)
  checkBoiler(load.overheats, `${at}.overheats`, add)
  checkCylinder(load.hotWater, `${at}.hotWater`, add)
}

function checkCold(value: unknown, at: string, add: Add): void {
  const hold = asGroup(value)
  if (hold === null) return
  const keeps = hold.keeps as keyof typeof COLD | undefined
  const { fromC, limitC } = COLD[keeps ?? 'food'] ?? COLD.food
  const from = numberOr(hold.fromC, fromC)
  const limit = numberOr(hold.limitC, limitC)
  const until = numberOr(hold.untilC, limit)
  const room = numberOr(hold.atC, ROOM_C)
  if (limit <= from) add(`${at}.limitC`, `above fromC, which is ${from} [°C]`, limit)
  else if (until <= from) add(`${at}.untilC`, `above fromC, which is ${from} [°C]`, until)
  if (room <= until) {
    add(`${at}.atC`, `above ${until} °C, which the stated hours reach in it`, room)
  }
  const here = numberOr(hold.roomC, room)
  if (keeps === 'medicine' && here < MEDICINE_LEAST_C) {
    add(`${at}.roomC`, `at least ${MEDICINE_LEAST_C} °C: below it the room itself spoils`, here)
  }
}

function checkBoiler(value: unknown, at: string, add: Add): void {
  const boiler = asGroup(value)
  if (boiler === null) return
  const from = numberOr(boiler.fromC, BOILER.fromC)
  const limit = numberOr(boiler.limitC, BOILER.limitC)
  if (limit <= from) add(`${at}.limitC`, `above fromC, which is ${from} [°C]`, limit)
}

function checkCylinder(value: unknown, at: string, add: Add): void {
  const cylinder = asGroup(value)
  if (cylinder === null) return
  const cold = numberOr(cylinder.coldC, HOT_WATER.coldC)
  const use = numberOr(cylinder.useC, HOT_WATER.useC)
  const from = numberOr(cylinder.fromC, HOT_WATER.fromC)
  if (use <= cold) add(`${at}.useC`, `above coldC, which is ${cold} [°C]`, use)
  if (from < use) add(`${at}.fromC`, `at least useC, which is ${use} [°C]`, from)
}

function asGroup(value: unknown): Plain | null {
  return typeof value === 'object' && value !== null ? (value as Plain) : null
}

function numberOr(value: unknown, fallback: number): number {
  return typeof value === 'number' ? value : fallback
}
