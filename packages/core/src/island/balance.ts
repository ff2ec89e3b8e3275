// Where the power of one minute goes: the only physics of the island.
//
// `batteryKw` asks what the stack would give if nothing limited its charge; the columns are made
// of it. `settle` says what happened when the stack moved by a known amount; the rows of a trace
// are made of it. Both use the one loss formula, so a trace cannot disagree with its columns.
//
// Powers are averages over the minute [kW]. Sign: positive battery power leaves the stack,
// positive AC power `p` leaves the grid-forming inverter towards the house.

import { inverterLossKw, type Plant } from '../equipment/plant.js'

/** What stands behind the AC side beside the inverter. */
export type Source = 'none' | 'solar' | 'generator' | 'grid'

/** One minute, settled. All [kW]. */
export interface Balance {
  solarUsedKw: number
  generatorKw: number
  gridKw: number
  lossKw: number
  /** Into the inverter at its AC side. */
  chargeKw: number
  /** Out of the inverter at its AC side. */
  dischargeKw: number
  /** At the terminals of the stack. */
  batteryKw: number
}

export function newBalance(): Balance {
  return {
    solarUsedKw: 0,
    generatorKw: 0,
    gridKw: 0,
    lossKw: 0,
    chargeKw: 0,
    dischargeKw: 0,
    batteryKw: 0,
  }
}

/**
 * Power at the terminals of the stack when the inverter carries `acKw` and nothing limits the
 * charge.
 *
 * @param acKw        load less AC-coupled supply; negative charges
 * @param dcKw        DC-coupled solar behind its tracker, >= 0
 * @param standingKw  electronics, self-discharge, heater
 */
export function batteryKw(plant: Plant, acKw: number, dcKw: number, standingKw: number): number {
  return acKw + inverterLossKw(plant, acKw) + standingKw - dcKw
}

/**
 * AC power of the inverter beside a generator: it charges with what the load leaves. [kW], <= 0
 *
 * @param mostKw  that load and charge together may take
 */
export function generatorAcKw(plant: Plant, mostKw: number, loadKw: number): number {
  return -Math.min(Math.max(0, mostKw - loadKw), plant.chargeAcKw)
}

/** Most that the stack can give at the AC side, whatever the inverter is rated. [kW] */
export function stackAcKw(plant: Plant, standingKw: number): number {
  return acForBattery(plant, plant.dischargeKw, standingKw)
}

/** Most that inverter and stack carry together for a while. [kW] */
export function mostAcKw(plant: Plant, standingKw: number): number {
  return Math.min(plant.ratedKw, stackAcKw(plant, standingKw))
}

/**
 * The AC power of the inverter at which the stack gives `battery` in all, DC solar aside:
 * the inverse of `batteryKw` with dcKw = 0.
 *
 *     p + idle + linear·|p| + quadratic·p² + standing = battery
 */
export function acForBattery(plant: Plant, battery: number, standingKw: number): number {
  const rest = battery - plant.idleKw - standingKw
  if (rest >= 0) return root(plant.quadratic, 1 + plant.linear, rest)
  // Charging: q - linear·q - quadratic·q² = -rest, with q = -p; past the vertex more power only
  // makes more heat, so the vertex is the most that can be had.
  return -root(-plant.quadratic, 1 - plant.linear, -rest)
}

/** The root of a·x² + b·x = c that goes to c/b as a goes to 0; b > 0, c >= 0. */
function root(a: number, b: number, c: number): number {
  return (2 * c) / (b + Math.sqrt(Math.max(0, b * b + 4 * a * c)))
}

/**
 * Settles a minute in which the island was formed and the stack gave `battery`.
 *
 * Solar that cannot be taken is throttled, DC-coupled first; generator and grid give what the
 * load and the charge need, the generator never less than nothing.
 *
 * @param into    overwritten
 * @param source  what stands beside the inverter at the AC side
 * @param loadKw  served
 * @param acKw    AC-coupled solar that could be had, 0 unless source is solar or grid
 * @param dcKw    DC-coupled solar that could be had
 */
export function settle(
  into: Balance,
  plant: Plant,
  source: Source,
  loadKw: number,
  acKw: number,
  dcKw: number,
  standingKw: number,
  battery: number,
): void {
  let p: number
  let dcUsed = dcKw
  if (source === 'none' || source === 'solar') {
    p = Math.max(loadKw - acKw, -plant.chargeAcKw)
    dcUsed = Math.min(dcKw, p + inverterLossKw(plant, p) + standingKw - battery)
    if (!(dcUsed >= 0)) {
      dcUsed = 0
      p = acForBattery(plant, battery, standingKw)
    }
  } else {
    p = acForBattery(plant, battery + dcKw, standingKw)
    // Sun behind the inverter goes out to the load, never into a generator, to the grid at most
    // at the rating.
    const most = source === 'generator' ? Math.min(loadKw, plant.ratedKw) : plant.ratedKw
    if (p > most) {
      p = most
      dcUsed = p + inverterLossKw(plant, p) + standingKw - battery
    }
  }
  const lossKw = inverterLossKw(plant, p) + standingKw
  const acSupply = loadKw - p
  into.solarUsedKw =
    dcUsed + (source === 'solar' ? Math.max(0, acSupply) : source === 'grid' ? acKw : 0)
  into.generatorKw = source === 'generator' ? acSupply : 0
  into.gridKw = source === 'grid' ? acSupply - acKw : 0
  into.lossKw = lossKw
  into.chargeKw = Math.max(0, -p)
  into.dischargeKw = Math.max(0, p)
  into.batteryKw = battery
}

/** Settles a minute in which the island was gone: the stack stands alone, with DC solar at most. */
export function settleDark(into: Balance, dcKw: number, standingKw: number, battery: number): void {
  // An empty stack cannot feed its own electronics; they draw what there is.
  const lossKw = Math.min(standingKw, Math.max(0, battery) + dcKw)
  into.solarUsedKw = Math.max(0, lossKw - battery)
  into.generatorKw = 0
  into.gridKw = 0
  into.lossKw = lossKw
  into.chargeKw = 0
  into.dischargeKw = 0
  into.batteryKw = battery
}
