// What runs when power is back in place of the turn it missed, and what it starts with.

import { checkHouse, demandOf, rideLoads, startsIn } from '@tideover/core'
import { expect, it } from 'vitest'
import { plainHouse, UTC_2025 } from '../plain-house.js'

const AT = ['00:30-05:30']

it('a thermostat and an event run on return; a car, hours and a steady load by the clock', () => {
  const loads = [
    { name: 'fridge', w: 90, cycle: { onMinutes: 14, offMinutes: 31 } },
    { name: 'kettle', w: 2000, events: { perDay: 6, minutes: 3 } },
    { name: 'car', w: 7000, charging: { kwhPerDay: 7 }, at: AT },
    { name: 'lamp', w: 40, at: AT },
    { name: 'router', w: 10 },
  ].map((load) => ({ tier: 'critical', ...load }))
  const demand = demandOf(checkHouse(plainHouse({ loads })), UTC_2025)
  const onReturn = rideLoads(demand).map(({ wantedUpTo }) => wantedUpTo === null)
  expect(onReturn).toEqual([true, true, false, false, false])
  // Only the thermostat comes back together with others: 90 W on or owed.
  const { criticalKw, cycling } = demand.together!
  expect(cycling[0]!.map(({ load }) => load.name)).toEqual(['fridge'])
  expect(Math.max(...criticalKw.subarray(0, 1440))).toBeCloseTo(0.09, 5)
})

it('a start is a rise, for what follows the air a rise from nothing', () => {
  const byAir: [number, number][] = [
    [0, 100],
    [10, 0],
  ]
  expect([startsIn({}, 0.1, 0.2), startsIn({}, 0.2, 0.2), startsIn({}, 0.2, 0.1)]).toEqual([
    ...[true, false, false],
  ])
  expect([startsIn({ byAir }, 0, 0.1), startsIn({ byAir }, 0.1, 0.2)]).toEqual([true, false])
})
