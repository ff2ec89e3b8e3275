// The story of one start: how long, what gave out, where the energy went, what the weather was.

import { isoUtc, localTime } from '../../axis/calendar.js'
import { inverterLossKw } from '../../equipment/plant.js'
import type { Prepared } from '../../series/prepare.js'
import { dayNumber } from '../../series/window.js'
import type { Sky } from '../../sky/sky.js'
import { meanDay } from '../month-rides.js'
import { rideOfTrace } from '../ride-of-trace.js'
import type { CutStory } from '../trace-cut.js'

/**
 * From the start to the end of the ride, [kWh]:
 *
 *     start + solar + generator = critical + comfort + standing + conversion + left
 */
export interface EnergyLedger {
  readonly startKwh: number
  readonly solarKwh: number
  readonly generatorKwh: number
  readonly criticalKwh: number
  readonly comfortKwh: number
  /** Idle draw of the inverter, electronics, heater and self-discharge. */
  readonly standingKwh: number
  /** Lost in the inverter by what passes through it. */
  readonly conversionKwh: number
  /** In the battery at the end: where charge ended the ride, of no use below its lower limit. */
  readonly leftKwh: number
}

/** Of the local days that the ride touches. */
export interface RideWeather {
  readonly days: number
  /** Light on level ground over that of the month's mean day. */
  readonly brightness: number
  readonly airC: number
  readonly monthAirC: number
  /** Null without a record of it. [m/s] */
  readonly windMs: number | null
}

export interface StartStory {
  /** UTC */
  readonly start: string
  /** `Tue 7 Jan 19:18` */
  readonly local: string
  readonly month: number
  readonly syntheticYear: number
  readonly rideMinutes: number
  /** The load that is lost first, and when. */
  readonly endedBy: string
  readonly lostAt: string
  /** Loads that were too much where an overload ended the ride, the hardest first; else none. */
  readonly tooMuch: readonly string[]
  readonly energy: EnergyLedger
  readonly weather: RideWeather
}

/**
 * @param story  traced past the loss
 * @param sky    the one it was traced under
 * @throws       Error where no load is lost in the trace
 */
export function startStory(prepared: Prepared, story: CutStory, sky: Sky): StartStory {
  const { calendar } = prepared
  const { from } = story.trace
  const ride = rideOfTrace(story)
  if (ride === null) throw new Error('a start story without a loss')
  const day = calendar.days[calendar.dayOf[from]!]!
  return {
    start: isoUtc(calendar, from),
    local: localTime(calendar, from),
    month: day.month,
    syntheticYear: story.syntheticYear,
    rideMinutes: ride.minutes,
    endedBy: story.courses[ride.endedBy]!.name,
    lostAt: isoUtc(calendar, from + ride.lostAt),
    tooMuch: overloadAt(story, ride.minutes),
    energy: energyLedger(story, ride.minutes),
    weather: rideWeather(prepared, story, sky, ride.minutes),
  }
}

/** Whose start or running was too much in a minute of the trace. */
function overloadAt({ events }: CutStory, minute: number): readonly string[] {
  const over = events.find(
    (told) =>
      told.minute === minute && (told.id === 'too-much-at-once' || told.id === 'generator-stalls'),
  )
  return over?.names ?? []
}

/** What went in and out in the first minutes of a trace, each built up from its own column. */
export function energyLedger(
  { trace: t, compiled }: Pick<CutStory, 'trace' | 'compiled'>,
  minutes: number,
): EnergyLedger {
  const { plant, rules, standingKw } = compiled
  const sum = (kw: (i: number) => number): number => {
    let kwh = 0
    for (let i = 0; i < minutes; i++) kwh += kw(i) / 60
    return kwh
  }
  const isDark = (i: number): boolean => t.levels[i] === rules.dark
  const throughKw = (i: number): number => t.dischargeKw[i]! - t.chargeKw[i]!
  return {
    startKwh: t.startStoredKwh[0]!,
    solarKwh: sum((i) => t.solarUsedKw[i]!),
    generatorKwh: sum((i) => t.generatorKw[i]!),
    criticalKwh: sum((i) => t.servedCriticalKw[i]!),
    comfortKwh: sum((i) => t.servedComfortKw[i]!),
    standingKwh: sum((i) => (isDark(i) ? t.lossKw[i]! : plant.idleKw + standingKw(i))),
    conversionKwh: sum((i) => (isDark(i) ? 0 : inverterLossKw(plant, throughKw(i)) - plant.idleKw)),
    leftKwh: minutes === 0 ? t.startStoredKwh[0]! : t.storedKwh[minutes - 1]!,
  }
}

function rideWeather(
  prepared: Prepared,
  { trace, compiled: { window }, syntheticYear }: CutStory,
  sky: Sky,
  minutes: number,
): RideWeather {
  const { calendar } = prepared
  const { n } = calendar
  const last = trace.from + Math.max(0, minutes - 1)
  const [a, b] = [dayNumber(prepared, trace.from), dayNumber(prepared, last)]
  const month = calendar.days[a]!.month
  const days = b - a + 1
  const light = window.dayGhi.subarray(a - window.firstDay, b - window.firstDay + 1)
  const wind = window.dayWindMs.subarray(a - window.firstDay, b - window.firstDay + 1)
  const air: number[] = []
  for (let day = a; day <= b; day++) {
    const lap = Math.floor(day / calendar.days.length)
    const hourly = sky.airC((syntheticYear + lap) % sky.years)
    const { start, end } = calendar.days[day % calendar.days.length]!
    for (let i = start; i < Math.min(end, n); i += 60) air.push(hourly[Math.floor(i / 60)]!)
  }
  const mean = (values: ArrayLike<number>): number =>
    Array.from(values).reduce((sum, value) => sum + value, 0) / values.length
  const windMs = mean(wind)
  return {
    days,
    brightness: mean(light) / meanDay(prepared, month),
    airC: mean(air),
    monthAirC: prepared.airC[month - 1]!,
    windMs: Number.isNaN(windMs) ? null : windMs,
  }
}
