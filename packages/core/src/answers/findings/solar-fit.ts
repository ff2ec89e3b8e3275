// The solar inverters against the island that has to hold them.

import { localTime } from '../../axis/calendar.js'
import { isOnIsland } from '../../house/phases.js'
import { type SolarGroup, solarGroups, solarRatedKw } from '../../house/solar-groups.js'
import type { Rules, SolarRules } from '../../island/rules.js'
import { forcedKw } from '../../island/solar-columns.js'
import { type Prepared, plainSky } from '../../series/prepare.js'
import { newScratch, windowOf } from '../../series/window.js'
import type { Window } from '../../series/window-columns.js'
import type { Equipped } from '../scenario.js'
import { type ChargeLimit, chargeLimit } from './charge-limit.js'
import { CP, type Figure, type Finding, figure, type Look, named, short } from './finding.js'

/** AC rating of the solar on the island over that of its inverter; common practice. */
const MOST_SOLAR_SHARE = 1

/** Warm enough that temperature sets no limit. [°C] */
const WARM_C = 20

export const solarRating: Look = (prepared) => {
  const { ratedKva } = prepared.house.inverter
  const solarKw = solarRatedKw(islandArrays(prepared).map(({ input }) => input))
  if (!(solarKw > MOST_SOLAR_SHARE * ratedKva)) return []
  return [
    {
      id: 'solar-rating',
      grade: 'mend',
      what:
        `Solar inverters of ${short(solarKw, 2)} kW feed an island formed by ` +
        `${short(ratedKva, 2)} kVA. When a load goes off, all their power turns to the battery ` +
        'inverter at once, and more than its rating can make it drop out.',
      numbers: [
        figure('solar inverters', solarKw, 'kW'),
        figure('battery inverter', ratedKva, 'kVA'),
        figure('ratio', solarKw / ratedKva),
        figure('ratio at most', MOST_SOLAR_SHARE),
      ],
      restsOn: `${CP} The maker of the battery inverter may allow more or less.`,
      toDo:
        'Ask the maker for the ratio allowed off grid; keep an array on the grid side of the ' +
        'gateway, or fit a larger battery inverter.',
    },
  ]
}

export const chargeAgainstSurplus: Look = (prepared, equipped) => {
  const { rules } = equipped
  if (rules.tripMask === 0) return []
  const levels = surplusByLevel(prepared, equipped)
  const worst = levels.at(-1)!
  const warm = chargeLimit(equipped.plant, WARM_C)
  const found: Finding[] = []
  if (worst.minutesOver > 0) {
    found.push({
      id: 'charge-limit',
      grade: worst.mostKw > warm.kw ? 'mend' : 'look',
      what:
        `Under a clear sky the solar has ${short(worst.atKw)} kW more than the critical loads use ` +
        `(${localTime(prepared.calendar, worst.at)}), and the battery can take ` +
        `${short(worst.limit.kw)} kW then, held down by ${limitWords(worst.limit)}. Solar of ` +
        `${named(tripping(equipped))} cannot give a part of its power, it goes out: on ${worst.days} days of a clear ` +
        `year, for ${Math.ceil(worst.minutesOver / 60)} hours in all.`,
      numbers: [
        figure('taken by inverter', equipped.plant.chargeAcKw, 'kW'),
        figure('taken by battery, warm', warm.kw, 'kW'),
        figure('above 90 % charge', chargeLimit(equipped.plant, WARM_C, 0.91).kw, 'kW'),
        ...levels.flatMap((level, i) => levelFigures(level, i, levels.length)),
      ],
      restsOn:
        'Clear sky after Ineichen & Perez, the loads as surveyed, charge limits near full and in ' +
        'the cold by common practice. Clouds make it less often, a fuller battery more often.',
      toDo:
        'A solar inverter that can be throttled by frequency, more battery modules, a warmer ' +
        'place, or an array kept off the island; never a dump load without its own cut-out.',
    })
  }
  for (const [g, solar] of rules.solar.entries()) {
    if (solar.heldOut) found.push(comesAndGoes(solarGroups(equipped.house)[g]!, solar, rules))
  }
  return found
}

