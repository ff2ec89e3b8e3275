// The log of a cut in local time: what happened, why, with the numbers.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import { NEVER } from '../island/columns.js'
import type { Compiled } from '../island/compile.js'
import { Event } from '../island/state.js'
import type { Trace } from './trace.js'

export interface EventLine {
  /** Minute of the trace. */
  readonly minute: number
  /** `Tue 14 Jan 16:20` */
  readonly local: string
  readonly text: string
}

/** Solar that has not tripped for so long stays in. [min] */
const CALM_MINUTES = 30

/**
 * Lines in order of time.
 *
 * Solar that trips again and again is told once with its reason, and once more when it stays in
 * or the log ends, with how often it tried.
 */
export function eventLines(
  trace: Trace,
  house: House,
  calendar: Calendar,
  compiled: Compiled,
): EventLine[] {
  const lines: EventLine[] = []
  const tell = (minute: number, text: string): void => {
    lines.push({ minute, local: localTime(calendar, trace.from + minute), text })
  }
  let run = null as TripRun | null
  let full = false
  for (let i = 0; i < trace.n; i++) {
    if (run !== null && i - run.last > CALM_MINUTES) {
      if (run.count > 1) tell(i, `Solar stays in again. ${tripText(run, trace, calendar)}`)
      run = null
    }
    if (!(trace.storedKwh[i]! >= compiled.rules.capacityKwh * 0.95)) full = false
    const events = trace.events[i]!
    if (events === 0) continue
    for (const { bit, text } of sentences(events, trace, i, house, calendar, compiled)) {
      if (bit === Event.solarTrips) {
        if (run === null) tell(i, text)
        run = { from: run?.from ?? i, last: i, count: (run?.count ?? 0) + 1 }
      } else if (bit === Event.solarIn) {
        // The last minute of a wait tells; the first one in is the next.
        if (run === null) tell(i + 1, text)
      } else if (bit !== Event.full || !full) tell(i, text)
      if (bit === Event.full) full = true
      if (bit === Event.solarHeldOut) run = null
    }
  }
  if (run !== null && run.count > 1) tell(trace.n - 1, tripText(run, trace, calendar))
  return lines.sort((a, b) => a.minute - b.minute)
}

/** Trips of the solar inverter that follow each other closely. */
interface TripRun {
  readonly from: number
  readonly last: number
  readonly count: number
}

function tripText(run: TripRun, trace: Trace, calendar: Calendar): string {
  const clock = (i: number): string => localTime(calendar, trace.from + i).slice(-5)
  return `It tripped ${run.count} times from ${clock(run.from)} to ${clock(run.last)}.`
}

