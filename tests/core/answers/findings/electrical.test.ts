// Does it hold electrically? Each finding appears and goes with one change; numbers by hand.

import { lockedRotorKva, powerShareAt } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { DC_ARRAY, solar } from '../../plain-house.js'
import { found, numberOf, PUMP } from './found.js'

describe('the gap at the changeover', () => {
  const tolerates = (toleratesMinutes: number, changes = {}) => ({
    loads: [{ ...PUMP, toleratesMinutes }],
    ...changes,
  })

  it('is planned with a second, whatever is claimed', () => {
    const gap = found('changeover-gap', tolerates(0, { 'gateway.changeoverMs': 10 }))
    expect(gap?.grade).toBe('mend')
    expect(gap?.what).toContain('pump')
    expect(numberOf(gap, 'gap claimed')).toBe(10)
    expect(numberOf(gap, 'gap planned')).toBe(1000)
  })

  it('harms nothing that bears half a minute, unless more is claimed', () => {
    expect(found('changeover-gap', tolerates(0.5))).toBeUndefined()
    const slow = tolerates(0.5, { 'gateway.changeoverMs': 40000 })
    expect(numberOf(found('changeover-gap', slow), 'gap planned')).toBe(40000)
  })

  it('a minute of restart is another matter', () => {
    expect(found('restart-gap', tolerates(0.5))?.grade).toBe('look')
    expect(found('restart-gap', tolerates(1))).toBeUndefined()
  })

  it('comfort loads are not asked', () => {
    const loads = [
      { ...PUMP, toleratesMinutes: 5 },
      { name: 'clock', tier: 'comfort', w: 1 },
    ]
    expect(found('changeover-gap', { loads })).toBeUndefined()
  })
})

describe('a standard profile', () => {
  const profile = { kind: 'H0', kwhPerYear: 3500 }
  const rest = { name: 'rest', tier: 'comfort', profile, contains: ['pump'] }

  it('stands among the loads without known starts, and it is said that it has no peaks', () => {
    const pump = { ...PUMP, w: 40, startingMultiple: 4 }
    const fit = found('peaks-fit', { loads: [pump, rest] })
    expect(fit?.restsOn).toContain('A standard profile is a mean of many houses')
    expect(fit?.restsOn).not.toContain('metered')
    // 3500 kWh are 0.4 kW on average; no profile of many houses reaches three times its mean.
    expect(numberOf(fit, 'running')).toBeLessThan(1.2 / 0.9)
    expect(found('peaks-fit', { loads: [pump] })?.restsOn).not.toContain('profile')
  })
})

describe('what runs at once', () => {
  const with5kw = (w: number, changes = {}) => ({
    loads: [PUMP, { name: 'oven', tier: 'comfort', w, powerFactor: 1, at: ['18:00-18:10'] }],
    ...changes,
  })

  it('5 kW beside 0.39 kW at 0.9 are 5.433 kVA, ten minutes a day', () => {
    const peak = found('running-peak', with5kw(5000))
    expect(peak?.grade).toBe('mend')
    expect(peak?.what).toContain('18:00')
    expect(numberOf(peak, 'all loads')).toBeCloseTo(5 + 0.39 / 0.9, 5)
    expect(numberOf(peak, 'critical only')).toBeCloseTo(0.39 / 0.9, 5)
    expect(numberOf(peak, 'above it, all loads')).toBeCloseTo((365 * 10) / 60, 9)
    expect(numberOf(peak, 'above it, critical only')).toBe(0)
  })

  it('names what runs then, and what is too much even alone', () => {
    // 5 kW run at 5 kVA, what the inverter is rated; 5.1 do not.
    expect(found('running-peak', with5kw(5000))?.what).toContain('18:00: oven, ')
    expect(found('running-peak', with5kw(5000))?.what).not.toContain('alone is too much')
    expect(found('running-peak', with5kw(5100))?.what).toContain('oven alone is too much: 5.1 kVA.')
  })

  it('a load relay makes it a thing to look at, 4.5 kW fit', () => {
    expect(found('running-peak', with5kw(5000, { 'inverter.onOverload': 'sheds' }))?.grade).toBe(
      'look',
    )
    expect(found('running-peak', with5kw(4500))).toBeUndefined()
    expect(numberOf(found('peaks-fit', with5kw(4500)), 'running')).toBeCloseTo(4.5 + 0.39 / 0.9, 5)
    expect(found('peaks-fit', with5kw(5000))).toBeUndefined()
  })
})

