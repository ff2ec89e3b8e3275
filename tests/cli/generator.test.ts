// `generator`: text for people, JSON for scripts, and exit codes.

import { beforeAll, expect, it } from 'vitest'
import { type Ended, folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)
const withSet = files.write(
  'set.yaml',
  `${SMALL_HOUSE}person: {}
generator:
  ratedKw: 2
  tankL: 5
  cansL: 40
  litresPerHour: { none: 0.3, half: 0.5, full: 0.8 }
  start: by hand
`,
)
const ASKED = ['--days', '1', '--years', '1', '--quiet', '20:00-08:00']
let text: Ended
let json: Ended
let bare: Ended

beforeAll(async () => {
  ;[text, json, bare] = await Promise.all([
    tideover('generator', withSet, ...ASKED),
    tideover('generator', withSet, ...ASKED, '--start-fails', '0.1', '--json'),
    tideover('generator', small, ...ASKED),
  ])
}, 120_000)

it('text stays within 80 columns and ends in cautions', () => {
  for (const { status, out, err } of [text, bare]) {
    expect([status, err]).toEqual([0, ''])
    for (const line of out.split('\n')) {
      if (!line.startsWith('  ')) expect([...line].length).toBeLessThanOrEqual(80)
    }
    expect(out.trimEnd()).toMatch(/Caution:\n[\s\S]*licensed people have the last word\.$/)
    expect(out).toContain('carbon monoxide')
    expect(out).not.toMatch(/NaN|undefined|Infinity|null/)
    expect(out.indexOf('no sun')).toBeLessThan(out.indexOf('clear sky'))
  }
})

it('tells what may be kept in Great Britain, and that petrol is meant', () => {
  const words = text.out.replace(/\s+/g, ' ')
  expect(words).toContain('If it is petrol: up to 30 l may be kept at home without notifying')
  expect(words).toContain('45 l is more')
})

it('says beside the litres of the headline which sky takes most, where one takes more', () => {
  const { promise, closer } = JSON.parse(json.out)
  const litres = (sky: string): number => Math.ceil(closer.skies[sky].litres.oneIn20)
  const most = Math.max(...['dull', 'none', 'typical'].map(litres))
  const own = litres(promise)
  const more = most > own ? `, or ${most} l to cover ` : '. 19 cuts in 20'
  expect(text.out.replace(/\s+/g, ' ')).toContain(`: store ${own} l${more}`)
})

it('says first that the house has no generator, and what was supposed', () => {
  expect(bare.out).toMatch(/^There is no generator in this house file\. Supposed instead/)
  expect(text.out).not.toContain('Supposed instead')
})

it('--json is one object with the documented keys', () => {
  expect([json.status, json.err]).toEqual([0, ''])
  const answer = JSON.parse(json.out)
  expect(Object.keys(answer)).toEqual([
    ...['house', 'site', 'days', 'modules', 'startSoc', 'health', 'years', 'winters', 'seed'],
    ...['promise', 'everyMinutes', 'supposed', 'set', 'person', 'months', 'closer', 'rule'],
    ...['cautions', 'slips', 'warnings', 'defaults'],
  ])
  expect(answer.months).toHaveLength(12)
  expect(Object.keys(answer.closer)).toEqual([
    ...['month', 'skies', 'dryShare', 'lasting', 'withoutSet', 'middle', 'worst', 'quiet'],
    'failing',
  ])
  expect(Object.keys(answer.closer.skies)).toEqual(['dull', 'none', 'typical', 'clear'])
  for (const { figures } of answer.months) {
    expect(Object.keys(figures)).toEqual(['starts', 'litres', 'runHours', 'setStarts', 'pours'])
    expect(figures.litres.mean).toBeLessThanOrEqual(figures.litres.worst)
  }
  expect(answer.closer.failing.at(-1)).toMatchObject({ name: 'as asked', startFailsShare: 0.1 })
})

it('every fault of the input is told, one a line', async () => {
  const wrong = ['--days', '0', '--quiet', '22-7', '--start-fails', '5', '--set', 'big']
  const { status, out, err } = await tideover('generator', withSet, ...wrong)
  expect([status, out]).toEqual([2, ''])
  expect(err).toContain('--quiet must be two different times of the clock such as 22:00-07:00')
  expect(err.trimEnd().split('\n')).toHaveLength(4)
})

it('a set is supposed only where there is none', async () => {
  const { status, err } = await tideover('generator', withSet, '--set', '3')
  expect(status).toBe(2)
  expect(err).toBe('--set must be left out: the house has a generator, got 3\n')
})
