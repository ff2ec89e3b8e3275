// `now`: what a display says, which minute is meant, and the keys scripts rely on.

import { describe, expect, it } from 'vitest'
import { folder, SAMPLES, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)
const AT = ['--at', '2025-01-14T18:00Z']

async function json(...args: string[]) {
  const { status, out, err } = await tideover('now', ...args, '--json')
  expect([status, err]).toEqual([0, ''])
  return JSON.parse(out)
}

describe.concurrent('now --soc', () => {
  it.each([
    [
      '62',
      '--soc must be a share 0..1 or a percentage such as 62%; for 62 % write 0.62 or 62%, got "62"',
    ],
    ['-0.1', '--soc must be a share 0..1 or a percentage such as 62%, got "-0.1"'],
    ['101', '--soc must be a share 0..1 or a percentage such as 62%, got "101"'],
    ['120%', '--soc must be a share 0..1 or a percentage such as 62%, got "120%"'],
    ['', '--soc must be a share 0..1 or a percentage such as 62%, got ""'],
    ['half', '--soc must be a share 0..1 or a percentage such as 62%, got "half"'],
  ])('%j is asked back', async (word, line) => {
    const { status, out, err } = await tideover('now', small, `--soc=${word}`, ...AT)
    expect([status, out, err.trimEnd()]).toEqual([2, '', line])
  })

  it('all that is wrong is told at once', async () => {
    const { status, err } = await tideover(
      'now',
      small,
      '--soc',
      '7',
      '--at',
      'six',
      '--hours',
      '0',
    )
    expect(status).toBe(2)
    expect(err.trimEnd().split('\n')).toHaveLength(3)
  })

  it('62% and 0.62 are one, and 5 points are taken off', async () => {
    const [a, b] = await Promise.all(
      ['62 %', '0.62'].map((word) => json(small, '--soc', word, ...AT)),
    )
    expect(a).toEqual(b)
    expect(a).toMatchObject({ soc: 0.62, at: '2025-01-14T18:00Z', otherYear: false, hours: 48 })
    expect(a.takenSoc).toBeCloseTo(0.57, 12)
  })
})

describe.concurrent('now --json', () => {
  it('without sun it lasts as by hand, and says when', async () => {
    // 5 kWh at 0.8, 0.57 of it less 0.1 and the cold's 0.04 of 15 °C: 1.72 kWh at 0.45 kW.
    const { skies } = await json(small, '--soc', '0.62', ...AT)
    const minutes = Math.ceil((60 * 0.43 * 4) / 0.45)
    const { lasts, batteryAlone, start } = skies.none
    expect(lasts.hours * 60).toBeCloseTo(minutes, 9)
    expect(Date.parse(lasts.givesOutAt) - Date.parse('2025-01-14T18:00Z')).toBe(minutes * 60000)
    expect(lasts).toMatchObject({ atLeastHours: false, first: { name: 'pump' }, sunAt: null })
    expect([batteryAlone, start]).toEqual([null, null])
    expect(Object.keys(skies)).toEqual(['dull', 'none', 'clear'])
  })

  it('a time without an offset is that of the wall, in any year that of the house', async () => {
    const [utc, wall] = await Promise.all([
      json(small, '--soc', '0.62', '--at', '2025-07-14T17:00Z'),
      json(small, '--soc', '0.62', '--at', '2031-07-14T18:00'),
    ])
    expect(wall).toEqual({ ...utc, otherYear: true })
  })

  it('without a time it is now, by the clock of the machine', async () => {
    const before = Math.floor(Date.now() / 60000) * 60000
    const { at } = await json(small, '--soc', '0.62')
    const there = new Date(at)
    there.setUTCFullYear(new Date(before).getUTCFullYear())
    // 29 February is the 28th; a run over midnight of New Year is a minute apart.
    if (new Date(before).getUTCDate() === 29 && new Date(before).getUTCMonth() === 1) return
    expect(Math.abs(there.getTime() - before) % (365 * 86400e3)).toBeLessThanOrEqual(300e3)
  })
})

it('the croft at six: how long, what comes, what to switch off, when to pull the cord', async () => {
  const { status, out } = await tideover('now', `${SAMPLES}croft.yaml`, '--soc', '62%', ...AT)
  expect(status).toBe(0)
  for (const part of [
    'Skerry Croft, 18:00, off, battery at 62 % (counted as 57 %, for a reading may',
    'if nobody starts\nthe generator',
    'First to\ngive out: boiler pump',
    'What comes, under the dull sky:',
    'Must stay on, for your decision only: boiler pump',
    'Generator, by hand: pull the cord by',
    'go by 21:59; then',
    'A generator runs outdoors',
  ]) {
    expect(out).toContain(part)
  }
  // The clear sky is never first.
  expect(out.indexOf('dull sky ')).toBeLessThan(out.indexOf('clear sky'))
})
