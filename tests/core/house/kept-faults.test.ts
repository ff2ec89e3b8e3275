// What a load keeps: one of the ways to tell a gap, with figures that fit each other.

import { cautionsFor, checkHouse, toleratedMinutes, usedDefaults } from '@tideover/core'
import { describe, expect, it } from 'vitest'
import { refusal } from '../../files/problems.js'
import { plainHouse } from '../plain-house.js'

const houseWith = (kept: Record<string, unknown>) =>
  plainHouse({ loads: [{ name: 'thing', tier: 'critical', w: 90, ...kept }] })
const refused = (kept: Record<string, unknown>): string =>
  refusal(() => checkHouse(houseWith(kept)))

describe('what a load keeps', () => {
  it('tells its gap alone: a second way is refused', () => {
    const overheats = { waterL: 20, heatKw: 15 }
    expect(refused({ toleratesMinutes: 240, holdOver: { hours: 4 } })).toMatch(
      /^loads\[0\]\.holdOver must be left out beside toleratesMinutes: one of them tells the gap/,
    )
    expect(refused({ holdOver: { hours: 4 }, overheats })).toMatch(
      /^loads\[0\]\.overheats must be left out beside holdOver/,
    )
  })

  it.each([
    [{ holdOver: {} }, 'loads[0].holdOver.hours must be a number > 0 and <= 336 [h], got nothing'],
    [
      { holdOver: { hours: 4, fromC: 9 } },
      'loads[0].holdOver.limitC must be above fromC, which is 9 [°C], got 8',
    ],
    [
      { holdOver: { hours: 4, untilC: 4 } },
      'loads[0].holdOver.untilC must be above fromC, which is 5 [°C], got 4',
    ],
    [
      { holdOver: { hours: 4, atC: 7 } },
      'loads[0].holdOver.atC must be above 8 °C, which the stated hours reach in it, got 7',
    ],
    [
      { holdOver: { hours: 4, keeps: 'medicine', roomC: 1 } },
      'loads[0].holdOver.roomC must be at least 2 °C: below it the room itself spoils, got 1',
    ],
    [
      { holdOver: { hours: 4, keeps: 'vaccine' } },
      'loads[0].holdOver.keeps must be one of food, frozen, medicine, got "vaccine"',
    ],
    [
      { overheats: { waterL: 20, heatKw: 15, fromC: 96 } },
      'loads[0].overheats.limitC must be above fromC, which is 96 [°C], got 95',
    ],
    [
      { hotWater: { litres: 180, litresADay: 120, fromC: 35 } },
      'loads[0].hotWater.fromC must be at least useC, which is 40 [°C], got 35',
    ],
    [
      { hotWater: { litres: 180, litresADay: 120, coldC: 45, fromC: 60 } },
      'loads[0].hotWater.useC must be above coldC, which is 45 [°C], got 40',
    ],
  ])('%j is refused', (kept, message) => {
    expect(refused(kept)).toBe(message)
  })

  it('takes the place of toleratesMinutes among the defaults', () => {
    const paths = usedDefaults(houseWith({ holdOver: { hours: 4 } })).map(({ path }) => path)
    expect(paths).toContain('loads[0].holdOver.atC')
    expect(paths).not.toContain('loads[0].toleratesMinutes')
    expect(toleratedMinutes(checkHouse(houseWith({ holdOver: { hours: 4 } })).loads[0]!)).toBe(240)
  })
})

describe('a caution stands beside', () => {
  const cautions = (kept: Record<string, unknown>): string =>
    cautionsFor(checkHouse(houseWith(kept))).join('\n')

  it.each([
    [{ holdOver: { hours: 4, keeps: 'medicine' } }, 'medicines follow pharmacist and maker'],
    [{ holdOver: { hours: 4 } }, 'public guidance counts on 4 h in a fridge'],
    [{ overheats: { waterL: 20, heatKw: 15 } }, 'needs a heat leak and protection'],
    [{ name: 'alarm button' }, 'die with the router, and with the street cabinet'],
  ])('%j', (kept, words) => {
    expect(cautions(kept)).toContain(words)
    expect(cautions({ name: 'lamp' })).not.toContain(words)
  })
})
