// The sky `dull`: the yield over the days of the cut that is undercut once in so many winters.

import {
  checkHouse,
  newScratch,
  type Prepared,
  plainSky,
  prepare,
  typicalOf,
  windowOf,
} from '@tideover/core'
import { readHouseFile } from '@tideover/files'
import { describe, expect, it } from 'vitest'
import { spellYearOf } from '../../../packages/core/src/answers/month-sky.js'
import { daysOfCut, dullYears } from '../../../packages/core/src/series/dull.js'

const SAMPLES = new URL('../../../data-samples/', import.meta.url).pathname
const WINTERS = 200

function house(name: string): Prepared {
  return prepare(checkHouse(readHouseFile(`${SAMPLES}${name}.yaml`).plain))
}

const croft = house('croft')
const surgery = house('surgery')

/** What the arrays give over whole days, minute by minute, in each of 200 winters. [kWh] */
function yields(prepared: Prepared, day: number, length: number): number[] {
  const sky = typicalOf(prepared, prepared.house.seed, WINTERS)
  const scratch = newScratch(prepared)
  const { days, n } = prepared.calendar
  const last = day + length - 1
  const from = days[day]!.start
  const to = days[last % days.length]!.end + (last >= days.length ? n : 0)
  return Array.from({ length: WINTERS }, (_, k) => {
    const { acKw, dcKw } = windowOf(prepared, sky, scratch, k, from, to)
    return [...acKw, dcKw].flatMap((kw) => [...kw]).reduce((a, b) => a + b, 0) / 60
  })
}

function chosen(prepared: Prepared, day: number, length: number, winters: number): number {
  const sky = typicalOf(prepared, prepared.house.seed, WINTERS)
  return dullYears(prepared, sky, [day, day + 1], length, winters)[0]!.year
}

describe('the winter that is lived', () => {
  // Ranked by hourly light on the planes, checked by the minute's power of the arrays, which also
  // knows cell temperature, glass and clipping: a few ranks of 200 apart.
  it.each([
    ['the croft in January', croft, 14, 1, 10, 20],
    ['the croft in January', croft, 14, 3, 10, 20],
    ['the croft in December', croft, 340, 2, 20, 10],
    ['the surgery in July', surgery, 195, 1, 10, 20],
    ['the surgery in July', surgery, 195, 7, 4, 50],
  ] as const)(
    '%s: of 200 yields its own lies at the stated rank',
    (_, prepared, day, length, winters, rank) => {
      const all = yields(prepared, day, length)
      const own = all[chosen(prepared, day, length, winters)]!
      const lower = all.filter((kwh) => kwh < own).length + 1
      expect(Math.abs(lower - rank)).toBeLessThanOrEqual(4)
    },
  )

  it('is darker for a longer return period', () => {
    const all = yields(croft, 20, 1)
    const by = [2, 5, 10, 20, 100].map((winters) => all[chosen(croft, 20, 1, winters)]!)
    expect(by).toEqual([...by].sort((a, b) => b - a))
  })

  it('brings less than the middle winter by far: a third to a sixth over one day', () => {
    const all = yields(croft, 14, 1)
    const middle = [...all].sort((a, b) => a - b)[WINTERS / 2]!
    const ratio = all[chosen(croft, 14, 1, 10)]! / middle
    expect(ratio).toBeGreaterThan(1 / 6)
    expect(ratio).toBeLessThan(0.5)
  })
})