/** Arrays that trip rather than give less. */
function tripping({ house, rules }: Equipped): string[] {
  return solarGroups(house).flatMap(({ names }, g) => (rules.solar[g]?.canTrip ? names : []))
}

function comesAndGoes(group: SolarGroup, solar: SolarRules, rules: Rules): Finding {
  const share = (kwh: number): number => kwh / rules.capacityKwh
  const [off, back] = [share(solar.offKwh), share(solar.backKwh)]
  return {
    id: 'solar-comes-and-goes',
    grade: 'good to know',
    what:
      `Solar of ${named(group.names)} runs on the island in turns: it goes out above ${percent(off)} of charge and ` +
      `is let in again below ${percent(back)}, ${solar.waitMinutes} min later at the earliest.`,
    numbers: [
      figure('out above', off),
      figure('in below', back),
      figure('wait', solar.waitMinutes, 'min'),
    ],
    restsOn: `${CP} The settings of the inverter at hand win.`,
    toDo: 'See it go out and come back once on site, with the grid off and the battery near full.',
  }
}

interface Surplus {
  /** Largest of the year. [kW] */
  mostKw: number
  /** Minute in which most of it is too much, and the surplus then. */
  at: number
  atKw: number
  overKw: number
  limit: ChargeLimit
  minutesOver: number
  days: number
}

/** By shed level, the last with the critical loads only. */
function surplusByLevel(prepared: Prepared, equipped: Equipped): Surplus[] {
  const { demand, calendar } = prepared
  const window = clearYear(prepared)
  const limits = Array.from(window.placeC, (placeC) => chargeLimit(equipped.plant, placeC))
  const { rules } = equipped
  const all = (1 << rules.solar.length) - 1
  const loadKw = demand.criticalKw.slice()
  const levels: Surplus[] = []
  for (let level = demand.comfortKw.length; level >= 0; level--) {
    const step = demand.comfortKw[level]
    const found: Surplus = {
      mostKw: 0,
      at: 0,
      atKw: 0,
      overKw: Number.NEGATIVE_INFINITY,
      limit: limits[0]!,
      minutesOver: 0,
      days: 0,
    }
    let lastDay = -1
    for (let i = 0; i < window.n; i++) {
      if (step !== undefined) loadKw[i]! += step[i]!
      const forced = forcedKw(rules, window, all, i)
      if (!(forced > 0)) continue
      const surplus = forced - loadKw[i]!
      const limit = limits[Math.floor(i / 60)]!
      if (surplus > found.mostKw) found.mostKw = surplus
      if (surplus - limit.kw > found.overKw) {
        found.overKw = surplus - limit.kw
        found.at = i
        found.atKw = surplus
        found.limit = limit
      }
      if (!(surplus > limit.kw)) continue
      found.minutesOver++
      if (calendar.dayOf[i]! !== lastDay) found.days++
      lastDay = calendar.dayOf[i]!
    }
    levels.unshift(found)
  }
  return levels
}

function clearYear(prepared: Prepared): Window {
  const sky = plainSky(prepared, 'clear')
  return windowOf(prepared, sky, newScratch(prepared), 0, 0, prepared.calendar.n)
}

function islandArrays({ arrays, house }: Prepared): Prepared['arrays'] {
  return arrays.filter(({ input }) => isOnIsland(house, input.inverter?.phase))
}

function levelFigures({ mostKw, days }: Surplus, level: number, levels: number): Figure[] {
  const name =
    level === levels - 1 ? 'critical only' : level === 0 ? 'all loads' : `${level} steps shed`
  return [figure(`surplus, ${name}`, mostKw, 'kW'), figure(`days out, ${name}`, days)]
}

function limitWords({ by }: ChargeLimit): string {
  return by === 'cold or heat' ? 'the temperature of its place' : `the limit of the ${by}`
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}
