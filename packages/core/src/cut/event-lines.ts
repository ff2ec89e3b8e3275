// The log of a cut in local time: what happened, why, with the numbers.

import { type Calendar, localTime } from '../axis/calendar.js'
import type { House } from '../house/house.js'
import { type SolarGroup, solarGroups } from '../house/solar-groups.js'
import type { Compiled } from '../island/compile.js'
import { solarKw } from '../island/solar-columns.js'
import { Event, SOLAR_EVENTS } from '../island/state.js'
import { type IslandLoad, islandLoads } from '../load/island-loads.js'
import { kw, type Said, type Scene, saidIn, solarName } from './event-texts.js'
import { StallLog } from './stall-log.js'
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

/** Sun worth a line. [kW] */
const SUN_KW = 0.05

/**
 * Lines in order of time.
 *
 * Solar that trips again and again is told once with its reason, and once more when it stays in
 * or the log ends, with how often it tried. A dark island is told of each day's sun that finds
 * no grid to feed.
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
  let known: readonly IslandLoad[] | null = null
  const loads = (): readonly IslandLoad[] => {
    known ??= islandLoads({ house, calendar, demand: compiled.demand })
    return known
  }
  const scene: Scene = { trace, house, calendar, compiled, loads }
  const solar = solarGroups(house).map((group, g) => new SolarLog(scene, group, g, tell))
  const clock = (i: number): string => localTime(calendar, trace.from + i)
  const stalls = new StallLog(trace.events, clock, tell)
  const inVain = sunInVain(scene, tell)
  const flat = goesFlat(scene, tell)
  const frozen = tooCold(scene, tell)
  let full = false
  for (let i = 0; i < trace.n; i++) {
    for (const log of solar) log.pass(i)
    stalls.pass(i)
    if (!(trace.storedKwh[i]! >= compiled.rules.capacityKwh * 0.95)) full = false
    for (const said of trace.events[i] === 0 ? [] : saidIn(scene, i)) {
      if (stalls.takes(said, i) || solar.some((log) => log.takes(said, i))) continue
      if (said.bit !== Event.full || !full) tell(i, said.text)
      if (said.bit === Event.full) full = true
    }
    inVain(i)
    flat(i)
    frozen(i)
  }
  for (const log of solar) log.end()
  stalls.end()
  return lines.sort((a, b) => a.minute - b.minute)
}

type Tell = (minute: number, text: string) => void

/** The first sun of each day that a dark, empty island cannot use. */
function sunInVain({ trace, house, calendar, compiled }: Scene, tell: Tell): (i: number) => void {
  const all = (1 << compiled.rules.solar.length) - 1
  let told = -1
  return (i) => {
    if (trace.states[i] !== 'off, empty' || compiled.rules.wakesOnSun) return
    const day = calendar.dayOf[(i + trace.from) % calendar.n]!
    if (day === told) return
    // What was there while somebody had it formed was not in vain.
    if ((trace.events[i]! & Event.putAway) !== 0) told = day
    if (day === told) return
    const sunKw = solarKw(compiled.window, all, i)
    if (!(sunKw >= SUN_KW)) return
    told = day
    const names = solarGroups(house).flatMap((group) => group.names)
    tell(i, `The sun gives ${kw(sunKw)} on ${names.join(', ')}, and nothing happens: ${WHY}`)
  }
}

/** A dark stack that its own electronics have drained to nothing. */
function goesFlat({ trace, compiled }: Scene, tell: Tell): (i: number) => void {
  return (i) => {
    const isDark = trace.states[i] === 'off, empty' || trace.states[i] === 'off, overload'
    if (!isDark || trace.storedKwh[i] !== 0 || !(trace.startStoredKwh[i]! > 0)) return
    const watts = Math.round(1000 * compiled.standingKw(i))
    tell(
      i,
      `The battery is flat: its own electronics and heater (${watts} W) have drained it. ${FLAT}`,
    )
  }
}

/** The first minute of each day in which a generator runs and the stack is too cold to charge. */
function tooCold({ trace, calendar, compiled }: Scene, tell: Tell): (i: number) => void {
  let told = -1
  return (i) => {
    if (trace.states[i] !== 'island, generator' || compiled.columns.tempLimit[i]! > 0) return
    const day = calendar.dayOf[(i + trace.from) % calendar.n]!
    if (day === told) return
    told = day
    tell(
      i,
      'The battery is too cold to be charged: the generator carries the loads and burns its fuel ' +
        'without storing any of it.',
    )
  }
}

const FLAT = 'Some need a charger or their maker then, whatever comes back.'

const WHY = 'a solar inverter needs a grid to follow, and the island that could give it one is off.'

/** What one group of AC-coupled solar does, trips that follow each other closely told as one. */
class SolarLog {
  private run: { from: number; last: number; count: number } | null = null
  private isHeldOut = false

  constructor(
    private readonly scene: Scene,
    private readonly group: SolarGroup,
    private readonly g: number,
    private readonly tell: Tell,
  ) {}

  /** Looks whether trips are over before minute `i` is told. */
  pass(i: number): void {
    if (this.run === null || i - this.run.last <= CALM_MINUTES) return
    const name = solarName(this.scene.house, this.group)
    if (this.run.count > 1) this.tell(i, `${name} stays in again. ${this.tripText()}`)
    this.run = null
  }

  /** Whether it told what was said, or left it out on purpose. */
  takes({ bit, text }: Said, i: number): boolean {
    const { isIn, trips, heldOut } = SOLAR_EVENTS[this.g]!
    if (bit === trips) {
      if (this.run === null) this.tell(i, text)
      this.run = { from: this.run?.from ?? i, last: i, count: (this.run?.count ?? 0) + 1 }
      return true
    }
    if (bit === heldOut) {
      this.run = null
      this.isHeldOut = true
    }
    if (bit !== isIn) return false
    // The last minute of a wait tells; the first one in is the next. At night nobody sees it, but
    // what was said to be out is said to be in again.
    const sunKw = solarKw(this.scene.compiled.window, 1 << this.g, i)
    if (this.run === null && (this.isHeldOut || sunKw >= SUN_KW)) this.tell(i + 1, text)
    this.isHeldOut = false
    return true
  }

  end(): void {
    if (this.run !== null && this.run.count > 1) this.tell(this.scene.trace.n - 1, this.tripText())
  }

  private tripText(): string {
    const { trace, calendar } = this.scene
    const run = this.run!
    const clock = (i: number): string => localTime(calendar, trace.from + i).slice(-5)
    return `It tripped ${run.count} times from ${clock(run.from)} to ${clock(run.last)}.`
  }
}
