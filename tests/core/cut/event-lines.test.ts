// The log of a cut, as an electrician reads it: what happened, why, with the numbers.

import { type CutQuestion, checkHouse, prepare, traceCut } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { hardestNames } from '../../../packages/core/src/load/island-loads.js'
import { plainHouse, solar } from '../plain-house.js'

const INVERTER = { ratedKva: 5, idleW: 50, roundTrip: 1 }
const PERSON = { minutes: 30, from: '07:00', to: '22:00' }

/** `04:14  Everything is off. …`, the day left out. */
function logOf(changes: Record<string, unknown>, question: Partial<CutQuestion> = {}): string[] {
  return eventsOf(changes, question).map(({ local, text }) => `${local.slice(-5)}  ${text}`)
}

function eventsOf(changes: Record<string, unknown>, question: Partial<CutQuestion>) {
  const prepared = prepare(checkHouse(plainHouse({ inverter: INVERTER, ...changes })))
  const story = traceCut(prepared, {
    ...{ startMs: Date.UTC(2025, 5, 20), hours: 24, sky: 'clear', startSoc: 0.25 },
    ...question,
  })
  return story.events
}

describe('an AC-coupled house that collapsed', () => {
  it('sees the sun come up and nothing happen, and the log says why, once a day', () => {
    const log = logOf({ arrays: [solar('throttles')] }, { hours: 48, startSoc: 0.15 })
    const dark = log.findIndex((line) => line.includes('Everything is off'))
    expect(log[dark]).toContain('Only the grid brings it back. Sunshine alone will not')
    const same = logOf(
      { arrays: [solar('throttles')] },
      { startMs: Date.UTC(2025, 5, 20, 12), startSoc: 0.1 },
    )
    expect(same.map((line) => /is off|nothing happens|is lost/.exec(line)?.[0] ?? '')).toEqual([
      ...['', '', 'is off', 'nothing happens', 'is lost', 'nothing happens'],
    ])
    const sun = log.filter((line) => line.includes('nothing happens'))
    expect(sun).toHaveLength(2)
    expect(sun[0]).toMatch(
      /^0[45]:\d\d {2}The sun gives 0\.05 kW on throttles, and nothing happens: a solar inverter needs a grid to follow/,
    )
  })

  it('is told when somebody forms it, and with what sun', () => {
    const inverter = { ...INVERTER, wakesOn: ['person'] }
    const log = logOf(
      { arrays: [solar('throttles')], inverter, person: PERSON },
      { startSoc: 0.15 },
    )
    expect(log.find((line) => line.includes('Everything is off'))).toMatch(
      /Somebody is called \(30 min, 07:00 to 22:00\) and forms it at Fri 20 Jun 07:30, with the sun there\.$/,
    )
    expect(log.find((line) => line.startsWith('07:30'))).toContain('forms the island without')
    expect(log.some((line) => line.includes('The critical loads are on again'))).toBe(true)
  })
})

