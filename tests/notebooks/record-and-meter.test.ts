// The notebooks that need no long answer: the published record, and a meter file made a load.

import type { NotebookRun } from '@tideover/notebook/run'
import { beforeAll, describe, expect, it } from 'vitest'
import { chartsIn, htmlOf, notebookRunner, printedBy, tablesIn } from './outputs.js'

const runner = notebookRunner()

describe('the published record', () => {
  interface Check {
    what: string
    published: number
    here: number
    allowed: number
    source: string
  }
  let run: NotebookRun
  let checks: Check[]
  beforeAll(async () => {
    run = await runner.run('08-published-record.ipynb', { values: ['checks'] })
    checks = run.values.checks as Check[]
  }, 120_000)

  it('compares figures of ten sources, and each lies within what is allowed', () => {
    expect(checks).toHaveLength(43)
    expect(new Set(checks.map(({ source }) => source)).size).toBeGreaterThanOrEqual(10)
    for (const { what, published, here, allowed, source } of checks) {
      expect(Math.abs(here - published), `${what} (${source})`).toBeLessThanOrEqual(allowed)
    }
    expect(printedBy(run)).toContain('43 of 43 figures agree within what is allowed')
  })

  it('allows no more than hundredths, or what the sources say of themselves', () => {
    // FAO rounds to 0.1 and has series of its own; a pyranometer is good to 3 %, a half-hour to 5 %.
    const wide = checks.filter(({ published, allowed }) => allowed > 0.01 * Math.abs(published))
    const told = /FAO|NREL, baseline|Newcombe/
    expect(wide.filter(({ source }) => !told.test(source) && source !== 'by hand, above')).toEqual(
      [],
    )
    for (const { source, allowed } of wide) if (source.includes('FAO')) expect(allowed).toBe(0.3)
  })

  it('draws the sun above the air and a measured day, and shows every figure in a table', () => {
    expect(chartsIn(htmlOf(run))).toBe(2)
    expect(tablesIn(htmlOf(run))).toBe(10)
    for (const { what } of checks) expect(htmlOf(run)).toContain(`>${what}<`)
  })
})

describe('from a meter file to a load', () => {
  interface Values {
    totalKwh: number
    peakKw: number
    january: number[]
    july: number[]
    kwhRows: { load: string; 'January [kWh a day]': number }[]
    peaks: { kwh: number; mostKw: number; minutesOver: number }[]
    keptTo: number
    yearKwh: number
  }
  let run: NotebookRun
  let values: Values
  beforeAll(async () => {
    const names = ['totalKwh', 'peakKw', 'january', 'july', 'kwhRows', 'peaks', 'keptTo', 'yearKwh']
    run = await runner.run('06-meter-to-load.ipynb', { values: names })
    values = run.values as unknown as Values
  }, 120_000)
  const kwhADay = (day: readonly number[]): number => day.reduce((a, b) => a + b, 0) / 4

  it('reads the year that the publisher sums to 9418.4 kWh, with 8.383 kW at most', () => {
    // data-samples/README.md, from the package's own rows. An hour of spring is there twice.
    expect(Math.abs(values.totalKwh - 9418.4)).toBeLessThan(2)
    expect(values.peakKw).toBe(8.383)
    expect(values.january).toHaveLength(96)
    expect(kwhADay(values.january)).toBeGreaterThan(kwhADay(values.july))
  })

  it('takes what must stay on out of the meter, and counts it once', () => {
    const rows = new Map(values.kwhRows.map((row) => [row.load, row['January [kWh a day]']]))
    // By hand: 340 W for 11 h, 750 W for 44 min, 150 W for 20 of 55 minutes, 12 W for 24 h.
    const byHand = {
      'oxygen concentrator': 3.74,
      'well pump': 0.55,
      refrigerator: 1.309,
      router: 0.288,
    }
    for (const [name, kwh] of Object.entries(byHand)) {
      expect(Math.abs(rows.get(name)! - kwh), name).toBeLessThan(0.01)
    }
    // The rest of January is the meter's less these. Weekdays of 2025 take other days of 2008 nearby.
    const kept = Object.values(byHand).reduce((a, b) => a + b, 0)
    const rest = rows.get('rest of the house')! / (kwhADay(values.january) - kept)
    expect(rest).toBeGreaterThan(0.93)
    expect(rest).toBeLessThan(1.07)
  })

  it('has the recorded week as published, and draws minutes with its energy and more of its peaks', () => {
    const [recorded, drawn, flat] = values.peaks
    // data-samples/README.md: 238.8 kWh, 8.666 kW at most.
    expect(Math.abs(recorded!.kwh - 238.8)).toBeLessThan(0.05)
    expect(recorded!.mostKw).toBe(8.666)
    expect(Math.abs(drawn!.kwh - flat!.kwh)).toBeLessThan(1e-6)
    expect(Math.abs(recorded!.kwh - flat!.kwh)).toBeLessThan(0.05)
    expect(values.keptTo).toBeLessThan(1e-6)
    expect(flat!.mostKw).toBeLessThan(recorded!.mostKw)
    expect(flat!.minutesOver).toBeLessThan(recorded!.minutesOver)
    expect(drawn!.mostKw).toBeGreaterThan(flat!.mostKw)
    expect(drawn!.minutesOver).toBeGreaterThan(flat!.minutesOver)
  })

  it('scales a profile to the kWh of the year', () => {
    expect(Math.abs(values.yearKwh - values.totalKwh)).toBeLessThan(0.01)
  })

  it('draws three charts and says what was understood', () => {
    expect([chartsIn(htmlOf(run)), tablesIn(htmlOf(run))]).toEqual([3, 5])
    expect(htmlOf(run)).toContain('A stamp marks the start of its interval.')
    expect(printedBy(run)).toContain('taken as nothing there')
  })
})
