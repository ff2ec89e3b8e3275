// The strongest beam that air lets through: the bound of what a weather record may claim.
//
// The turbidity of a month is its mean; one day in three is cleaner, and a record knows it. What
// no air lets through is held back: above Linke turbidity 2, "very clean cold air" (from memory),
// hardly a measurement goes. On a clear January day at 2317 m the beam stood at 0.99 of it (NOAA
// SURFRAD, Alamosa), and of 3700 hours of the Greensboro typical year with the sun above 10° none
// passes 0.96.

import { clearDay, clearMinute } from './clear-sky.js'
import type { SunYear } from './sun-year.js'

const CLEANEST_TURBIDITY = 2

/**
 * Direct normal irradiance of the cleanest air, never below that of the month's clear sky.
 *
 * @returns  New Float64Array [n], [W/m²], 0 while the sun is down
 */
export function cleanBeam(year: SunYear): Float64Array {
  const { sun, dniExtra, dni, site } = year
  const out = Float64Array.from(dni)
  const sky = { ghi: 0, dni: 0, dhi: 0 }
  let last = 0
  let day = clearDay(site, dniExtra[0]!, CLEANEST_TURBIDITY)
  for (let i = 0; i < out.length; i++) {
    if (!(dni[i]! > 0)) continue
    const slot = Math.floor(i / 1440)
    if (slot !== last) day = clearDay(site, dniExtra[slot]!, CLEANEST_TURBIDITY)
    last = slot
    clearMinute(day, sun.altitudeDeg[i]!, year.sine[i]!, sky)
    if (sky.dni > out[i]!) out[i] = sky.dni
  }
  return out
}