describe('an overload', () => {
  const pump = { name: 'pump', tier: 'critical', w: 750, powerFactor: 0.75, startingMultiple: 12 }

  it('says what was asked and what is carried, each try, and who comes', () => {
    const loads = [{ ...pump, at: ['10:00-10:20'] }]
    const inverter = { ...INVERTER, startingKva: 10 }
    const log = logOf({ loads, inverter, person: PERSON }, { startSoc: 1 })
    const at = (clock: string): string[] => log.filter((line) => line.startsWith(clock))
    expect(at('10:00')).toEqual([
      '10:00  Overload. pump takes 12.0 kVA with a start, the inverter carries 10.0 kVA for a second.',
      '10:00  Everything is off. The inverter tries again in a minute.',
      '10:00  pump is lost: it bears no gap.',
    ])
    expect(at('10:01')[0]).toContain('12.0 kVA all starting at once')
    expect(at('10:03')[1]).toBe(
      '10:03  Everything is off. It has tried three times and waits to be reset. Somebody is called ' +
        '(30 min, 07:00 to 22:00) and will have done it at Fri 20 Jun 10:33.',
    )
    expect(at('10:33')[0]).toContain('are on again')
  })

  it('names the loads, and the minute of the reset once the tries are spent', () => {
    const loads = [{ ...pump, at: ['10:00-10:20'] }]
    const inverter = { ...INVERTER, startingKva: 10 }
    const of = (more: object) =>
      eventsOf({ loads, inverter, ...more }, { startSoc: 1 }).flatMap((told) =>
        told.id === 'too-much-at-once' || told.id === 'goes-dark'
          ? [told.id === 'goes-dark' ? told.tendedAt : told.names]
          : [],
      )
    // From midnight: 10:00 is minute 600; four times it gives up, half an hour later somebody is there.
    const tries = [['pump'], undefined, ['pump'], undefined, ['pump'], undefined, ['pump']]
    expect(of({ person: PERSON })).toEqual([...tries, 633])
    expect(of({})).toEqual([...tries, null])
    // A cut that is over before somebody comes does not make it nobody.
    const short = { startSoc: 1, hours: 10.2 }
    const ended = eventsOf({ loads, inverter, person: PERSON }, short).findLast(
      ({ id }) => id === 'goes-dark',
    )
    expect(ended?.tendedAt).toBe(633)
  })

  it('says so where nobody is named', () => {
    const loads = [{ ...pump, at: ['10:00-10:20'] }]
    const log = logOf({ loads, inverter: { ...INVERTER, startingKva: 10 } }, { startSoc: 1 })
    expect(log.at(-1)).toContain('Nobody is named who could; the grid brings it back.')
  })

  it('of running power, and of a battery that gives less', () => {
    const load = { name: 'oven', tier: 'comfort', w: 6000, powerFactor: 1, at: ['10:00-10:20'] }
    const loads = [{ name: 'router', tier: 'critical', w: 10 }, load]
    expect(logOf({ loads }, { startSoc: 1 }).join('\n')).toContain(
      'oven and router take 6.0 kVA running, the inverter is rated 5.0 kVA.',
    )
    const module = { usableKwh: 10, chargeKw: 2, dischargeKw: 2 }
    const stack = { module, modules: 1, health: 1, electronicsW: 10, selfDischargePerMonth: 0 }
    const small = [loads[0]!, { ...load, w: 3000 }]
    expect(logOf({ loads: small, stack }, { startSoc: 1 }).join('\n')).toContain(
      'oven and router take 3.01 kW, the battery gives 1.94 kW.',
    )
  })
})

describe('two kinds of solar', () => {
  it('are told by the names of their arrays', () => {
    const arrays = [solar('trips', 180), { ...solar('throttles', 60), name: 'new roof' }]
    const log = logOf({ arrays }, { startMs: Date.UTC(2025, 5, 20, 9), hours: 8, startSoc: 0.9 })
    expect(log[0]).toContain('Solar on the AC side drops out and waits 180 s or 60 s.')
    expect(log.join('\n')).toMatch(/Solar of new roof has waited out its reconnection/)
    expect(log.join('\n')).toMatch(/Solar of trips (trips|goes out)/)
  })
})

describe('solar that goes out near full', () => {
  it('is told when it is in again, though it be night', () => {
    const log = logOf(
      { arrays: [solar('trips')] },
      { startMs: Date.UTC(2025, 5, 20, 9), hours: 20, startSoc: 0.9 },
    )
    const outs = log.filter((line) => line.includes('goes out')).length
    const ins = log.filter((line) => line.includes('and is in.')).length
    expect(outs).toBeGreaterThan(0)
    // The first is that of the cut itself.
    expect(ins).toBe(outs + 1)
  })
})

describe('a generator', () => {
  const generator = {
    ratedKw: 3,
    tankL: 12,
    litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
    start: 'automatic',
  }

  it('that does not start is told, and no longer counted on', () => {
    const log = logOf({ generator: { ...generator, startFailsShare: 1 } }, { startSoc: 0.25 })
    const text = log.join('\n')
    expect(text).toContain(
      'The generator does not start, and is out of order until the grid is back.',
    )
    expect(text).toContain('Everything is off. Only the grid brings it back.')
  })

  it('that stalls at a start says at what, and is told once however often it is tried', () => {
    // 400 W at a power factor of 0.8 are 0.5 kVA, times 12 in the start.
    const pump = { name: 'pump', tier: 'critical', w: 400, powerFactor: 0.8, startingMultiple: 12 }
    const loads = [{ ...pump, cycle: { onMinutes: 5, offMinutes: 5 } }]
    const inverter = { ...INVERTER, startingKva: 10 }
    const log = logOf(
      { loads, inverter, generator: { ...generator, startingKva: 4 } },
      { startSoc: 0.1 },
    )
    const text = log.join('\n')
    expect(text).toContain(
      'The generator starts and stalls, and the island with it. pump takes 6.0 kVA all starting ' +
        'at once, the generator gives 4.0 kVA for a second.',
    )
    expect(log.filter((line) => line.includes('starts and stalls'))).toHaveLength(1)
    expect(text).toMatch(/The generator was started and stalled \d+ times from Fri 20 Jun /)
    expect(text).not.toContain('tried three times')
  })

  it('is spared by dropping the comfort loads, and says what was too much', () => {
    const loads = [
      { name: 'router', tier: 'critical', w: 10 },
      { name: 'oven', tier: 'comfort', w: 3500, powerFactor: 1, at: ['01:00-01:10'] },
    ]
    const comfort = { dropBelow: 0.2, returnAt: 0.21 }
    const log = logOf({ loads, comfort, generator })
    expect(log.find((line) => line.startsWith('01:00'))).toBe(
      '01:00  oven and router take 3.51 kW, the generator is rated 3.00 kW. The comfort loads go ' +
        'off to spare it.',
    )
  })

  it('with its fuel burnt is no longer hoped for, nor are cans that nobody pours', () => {
    const small = { ...generator, tankL: 1, cansL: 5 }
    const dark = (changes: Record<string, unknown>): string | undefined =>
      logOf(changes, { hours: 72, sky: 'none' }).findLast((line) => line.includes('is off.'))
    expect(dark({ generator: small })).toContain('Only the grid brings it back.')
    expect(dark({ generator: { ...small, cansL: 0 }, person: PERSON })).toContain(
      'Only the grid brings it back.',
    )
  })

  it('that runs beside a stack too cold to be charged says so, once a day', () => {
    const sky = { clearness: new Array(12).fill(0.4), airC: new Array(12).fill(-15) }
    const log = logOf({ generator, sky }, { startMs: Date.UTC(2025, 0, 20) })
    const cold = log.filter((line) => line.includes('too cold to be charged'))
    expect(cold).toHaveLength(1)
  })
})

