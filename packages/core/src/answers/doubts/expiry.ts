// When the answer expires: the year of the battery, and the growth of the loads, at which the share
// that was promised is lost. Found by riding the month again, not by a slope.

import { withGrowth } from '../altered.js'
import { equip } from '../scenario.js'
import { AGEING_A_YEAR, AGEING_RANGE, healthAt, yearsTo } from './ageing.js'
import { type Rider, shareOf } from './rider.js'
import { firstLost } from './search.js'

/** Points that the share may lose where no target is given. */
const MAY_LOSE = 0.1
/** No battery is followed further. [years] */
export const MOST_YEARS = 30
/** No growth is followed further. [%] */
export const MOST_GROWTH = 200

export interface Expiry {
  /** The share to be held; null where none is given and the promise has no 10 points to lose. */
  readonly share: number | null
  readonly shareFrom: 'given' | 'ten points less than now'
  /** Whether the promise itself meets it. */
  readonly metNow: boolean | null
  /** Straight line from new. [share of nameplate a year] */
  readonly ageingPerYear: number
  readonly assumedHealth: number
  /** Year from new in which that health is reached; at the slow and the fast end of ageing. */
  readonly assumedYear: number
  readonly assumedYearRange: readonly [number, number]
  /** First whole year from new at whose end the share is lost; null where not within `mostYears`. */
  readonly lostInYear: number | null
  readonly mostYears: number
  /** Least growth of every load, in whole hundredths, that loses it; null where not by `mostGrowth`. */
  readonly lostAtGrowth: number | null
  readonly mostGrowth: number
}

/** @param share  of the promise */
export function expiryOf(rider: Rider, share: number | null, told: () => void): Expiry {
  const { equipped, question } = rider
  const target = question.share ?? (share !== null && share > MAY_LOSE ? share - MAY_LOSE : null)
  const metNow = target === null || share === null ? null : share >= target
  const [slow, fast] = AGEING_RANGE
  return {
    share: target,
    shareFrom: question.share === undefined ? 'ten points less than now' : 'given',
    metNow,
    ageingPerYear: AGEING_A_YEAR,
    assumedHealth: equipped.health,
    assumedYear: yearsTo(equipped.health),
    assumedYearRange: [yearsTo(equipped.health, fast), yearsTo(equipped.health, slow)],
    lostInYear: target === null ? null : yearLost(rider, target, metNow === true, told),
    mostYears: MOST_YEARS,
    lostAtGrowth: metNow === true ? growthLost(rider, target!, told) : null,
    mostGrowth: MOST_GROWTH / 100,
  }
}

/** Year 0 where a new battery does not hold it either. */
function yearLost(rider: Rider, target: number, metNow: boolean, told: () => void): number | null {
  const { prepared, question, equipped } = rider
  const holds = (year: number): boolean => {
    told()
    const health = healthAt(year)
    const share = shareOf(rider, { houses: [equip(prepared, { ...question, health })] })
    return share !== null && share >= target
  }
  const now = yearsTo(equipped.health)
  if (metNow) return now >= MOST_YEARS ? null : firstLost(Math.floor(now), MOST_YEARS, holds)
  if (!holds(0)) return 0
  return firstLost(0, Math.max(1, Math.ceil(now)), holds)
}

function growthLost(rider: Rider, target: number, told: () => void): number | null {
  const lost = firstLost(0, MOST_GROWTH, (percent) => {
    told()
    const share = shareOf(rider, { prepared: withGrowth(rider.prepared, percent / 100) })
    return share !== null && share >= target
  })
  return lost === null ? null : lost / 100
}
