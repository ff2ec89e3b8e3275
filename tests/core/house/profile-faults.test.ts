// A load given as a standard profile: what stands beside it, and what of it is out of range.

import { checkHouse } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse } from '../plain-house.js'

const PROFILE = { kind: 'H0', kwhPerYear: 3500 }

function house(fields: object): unknown {
  return plainHouse({ loads: [{ name: 'whole', tier: 'critical', ...fields }] })
}

describe('a load given as a profile', () => {
  it('needs no other figure', () => {
    const { loads } = checkHouse(house({ profile: PROFILE }))
    expect(loads[0]!.profile).toEqual(PROFILE)
    expect(loads[0]!.w).toBeUndefined()
  })

  it.each([
    ['w', 60],
    ['cycle', { onMinutes: 1, offMinutes: 1 }],
    ['at', ['06:00-07:00']],
    ['days', ['mon']],
    ['pieces', 2],
    ['runs', 'heating season'],
  ])('leaves out %s', (field, value) => {
    const message = refusal(() => checkHouse(house({ profile: PROFILE, [field]: value })))
    expect(message).toMatch(
      new RegExp(
        `^loads\\[0\\]\\.${field} must be left out where a profile is given(, which has its own seasons)?, got `,
      ),
    )
    expect(message.split('\n')).toHaveLength(1)
  })

  it('is one of survey, meter file and profile: none and two are refused', () => {
    expect(refusal(() => checkHouse(house({})))).toBe(
      'loads[0].w must be given [W], or a meter file named in file, or a profile, got nothing',
    )
    expect(refusal(() => checkHouse(house({ file: 'meter.csv', profile: PROFILE })))).toBe(
      'loads[0].profile must be left out where a meter file is named, ' +
        'got a group of fields (kind, kwhPerYear)',
    )
  })

  it('is of a known kind, with an energy above nothing', () => {
    const fields = { kind: 'G0', kwhPerYear: 0 }
    expect(refusal(() => checkHouse(house({ profile: fields }))).split('\n')).toEqual([
      'loads[0].profile.kind must be one of H0, H25, got "G0"',
      'loads[0].profile.kwhPerYear must be a number > 0 and <= 1000000 [kWh], got 0',
    ])
  })
})
