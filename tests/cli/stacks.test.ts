// `stacks`: the same figures as a ride of each stack, the keys scripts rely on, text for people.

import { beforeAll, describe, expect, it } from 'vitest'
import { folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const house = files.write('six.yaml', SMALL_HOUSE.replace('modulesMax: 3', 'modulesMax: 6'))
const asked = ['--month', '2', '--hours', '7', '--share', '50%']
// biome-ignore lint/suspicious/noExplicitAny: what a script sees
let answer: any

beforeAll(async () => {
  const { status, out, err } = await tideover('stacks', house, ...asked, '--json')
  expect([status, err]).toEqual([0, ''])
  answer = JSON.parse(out)
}, 120_000)

describe('stacks --json', () => {
  it('has the documented keys', () => {
    for (const key of [
      ...['house', 'month', 'cutHours', 'sky', 'shareTarget', 'stacks', 'smallest', 'met'],
      ...['limits', 'nextSteps', 'advice', 'cautions', 'slips', 'warnings', 'defaults'],
    ]) {
      expect(answer).toHaveProperty(key)
    }
    for (const key of [
      ...['modules', 'usableKwh', 'price', 'worstHours', 'p05Hours', 'medianHours', 'share'],
      ...['hardest', 'addedHours', 'met'],
    ]) {
      expect(answer.stacks[0]).toHaveProperty(key)
    }
    expect(answer).toMatchObject({ month: 2, cutHours: 7, sky: 'dull', shareTarget: 0.5 })
    expect(answer.spell).toEqual({ winters: 10, days: 1 })
  })

  it('agrees with six rides, figure by figure, as far as a ride is followed', async () => {
    const counts = [1, 2, 3, 4, 5, 6]
    const rides = await Promise.all(
      counts.map((k) =>
        tideover('ride', house, ...asked, '--modules', `${k}`, '--years', '1', '--json'),
      ),
    )
    expect(answer.stacks.map(({ modules }: { modules: number }) => modules)).toEqual(counts)
    for (const [i, { out }] of rides.entries()) {
      const ride = JSON.parse(out)
      const { dull } = ride.skies
      const row = answer.stacks[i]
      expect([row.share, row.hardest, row.met]).toEqual([dull.share, dull.hardest, ride.met])
      for (const key of ['worstHours', 'p05Hours', 'medianHours']) {
        expect(Math.min(row[key], dull.horizonHours), `${key} of ${i + 1}`).toBe(dull[key])
      }
    }
    const smallest = rides.findIndex(({ out }) => JSON.parse(out).met) + 1
    expect(smallest).toBeGreaterThan(1)
    expect(answer).toMatchObject({ smallest, met: true })
  }, 240_000)
})

describe.concurrent('text', () => {
  it.each([
    ['that suffices', ['--hours', '7'], /^1, now/m],
    ['that does not', ['--hours', '24', '--share', '1'], /no stack of this base/],
  ])(
    'of a stack %s stays within 80 columns, names the case, and ends in cautions',
    async (_, more, says) => {
      const { status, out, err } = await tideover('stacks', house, ...more)
      expect([status, err]).toEqual([0, ''])
      for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80)
      expect(out.replaceAll('\n', ' ')).toContain('Under a dull sky (a day as dark as 1')
      expect(out).toContain('worst  1 in 20  middle')
      expect(out).toMatch(says)
      expect(out).toMatch(/Caution:\n[\s\S]*licensed people have the last word\./)
      expect(out).not.toMatch(/NaN|undefined|Infinity|null/)
    },
    240_000,
  )
})

describe.concurrent('wrong input', () => {
  it.each([
    [
      ['--share', '50'],
      '--share must be a share 0..1 or a percentage such as 62%; for 50 % write 0.5 or 50%, got "50"',
    ],
    [['--modules', '7'], 'modules must be a whole number 1..6, what the base allows, got 7'],
    [
      ['--sky', 'clear'],
      '--sky must be one of dull, none, typical, file (a clear sky is never shown alone), got "clear"',
    ],
    [
      ['--sky', 'file'],
      '--sky must be one of dull, none, typical: no sky.file is named, got "file"',
    ],
    [
      ['--hours', '0', '--month', '13'],
      '--month must be a whole number 1..12, got "13"\n--hours must be a number > 0 and <= 720 [h], got "0"',
    ],
  ])('%s', async (args, said) => {
    const { status, out, err } = await tideover('stacks', house, ...args)
    expect([status, out, err.trimEnd()]).toEqual([2, '', said])
  })
})