describe('the names of an overload', () => {
  const load = { critical: true, powerFactor: 1, startKva: 1 }
  const fridge = { ...load, name: 'fridge', kw: new Float64Array(10).fill(0.1), cycles: true }
  const float = { ...load, name: 'float', kw: new Float64Array(10), cycles: true, startKva: 9 }
  float.kw[3] = 1

  it('hold what cycles and has waited for the island, not what would have stopped before', () => {
    const names = (waitedFor: number | 'all' | null): string[] =>
      hardestNames([fridge, float], 5, false, waitedFor)
    expect(names(null)).toEqual(['fridge'])
    expect(names(1)).toEqual(['fridge'])
    expect(names(2)).toEqual(['float', 'fridge'])
    expect(names('all')).toEqual(['float', 'fridge'])
    expect(hardestNames([fridge, { ...float, cycles: false }], 5, false, 'all')).toEqual(['fridge'])
  })
})

describe('an island that holds', () => {
  it('says what it draws and when the loads are back', () => {
    const inverter = { ...INVERTER, whenEmpty: 'holds', loadsBackAt: 0.3 }
    const log = logOf({ inverter, arrays: [solar('throttles')] }, { startSoc: 0.12 })
    const empty = log.find((line) => line.includes('lower limit'))
    expect(empty).toMatch(
      /All loads off; the island holds on 60 W of its own until the sun has brought 3\d %\.$/,
    )
  })
})

describe('comfort loads in steps', () => {
  it('are named as they go', () => {
    const loads = [
      { name: 'pump', tier: 'critical', w: 390 },
      { name: 'oven', tier: 'comfort', w: 300, dropOrder: 1 },
      { name: 'lamps', tier: 'comfort', w: 100, dropOrder: 2 },
    ]
    const log = logOf({ loads }, { startSoc: 0.45 })
    expect(log.some((line) => line.includes('Comfort loads (oven) off: charge 40 %'))).toBe(true)
    expect(log.some((line) => line.includes('Comfort loads (lamps) off: charge 25 %'))).toBe(true)
  })
})

describe('several cuts in one run', () => {
  it('each begins with its charge; a grid that is back for less than its wait is not taken', () => {
    const startMs = Date.UTC(2025, 5, 20, 18)
    const cutAt = (minutes: number, hours: number) => ({
      startMs: startMs + minutes * 60000,
      hours,
    })
    const question = { startMs, hours: 1 / 60, startSoc: 0.5 }
    // Three cuts in five minutes, the grid back for a minute between them; a wait of 20 s is one.
    const further = [cutAt(2, 1 / 60), cutAt(4, 1)]
    const log = logOf({ gateway: { reconnectSeconds: 20 } }, { ...question, further, after: 1 })
    expect(log.filter((line) => line.includes('The grid is gone'))).toHaveLength(1)
    expect(log.filter((line) => line.includes('The grid is back'))).toEqual([
      '19:05  The grid is back. Charge 45 %.',
    ])
    const quick = logOf({ gateway: { reconnectSeconds: 0 } }, { ...question, further, after: 1 })
    expect(quick.filter((line) => line.includes('The grid is gone'))).toHaveLength(3)
  })
})
