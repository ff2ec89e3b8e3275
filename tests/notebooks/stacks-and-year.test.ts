// The notebooks that compare: stacks side by side, the year by month and hour, and what is doubted.

import type { AutonomyCurve, DoubtsAnswer, StacksAnswer, YearAnswer } from '@tideover/core'
import type { NotebookRun } from '@tideover/notebook/run'
import { beforeAll, describe, expect, it } from 'vitest'
import { chartsIn, htmlOf, notebookRunner, printedBy, tablesIn } from './outputs.js'

const runner = notebookRunner()
const RUNNING = 300_000

/** The surgery's module, as its house file states it. */
const MODULE = { usableKwh: 5.7, price: 3150, most: 6 }

describe('how many modules', () => {
  let run: NotebookRun
  let answer: StacksAnswer
  let byHand: number[]
  let curves: { name: string; curve: AutonomyCurve }[]
  let sentence: string
  beforeAll(async () => {
    const names = ['answer', 'byHand', 'curves', 'sentence']
    run = await runner.run('02-how-many-modules.ipynb', { values: names })
    ;({ answer, byHand, curves, sentence } = run.values as never)
  }, RUNNING)

  it('has a row for every stack of the base: its energy aged to 80 %, and its price', () => {
    expect(answer.stacks.map(({ modules }) => modules)).toEqual([1, 2, 3, 4, 5, 6])
    for (const { modules, usableKwh, price } of answer.stacks) {
      expect(usableKwh).toBeCloseTo(0.8 * MODULE.usableKwh * modules, 9)
      expect(price).toBe(MODULE.price * modules)
    }
  })

  it('lasts no shorter with more modules, where nobody has to tend anything', () => {
    for (const [i, row] of answer.stacks.entries()) {
      const less = answer.stacks[i - 1]
      if (less === undefined) continue
      expect(row.medianHours).toBeGreaterThanOrEqual(less.medianHours)
      expect(row.worstHours).toBeGreaterThanOrEqual(less.worstHours!)
      expect(row.share).toBeGreaterThanOrEqual(less.share!)
      expect(row.pricePerAddedHour).toBeCloseTo(MODULE.price / row.addedHours!, 6)
    }
  })

  it('names the fewest that meet the target', () => {
    const enough = answer.stacks.find(({ share }) => share! >= 0.8)!
    expect(answer.smallest).toBe(enough.modules)
    expect(sentence).toContain(`takes ${enough.modules} modules`)
  })

  it('has a curve for every second stack, which falls from all cuts through the share of its row', () => {
    expect(curves.map(({ name }) => name)).toEqual(['2 modules', '4 modules', '6 modules'])
    for (const [i, { name, curve }] of curves.entries()) {
      expect(curve.share[0], name).toBe(1)
      expect([...curve.share], name).toEqual([...curve.share].sort((a, b) => b - a))
      expect(curve.share[curve.hours.indexOf(18)], name).toBe(answer.stacks[2 * i + 1]!.share)
    }
  })

  it('lies near the hand figure: start less lower limit, over what must stay on and what stands', () => {
    // In July: fridge 130 W for 16 of 40 min, 75 W and 45 W all day, 160 W for 10 h on 23 of 31 days:
    // 221.5 W. Idle draw 70 W, electronics 10 W a module; the inverter loses up to 20 W besides.
    const kwh = (0.45 - 0.12) * 0.8 * MODULE.usableKwh
    const loads = 0.052 + 0.075 + 0.045 + (0.16 * 10 * 23) / 31 / 24
    for (const [i, hours] of byHand.entries()) {
      const standing = 0.07 + 0.01 * (i + 1)
      const drawKw = ((i + 1) * kwh) / hours
      expect(drawKw, `${i + 1} modules`).toBeGreaterThan(loads + standing)
      expect(drawKw, `${i + 1} modules`).toBeLessThan(loads + standing + 0.02)
    }
  })

  it('has one module more among the next steps, with the figures of its own row', () => {
    const step = answer.nextSteps.find(({ what }) => what.startsWith('one module more'))!
    const { medianHours, worstHours, share, price } = step
    const row = answer.stacks[answer.stepsFrom]!
    expect([medianHours, worstHours, share, price]).toEqual([
      row.medianHours,
      row.worstHours,
      row.share,
      MODULE.price,
    ])
    for (const { what } of answer.nextSteps) expect(htmlOf(run)).toContain(what)
  })

  it('draws the stacks and shows their numbers, with the cautions', () => {
    expect([chartsIn(htmlOf(run)), tablesIn(htmlOf(run))]).toEqual([2, 5])
    for (const caution of answer.cautions) expect(printedBy(run)).toContain(caution)
  })
})

