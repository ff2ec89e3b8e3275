// Solar on another phase than the island's gives nothing in a cut.

import { checkHouse, newScratch, plainSky, prepare, windowOf } from '@tideover/core'
import { expect, it } from 'vitest'
import { plainHouse, solar } from '../plain-house.js'

function dayKwh(phases: 1 | 3, phase: string | undefined): number {
  const array = solar('throttles')
  const inverter = { ...(array.inverter as object), ...(phase === undefined ? {} : { phase }) }
  const island = { ratedKva: 5, phases, phase: 'L1' }
  const house = checkHouse(plainHouse({ arrays: [{ ...array, inverter }], inverter: island }))
  const prepared = prepare(house)
  const sky = plainSky(prepared, 'clear')
  const { acKw } = windowOf(prepared, sky, newScratch(prepared), 0, 180 * 1440, 181 * 1440)
  return acKw.flatMap((kw) => [...kw]).reduce((sum, kw) => sum + kw / 60, 0)
}

it.each([
  [1, undefined, true],
  [1, 'L1', true],
  [1, 'L2', false],
  [1, 'three', false],
  [3, 'L2', true],
  [3, 'three', true],
] as const)('an island of %d phase(s) on L1, solar on %s', (phases, phase, gives) => {
  expect(dayKwh(phases, phase) > 0).toBe(gives)
})
