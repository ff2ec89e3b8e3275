// `switch-off`: keys, hours by hand, and the sentence on top.

import { describe, expect, it } from 'vitest'
import { folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const lamp = files.write(
  'lamp.yaml',
  SMALL_HOUSE.replace('inverter: { ratedKva: 3, ', 'inverter: { ratedKva: 3.2, ').replace(
    'w: 390 }',
    'w: 290 }\n  - { name: lamp, tier: comfort, w: 100 }\ncomfort: { dropBelow: 0.15, returnAt: 0.3 }',
  ),
)
const ASKED = ['switch-off', lamp, '--month', '2', '--sky', 'none', '--start-soc', '0.55']

describe.concurrent('switch-off', () => {
  it('--json: the lamp adds what its energy is worth', async () => {
    const { status, out, err } = await tideover(...ASKED, '--json')
    expect([status, err]).toEqual([0, ''])
    const answer = JSON.parse(out)
    for (const key of [
      ...['house', 'site', 'month', 'cutHours', 'modules', 'startSoc', 'health', 'seed', 'sky'],
      ...['spell', 'starts', 'horizonHours', 'withGenerator', 'comfortOffBelow', 'base', 'loads'],
      ...['events', 'cautions', 'slips', 'warnings', 'defaults'],
    ]) {
      expect(answer).toHaveProperty(key)
    }
    // 4 kWh from 55 % to 15 with the lamp, on to 14 without it (10 and the cold's 4 at 15 °C).
    const [row] = answer.loads
    const minutes = 60 * ((0.41 * 4) / 0.35 - (0.4 * 4) / 0.45 - (0.01 * 4) / 0.35)
    expect(row).toMatchObject({ name: 'lamp', tier: 'comfort', place: 1 })
    for (const key of ['medianHours', 'p05Hours', 'worstHours']) {
      expect(Math.abs(60 * row.alone[key] - minutes)).toBeLessThanOrEqual(2)
    }
    expect(answer).toMatchObject({ sky: 'none', withGenerator: null, starts: 28 * 1440 })
    expect(answer.loads[1]).toMatchObject({ name: 'pump', tier: 'critical', alone: null })
  })

  it('says it in one sentence, and marks what must stay on', async () => {
    const { out } = await tideover(...ASKED)
    expect(out).toMatch(/^Switch off lamp first: it adds 1 hour in the middle case\./)
    expect(out).toContain('must stay on: for your decision only')
    expect(out.replace(/\s+/g, ' ')).toContain(
      'a typical electric shower, 8.5 kW for 8 min: no, it takes 8.5 kVA, the battery inverter is rated 3.2 kVA.',
    )
    expect(out.replace(/\s+/g, ' ')).toContain('no sun (a day as cold as 1 February in 10 brings)')
    expect(out).toContain('Caution:')
  })

  it.each([
    [['--sky', 'clear'], '--sky must be one of dull, none, got "clear"'],
    [['--month', '13'], '--month must be a whole number 1..12, got "13"'],
    [['--modules', '9'], 'modules must be a whole number 1..3, what the base allows, got 9'],
  ])('%j is refused', async (words, line) => {
    const { status, out, err } = await tideover('switch-off', lamp, ...words)
    expect([status, out, err.trimEnd()]).toEqual([2, '', line])
  })
})
