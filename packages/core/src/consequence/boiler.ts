// A solid-fuel boiler whose pump stops: the fire goes on, the water has nowhere to give its heat.
//
//     T(t) = T0 + P t / (m c)                          while the fire burns on
//     T(t) = T0 + E / (m c) (1 - exp(-P t / E))        where it dies down, giving E in all
//
// A fire whose fan or damper stops with the power dies down; how much heat it still gives only its
// maker knows, so left out it burns on.

import type { Overheats } from '../house/house.js'
import { BOILER, BOILER_MOST_C } from '../house/kept.js'
import { type Consequence, temperatureShown, wholeMinutes } from './consequence.js'

/** Heat to warm a litre of water by a kelvin: 4.186 kJ. [kWh/(l K)] */
export const WATER_KWH_PER_L_K = 4.186 / 3600

/** @param given  fromC < limitC */
export function boiler(given: Overheats): Consequence {
  const { waterL, heatKw, fromC = BOILER.fromC, limitC = BOILER.limitC, stillKwh } = given
  const perK = waterL * WATER_KWH_PER_L_K
  const kPerMinute = heatKw / perK / 60
  const rise = (minutes: number): number =>
    stillKwh === undefined
      ? kPerMinute * minutes
      : (stillKwh / perK) * (1 - Math.exp((-heatKw * minutes) / 60 / stillKwh))
  const minutesTo = (k: number): number => {
    if (stillKwh === undefined) return k / kPerMinute
    const left = 1 - (k * perK) / stillKwh
    return left > 0 ? ((-stillKwh * Math.log(left)) / heatKw) * 60 : Number.POSITIVE_INFINITY
  }
  const dies = stillKwh === undefined ? '' : `, ${stillKwh} kWh still to come`
  return {
    basis: `${waterL} l from ${fromC} to ${limitC} °C by a fire of ${heatKw} kW${dies}`,
    rest: fromC,
    beginsAtOnce: false,
    // Past the most that boilers are built for, heat leak and safety valve have the word.
    afterGap: (c, minutes) => Math.min(BOILER_MOST_C, c + rise(minutes)),
    // The pump carries off the fire's heat and as much again; common practice, no source.
    afterSupply: (c, minutes) => Math.max(fromC, c - kPerMinute * minutes),
    lostIn: (c) => Math.max(0, wholeMinutes(minutesTo(limitC - c))),
    shown: temperatureShown(limitC, null, BOILER_MOST_C),
  }
}
