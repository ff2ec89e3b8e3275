// `check`: text for people, JSON for scripts, and exit codes.

import { describe, expect, it } from 'vitest'
import { folder, SAMPLES, SMALL_HOUSE, tideover } from './command.js'

const files = folder()
const small = files.write('small.yaml', SMALL_HOUSE)

describe.concurrent('check', () => {
  it.each(['croft', 'surgery', 'bungalow'])(
    'text of the %s stays within 80 columns and ends in cautions',
    async (name) => {
      const { status, out, err } = await tideover('check', `${SAMPLES}${name}.yaml`)
      expect([status, err]).toEqual([0, ''])
      for (const line of out.split('\n')) expect([...line].length).toBeLessThanOrEqual(80)
      expect(out).toMatch(/^ {4}Numbers: /m)
      expect(out).toMatch(/^ {4}Rests on: /m)
      expect(out).toMatch(/^ {4}Do: /m)
      expect(out.trimEnd()).toMatch(/Caution:\n[\s\S]*licensed people have the last word\.$/)
      expect(out).not.toMatch(/NaN|undefined|Infinity/)
    },
  )

  it('counts what it found in its first line', async () => {
    const { out } = await tideover('check', small)
    // The pump tolerates nothing; nothing wakes the empty island.
    expect(out).toMatch(
      /^Small, 1 module aged to 80 %: 2 to mend, \d to look at, \d good to know\./,
    )
    expect(out.indexOf('MEND')).toBeLessThan(out.indexOf('LOOK'))
    expect(out.indexOf('LOOK')).toBeLessThan(out.indexOf('GOOD TO KNOW'))
  })

  it('says so where nothing is to mend', async () => {
    const { out } = await tideover('check', `${SAMPLES}surgery.yaml`)
    expect(out.replaceAll('\n', ' ')).toContain('aged to 80 %: nothing to mend, 3 to look at')
    expect(out).not.toContain('MEND')
  })

  it('--json is one object with the documented keys', async () => {
    const { status, out, err } = await tideover('check', small, '--modules', '2', '--json')
    expect([status, err]).toEqual([0, ''])
    const answer = JSON.parse(out)
    expect(Object.keys(answer)).toEqual([
      ...['house', 'modules', 'health', 'findings', 'warnings', 'cautions'],
    ])
    expect(answer).toMatchObject({ house: 'Small', modules: 2, health: 0.8 })
    for (const finding of answer.findings) {
      expect(Object.keys(finding)).toEqual(['id', 'grade', 'what', 'numbers', 'restsOn', 'toDo'])
      for (const each of finding.numbers)
        expect(Object.keys(each)).toEqual(['name', 'value', 'unit'])
    }
    expect(answer.findings[0]).toMatchObject({ id: 'changeover-gap', grade: 'mend' })
    expect(answer.cautions.length).toBeGreaterThan(1)
  })

  it('more modules than the base allows are the input’s fault', async () => {
    const { status, out, err } = await tideover('check', small, '--modules', '4')
    expect([status, out]).toEqual([2, ''])
    expect(err).toMatch(/^modules must be a whole number 1\.\.3.*got 4\n$/)
  })

  it('a motor has both of its fields or none, and phases are 1 or 3', async () => {
    const text = SMALL_HOUSE.replace('w: 390', 'w: 390, motorHp: 1').replace(
      'ratedKva: 3,',
      'ratedKva: 3, phases: 2,',
    )
    const { status, err } = await tideover('check', files.write('wrong.yaml', text))
    expect(status).toBe(2)
    expect(err).toMatch(/inverter\.phases .*must be 1 or 3, got 2/)
    expect(err).toMatch(/loads\[0\]\.lockedRotorCode .*must be given beside motorHp.*, got nothing/)
  })
})