describe('the worst of the year', () => {
  let run: NotebookRun
  let answer: YearAnswer
  let kept: number
  beforeAll(async () => {
    const names = ['answer', 'kept', 'sentence']
    run = await runner.run('03-worst-of-the-year.ipynb', { values: names })
    ;({ answer, kept } = run.values as never)
  }, RUNNING)

  it('finds the hardest month in the winter of the south, and midsummer without loss', () => {
    expect(answer.months.map(({ month }) => month)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])
    // FAO-56, table 2.6: at 46° S the sun above the air is least in June.
    expect([5, 6, 7]).toContain(answer.hardestMonth)
    const share = (month: number): number => answer.months[month - 1]!.figures.share!
    expect(share(12)).toBeGreaterThan(share(6))
    expect(Math.min(...answer.months.map(({ figures }) => figures.share!))).toBe(
      share(answer.hardestMonth),
    )
  })

  it('knows what must stay on in June by hand', () => {
    // Fridge 130 W for 16 of 40 min, 75 W and 45 W all day, 160 W for 10 h on 21 of 30 days: June
    // 2025 begins on a Sunday. 1.248 + 1.8 + 1.08 + 1.6 * 21 / 30 kWh a day.
    expect(answer.hardestMonth).toBe(6)
    expect(Math.abs(kept - 5.248)).toBeLessThan(0.03)
  })

  it('tells the worst starts, the shortest first, in which no energy vanishes', () => {
    const worst = answer.worst!
    expect(worst).toHaveLength(5)
    for (const [i, { rideMinutes, energy, tried }] of worst.entries()) {
      if (i > 0) expect(rideMinutes).toBeGreaterThanOrEqual(worst[i - 1]!.rideMinutes)
      const { startKwh, solarKwh, generatorKwh, leftKwh } = energy
      const went =
        energy.criticalKwh + energy.comfortKwh + energy.standingKwh + energy.conversionKwh
      expect(Math.abs(startKwh + solarKwh + generatorKwh - went - leftKwh)).toBeLessThan(1e-9)
      // Three modules aged to 80 % begin at 45 %: 6.156 kWh.
      expect(startKwh).toBeCloseTo(0.45 * 0.8 * 3 * MODULE.usableKwh, 6)
      for (const { rideMinutes: changed } of tried) {
        expect(changed).toBeGreaterThanOrEqual(rideMinutes)
      }
    }
  })

  it('draws five figures, each with its numbers', () => {
    expect([chartsIn(htmlOf(run)), tablesIn(htmlOf(run))]).toEqual([5, 5])
    expect(printedBy(run)).toContain('The hardest month is June')
    for (const { local } of answer.worst!) expect(htmlOf(run)).toContain(local)
  })
})

describe('how sure', () => {
  let run: NotebookRun
  let answer: DoubtsAnswer
  let ranges: [number, number][]
  let drawn: { seed: number; share: number }[]
  beforeAll(async () => {
    const names = ['answer', 'ranges', 'drawn']
    run = await runner.run('07-how-sure.ipynb', { values: names })
    ;({ answer, ranges, drawn } = run.values as never)
  }, RUNNING)
  const end = (id: string, at: string): number => {
    const doubt = answer.doubts.find(({ name }) => name === id)!
    return doubt.ends.find((one) => one.at === at)!.figures.share!
  }

  it('orders the doubts by what they move, each swing that of its own ends', () => {
    const promised = answer.promised.share!
    const swings = answer.doubts.map(({ swingShare }) => swingShare)
    expect(swings).toEqual([...swings].sort((a, b) => b - a))
    for (const { ends, swingShare, basis } of answer.doubts) {
      const shares = [promised, ...ends.map(({ figures }) => figures.share!)]
      expect(swingShare).toBeCloseTo(Math.max(...shares) - Math.min(...shares), 9)
      expect(basis).not.toBe('')
    }
  })

  it('is moved the way each thing must move it', () => {
    const promised = answer.promised.share!
    const worse = [
      ['growth of loads', '40 % more'],
      ['growth of loads', '15 % more'],
      ['island solar', 'never back'],
      ['battery age', 'aged to 70 %'],
      ['display error', '10 points less'],
      ['length of the cut', '20 h'],
    ] as const
    const better = [
      ['battery age', 'new'],
      ['display error', '3 points less'],
      ['charge at start', 'full'],
      ['sky', 'clear sky'],
    ] as const
    for (const [name, at] of worse) expect(end(name, at), at).toBeLessThanOrEqual(promised)
    for (const [name, at] of better) expect(end(name, at), at).toBeGreaterThanOrEqual(promised)
    expect(end('growth of loads', '40 % more')).toBeLessThanOrEqual(
      end('growth of loads', '15 % more'),
    )
  })

  it('is promised under the same sky as the draw of its own seed', () => {
    expect(drawn[0]).toEqual({ seed: 7, share: answer.promised.share })
    expect(Math.abs(drawn[1]!.share - drawn[0]!.share)).toBeLessThan(0.1)
  })

  it('says how well years know a share: by hand from Wilson 1927, 16 of 20 is 0.584 to 0.919', () => {
    // centre (16 + z²/2) / (20 + z²), half-width z sqrt(20 · 0.8 · 0.2 + z²/4) / (20 + z²), z 1.96:
    // (16 + 1.9208) / 23.8416 = 0.75166, 1.96 sqrt(3.2 + 0.9604) / 23.8416 = 0.16768.
    expect(Math.abs(ranges[3]![0] - 0.58398)).toBeLessThan(1e-4)
    expect(Math.abs(ranges[3]![1] - 0.91934)).toBeLessThan(1e-4)
    for (const [i, [low, high]] of ranges.entries()) {
      if (i > 0) expect(high - low).toBeLessThan(ranges[i - 1]![1] - ranges[i - 1]![0])
    }
  })

  it('expires: 80 % is year 10 at 2 % a year, and later it is lost', () => {
    expect(answer.expiry.assumedYear).toBeCloseTo((1 - 0.8) / 0.02, 9)
    expect(answer.expiry.lostInYear).toBeGreaterThan(10)
    expect(htmlOf(run)).toContain(`>year ${answer.expiry.lostInYear}<`)
    expect([chartsIn(htmlOf(run)), tablesIn(htmlOf(run))]).toEqual([2, 4])
  })
})
