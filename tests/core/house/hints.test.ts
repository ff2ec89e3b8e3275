// What a refused value is told beside what is needed: each case as somebody tired types it.

import { checkHouse, InputError } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { plainHouse } from '../plain-house.js'

/** The line of one changed field. */
function lineOf(change: Record<string, unknown>): string {
  try {
    checkHouse({ ...plainHouse({}), ...change })
  } catch (error) {
    if (error instanceof InputError) return error.message
  }
  return 'no fault'
}

const inverter = plainHouse({}).inverter as Record<string, unknown>
const stack = plainHouse({}).stack as Record<string, unknown>
const load = { name: 'all', tier: 'critical', w: 100 }

describe('a refused value', () => {
  it.each([
    [{ stack: { ...stack, reserve: '40%' } }, '; 40 % is written 0.4, got "40%"'],
    [{ stack: { ...stack, reserve: 40 } }, '; 40 % is written 0.4, got 40'],
    [{ stack: { ...stack, reserve: '37,5 %' } }, '; 37.5 % is written 0.375, got "37,5 %"'],
    [{ inverter: { ...inverter, ratedKva: '4,4' } }, '; with a decimal point: 4.4, got "4,4"'],
    [{ inverter: { ...inverter, ratedKva: '5' } }, '; without quotation marks: 5, got "5"'],
    [
      { inverter: { ...inverter, idleW: '60 W' } },
      '; the number alone, in the unit that is asked for, got "60 W"',
    ],
    [
      { loads: [{ ...load, at: '18:30-22:30' }] },
      '; one alone stands in brackets too: ["18:30-22:30"], got "18:30-22:30"',
    ],
    [
      { inverter: { ...inverter, whenEmpty: 'Collapse' } },
      '; did you mean collapses?, got "Collapse"',
    ],
    [{ inverter: { ...inverter, ratedKva: 5000 } }, '; 5000 VA is written 5, got 5000'],
    [
      { loads: [load, { ...load, name: 'other', tier: 'essential' }] },
      '; did you mean critical?, got "essential"',
    ],
    [{ invented: 'yes' }, '; yes is written true, got "yes"'],
    [{ invented: 'off' }, '; off is written false, got "off"'],
  ])('%j is told how it is written', (change, end) => {
    expect(lineOf(change).endsWith(end), lineOf(change)).toBe(true)
  })

  it.each([
    [{ stack: { ...stack, reserve: 400 } }, '[share of 1], got 400'],
    [{ inverter: { ...inverter, ratedKva: 'large' } }, '[kVA], got "large"'],
    [{ loads: [{ ...load, at: { from: '18:30' } }] }, 'got a group of fields (from)'],
    [{ inverter: { ...inverter, whenEmpty: 'explodes' } }, ', got "explodes"'],
    [{ invented: 'perhaps' }, 'true or false, got "perhaps"'],
  ])('%j is told no more than what is needed', (change, end) => {
    expect(lineOf(change).endsWith(end), lineOf(change)).toBe(true)
    expect(lineOf(change)).not.toContain(';')
  })
})