describe('a minute above the rating', () => {
  const kettle = (at: string[], w: number) => ({
    loads: [PUMP, { name: 'kettle', tier: 'comfort', w, powerFactor: 1, at }],
  })

  it('is carried alone up to a tenth more, and taken for what it is when it stays', () => {
    // 4.7 kW and 0.39 kW at 0.9 are 5.13 kVA of 5.
    const one = found('running-peak', kettle(['07:00-07:01'], 4700))
    expect(one?.grade).toBe('good to know')
    expect(numberOf(one, 'minutes too many, all loads')).toBe(0)
    const two = found('running-peak', kettle(['07:00-07:02'], 4700))
    expect(two?.grade).toBe('mend')
    expect(numberOf(two, 'minutes too many, all loads')).toBe(365)
  })
})

describe('a start on top of what runs', () => {
  // 750 W at 0.75 run at 1 kVA and start with 6: 5 more.
  const motor = {
    ...{ name: 'well pump', tier: 'critical', w: 750, powerFactor: 0.75 },
    ...{ at: ['10:00-10:30'], startingMultiple: 6 },
  }

  it('is 6.433 kVA at ten, more than 6, less than 7', () => {
    const loads = [PUMP, motor]
    const peak = found('starting-peak', { loads, 'inverter.startingKva': 6 })
    expect(peak?.grade).toBe('mend')
    expect(peak?.what).toMatch(/well pump.*Wed 1 Jan 10:00/)
    expect(numberOf(peak, 'peak, critical only')).toBeCloseTo(6 + 0.39 / 0.9, 5)
    expect(numberOf(peak, 'the start adds')).toBeCloseTo(5, 9)
    expect(numberOf(peak, 'minutes above, all loads')).toBe(365)
    expect(found('starting-peak', { loads, 'inverter.startingKva': 7 })).toBeUndefined()
  })

  it('the letter on the plate goes before the multiple: 1 hp, G are 5.945 kVA', () => {
    const loads = [PUMP, { ...motor, motorHp: 1, lockedRotorCode: 'G' }]
    const peak = found('starting-peak', { loads, 'inverter.startingKva': 6 })
    expect(numberOf(peak, 'peak, critical only')).toBeCloseTo(5.945 + 0.39 / 0.9, 5)
  })

  // Truth: NEC 430.7(B): G is 5.6-6.29 kVA/hp; 10 hp at 460 V three-phase draw 74.6 A.
  it('10 hp of letter G are 59.45 kVA, 74.6 A at 460 V', () => {
    expect(lockedRotorKva(10, 'G')).toBeCloseTo(59.45, 9)
    expect((1000 * lockedRotorKva(10, 'G')) / (Math.sqrt(3) * 460)).toBeCloseTo(74.6, 1)
    expect(lockedRotorKva(1, 'A')).toBeCloseTo(1.57, 9)
    expect(lockedRotorKva(1, 'I')).toBeNaN()
  })

  it('two freezers that start together after a time off', () => {
    // Each 1 kVA running, 4 in its start; 0.433 kVA of the pump beside both.
    const freezers = {
      ...{ name: 'freezers', tier: 'critical', w: 900, powerFactor: 0.9, pieces: 2 },
      ...{ cycle: { onMinutes: 10, offMinutes: 20 }, startingMultiple: 4 },
    }
    const loads = [PUMP, freezers]
    const peak = found('restart-peak', { loads, 'inverter.startingKva': 8 })
    expect(peak?.grade).toBe('mend')
    expect(numberOf(peak, 'critical only')).toBeCloseTo(8 + 0.39 / 0.9, 5)
    expect(found('restart-peak', { loads, 'inverter.startingKva': 9 })).toBeUndefined()
    expect(found('restart-peak', { 'inverter.startingKva': 5.5 })).toBeUndefined()
  })
})

