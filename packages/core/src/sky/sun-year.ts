// The sun and the clear sky over one place and one calendar year, minute by minute.
//
// They depend on time only, so they are worked out once and serve every sky.

import type { Calendar } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import { sharedColumn } from '../units/year-column.js'
import { type ClearSkySite, clearDay, clearMinute, clearSkySite } from './clear-sky.js'
import { extraterrestrialNormal } from './extraterrestrial.js'
import { type SunColumns, sunColumns } from './sun.js'
import { linkeTurbidity } from './turbidity.js'

const RAD = Math.PI / 180
const MINUTES_A_SLOT = 1440

export interface SunYear {
  readonly calendar: Calendar
  readonly sun: SunColumns
  readonly site: ClearSkySite
  /** Linke turbidity by month, January first. */
  readonly turbidity: readonly number[]
  /** Sine of the apparent altitude, 0 while the sun is down. [n] */
  readonly sine: Float64Array
  /** Clear sky; its diffuse light is asked for alone, of `fillClearDiffuse`. [n], [W/m²] */
  readonly ghi: Float64Array
  readonly dni: Float64Array
  /** Extraterrestrial normal by slot of 1440 minutes from the start of the axis. [W/m²] */
  readonly dniExtra: Float64Array
}

export function sunYear(house: House, calendar: Calendar): SunYear {
  const { latitudeDeg, longitudeDeg, elevationM } = house.site
  const { n } = calendar
  const sun = sunColumns(calendar.startMs, n, latitudeDeg, longitudeDeg)
  const site = clearSkySite(elevationM)
  const year: SunYear = {
    calendar,
    sun,
    site,
    turbidity: house.sky.linkeTurbidity,
    sine: sharedColumn(n),
    ghi: sharedColumn(n),
    dni: sharedColumn(n),
    dniExtra: new Float64Array(Math.ceil(n / MINUTES_A_SLOT)),
  }
  const sky = { ghi: 0, dni: 0, dhi: 0 }
  for (let slot = 0; slot < year.dniExtra.length; slot++) {
    const extra = extraterrestrialNormal(slot + 1)
    const day = clearDay(site, extra, linkeTurbidity(year.turbidity, slot + 1))
    year.dniExtra[slot] = extra
    const end = Math.min(n, (slot + 1) * MINUTES_A_SLOT)
    for (let i = slot * MINUTES_A_SLOT; i < end; i++) {
      const altitude = sun.altitudeDeg[i]!
      if (!(altitude > 0)) continue
      const sine = Math.sin(altitude * RAD)
      year.sine[i] = sine
      clearMinute(day, altitude, sine, sky)
      year.ghi[i] = sky.ghi
      year.dni[i] = sky.dni
    }
  }
  return year
}

/** Diffuse light of the clear sky for minutes [from, to), written at the same places. [W/m²] */
export function fillClearDiffuse(
  into: Float64Array,
  { sun, site, turbidity, sine, dniExtra }: SunYear,
  from: number,
  to: number,
): void {
  const sky = { ghi: 0, dni: 0, dhi: 0 }
  for (let at = from; at < to; ) {
    const slot = Math.floor(at / MINUTES_A_SLOT)
    const day = clearDay(site, dniExtra[slot]!, linkeTurbidity(turbidity, slot + 1))
    const end = Math.min(to, (slot + 1) * MINUTES_A_SLOT)
    for (; at < end; at++) {
      const altitude = sun.altitudeDeg[at]!
      if (altitude > 0) clearMinute(day, altitude, sine[at]!, sky)
      into[at] = altitude > 0 ? sky.dhi : 0
    }
  }
}

/** Sums over minutes [from, to): what the clear sky and the sky above the air would give. */
export interface SunSums {
  /** Clear global, clear beam and extraterrestrial, on level ground. [W/m² · min] */
  ghi: number
  beam: number
  extra: number
}

export function newSunSums(): SunSums {
  return { ghi: 0, beam: 0, extra: 0 }
}

export function sumSun(year: SunYear, from: number, to: number, into: SunSums): void {
  let ghi = 0
  let beam = 0
  let extra = 0
  for (let i = from; i < to; i++) {
    const sine = year.sine[i]!
    ghi += year.ghi[i]!
    beam += year.dni[i]! * sine
    extra += year.dniExtra[Math.floor(i / MINUTES_A_SLOT)]! * sine
  }
  into.ghi = ghi
  into.beam = beam
  into.extra = extra
}