function* sentences(
  events: number,
  trace: Trace,
  i: number,
  house: House,
  calendar: Calendar,
  compiled: Compiled,
): Generator<{ bit: number; text: string }> {
  const { capacityKwh } = compiled.rules
  const charge = `${Math.round((100 * trace.startStoredKwh[i]!) / capacityKwh)} %`
  const load = kw(trace.demandCriticalKw[i]! + trace.demandComfortKw[i]!)
  const texts: readonly (readonly [number, string])[] = [
    [Event.cutBegins, `The grid is gone. Charge ${charge}, load ${load}.${solarOut(house)}`],
    [Event.gridReturns, `The grid is back. Charge ${charge}.`],
    [
      Event.comfortOff,
      `Comfort loads off: charge ${charge}, limit ${dropLimit(trace.levels[i]!, compiled)}.`,
    ],
    [Event.comfortOn, `Comfort loads on again: charge ${charge}.`],
    [Event.solarIn, 'The solar inverter has waited out its reconnection and is in.'],
    [Event.solarTrips, `Solar trips: it gives more than the island can take. ${surplus(trace, i)}`],
    [Event.solarHeldOut, `Solar goes out: charge ${charge}, nearly full.`],
    [Event.full, `Battery full: ${trace.storedKwh[i]!.toFixed(1)} kWh.`],
    [Event.overload, `Overload: ${load} and its starts are more than the inverter carries.`],
    [
      Event.relaySheds,
      `Overload: ${load} and its starts. The relay drops the comfort loads for 5 min at least.`,
    ],
    [Event.triesAgain, `Empty, charge ${charge}: the island forms without loads to let solar in.`],
    [
      Event.generatorCalled,
      `Generator wanted: charge ${charge}.${whoStarts(house, trace, i, calendar, compiled)}`,
    ],
    [Event.generatorOn, `Generator runs. Fuel ${trace.fuelL[i]!.toFixed(1)} l.`],
    [
      Event.generatorOff,
      `Generator stops: charge ${charge}. Fuel ${trace.fuelL[i]!.toFixed(1)} l.`,
    ],
    [
      Event.generatorOverload,
      `Load ${load} is more than the generator carries; comfort loads off.`,
    ],
    [Event.fuelOut, `Generator stops: its tank is empty. ${trace.fuelL[i]!.toFixed(1)} l in cans.`],
    [Event.poured, 'Somebody fills the tank from the cans.'],
    [Event.empty, `Battery at its lower limit: charge ${charge}, ${emptyLimit(i, compiled)}.`],
    [Event.goesDark, `Everything is off.${whatHelps(house)}`],
    [Event.loadsBack, `Critical loads are on again: charge ${charge}.`],
    [Event.thermostats, 'Everything with a thermostat is warm and runs at once, for 40 min.'],
  ]
  for (const [bit, text] of texts) if ((events & bit) !== 0) yield { bit, text }
}

function solarOut(house: House): string {
  const coupled = house.arrays.find((array) => array.inverter !== undefined)?.inverter
  return coupled === undefined
    ? ''
    : ` Solar on the AC side drops out and waits ${coupled.reconnectSeconds} s.`
}

function surplus(trace: Trace, i: number): string {
  const over = trace.solarAvailableKw[i]! - trace.servedCriticalKw[i]! - trace.servedComfortKw[i]!
  return `Sun ${kw(trace.solarAvailableKw[i]!)}, of which ${kw(over)} would have to be stored.`
}

function whoStarts(
  house: House,
  trace: Trace,
  i: number,
  calendar: Calendar,
  compiled: Compiled,
): string {
  const { rules } = compiled
  // An automatic set needs somebody only where its tank is empty: nothing is left but the cans.
  const inCans = rules.generator?.cansAfter.includes(trace.fuelL[i]!) === true
  if (house.generator?.start !== 'by hand' && !inCans) return ''
  const at = compiled.columns.personAt[i]!
  if (at === NEVER) return ' Nobody is there to tend it.'
  const { person } = house
  return (
    ` Somebody is called (${person?.minutes} min, ${person?.from} to ${person?.to}) and will have ` +
    `tended it at ${localTime(calendar, trace.from + at)}.`
  )
}

/** The threshold that the level just reached lies below. */
function dropLimit(level: number, { rules }: Compiled): string {
  const step = rules.shed[level - 1]
  return step === undefined ? '' : percent(step.dropBelowKwh / rules.capacityKwh)
}

function emptyLimit(i: number, { columns, rules }: Compiled): string {
  const warm = rules.loadsOffKwh / rules.capacityKwh
  const cold = columns.coldFloor[i]! / rules.capacityKwh
  const limit = `limit ${percent(warm + cold)}`
  return cold < 0.005 ? limit : `${limit} in the cold, ${percent(warm)} when warm`
}

function whatHelps(house: House): string {
  const dc = house.arrays.some((array) => array.inverter === undefined)
  if (dc) return ' The sun on the DC side can wake the battery.'
  const helpers = house.generator === undefined ? 'the grid' : 'the grid or the generator'
  const sun =
    house.arrays.length > 0 ? ' Sunshine alone will not: nothing forms a grid for it.' : ''
  return ` Only ${helpers} brings it back.${sun}`
}

function kw(value: number): string {
  return `${value.toFixed(2)} kW`
}

function percent(share: number): string {
  return `${Math.round(100 * share)} %`
}