describe('phases', () => {
  const roof = (phase: string) => {
    const array = solar('throttles')
    return { ...array, inverter: { ...(array.inverter as object), phase } }
  }

  it('solar elsewhere gives nothing, three-phase solar neither', () => {
    for (const phase of ['L2', 'three']) {
      const finding = found('solar-phase', { arrays: [roof(phase)] })
      expect(finding?.grade).toBe('mend')
      expect(numberOf(finding, 'solar off the island')).toBe(4)
    }
    expect(found('solar-phase', { arrays: [roof('L1')] })).toBeUndefined()
    expect(found('solar-phase', { arrays: [roof('L2')], 'inverter.phase': 'L2' })).toBeUndefined()
    expect(found('solar-phase', { arrays: [roof('three')], 'inverter.phases': 3 })).toBeUndefined()
  })

  it('critical and comfort loads elsewhere are named', () => {
    const lamp = { name: 'lamp', tier: 'comfort', w: 10, phase: 'L3' }
    const loads = [{ ...PUMP, phase: 'L2' }, lamp]
    expect(found('critical-phase', { loads })?.what).toContain('pump (critical) hang on L2')
    expect(found('comfort-phase', { loads })?.grade).toBe('look')
    expect(found('critical-phase', { loads: [PUMP, lamp] })).toBeUndefined()
    expect(found('comfort-phase', { loads: [PUMP] })).toBeUndefined()
  })

  it('on three phases each carries a third: 3 kVA on one of 6', () => {
    const heavy = (w: number) => ({
      loads: [{ ...PUMP, w, phase: 'L1' }],
      'inverter.phases': 3,
      'inverter.ratedKva': 6,
    })
    const finding = found('phase-share', heavy(2700))
    expect(numberOf(finding, 'connected on L1')).toBeCloseTo(3, 9)
    expect(numberOf(finding, 'one phase carries')).toBe(2)
    expect(found('phase-share', heavy(1700))).toBeUndefined()
  })
})

describe('solar against the inverter that forms the island', () => {
  it('4 kW on 3.9 kVA are too much, on 5 or on another phase not', () => {
    const arrays = [solar('throttles')]
    const finding = found('solar-rating', { arrays, 'inverter.ratedKva': 3.9 })
    expect(finding?.grade).toBe('mend')
    expect(numberOf(finding, 'ratio')).toBeCloseTo(4 / 3.9, 9)
    expect(found('solar-rating', { arrays })).toBeUndefined()
    expect(found('solar-rating', { arrays: [DC_ARRAY], 'inverter.ratedKva': 3.9 })).toBeUndefined()
    const elsewhere = { arrays: [{ ...arrays[0], inverter: { ratedKw: 4, phase: 'L2' } }] }
    expect(found('solar-rating', { ...elsewhere, 'inverter.ratedKva': 3.9 })).toBeUndefined()
  })

  // 8 kW of modules hold 4 kW of inverter at its rating: 4 - 0.39 = 3.61 kW too much. The stack
  // takes 2 kW, idle and electronics 0.06 more.
  const big = (onIsland: 'trips' | 'throttles') => [{ ...solar(onIsland), peakKw: 8 }]

  it('a surplus of 3.61 kW against 2.06 kW puts a tripping inverter out', () => {
    const finding = found('charge-limit', { arrays: big('trips') })
    expect(finding?.grade).toBe('mend')
    expect(finding?.what).toContain('the limit of the battery')
    expect(numberOf(finding, 'surplus, critical only')).toBeCloseTo(3.61, 5)
    expect(numberOf(finding, 'taken by battery, warm')).toBeCloseTo(2.06, 9)
    expect(numberOf(finding, 'above 90 % charge')).toBeCloseTo(1.06, 9)
    expect(numberOf(finding, 'days out, critical only')).toBeGreaterThan(100)
  })

  it('not where the stack takes 4.06 kW, nor one that throttles', () => {
    const module = { usableKwh: 10, chargeKw: 4, dischargeKw: 5 }
    expect(found('charge-limit', { arrays: big('trips'), 'stack.module': module })).toBeUndefined()
    expect(found('charge-limit', { arrays: big('throttles') })).toBeUndefined()
    expect(found('charge-limit', { arrays: [DC_ARRAY] })).toBeUndefined()
  })

  it('the inverter limits at 1.5 kW, the cold at 0.1 of capacity an hour', () => {
    const module = { usableKwh: 10, chargeKw: 4, dischargeKw: 5 }
    const byInverter = { arrays: big('trips'), 'inverter.chargeKw': 1.5 }
    expect(found('charge-limit', byInverter)?.what).toContain(
      '1.5 kW then, held down by the limit of the battery inverter',
    )
    const byCold = {
      ...{ arrays: big('trips'), 'stack.module': module, 'stack.place': 'shed' },
      'sky.airC': new Array(12).fill(2.5),
    }
    const finding = found('charge-limit', byCold)
    expect(finding?.grade).toBe('look')
    expect(finding?.what).toContain('1.1 kW then, held down by the temperature of its place')
  })

  it('comes and goes near full only where it trips', () => {
    const finding = found('solar-comes-and-goes', { arrays: [solar('trips', 180)] })
    expect(finding?.numbers.map(({ value }) => Number(value).toFixed(2))).toEqual([
      '0.92',
      '0.85',
      '3.00',
    ])
    expect(found('solar-comes-and-goes', { arrays: [solar('throttles')] })).toBeUndefined()
  })

  // Truth: the droop law of GB interface rules, 1 - (f - 50.4) / 50 / droop, at 10 %.
  it.each([
    [50.5, 0.98],
    [51, 0.88],
    [51.5, 0.78],
    [52, 0.68],
    [50, 1],
  ])('with a droop of 10 %% at %f Hz %f of the power is left', (hz, share) => {
    expect(powerShareAt(hz, 0.1)).toBeCloseTo(share, 9)
  })

  it('a GB-coded inverter that is said to throttle does so only to 0.68', () => {
    const arrays = [solar('throttles')]
    const finding = found('frequency-droop', { arrays, 'site.gridCode': 'G98' })
    expect(finding?.grade).toBe('look')
    expect(numberOf(finding, 'at 52- Hz')).toBeCloseTo(0.68, 9)
    expect(found('frequency-droop', { arrays })).toBeUndefined()
    const steep = [{ ...arrays[0], inverter: { ratedKw: 4, onIsland: 'throttles', droop: 0.02 } }]
    expect(found('frequency-droop', { arrays: steep, 'site.gridCode': 'G98' })).toBeUndefined()
    const trips = found('frequency-droop', { arrays: [solar('trips')], 'site.gridCode': 'G99' })
    expect(trips?.grade).toBe('good to know')
    const second = [
      { ...solar('trips'), name: 'old' },
      { ...solar('throttles'), name: 'new' },
    ]
    const claimed = found('frequency-droop', { arrays: second, 'site.gridCode': 'G99' })
    expect([claimed?.grade, claimed?.what.slice(0, 4)]).toEqual(['look', 'new:'])
  })
})

