// Where nothing trips and nobody tends anything, a module more never shortens a ride.

import { checkHouse, prepare, rideStacks, stackRows } from '@tideover/core'
import fc from 'fast-check'
import { expect, it } from 'vitest'
import { plainHouse, solar } from '../../plain-house.js'
import { share } from '../../random-house.js'

const random = fc.record({
  usableKwh: share(1, 6),
  loadW: share(80, 600),
  idleW: share(0, 80),
  health: share(0.6, 1),
  month: fc.integer({ min: 1, max: 12 }),
  hasSun: fc.boolean(),
})

it('more modules, longer rides and no smaller share', () => {
  fc.assert(
    fc.property(random, ({ usableKwh, loadW, idleW, health, month, hasSun }) => {
      const house = checkHouse(
        plainHouse({
          arrays: hasSun ? [solar('throttles', 60)] : [],
          inverter: { ratedKva: 5, idleW, roundTrip: 0.9 },
          stack: {
            module: { usableKwh, chargeKw: 2, dischargeKw: 3 },
            ...{ modules: 1, modulesMax: 3, health, place: 'house' },
            // A module's own draw would be a reason for less.
            ...{ electronicsW: 0, selfDischargePerMonth: 0 },
          },
          loads: [{ name: 'pump', tier: 'critical', w: loadW }],
        }),
      )
      const prepared = prepare(house)
      const rows = stackRows(
        house,
        rideStacks(prepared, { month, hours: 12 }, () => {}),
        undefined,
      )
      for (const [i, row] of rows.slice(1).entries()) {
        for (const key of ['worstHours', 'p05Hours', 'medianHours', 'share'] as const) {
          expect(row[key]!, `${key} of ${row.modules}`).toBeGreaterThanOrEqual(rows[i]![key]!)
        }
      }
    }),
    { seed: 11, numRuns: 5 },
  )
}, 120_000)
