// Running power, starting currents and the crowd of thermostats after a time off, against what
// the battery inverter carries. The worst minute of the year, with what starts in it.

import { localTime } from '../../axis/calendar.js'
import { mostKva } from '../../island/overload-columns.js'
import { hardestNames } from '../../load/island-loads.js'
import type { Prepared } from '../../series/prepare.js'
import { aloneTooMuch } from '../alone-too-much.js'
import type { Equipped } from '../scenario.js'
import { CP, type Finding, figure, type Grade, type Look, short } from './finding.js'
import { hardestStart, type IslandLoad, islandLoads, largest } from './island-loads.js'

const LOADS_REST =
  'The loads of the file in every minute of its year, apparent power by their power factors, ' +
  'one start at a time.'

export const peaks: Look = (prepared, equipped) => {
  const loads = islandLoads(prepared)
  const found = [
    ...runningPeak(prepared, equipped, loads),
    ...startingPeak(prepared, equipped, loads),
  ]
  const restart = restartPeak(prepared, equipped)
  return [...(found.length > 0 ? found : [fits(prepared, equipped, loads)]), ...restart]
}

function runningPeak(
  prepared: Prepared,
  equipped: Equipped,
  loads: readonly IslandLoad[],
): Finding[] {
  const { plant } = equipped
  const [all, critical] = [prepared.demand.runningKva[0]!, prepared.demand.runningKva.at(-1)!].map(
    (column) => ({ ...largest(column, plant.ratedKw), out: minutesOut(column, plant) }),
  ) as [Running, Running]
  if (all.minutesOver === 0) return []
  const isCritical = critical.out > 0
  const worst = isCritical ? critical : all
  return [
    {
      id: 'running-peak',
      grade: all.out === 0 ? 'good to know' : gradeOf(isCritical, equipped),
      what:
        `${whose(isCritical)} reach ${short(worst.value, 2)} kVA ` +
        `(${localTime(prepared.calendar, worst.at)}${runs(loads, worst.at, isCritical)}); the battery ` +
        `inverter is rated ${short(plant.ratedKw, 2)} kVA. ` +
        aloneWords(prepared, equipped) +
        (all.out === 0
          ? `It carries ${short(plant.minuteKva, 2)} kVA for a minute, and it is never more than one.`
          : outcome(equipped)),
      numbers: [
        figure('all loads', all.value, 'kVA'),
        figure('critical only', critical.value, 'kVA'),
        figure('rating', plant.ratedKw, 'kVA'),
        figure('carried for a minute', plant.minuteKva, 'kVA'),
        figure('above it, all loads', all.minutesOver / 60, 'h a year'),
        figure('above it, critical only', critical.minutesOver / 60, 'h a year'),
        figure('minutes too many, all loads', all.out, 'a year'),
        figure('minutes too many, critical only', critical.out, 'a year'),
      ],
      restsOn: `${LOADS_REST}${meteredWords(prepared)} Solar is not counted on.`,
      toDo:
        'Move the largest comfort load off the island or to other hours, fit a fast load relay, ' +
        'or a larger battery inverter.',
    },
  ]
}

/** The loads that draw hardest in a minute, as many as a line has room for. */
function runs(loads: readonly IslandLoad[], at: number, isCritical: boolean): string {
  const names = hardestNames(loads, at, isCritical, null).slice(0, MOST_NAMED)
  return names.length === 0 ? '' : `: ${names.join(', ')}`
}

const MOST_NAMED = 3

/** What no other load is needed for. */
function aloneWords(prepared: Prepared, equipped: Equipped): string {
  return aloneTooMuch(prepared, equipped)
    .map(({ name, startingKva }) => `${name} alone is too much: ${short(startingKva, 2)} kVA. `)
    .join('')
}

type Running = ReturnType<typeof largest> & { readonly out: number }

/** Minutes of the year in which what runs is more than the inverter carries. */
function minutesOut(running: Float64Array, plant: Equipped['plant']): number {
  return running.reduce((n, kva, at) => n + (kva <= mostKva(plant, running, at) ? 0 : 1), 0)
}

