// Words and numbers of the page, by hand.

import { describe, expect, it } from 'vitest'
import {
  casesText,
  gapText,
  grouped,
  hoursText,
  lastsText,
  percentDown,
} from '../../packages/page/src/words/numbers.js'
import { regionOf } from '../../packages/page/src/words/region.js'

describe('numbers', () => {
  it.each([
    [23.99, '23 hours'],
    [1.5, '1 hour'],
    [0.99, '59 minutes'],
    [0.02, '1 minute'],
    [0, '0 minutes'],
  ])('%f h is said as %s: rounded down', (hours, text) => expect(hoursText(hours)).toBe(text))

  it('a ride that was followed no further is more than that', () => {
    expect(lastsText(48, 48)).toBe('more than 48 hours')
    expect(lastsText(47.9, 48)).toBe('47 hours')
  })

  it.each([
    [0, 'no case'],
    [0.004, 'fewer than 1 of 100 cases'],
    [0.469, '46 of 100 cases'],
    [0.9999, '99 of 100 cases'],
    [1, 'every case'],
  ])('a share of %f is %s', (share, text) => expect(casesText(share)).toBe(text))

  it('a share that is good is rounded down, though a binary fraction lies below it', () => {
    expect(percentDown(0.29)).toBe('29\u00a0%')
    expect(percentDown(0.999)).toBe('99\u00a0%')
  })

  it.each([
    [null, 'any time'],
    [0, 'not at all'],
    [3, '3 minutes'],
    [60, '1 hour'],
    [90, '90 minutes'],
    [130, '2 hours'],
  ])('a gap of %s min is %s', (minutes, text) => expect(gapText(minutes)).toBe(text))

  it('thousands are set off, decimals are not', () => {
    expect([999, 1370, 1234567, 1234.5678].map(grouped)).toEqual([
      '999',
      '1,370',
      '1,234,567',
      '1,234.57',
    ])
  })
})

describe('words of the region', () => {
  it.each([
    ['Europe/London', 'a power cut', 'consumer unit', 'earth electrode'],
    ['America/New_York', 'an outage', 'panel', 'ground rod'],
    ['America/Indiana/Knox', 'an outage', 'panel', 'ground rod'],
    ['America/Sao_Paulo', 'a power cut', 'distribution board', 'earth electrode'],
    ['Pacific/Auckland', 'a blackout', 'switchboard', 'earth electrode'],
    ['Africa/Johannesburg', 'load-shedding', 'distribution board', 'earth electrode'],
    ['Asia/Kolkata', 'load-shedding', 'distribution board', 'earth electrode'],
    ['Europe/Oslo', 'a power cut', 'distribution board', 'earth electrode'],
  ])('%s says %s, %s and %s', (zone, aCut, board, electrode) => {
    const region = regionOf(zone)
    expect([region.aCut, region.board, region.electrode]).toEqual([aCut, board, electrode])
  })
})