describe('fault current', () => {
  it('9 kVA are 39 A, less than the 160 A of a B32; 36.8 kVA reach it', () => {
    const finding = found('fault-current', { 'inverter.startingKva': 9 })
    expect(numberOf(finding, 'fault current, about')).toBeCloseTo(9000 / 230, 9)
    expect(numberOf(finding, 'wanted by a B32')).toBe(160)
    expect(numberOf(finding, 'largest type B that opens at once')).toBe(7)
    expect(found('fault-current', { 'inverter.startingKva': 36.7 })).toBeDefined()
    expect(found('fault-current', { 'inverter.startingKva': 36.81 })).toBeUndefined()
  })
})

describe('the stack', () => {
  const discharge = (dischargeKw: number) => ({
    'stack.module': { usableKwh: 10, chargeKw: 2, dischargeKw },
  })

  it('of 5 kW gives 4.94 kW at the loads, less than 5 kVA; of 6 it does not limit', () => {
    const finding = found('stack-discharge', discharge(5))
    expect(numberOf(finding, 'at the loads')).toBeCloseTo(4.94, 9)
    expect(finding?.grade).toBe('good to know')
    expect(found('stack-discharge', discharge(6))).toBeUndefined()
    expect(found('stack-discharge', discharge(5), { modules: 1 })).toBeDefined()
  })

  it('of 0.4 kW carries 0.34 kW, and the pump wants 0.39', () => {
    expect(found('stack-discharge', discharge(0.4))?.grade).toBe('mend')
  })

  it('fills its base or not', () => {
    expect(found('base-full')).toBeDefined()
    expect(found('base-full', { 'stack.modulesMax': 2 })).toBeUndefined()
    const finding = found('base-full', { 'stack.modulesMax': 2 }, { modules: 2 })
    expect(numberOf(finding, 'usable, new')).toBe(20)
  })
})

describe('earth and neutral', () => {
  it('are always to be looked at, with a generator its own bond too', () => {
    expect(found('island-earth')?.what).not.toContain('portable set')
    const generator = {
      ...{ ratedKw: 3, tankL: 12, start: 'automatic' },
      litresPerHour: { none: 0.6, half: 0.95, full: 1.5 },
    }
    expect(found('island-earth', { generator })?.what).toContain('one bond only')
    expect(numberOf(found('island-earth'), 'phases to isolate, with neutral')).toBe(2)
    const three = found('island-earth', { 'inverter.phases': 3 })
    expect(numberOf(three, 'phases to isolate, with neutral')).toBe(4)
  })
})
