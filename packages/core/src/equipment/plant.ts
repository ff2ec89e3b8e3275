// The equipment between sun, stack and load, reduced to the numbers the balance needs.
//
// Inverter loss, both ways, after H. Schmidt and D. U. Sauer, "Wechselrichter-Wirkungsgrade",
// Sonnenenergie 4, 43-47 (1996):
//
//     loss / rated = self + linear · p + quadratic · p²,   p = |AC power| / rated
//
// `self · rated` is the idle draw: always on while the island is formed, counted once.

import type { House } from '../house/house.js'
import { HEATED_C } from './place.js'

/** Shares of the loss beyond idle, after Schmidt & Sauer's typical set (from memory). */
const TYPICAL_LINEAR = 0.01411
const TYPICAL_QUADRATIC = 0.0411

/** Short overloads, as shares of rating: a second, a minute; common practice, no source. */
const SECOND_SHARE = 2
const MINUTE_SHARE = 1.1

/** Hours in a mean month, for self-discharge. */
const MONTH_HOURS = 730.5

export interface Plant {
  /** Continuous rating. [kVA], taken as [kW] at the AC side */
  readonly ratedKw: number
  /** Most it carries for a second, and for a minute. [kVA] */
  readonly startingKva: number
  readonly minuteKva: number
  /** Idle draw. [kW] */
  readonly idleKw: number
  /** Loss that grows with power, per kW. */
  readonly linear: number
  /** Loss that grows with the square, per kW². [1/kW] */
  readonly quadratic: number
  /** Most the inverter takes at its AC side to charge. [kW] */
  readonly chargeAcKw: number
  /** Most the stack gives at its terminals. [kW] */
  readonly dischargeKw: number
  /** Most the stack takes at its terminals, far from full and warm. [kW] */
  readonly chargeKw: number
  /** Usable energy as age has left it. [kWh] */
  readonly usableKwh: number
  /** Electronics and self-discharge, always there. [kW] */
  readonly standingKw: number
  /** Heaters of all modules, below 5 °C. [kW] */
  readonly heaterKw: number
}

/**
 * The plant of a house with so many modules of such a health.
 *
 * Self-discharge is taken at the rate of a full stack, a constant draw; it is some tenths of a
 * watt and errs on the cautious side.
 */
export function plantOf(house: House, modules: number, health: number): Plant {
  const { inverter, stack } = house
  const idleKw = inverter.idleW === undefined ? 0.012 * inverter.ratedKva : inverter.idleW / 1000
  const usableKwh = modules * stack.module.usableKwh * health
  const loss = lossBeyondIdle(inverter.roundTrip, idleKw / inverter.ratedKva)
  return {
    ratedKw: inverter.ratedKva,
    startingKva: inverter.startingKva ?? SECOND_SHARE * inverter.ratedKva,
    minuteKva: inverter.minuteKva ?? MINUTE_SHARE * inverter.ratedKva,
    idleKw,
    linear: loss.linear,
    quadratic: loss.quadratic / inverter.ratedKva,
    chargeAcKw: inverter.chargeKw ?? inverter.ratedKva,
    dischargeKw: Math.min(
      modules * stack.module.dischargeKw,
      stack.dischargeKw ?? Number.POSITIVE_INFINITY,
    ),
    chargeKw: Math.min(modules * stack.module.chargeKw, stack.chargeKw ?? Number.POSITIVE_INFINITY),
    usableKwh,
    standingKw:
      (modules * stack.electronicsW) / 1000 +
      (usableKwh * stack.selfDischargePerMonth) / MONTH_HOURS,
    heaterKw: (modules * stack.heaterW) / 1000,
  }
}

/**
 * Linear and quadratic loss, as shares of rating, such that out and back at a third of rating
 * gives the stated round trip, idle draw included.
 *
 * An idle draw that alone exceeds the stated loss leaves nothing for the rest: both are 0.
 */
export function lossBeyondIdle(
  roundTrip: number,
  self: number,
): { linear: number; quadratic: number } {
  // (1 - l/p) / (1 + l/p) = round trip, with l the loss and p = 1/3
  const total = (1 - roundTrip) / (1 + roundTrip) / 3
  const typical = TYPICAL_LINEAR / 3 + TYPICAL_QUADRATIC / 9
  const scale = Math.max(0, total - self) / typical
  return { linear: scale * TYPICAL_LINEAR, quadratic: scale * TYPICAL_QUADRATIC }
}

/** Loss of the grid-forming inverter at an AC power of either sign. [kW] */
export function inverterLossKw(plant: Plant, acKw: number): number {
  const p = Math.abs(acKw)
  return plant.idleKw + plant.linear * p + plant.quadratic * p * p
}

/** What the stack spends on itself in a place of a temperature. [kW] */
export function standingKw(plant: Plant, placeC: number): number {
  return plant.standingKw + (placeC < HEATED_C ? plant.heaterKw : 0)
}

/** Temperature of the stack in a place: a heater does not let it fall below 5 °C. [°C] */
export function stackC(plant: Plant, placeC: number): number {
  return plant.heaterKw > 0 ? Math.max(placeC, HEATED_C) : placeC
}
