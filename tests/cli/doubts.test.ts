// `doubts`: text for people, JSON for scripts, and exit codes.

import { beforeAll, expect, it } from 'vitest'
import { type Ended, folder, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)
const ASKED = ['doubts', small, '--month', '2', '--hours', '2', '--years', '1']
let text: Ended
let json: Ended

beforeAll(async () => {
  ;[text, json] = await Promise.all([
    tideover(...ASKED),
    tideover(...ASKED, '--share', '0.9', '--json'),
  ])
}, 120_000)

it('text stays within 80 columns, tells ranges with their basis and ends in cautions', () => {
  expect([text.status, text.err]).toEqual([0, ''])
  for (const line of text.out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80)
  expect(text.out).toMatch(/^as promised +100 % +any +2 h +2 h$/m)
  expect(text.out).toContain('year 10 of its life')
  expect(text.out).toContain('- growth of loads: 0 to 40 %, 15 % to be planned with (*)')
  expect(text.out.trimEnd()).toMatch(/Caution:\n[\s\S]*licensed people have the last word\.$/)
  expect(text.out).not.toMatch(/NaN|undefined|Infinity|null/)
})

it('shows no clear sky before the others', () => {
  expect(text.out.indexOf('no sun')).toBeLessThan(text.out.indexOf('clear sky'))
})

it('--json is one object with the documented keys', () => {
  expect([json.status, json.err]).toEqual([0, ''])
  const answer = JSON.parse(json.out)
  expect(Object.keys(answer)).toEqual([
    ...['house', 'site', 'month', 'cutHours', 'modules', 'startSoc', 'health', 'years', 'winters'],
    ...['seed', 'promise', 'promised', 'doubts', 'expiry', 'cautions', 'slips', 'warnings'],
    'defaults',
  ])
  const figures = ['share', 'hardest', 'medianHours', 'p05Hours', 'horizonHours']
  expect(Object.keys(answer.promised)).toEqual(figures)
  for (const doubt of answer.doubts) {
    expect(Object.keys(doubt)).toEqual([
      ...['id', 'name', 'range', 'basis', 'ends', 'swingShare', 'swingHours'],
    ])
    for (const end of doubt.ends) expect(Object.keys(end.figures)).toEqual(figures)
  }
  expect(Object.keys(answer.expiry)).toEqual([
    ...['share', 'shareFrom', 'metNow', 'ageingPerYear', 'assumedHealth', 'assumedYear'],
    ...['assumedYearRange', 'lostInYear', 'mostYears', 'lostAtGrowth', 'mostGrowth'],
  ])
  expect(answer.expiry).toMatchObject({ share: 0.9, shareFrom: 'given', metNow: true })
})

it('every fault of the input is told, one a line', async () => {
  const wrong = ['--hours', '400', '--share', '90', '--month', '13', '--sky', 'grey']
  const { status, out, err } = await tideover('doubts', small, ...wrong)
  expect([status, out]).toEqual([2, ''])
  expect(err).toContain('--hours must be a number > 0 and <= 360 [h], got "400"')
  expect(err.trimEnd().split('\n')).toHaveLength(4)
})
