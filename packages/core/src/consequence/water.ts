// Water that comes or goes while a pump or a heater stands: a sump that fills, a pressure vessel
// that empties, a cylinder of hot water that is drawn and cools.
//
// The state is what has been used of the room or the store; power makes it good again.

import type { Buffer, HotWater } from '../house/house.js'
import { HOT_WATER } from '../house/kept.js'
import { WATER_KWH_PER_L_K } from './boiler.js'
import { type Consequence, wholeMinutes } from './consequence.js'

/**
 * A sump that fills, or a pressure vessel that empties, at a steady rate.
 *
 * A pump that runs a share d of the time moves 1 / d of what comes; so it makes good
 * (1 / d - 1) litres for each that came.
 *
 * @param duty  share of the time the pump runs; null where no cycle is given: it makes good as
 *              fast as the gap used up, common practice, no source
 */
export function waterBuffer({ litres, litresPerMinute }: Buffer, duty: number | null): Consequence {
  const back = duty === null ? 1 : 1 / duty - 1
  return {
    basis: `${litres} l of room or store at ${litresPerMinute} l a minute`,
    ...store(litres, litresPerMinute, litresPerMinute * back),
    beginsAtOnce: false,
  }
}

/**
 * A cylinder of hot water as litres at the temperature of use, drawn evenly over the day and
 * lessened by what the cylinder loses.
 *
 *     litres = V (T - Tcold) / (Tuse - Tcold)
 *
 * @param heaterKw  of the heater while it runs. [kW]
 */
export function hotWater(given: HotWater, heaterKw: number): Consequence {
  const { litres, litresADay } = given
  const fromC = given.fromC ?? HOT_WATER.fromC
  const useC = given.useC ?? HOT_WATER.useC
  const coldC = given.coldC ?? HOT_WATER.coldC
  const lossKwhADay = given.lossKwhADay ?? HOT_WATER.lossKwhADay
  const kwhPerL = WATER_KWH_PER_L_K * (useC - coldC)
  const held = (litres * (fromC - coldC)) / (useC - coldC)
  const used = (litresADay + lossKwhADay / kwhPerL) / 1440
  return {
    basis:
      `${litres} l at ${fromC} °C, ${litresADay} l a day drawn at ${useC} °C, ` +
      `${lossKwhADay} kWh a day lost`,
    ...store(held, used, Math.max(0, heaterKw / 60 / kwhPerL - used)),
    beginsAtOnce: true,
  }
}

/** @param perMinute  used up without power; @param back  made good with it. [l/min] */
function store(
  litres: number,
  perMinute: number,
  back: number,
): Pick<Consequence, 'rest' | 'afterGap' | 'afterSupply' | 'lostIn' | 'shown'> {
  return {
    rest: 0,
    afterGap: (used, minutes) => used + perMinute * minutes,
    afterSupply: (used, minutes) => Math.max(0, used - back * minutes),
    lostIn: (used) => Math.max(0, wholeMinutes((litres - used) / perMinute)),
    shown: {
      word: 'water left',
      unit: 'l',
      column: 'left_l',
      limit: 0,
      most: Number.POSITIVE_INFINITY,
      value: (used) => Math.max(0, litres - used),
      keeps: null,
    },
  }
}
