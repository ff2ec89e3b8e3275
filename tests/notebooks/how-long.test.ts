// The notebook "How long?", run as its reader would run it.

import type { AutonomyCurve, RideAnswer } from '@tideover/core'
import type { NotebookRun } from '@tideover/notebook/run'
import { beforeAll, describe, expect, it } from 'vitest'
import { chartsIn, htmlOf, notebookRunner, printedBy } from './outputs.js'

interface Values {
  answer: RideAnswer
  curves: { name: string; curve: AutonomyCurve }[]
  sentence: string
}

const runner = notebookRunner()

let run: NotebookRun
let values: Values
beforeAll(async () => {
  run = await runner.run('01-how-long.ipynb', { values: ['answer', 'curves', 'sentence'] })
  values = run.values as unknown as Values
}, 300_000)

const all = () => htmlOf(run)

describe('how long', () => {
  it('answers for all skies with shares, the promise no better than the bright case', () => {
    const { skies, bright, withoutGenerator } = values.answer
    expect(Object.keys(skies)).toEqual(['dull', 'none', 'typical', 'clear'])
    for (const [sky, { share }] of Object.entries(skies)) {
      expect(share, sky).toBeGreaterThanOrEqual(0)
      expect(share, sky).toBeLessThanOrEqual(1)
    }
    expect(skies.dull!.share!).toBeLessThanOrEqual(bright.share!)
    expect(withoutGenerator!.share!).toBeLessThanOrEqual(skies.dull!.share!)
  })

  it('tells how long the insulin fridge bears by what it keeps, four hours by public guidance', () => {
    const row = /insulin fridge<\/t[dh]>(.*?)<\/tr>/s.exec(all())![1]!
    expect(row.replaceAll(/<[^>]*>/g, ' ').trim()).toMatch(/\s240$/)
  })

  it('draws curves that fall from 1 and pass through the shares of the answer', () => {
    const { answer, curves } = values
    expect(curves.map(({ name }) => name)).toEqual([
      'dull sky',
      'typical skies',
      'dull sky, no generator',
    ])
    for (const { name, curve } of curves) {
      expect(curve.share[0], name).toBe(1)
      for (let i = 1; i < curve.share.length; i++) {
        expect(curve.share[i]!, name).toBeLessThanOrEqual(curve.share[i - 1]!)
      }
    }
    const atCut = curves.map(({ curve }) => curve.share[curve.hours.indexOf(answer.cutHours)])
    const { dull, typical } = answer.skies
    expect(atCut).toEqual([dull!.share, typical!.share, answer.withoutGenerator!.share])
  })

  it('says it in a sentence that names house, month, sky, start and share', () => {
    const { sentence, answer } = values
    const { share, medianHours } = answer.skies.dull!
    expect(sentence).toContain('Skerry Croft, a power cut of 24 hours in January')
    expect(sentence).toContain('dull sky (a day as dark as 1 January in 10 brings)')
    expect(sentence).toContain('from 40 % on the display, battery aged to 80 %')
    expect(sentence).toContain(`lasts ${Math.floor(medianHours)} hours in the middle case`)
    expect(sentence).toContain(`${Math.floor(100 * share!)} in 100 such cuts`)
  })

  it('shows two charts, their numbers as tables, and the log of the worst cut', () => {
    expect(chartsIn(all())).toBe(2)
    expect(all()).toContain('<caption>Skerry Croft: cuts that start in January</caption>')
    expect(all()).toContain('>cuts of 24 h it lasts [%]</th>')
    expect(all()).toContain('>stored at the end [kWh]</th>')
    expect(all()).toContain('>dull sky, no generator [%]</th>')
    expect(all()).toContain('The grid is gone.')
  })

  it('ends with the cautions', () => {
    const printed = printedBy(run, run.cells.length)
    for (const caution of values.answer.cautions) expect(printed).toContain(caution)
  })
})
