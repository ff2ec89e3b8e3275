// Running power, starting currents and the crowd of thermostats after a time off, against what
// the battery inverter carries. The worst minute of the year, with what starts in it.

import { localTime } from '../../axis/calendar.js'
import type { Prepared } from '../../series/prepare.js'
import type { Equipped } from '../scenario.js'
import { CP, type Finding, figure, type Grade, type Look, short } from './finding.js'
import { hardestStart, type IslandLoad, islandLoads, largest, runningKva } from './island-loads.js'

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
  const { n } = prepared.demand
  const rated = equipped.plant.ratedKw
  const all = largest(runningKva(loads, n), rated)
  const critical = largest(
    runningKva(
      loads.filter((load) => load.critical),
      n,
    ),
    rated,
  )
  if (all.minutesOver === 0) return []
  const worst = critical.minutesOver > 0 ? critical : all
  return [
    {
      id: 'running-peak',
      grade: gradeOf(critical.minutesOver > 0, equipped),
      what:
        `${whose(critical.minutesOver > 0)} reach ${short(worst.value, 2)} kVA ` +
        `(${localTime(prepared.calendar, worst.at)}); the battery inverter is rated ` +
        `${short(rated, 2)} kVA. ${outcome(equipped)}`,
      numbers: [
        figure('all loads', all.value, 'kVA'),
        figure('critical only', critical.value, 'kVA'),
        figure('rating', rated, 'kVA'),
        figure('above it, all loads', all.minutesOver / 60, 'h a year'),
        figure('above it, critical only', critical.minutesOver / 60, 'h a year'),
      ],
      restsOn: `${LOADS_REST}${meteredWords(prepared)}`,
      toDo:
        'Move the largest comfort load off the island or to other hours, fit a fast load relay, ' +
        'or a larger battery inverter.',
    },
  ]
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
        figure('start alone', start?.kva ?? 0, 'kVA'),
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
  const running = largest(runningKva(loads, prepared.demand.n), plant.ratedKw)
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
      figure('start alone', start?.kva ?? 0, 'kVA'),
      figure('starting rating', plant.startingKva, 'kVA'),
    ],
    restsOn: `${LOADS_REST}${meteredWords(prepared)}`,
    toDo: 'Start the largest motor on the island once, with everything else on.',
  }
}

/** After a quarter of an hour off all thermostats start in one minute, with all that runs. */
function restartPeak({ demand, calendar }: Prepared, equipped: Equipped): Finding[] {
  const { together } = demand
  if (together === null) return []
  const limit = equipped.plant.startingKva
  const last = demand.comfortKw.length
  const at = (level: number) => largest(together.formingKva[level]!, limit)
  const [all, critical] = [at(0), at(last)]
  if (all.minutesOver === 0) return []
  const isCritical = critical.minutesOver > 0
  const worst = isCritical ? critical : all
  return [
    {
      id: 'restart-peak',
      grade: isCritical ? 'mend' : 'look',
      what:
        'After a time off every thermostat wants to run at once: ' +
        `${whose(isCritical).toLowerCase()} then reach ${short(worst.value, 2)} kVA ` +
        `(${localTime(calendar, worst.at)}), the battery inverter carries ` +
        `${short(limit, 2)} kVA for a second. The house may not come back by itself.`,
      numbers: [
        figure('all loads', all.value, 'kVA'),
        figure('critical only', critical.value, 'kVA'),
        figure('starting rating', limit, 'kVA'),
      ],
      restsOn: `${CP} All thermostats start in one minute after a quarter of an hour off.`,
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
  return house.loads.some((load) => load.file !== undefined && load.tier !== 'gridOnly')
    ? ' A metered load shows means of its recording step: its true peaks are higher.'
    : ''
}