describe('the days of the cut', () => {
  it.each([
    [1, 1],
    [24, 1],
    [24.5, 2],
    [72, 3],
  ])('%d h are %d days', (hours, days) => {
    expect(daysOfCut(hours)).toBe(days)
  })

  it('begin with the first noon: from noon on a start looks at tomorrow', () => {
    const year = (prepared: Prepared, minute: number): number =>
      spellYearOf(prepared, minute, {
        kind: 'dull',
        cutHours: 24,
        winters: 10,
        seed: prepared.house.seed,
      })!.year
    const { start } = croft.calendar.days[14]!
    expect(year(croft, start + 719)).toBe(chosen(croft, 14, 1, 10))
    expect(year(croft, start + 720)).toBe(chosen(croft, 15, 1, 10))
    expect(year(croft, start + 1439)).toBe(chosen(croft, 15, 1, 10))
    const july = surgery.calendar.days[195]!
    expect(year(surgery, july.start + 719)).toBe(chosen(surgery, 195, 1, 10))
    expect(year(surgery, july.start + 720)).toBe(chosen(surgery, 196, 1, 10))
  })

  it('go on over New Year in the next winter', () => {
    const last = croft.calendar.days.length - 1
    const all = yields(croft, last, 3)
    const own = all[chosen(croft, last, 3, 10)]!
    const rank = all.filter((kwh) => kwh < own).length + 1
    expect(Math.abs(rank - 20)).toBeLessThanOrEqual(4)
  })
})

describe('no sun', () => {
  /** Mean air of a day and the day before it, as 48 hours of the sky. [°C] */
  const airOf = (year: number, day: number): number => {
    const air = typicalOf(croft, croft.house.seed, WINTERS).airC(year)
    const first = croft.calendar.days[day - 1]!.start / 60
    return air.slice(first, first + 48).reduce((sum, c) => sum + c / 48, 0)
  }

  it('is the cold spell undercut once in R winters, the day before it included', () => {
    const minute = croft.calendar.days[14]!.start + 600
    for (const [winters, rank] of [
      [10, 20],
      [50, 4],
    ] as const) {
      const choice = { kind: 'none', cutHours: 24, winters, seed: croft.house.seed } as const
      const { sky, year } = spellYearOf(croft, minute, choice)!
      const own = airOf(year, 14)
      const colder = Array.from({ length: WINTERS }, (_, k) => airOf(k, 14)).filter((c) => c < own)
      expect(colder).toHaveLength(rank - 1)
      const window = windowOf(croft, sky, newScratch(croft), year, minute, minute + 1440)
      expect(window.acKw[0]!.every((kw) => kw === 0)).toBe(true)
    }
  })
})

describe('the minutes of a dull spell', () => {
  /** Kilowatt-hours of a day, and those above a limit. */
  const sky = typicalOf(croft, croft.house.seed, WINTERS)
  const scratch = newScratch(croft)
  const dayOf = (year: number, day: number, limitKw: number): { kwh: number; over: number } => {
    const { start, end } = croft.calendar.days[day]!
    const { acKw } = windowOf(croft, sky, scratch, year, start, end)
    let [kwh, over] = [0, 0]
    for (const kw of acKw[0]!) {
      kwh += kw / 60
      over += Math.max(0, kw - limitKw) / 60
    }
    return { kwh, over }
  }

  it('lose as much to a charge limit as those of typical days of the same yield', () => {
    // A limit of 0.5 kW over the spells of one January in two, three days each: thirty days.
    const limitKw = 0.5
    const spells = Array.from({ length: 10 }, (_, k) => 3 * k)
    const sum = { own: 0, kwh: 0, others: 0, flat: 0 }
    for (const day of spells) {
      const year = chosen(croft, day, 1, 2)
      const own = dayOf(year, day, limitKw)
      const alike = Array.from({ length: WINTERS }, (_, k) => dayOf(k, day, limitKw)).filter(
        ({ kwh }) => Math.abs(kwh / own.kwh - 1) < 0.1,
      )
      expect(alike.length).toBeGreaterThan(5)
      sum.own += own.over
      sum.kwh += own.kwh
      sum.others += alike.reduce((over, each) => over + each.over, 0) / alike.length
      // The clear day scaled down to the same yield: what a flat sky would lose.
      const { start, end } = croft.calendar.days[day]!
      const clear = windowOf(croft, plainSky(croft, 'clear'), scratch, 0, start, end)
      const clearKwh = clear.acKw[0]!.reduce((kwh, kw) => kwh + kw / 60, 0)
      for (const kw of clear.acKw[0]!) {
        sum.flat += Math.max(0, (kw * own.kwh) / clearKwh - limitKw) / 60
      }
    }
    expect(Math.abs(sum.own / sum.others - 1)).toBeLessThan(0.25)
    expect(sum.flat).toBeLessThan(0.7 * sum.own)
  })
})
