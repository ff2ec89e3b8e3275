// The typical sky where the winter sun hardly rises.
//
// Clearness of a subarctic station is 0.2 to 0.4 all year (common practice, no source), but from 64°
// on the clear sky of December gives less: twilight and low sun are not in it.

import { checkHouse, newDayHours, type Prepared, prepare, typicalOf } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse } from '../plain-house.js'

const YEARS = 30

function houseAt(latitudeDeg: number, december: number): Prepared {
  const site = { latitudeDeg, longitudeDeg: 20, elevationM: 0, timezone: 'UTC' }
  const sky = {
    clearness: [...(new Array(11).fill(0.33) as number[]), december],
    airC: new Array(12).fill(0),
  }
  return prepare(checkHouse(plainHouse({ site, sky })))
}

describe('a house beyond the reach of the winter sun', () => {
  it.each([64, 66, 69.65, 72, 78])(
    'has its typical years at %d° N under a clearness of 0.33',
    (h) => {
      const prepared = houseAt(h, 0.33)
      const sky = typicalOf(prepared, 5, YEARS)
      const hours = newDayHours()
      let june = 0
      for (const [d, day] of prepared.calendar.days.entries()) {
        for (let k = 0; k < YEARS; k++) {
          sky.fillHours(k, d, hours)
          let [ghi, clear] = [0, 0]
          for (let i = 0; i < hours.count; i++) {
            ghi += hours.ghi[i]!
            clear += hours.clear[i]!.ghi
          }
          if (!(ghi >= 0 && ghi <= clear * (1 + 1e-9))) throw new Error(`day ${d} is too bright`)
          if (day.month === 6) june += ghi
        }
      }
      expect(june).toBeGreaterThan(0)
    },
  )

  it('is not excused where the winter has a real day: 58° N', () => {
    expect(refusal(() => typicalOf(houseAt(58, 0.6), 5, 1))).toMatch(
      /^sky\.clearness\[11\] must be/,
    )
  })
})