function startingPeak(
  prepared: Prepared,
  equipped: Equipped,
  loads: readonly IslandLoad[],
): Finding[] {
  const { peakKva } = prepared.demand
  const limit = equipped.plant.startingKva
  const all = largest(peakKva[0]!, limit)
  const critical = largest(peakKva.at(-1)!, limit)
  if (all.minutesOver === 0) return []
  const isCritical = critical.minutesOver > 0
  const worst = isCritical ? critical : all
  const start = hardestStart(
    loads.filter((load) => load.critical || !isCritical),
    worst.at,
  )
  return [
    {
      id: 'starting-peak',
      grade: gradeOf(isCritical, equipped),
      what:
        `${start === null ? 'What runs' : `${start.name}, starting on top of what runs,`} takes ` +
        `the island to ${short(worst.value, 2)} kVA (${localTime(prepared.calendar, worst.at)}); ` +
        `the battery inverter carries ${short(limit, 2)} kVA for a second. ${outcome(equipped)}`,
      numbers: [
        figure('peak, all loads', all.value, 'kVA'),
        figure('peak, critical only', critical.value, 'kVA'),
        figure('the start adds', start?.kva ?? 0, 'kVA'),
        figure('starting rating', limit, 'kVA'),
        figure('minutes above, all loads', all.minutesOver, 'a year'),
      ],
      restsOn:
        `${LOADS_REST}${meteredWords(prepared)} Starting multiples by common practice; with ` +
        'motorHp and lockedRotorCode by NEMA MG 1.',
      toDo:
        'Read the plate of the motor; a soft starter or an inverter-driven pump, or a battery ' +
        'inverter that carries the start.',
    },
  ]
}

function fits(prepared: Prepared, { plant }: Equipped, loads: readonly IslandLoad[]): Finding {
  const running = largest(prepared.demand.runningKva[0]!, plant.ratedKw)
  const peak = largest(prepared.demand.peakKva[0]!, plant.startingKva)
  const start = hardestStart(loads, peak.at)
  return {
    id: 'peaks-fit',
    grade: 'good to know',
    what:
      `All loads of the island together run at ${short(running.value, 2)} kVA at most ` +
      `(${localTime(prepared.calendar, running.at)}, rating ${short(plant.ratedKw, 2)}) and ` +
      `reach ${short(peak.value, 2)} kVA in a start (${localTime(prepared.calendar, peak.at)}` +
      `${start === null ? '' : `, ${start.name}`}; the inverter carries ` +
      `${short(plant.startingKva, 2)}).`,
    numbers: [
      figure('running', running.value, 'kVA'),
      figure('rating', plant.ratedKw, 'kVA'),
      figure('peak with a start', peak.value, 'kVA'),
      figure('the start adds', start?.kva ?? 0, 'kVA'),
      figure('starting rating', plant.startingKva, 'kVA'),
    ],
    restsOn: `${LOADS_REST}${meteredWords(prepared)}`,
    toDo: 'Start the largest motor on the island once, with everything else on.',
  }
}

/** An island that forms starts all that runs, after a time off every thermostat with it. */
function restartPeak({ demand, calendar }: Prepared, equipped: Equipped): Finding[] {
  const forming = demand.together?.formingKva ?? demand.formingKva
  const limit = equipped.plant.startingKva
  const at = (level: number) => largest(forming[level]!, limit)
  const last = demand.comfortKw.length
  const [all, critical] = [at(0), at(last)]
  if (all.minutesOver === 0) return []
  const isCritical = critical.minutesOver > 0
  const worst = isCritical ? critical : all
  return [
    {
      id: 'restart-peak',
      grade: isCritical ? 'mend' : 'look',
      what:
        `After a time off ${demand.together === null ? 'everything starts' : 'every thermostat wants to run'} at once: ` +
        `${whose(isCritical).toLowerCase()} then reach ${short(worst.value, 2)} kVA ` +
        `(${localTime(calendar, worst.at)}), the battery inverter carries ` +
        `${short(limit, 2)} kVA for a second. The house may not come back by itself, nor survive a ` +
        'changeover that takes longer than a fifth of a second.',
      numbers: [
        figure('all loads', all.value, 'kVA'),
        figure('critical only', critical.value, 'kVA'),
        figure('starting rating', limit, 'kVA'),
      ],
      restsOn: `${CP} All that runs starts in one minute, after a quarter of an hour off all thermostats too.`,
      toDo:
        'Bring the loads back by hand, one after another, or by relays with delays; write the ' +
        'order on the board.',
    },
  ]
}

function gradeOf(critical: boolean, equipped: Equipped): Grade {
  return critical || !equipped.rules.sheds ? 'mend' : 'look'
}

function whose(critical: boolean): string {
  return critical ? 'The critical loads alone' : 'All loads of the island together'
}

function outcome({ rules }: Equipped): string {
  return rules.sheds
    ? 'The load relay then drops the comfort loads.'
    : 'The whole island then drops out, the critical loads with it.'
}

function meteredWords({ house }: Prepared): string {
  const onIsland = house.loads.filter(({ tier }) => tier !== 'gridOnly')
  const profile = onIsland.some((load) => load.profile !== undefined)
    ? ' A standard profile is a mean of many houses and shows neither peaks nor starts: what one ' +
      'house asks is higher.'
    : ''
  const metered = onIsland.some((load) => load.file !== undefined)
    ? ' A metered load shows means of its recording step. Within steps of more than 5 min the ' +
      'minutes are drawn, and starts are taken as the largest step of the hour: of two recorded ' +
      'weeks that missed one peak in ten from quarter hours, one in two from hours.'
    : ''
  return metered + profile
}
