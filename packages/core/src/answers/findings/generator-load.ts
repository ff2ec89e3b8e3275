// The generator against load and charger: too much, and too little.

import { localTime } from '../../axis/calendar.js'
import { generatorStartingKva } from '../../island/generator-columns.js'
import type { Prepared } from '../../series/prepare.js'
import type { Equipped } from '../scenario.js'
import { chargeLimit } from './charge-limit.js'
import { CP, type Finding, figure, type Look, short } from './finding.js'
import { hardestStart, islandLoads, largest, levelKw } from './island-loads.js'

const WARM_C = 20

const TRY = 'Not proven until tried on site: run it on the island with the charger on.'

export const generatorLoad: Look = (prepared, equipped) => {
  const { generator } = equipped.house
  if (generator === undefined) return []
  const { ratedKw, stopAt, mostShare, leastShare } = generator
  const parts = { prepared, equipped, ratedKw, stopAt, mostShare, leastShare }
  return [...tooMuch(parts), ...hardStart(parts), ...charger(parts), ...tooLittle(parts)]
}

interface Parts {
  readonly prepared: Prepared
  readonly equipped: Equipped
  readonly ratedKw: number
  readonly stopAt: number
  readonly mostShare: number
  readonly leastShare: number
}

function tooMuch({ prepared, ratedKw, mostShare }: Parts): Finding[] {
  const { demand, calendar } = prepared
  const all = largest(levelKw(demand, 0), mostShare * ratedKw)
  const critical = largest(demand.criticalKw, mostShare * ratedKw)
  if (all.minutesOver === 0) return []
  return [
    {
      id: 'generator-load',
      grade: critical.value > ratedKw ? 'mend' : 'look',
      what:
        `The loads reach ${short(all.value, 2)} kW (${localTime(calendar, all.at)}), the critical ` +
        `ones alone ${short(critical.value, 2)} kW; a generator of ${short(ratedKw, 2)} kW should ` +
        `carry ${short(mostShare * ratedKw, 2)} kW. With more it stalls or is spared only by ` +
        'dropping the comfort loads.',
      numbers: [
        figure('all loads', all.value, 'kW'),
        figure('critical only', critical.value, 'kW'),
        figure('rating', ratedKw, 'kW'),
        figure('planned with', mostShare * ratedKw, 'kW'),
        figure('above it, all loads', all.minutesOver / 60, 'h a year'),
      ],
      restsOn: `${CP} ${mostShare} of rating; high ground and hot air take more off.`,
      toDo: `Agree what stays off while it runs, or a larger set. ${TRY}`,
    },
  ]
}

/** What a small set gives for a second is on no plate: asked for, else 1.5 times its rating. */
function hardStart({ prepared, equipped, ratedKw }: Parts): Finding[] {
  const mostKva = generatorStartingKva(equipped.house)
  const worst = largest(prepared.demand.peakKva.at(-1)!, ratedKw)
  if (worst.minutesOver === 0) return []
  const start = hardestStart(
    islandLoads(prepared).filter((load) => load.critical),
    worst.at,
  )
  return [
    {
      id: 'generator-start',
      grade: worst.value > mostKva ? 'mend' : 'look',
      what:
        `${start === null ? 'What runs' : `${start.name}, starting beside the other critical loads,`} ` +
        `takes ${short(worst.value, 2)} kVA (${localTime(prepared.calendar, worst.at)}) from a ` +
        `generator of ${short(ratedKw, 2)} kW that gives ${short(mostKva, 2)} kVA for a second: ` +
        (worst.value > mostKva ? 'it stalls, and the island with it.' : 'it may stall.'),
      numbers: [
        figure('peak with a start, critical', worst.value, 'kVA'),
        figure('the start adds', start?.kva ?? 0, 'kVA'),
        figure('rating', ratedKw, 'kW'),
        figure('given for a second', mostKva, 'kVA'),
      ],
      restsOn: `${CP} The generator alone carries the start; 1.5 times rating where the file names none.`,
      toDo: `A soft starter, or a set that the motor's maker names. ${TRY}`,
    },
  ]
}

function charger({ prepared, equipped, ratedKw, mostShare }: Parts): Finding[] {
  const { plant } = equipped
  const { value: loadKw } = largest(prepared.demand.criticalKw, ratedKw)
  const left = Math.max(0, mostShare * ratedKw - loadKw)
  if (!(plant.chargeAcKw > left)) return []
  return [
    {
      id: 'generator-charger',
      grade: 'look',
      what:
        `Left to itself the battery inverter may charge with ${short(plant.chargeAcKw, 2)} kW; ` +
        `beside the critical loads (${short(loadKw, 2)} kW at most) the generator has ` +
        `${short(left, 2)} kW for it.`,
      numbers: [
        figure('charge limit', plant.chargeAcKw, 'kW'),
        figure('critical loads at most', loadKw, 'kW'),
        figure('rating', ratedKw, 'kW'),
        figure('left for the charger', left, 'kW'),
      ],
      restsOn: `${CP} Load and charge together at most ${mostShare} of rating.`,
      toDo:
        `Set the charge limit for the generator input to ${short(Math.floor(10 * left) / 10)} kW or less, and find out ` +
        `whether the inverter has such a setting. ${TRY}`,
    },
  ]
}

function tooLittle({
  prepared,
  equipped,
  ratedKw,
  stopAt,
  mostShare,
  leastShare,
}: Parts): Finding[] {
  let loadKw = Number.POSITIVE_INFINITY
  for (const kw of prepared.demand.criticalKw) if (kw < loadKw) loadKw = kw
  const room = Math.max(0, mostShare * ratedKw - loadKw)
  const chargeKw = Math.min(room, chargeLimit(equipped.plant, WARM_C, stopAt).kw)
  const leastKw = loadKw + chargeKw
  if (leastKw >= leastShare * ratedKw) return []
  return [
    {
      id: 'generator-idles',
      grade: 'look',
      what:
        `Near ${Math.round(100 * stopAt)} % of charge the generator carries as little as ` +
        `${short(leastKw, 2)} kW, ${Math.round((100 * leastKw) / ratedKw)} % of its rating: much ` +
        'fuel for little power, and an engine that gums up.',
      numbers: [
        figure('least critical load', loadKw, 'kW'),
        figure('charge taken then', chargeKw, 'kW'),
        figure('rating', ratedKw, 'kW'),
        figure('wanted at least', leastShare * ratedKw, 'kW'),
      ],
      restsOn: `${leastShare} of rating; about 0.3 from memory of NFPA 110, for exercise of standby sets.`,
      toDo: `A smaller set, a lower generator.stopAt, or more modules to charge. ${TRY}`,
    },
  ]
}
