// Islands with round numbers: the ones on which an order of sums or a missed edge shows.

import { type Compiled, checkHouse, type LoadColumn, type LoadInput, luck } from '@tideover/core'
import { type ByHand, DC_ARRAY, islandOf, plainHouse, solar } from '../plain-house.js'

export interface RandomIsland {
  readonly compiled: Compiled
  /** Share of capacity at every start. */
  readonly startShare: number
  /** What it is made of, for a failure to be read. */
  readonly about: string
}

/** Draws an island by its number; the same number gives the same island. */
export function randomIsland(number: number, minutes: number): RandomIsland {
  let drawn = 0
  const pick = <T>(...from: readonly T[]): T =>
    from[Math.floor(luck(number, 77, drawn++) * from.length)] as T
  const generator = pick('none', 'none', 'automatic', 'by hand')
  const array = pick('none', 'trips', 'trips', 'throttles', 'throttles to a floor', 'dc')
  const second = array === 'none' || array === 'dc' ? 'none' : pick('none', 'trips', 'throttles')
  const steps = pick(0, 1, 2)
  const critical = pick(0.1, 0.3, 0.5, 1)
  const comfort = pick(0.2, 0.5, 1.2)
  const sun = pick(0.5, 2, 3, 6)
  const kettle = pick(0, 1)
  const heavy = pick(0, 0, 3, 12)
  const cold = pick(0, 0, 0, 1)
  const gridFlickers = pick(false, false, true)
  const waysToWake = [
    ...(array === 'dc' && pick(true, true, false) ? ['sun'] : []),
    ...(generator !== 'none' && pick(true, true, false) ? ['generator'] : []),
    ...(pick(true, false, false) ? ['person'] : []),
  ]
  const inverter = {
    ratedKva: pick(3, 5),
    idleW: pick(0, 50, 60),
    roundTrip: pick(1, 0.87),
    onOverload: pick('trips', 'sheds'),
    whenEmpty: pick('collapses', 'holds', 'retries'),
    retryAt: ['10:00-10:10', '12:00-12:30'],
    loadsOffAt: pick(0, 0.1),
    loadsBackAt: pick(0.2, 0.3),
    wakesOn: waysToWake,
  }
  const house = checkHouse(
    plainHouse({
      inverter,
      gateway: { reconnectSeconds: pick(0, 120), changeoverMs: pick(20, 1000) },
      arrays: arraysOf(array, second, pick(20, 60, 180)),
      stack: {
        module: { usableKwh: pick(2, 5, 10), chargeKw: pick(1, 2), dischargeKw: 5 },
        modules: 1,
        health: 1,
        electronicsW: pick(0, 10),
        selfDischargePerMonth: 0,
      },
      ...(generator === 'none'
        ? {}
        : {
            generator: {
              ratedKw: 3,
              tankL: pick(1, 3),
              cansL: pick(0, 1, 4),
              litresPerHour: { none: 0.5, half: 1, full: 2 },
              start: generator,
              startFailsShare: pick(0, 0, 0.3),
              ...(pick(0, 1) === 0 ? {} : { hoursBetweenFailures: 10 }),
              readySeconds: pick(0, 140),
              leastRunMinutes: pick(0, 1, 30),
            },
          }),
      person: { minutes: pick(0, 30), from: '07:00', to: '22:00' },
    }),
  )
  const dayLight = (i: number): number => {
    const hour = (i % 1440) / 60
    const cloud = Math.floor(i / 7) % pick7(number, i) === 0 ? 0.2 : 1
    return hour > 9 && hour < 15 ? sun * cloud : 0
  }
  const given: ByHand = {
    house,
    minutes,
    critical: (i) => (i % 45 < 15 ? critical + 0.1 : critical),
    comfort: Array.from(
      { length: steps },
      (_, s) => (i: number) => (i % 60 < 20 * (s + 1) ? comfort : 0),
    ),
    ac: array === 'none' || array === 'dc' ? 0 : [dayLight, (i) => dayLight(i) / 2],
    dc: array === 'dc' ? dayLight : 0,
    placeC: cold === 0 ? 25 : (hour) => [-2, 3, 8, 12, 20, 50][Math.floor(hour / 5) % 6]!,
    ...(gridFlickers ? { gridUp: (i: number) => i % 1700 > 1600 } : {}),
    together:
      pick(0, 1) === 0
        ? null
        : {
            criticalKw: new Float64Array(minutes).fill(0.1),
            comfortKw: Array.from({ length: steps }, () => new Float64Array(minutes).fill(0.3)),
            kvaPerKw: new Array(steps + 1).fill(1.25),
            cycling: cyclingBy(steps, minutes, house.loads[0]!, pick(0, 500, 2500)),
            formingKva: byLevel(steps, minutes, pick(1.5, 2, 13)),
          },
    peakKva: (level, i) => (kettle === 1 && level === 0 && i % 720 === 430 ? 30 : 1),
    formingKva: (_, i) => (i % 30 < heavy ? 30 : 1),
  }
  const about = JSON.stringify({
    number,
    generator,
    array,
    second,
    waysToWake,
    steps,
    critical,
    sun,
    inverter,
    cold,
  })
  return { compiled: islandOf(given), startShare: pick(0.3, 0.5, 0.95, 1), about }
}

/** A load that runs 3 minutes of 20, which starts on return where its turn was missed. */
function cyclingBy(steps: number, minutes: number, load: LoadInput, w: number): LoadColumn[][] {
  const kw = Float64Array.from({ length: minutes }, (_, i) => (i % 20 < 3 ? w / 1000 : 0))
  const column = { load: { ...load, w, startingMultiple: 6 }, kw }
  return Array.from({ length: steps + 1 }, () => (w === 0 ? [] : [column]))
}

function arraysOf(
  array: 'none' | 'dc' | Parameters<typeof solar>[0],
  second: 'none' | Parameters<typeof solar>[0],
  seconds: number,
): Record<string, unknown>[] {
  if (array === 'none') return []
  if (array === 'dc') return [DC_ARRAY]
  if (second === 'none') return [solar(array, seconds)]
  return [solar(array, seconds), { ...solar(second, 300), name: 'second' }]
}

function byLevel(steps: number, minutes: number, kva: number): Float64Array[] {
  return Array.from({ length: steps + 1 }, () => new Float64Array(minutes).fill(kva))
}

function pick7(number: number, i: number): number {
  return 2 + Math.floor(luck(number, 78, Math.floor(i / 500)) * 4)
}
