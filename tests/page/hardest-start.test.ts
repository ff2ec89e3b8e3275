// The start with which the form of a page begins, by hand.

import type { Prepared, Rides } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { hardestStart } from '../../packages/page/src/hardest-start.js'
import { UTC_2025 } from '../core/plain-house.js'

const prepared = { calendar: UTC_2025 } as Prepared

/** Rides of the starts of one day, by the minute of it. */
function day(from: number, minutes: (s: number) => number) {
  const column = Int32Array.from({ length: 1440 }, (_, s) => minutes(s))
  return { from, rides: { minutes: column } as unknown as Rides }
}

describe('the hardest start', () => {
  it('is the shortest ride that begins on a full hour', () => {
    // 17:59 would be worse, but the form has full hours.
    const second = day(1440, (s) => (s === 17 * 60 + 59 ? 1 : s === 17 * 60 ? 90 : 600))
    expect(hardestStart(prepared, [day(0, () => 600), second])).toEqual({ day: 2, hour: 17 })
  })

  it('is the earliest of equals', () => {
    expect(hardestStart(prepared, [day(0, () => 600), day(1440, () => 600)])).toEqual({
      day: 1,
      hour: 0,
    })
  })

  it('is none where none begins on one', () => {
    expect(hardestStart(prepared, [])).toBeNull()
  })
})
